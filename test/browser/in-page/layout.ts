/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** Sent into a page as it stands: it must not reach for anything outside of its own body. */

/** What sticks out to the right of the page, so that it has to be pushed from side to side; empty where nothing does. */
export function sticksOut(): string[] {
  const { scrollWidth, clientWidth } = document.documentElement;
  if (scrollWidth <= clientWidth) return [];
  const scrolls = (element: Element): boolean =>
    element.parentElement !== null &&
    element.parentElement !== document.body &&
    (getComputedStyle(element.parentElement).overflowX !== 'visible' || scrolls(element.parentElement));
  const wide = [...document.body.querySelectorAll('*')]
    .filter((element) => element.getBoundingClientRect().right > clientWidth + 0.5 && !scrolls(element))
    .map((element) => `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} ${element.id}`);
  return [`${scrollWidth} px on ${clientWidth} px`, ...wide.slice(0, 8)];
}

/** What the tab key has to reach: links, folds and fields that can be seen, in the order of the page. */
export function reachable(): string[] {
  const all = document.querySelectorAll('a[href], summary, button, input, select, textarea, [tabindex="0"]');
  return [...all]
    .filter((one) => one.checkVisibility() && !(one as HTMLButtonElement).disabled)
    .map((one, index) => {
      one.setAttribute('data-reached-as', String(index));
      return `${index} ${one.tagName.toLowerCase()} ${(one.textContent ?? '').trim().slice(0, 40)}`;
    });
}

/** Where the keyboard is now: which of `reachable`, and whether that is shown by a ring that lies on the page. */
export function focused(): { readonly reached: number | null; readonly isShown: boolean } {
  const element = document.activeElement;
  const reached = element?.getAttribute('data-reached-as') ?? null;
  if (!element || reached === null) return { reached: null, isShown: false };
  const { outlineStyle, outlineWidth, outlineColor, boxShadow } = getComputedStyle(element);
  const hasRing = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1 && !/, 0\)$/.test(outlineColor);
  const { right, bottom, left, top, width, height } = element.getBoundingClientRect();
  const isOnPage = width > 1 && height > 1 && right > 0 && bottom > 0 && left < innerWidth && top < innerHeight;
  return { reached: Number(reached), isShown: isOnPage && (hasRing || boxShadow !== 'none') };
}
