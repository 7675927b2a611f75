import type { Text } from './in-page/texts.ts';

/** Boxes are as tall as the font reaches at most; neighbours may share this much of it without their ink touching [CSS px]. */
const TOUCH = 1;

/** Pairs of texts that lie over each other, each told by its words and place. Lines of one owner may. */
export function overlapsIn(texts: readonly Text[]): string[] {
  const found = new Set<string>();
  const byTop = [...texts].sort((a, b) => a.y - b.y);
  for (const [index, upper] of byTop.entries()) {
    for (const lower of byTop.slice(index + 1)) {
      if (lower.y >= upper.y + upper.height - TOUCH) break;
      const across = Math.min(upper.x + upper.width, lower.x + lower.width) - Math.max(upper.x, lower.x);
      if (across > TOUCH && upper.owner !== lower.owner) found.add(`${told(upper)} / ${told(lower)}`);
    }
  }
  return [...found];
}

/** A text with its box, short. */
export const told = ({ text, x, y, width, height, where }: Text): string =>
  `"${text.slice(0, 40)}" (${where}, ${[x, y, width, height].map(Math.round).join(' ')})`;
