import { cleaned } from '../../../base/text.ts';
import { widthOf } from './plot.ts';

/**
 * A text in at most so many lines of a width; what does not fit ends in an ellipsis, and what could deceive a reader is left out.
 *
 * @param font Height of the letters [px].
 * @param width Of a line [px].
 * @example lined('Pre-emergent for summer annual grasses', 13, 200, 2) //=> ['Pre-emergent for summer', 'annual grasses']
 */
export function lined(text: string, font: number, width: number, most: number): string[] {
  const room = Math.floor(width / widthOf('m', font));
  // No more of a long text is looked at than could ever be shown.
  const words = cleaned(text)
    .trim()
    .slice(0, 4 * room * (most + 1))
    .split(/\s+/);
  const lines: string[] = [];
  let next = 0;
  while (next < words.length && lines.length < most) {
    let line = words[next++] ?? '';
    while (next < words.length && lengthOf(`${line} ${words[next]}`) <= room) line += ` ${words[next++]}`;
    const isCut = (next < words.length && lines.length === most - 1) || lengthOf(line) > room;
    lines.push(
      isCut
        ? `${[...line]
            .slice(0, room - 1)
            .join('')
            .trimEnd()}…`
        : line,
    );
  }
  return lines;
}

const lengthOf = (text: string): number => [...text].length;
