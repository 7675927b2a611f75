/** A column of a table. */
export interface Column {
  readonly title: string;
  /** Its cells are wrapped where the table is too wide. */
  readonly flexible?: boolean;
  /** Left out where the flexible column would get too narrow. */
  readonly optional?: boolean;
  readonly right?: boolean;
}

const GAP = '  ';
/** A flexible column narrower than this costs the optional ones their place. */
const COMFORTABLE = 28;

/** Characters of a text as a terminal counts them, near enough for Latin text. */
const widthOf = (text: string): number => [...text].length;

const padded = (text: string, width: number, right: boolean): string => {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return right ? space + text : text + space;
};

/**
 * A text cut into lines at spaces.
 *
 * @param hanging Goes before every line but the first.
 */
export function wrapped(text: string, width: number, hanging = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line.trim() !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = hanging + word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

/**
 * Every line of a text, those that are too long cut at spaces; what goes over is set in two further than its line.
 *
 * @example folded('  a b', 4) //=> ['  a', '    b']
 */
export const folded = (text: string, width: number): string[] =>
  text.split('\n').flatMap((line) => {
    const own = /^ */.exec(line)?.[0] ?? '';
    return wrapped(line.slice(own.length), width - own.length, '  ').map((one) => (own + one).trimEnd());
  });

/**
 * Lines of a plain-text table no wider than `width`, as far as its narrow columns allow.
 *
 * @example table([{ title: 'Day' }], [['Apr 3']], 80) //=> ['Day', '─────', 'Apr 3']
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string[] {
  const natural = columns.map(({ title }, i) => Math.max(widthOf(title), ...rows.map((row) => widthOf(row[i] ?? ''))));
  const room =
    width -
    natural.reduce((sum, one, i) => sum + (columns[i]?.flexible ? 0 : one), 0) -
    GAP.length * (columns.length - 1);
  const wanted = Math.max(0, ...natural.filter((_, i) => columns[i]?.flexible));
  if (wanted > room && room < COMFORTABLE && columns.some(({ optional }) => optional)) {
    const kept = columns.flatMap(({ optional }, i) => (optional ? [] : [i]));
    const pick = <T>(values: readonly T[]) => kept.map((i) => values[i] as T);
    return table(pick(columns), rows.map(pick), width);
  }
  const widths = natural.map((one, i) => (columns[i]?.flexible ? Math.min(one, Math.max(room, 8)) : one));
  const lines = (cells: readonly string[]): string[] => {
    const cut = cells.map((cell, i) => (columns[i]?.flexible ? wrapped(cell, widths[i] ?? 8) : [cell]));
    return Array.from({ length: Math.max(...cut.map((cell) => cell.length)) }, (_, row) =>
      cut
        .map((cell, i) => padded(cell[row] ?? '', widths[i] ?? 0, columns[i]?.right ?? false))
        .join(GAP)
        .trimEnd(),
    );
  };
  return [
    ...lines(columns.map(({ title }) => title)),
    widths.map((one) => '─'.repeat(one)).join(GAP),
    ...rows.flatMap(lines),
  ];
}
