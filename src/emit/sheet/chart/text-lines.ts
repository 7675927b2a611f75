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
  const fits = (line: string) => widthOf(line, font) <= width;
  const lines: string[] = [];
  let rest = cleaned(text).trim().split(/\s+/);
  while (rest.length > 0 && lines.length < most) {
    let count = 1;
    while (count < rest.length && fits(rest.slice(0, count + 1).join(' '))) count++;
    const line = rest.slice(0, count).join(' ');
    rest = rest.slice(count);
    const isCut = (rest.length > 0 && lines.length === most - 1) || !fits(line);
    lines.push(isCut ? shortened(line, fits) : line);
  }
  return lines;
}

function shortened(line: string, fits: (line: string) => boolean): string {
  let letters = [...line];
  while (letters.length > 1 && !fits(`${letters.join('')}…`)) letters = letters.slice(0, -1);
  return `${letters.join('').trimEnd()}…`;
}
