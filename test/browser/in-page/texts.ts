/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** Sent into a page as it stands: it must not reach for anything outside of its own body. */

/** A box on the page [CSS px]. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One line of one label or paragraph, as it is drawn. */
export interface Text extends Box {
  readonly text: string;
  /** What belongs together and may touch itself: a text of a drawing, the block that holds a piece of prose. */
  readonly owner: number;
  /** Which of the page's drawings it stands in; null outside of them. */
  readonly drawing: number | null;
  /** Height of the font as drawn, also where a drawing is scaled [CSS px]. */
  readonly sizePx: number;
  /** Red, green and blue of 255, opacity of 1. */
  readonly color: readonly [number, number, number, number];
  readonly where: string;
}

/** Every text that can be seen, line by line, with whatever hides a part of it taken off. */
export function textsIn(): Text[] {
  const drawings = [...document.querySelectorAll('svg')].filter((svg) => !svg.parentElement?.closest('svg'));
  const owners: Element[] = [];
  const found: Text[] = [];

  const nameOf = (element: Element | null): string => {
    if (!element || element === document.documentElement) return '';
    const own = `${element.tagName.toLowerCase()}${element.id ? `#${element.id}` : ''}${[...element.classList].map((one) => `.${one}`).join('')}`;
    return `${nameOf(element.parentElement)} ${own}`.trim().split(' ').slice(-4).join(' ');
  };
  const ownerOf = (element: Element): number => {
    let owner = element.closest('text') ?? element;
    while (!owner.closest('svg') && getComputedStyle(owner).display.startsWith('inline') && owner.parentElement)
      owner = owner.parentElement;
    if (!owners.includes(owner)) owners.push(owner);
    return owners.indexOf(owner);
  };
  /** What is left of a box where its holders cut it off. */
  const shown = (rect: DOMRect, element: Element): DOMRect | null => {
    let [left, top, right, bottom] = [rect.left, rect.top, rect.right, rect.bottom];
    for (let holder: Element | null = element; holder && holder !== document.body; holder = holder.parentElement) {
      const style = getComputedStyle(holder);
      if (/^inset\(50%|^inset\(100%/.test(style.clipPath) || /^rect\(0px/.test(style.clip)) return null;
      if (style.overflowX === 'visible' && style.overflowY === 'visible') continue;
      if (style.display.startsWith('inline') && style.display === 'inline') continue;
      const cut = holder.getBoundingClientRect();
      [left, top] = [Math.max(left, cut.left), Math.max(top, cut.top)];
      [right, bottom] = [Math.min(right, cut.right), Math.min(bottom, cut.bottom)];
    }
    return right - left > 1 && bottom - top > 1 && right > 0 && bottom + scrollY > 0
      ? new DOMRect(left, top, right - left, bottom - top)
      : null;
  };
  const colorOf = (element: Element, isDrawn: boolean): readonly [number, number, number, number] => {
    const style = getComputedStyle(element);
    const [red = 0, green = 0, blue = 0, alpha = 1] = ((isDrawn ? style.fill : style.color).match(/[\d.]+/g) ?? []).map(
      Number,
    );
    let opacity = alpha * (isDrawn ? Number(style.fillOpacity) : 1);
    for (let one: Element | null = element; one; one = one.parentElement)
      opacity *= Number(getComputedStyle(one).opacity);
    return [red, green, blue, opacity];
  };

  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const [element, text] = [node.parentElement as Element, (node.textContent ?? '').trim()];
    if (!text || element.closest('script, style, title, desc, template')) continue;
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const drawn = element.closest('svg');
    const matrix = drawn ? (element.closest('text') as SVGGraphicsElement | null)?.getScreenCTM() : null;
    const scale = matrix ? Math.sqrt(Math.abs(matrix.a * matrix.d - matrix.b * matrix.c)) : 1;
    for (const rect of range.getClientRects()) {
      const box = shown(rect, element);
      if (!box) continue;
      found.push({
        text,
        owner: ownerOf(element),
        drawing: drawn ? drawings.findIndex((one) => one.contains(drawn)) : null,
        x: box.x + scrollX,
        y: box.y + scrollY,
        width: box.width,
        height: box.height,
        sizePx: Number.parseFloat(getComputedStyle(element).fontSize) * scale,
        color: colorOf(element, drawn !== null),
        where: nameOf(element),
      });
    }
  }
  return found;
}
