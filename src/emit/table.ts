/** A column of a table: its title, and whether it gives way when the table is too wide. */
export interface Column {
  readonly title: string;
  readonly flexible?: boolean;
  readonly right?: boolean;
}

const GAP = '  ';
/** A flexible column keeps at least this width. */
const LEAST = 16;

/** Characters of a text as a terminal counts them, near enough for Latin text. */
const widthOf = (text: string): number => [...text].length;

const shortened = (text: string, width: number, right: boolean): string => {
  const letters = [...text];
  const shown =
    letters.length > width
      ? `${letters
          .slice(0, width - 1)
          .join('')
          .trimEnd()}…`
      : text;
  const space = ' '.repeat(Math.max(0, width - widthOf(shown)));
  return right ? space + shown : shown + space;
};

/**
 * Lines of a plain-text table no wider than `width`; the flexible column is shortened where it must be.
 *
 * @example table([{ title: 'Day' }], [['Apr 3']], 80) //=> ['Day', '─────', 'Apr 3']
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string[] {
  const natural = columns.map(({ title }, i) => Math.max(widthOf(title), ...rows.map((row) => widthOf(row[i] ?? ''))));
  const total = natural.reduce((sum, one) => sum + one, 0) + GAP.length * (columns.length - 1);
  const over = Math.max(0, total - width);
  const widths = natural.map((one, i) => (columns[i]?.flexible ? Math.max(Math.min(LEAST, one), one - over) : one));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => shortened(cell, widths[i] ?? 0, columns[i]?.right ?? false))
      .join(GAP)
      .trimEnd();
  return [line(columns.map(({ title }) => title)), widths.map((one) => '─'.repeat(one)).join(GAP), ...rows.map(line)];
}
