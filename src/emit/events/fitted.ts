/** The longest description that every client keeps whole, in code points. */
const LONGEST = 1990;

/** When a part of a text gives way where there is too much of it: lines of a later kind go only once no earlier one is left. */
const ORDER = ['never', 'last', 'late', 'first'] as const;

/** Lines that give way together, the last of them first. */
export interface Part {
  readonly goes: (typeof ORDER)[number];
  readonly lines: readonly string[];
}

/**
 * Parts in the order in which they are read, as long as a description may be. What gives way does so by whole lines, and where
 * it was more than what goes first a line says that there is more.
 *
 * @param more That line.
 * @example fitted([{ goes: 'late', lines: how }, { goes: 'never', lines: [asOf] }, { goes: 'first', lines: why }], words.more)
 */
export function fitted(parts: readonly Part[], more: string): string {
  const whole = joined(parts.map(({ lines }) => lines));
  if (lengthOf(whole) <= LONGEST) return whole;
  const kept = keptWithin(parts, LONGEST);
  const cut = parts.find((part, i) => part.goes !== 'first' && kept[i]?.length !== part.lines.length);
  const line = ['', more, ''];
  const told = cut
    ? keptWithin(parts, LONGEST - lengthOf(joined([line])) - 2).map((lines, i) =>
        parts[i] === cut ? [...lines, ...line] : lines,
      )
    : kept;
  // What never goes may be too long by itself.
  return [...joined(told)].slice(0, LONGEST).join('');
}

/** What is left of each part in so much room. */
function keptWithin(parts: readonly Part[], longest: number): (readonly string[])[] {
  // The last line ends without a line end.
  let room = longest + 1;
  const kept = new Map<Part, readonly string[]>();
  for (const kind of ORDER)
    for (const part of parts.filter(({ goes }) => goes === kind)) {
      const lines = kind === 'never' ? part.lines : firstWithin(part.lines, room);
      room -= lines.reduce((sum, line) => sum + lengthOf(line) + 1, 0);
      kept.set(part, lines);
    }
  return parts.map((part) => kept.get(part) ?? []);
}

export const listed = (line: string): string => `- ${line}`;

/** A list under its title, with a blank line after it; nothing where it is empty. */
export const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : [title, ...lines.map(listed), ''];

/** Lines from the first on, up to the first that has no room. */
function firstWithin(lines: readonly string[], room: number): readonly string[] {
  let left = room;
  const end = lines.findIndex((line) => {
    left -= lengthOf(line) + 1;
    return left < 0;
  });
  return end < 0 ? lines : lines.slice(0, end);
}

/** No two empty lines in a row, and none at either end. */
const joined = (parts: readonly (readonly string[])[]): string =>
  parts
    .flat()
    .filter((line, i, all) => line !== '' || all[i - 1] !== '')
    .join('\n')
    .replace(/^\n+|\n+$/g, '');

/** Code points, so that nothing is cut inside one. */
const lengthOf = (text: string): number => [...text].length;
