import Papa from 'papaparse';
import { type Place, type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';

/** A row of a table: its cells by column, empty ones left out, and where it stands. */
export interface Row {
  readonly cells: Readonly<Record<string, string>>;
  readonly place: Place;
}

/** What a table may and must hold. */
interface Columns {
  readonly allowed: readonly string[];
  readonly needed: readonly string[];
}

/**
 * Reads a table of commas, semicolons or tabs whose first line names its columns, in any order. A row that is not whole is told
 * and left out; the others go on. Without a fit head there is no row.
 *
 * @example readTable('id,name\nmill,The mill\n', 'places.csv', { allowed: ['id', 'name'], needed: ['id'] }).rows[0]?.cells.name
 */
export function readTable(
  text: string,
  file: string,
  { allowed, needed }: Columns,
): { readonly rows: readonly Row[]; readonly problems: readonly Problem[] } {
  const { lines, starts } = linesOf(text.replace(/^\uFEFF/, ''));
  const at = (line: number): Place => ({ file, line, column: 1, length: 1 });
  const [head = [], ...body] = lines;
  const names = head.map((name) => name.trim().toLowerCase());
  const unfit = headProblems(names, { allowed, needed }, at(1));
  if (unfit.length > 0) return { rows: [], problems: unfit };
  if (body.length === 0) return { rows: [], problems: [problem('site-table-empty', { found: file }, at(1))] };
  const rows: Row[] = [];
  const problems: Problem[] = [];
  for (const [i, cells] of body.entries()) {
    const place = at(starts[i + 1] ?? 1);
    if (cells.length !== names.length) {
      problems.push(problem('site-table-cells', { found: `${cells.length}`, expected: `${names.length}` }, place));
      continue;
    }
    const written = names.flatMap((name, j) => {
      const cell = (cells[j] ?? '').trim();
      return cell === '' ? [] : [[name, cell] as const];
    });
    const row = { cells: Object.fromEntries(written), place };
    const missing = needed.filter((name) => row.cells[name] === undefined);
    problems.push(...missing.map((column) => problem('site-row-missing', { column }, place)));
    if (missing.length === 0) rows.push(row);
  }
  return { rows, problems };
}

/** The rows that hold anything, and the line on which each begins: a cell in quotes may go over several. */
function linesOf(text: string): { readonly lines: readonly string[][]; readonly starts: readonly number[] } {
  const lines: string[][] = [];
  const starts: number[] = [];
  let [from, line] = [0, 1];
  const unix = text.replace(/\r\n?/g, '\n');
  Papa.parse<string[]>(unix, {
    newline: '\n',
    delimitersToGuess: [',', ';', '\t'],
    step: ({ data, meta }) => {
      if (data.some((cell) => cell.trim() !== '')) {
        lines.push(data);
        starts.push(line);
      }
      line += unix.slice(from, meta.cursor).split('\n').length - 1;
      from = meta.cursor;
    },
  });
  return { lines, starts };
}

function headProblems(names: readonly string[], { allowed, needed }: Columns, place: Place): Problem[] {
  const missing = needed.filter((name) => !names.includes(name));
  if (missing.length > 0) return missing.map((name) => problem('site-table-header', { missing: name, allowed }, place));
  return names
    .filter((name, i) => !allowed.includes(name) || names.indexOf(name) !== i)
    .map((found) => problem('site-table-column', { found, allowed, nearest: nearestWord(found, allowed) }, place));
}
