import { type Day, parseDay } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import { correctionsOf, nameOf, type Referable } from '../model/corrections.ts';
import { EntrySchema, type Journal, type JournalEntry } from '../model/journal.ts';
import { judge, LIMIT, openYaml, type Parsed } from './validate.ts';
import { LONG_LIST, type Path } from './yaml.ts';

/** A journal as it was read. Damaged entries stay in the file and out of the value. */
export interface JournalFile extends Parsed<Journal> {
  /** Where in the file's list each entry of the value stands. */
  readonly positions: readonly number[];
}

/**
 * Reads a journal: a list of entries. An empty file is an empty journal.
 *
 * A damaged entry is a warning at its line and does not count; the others do. Only a file that is no list at all has no
 * value. A damaged entry that a later one corrects is not told any more.
 *
 * @example readJournal('- { date: 2027-04-03, step: autumn-feed-1 }', 'lawn.journal.yaml').value?.length //=> 1
 */
export function readJournal(text: string, name: string): JournalFile {
  const opened = openYaml(text, name, 'journal', LIMIT.journal, LONG_LIST);
  const { problems, data } = opened;
  if (problems.length === 1 && problems[0]?.code === 'file-empty')
    return { ...opened, problems: [], value: [], positions: [] };
  if (problems.length > 0) return { ...opened, positions: [] };
  if (!Array.isArray(data)) {
    const expected = 'a list of entries such as { date: 2027-04-03, step: autumn-feed-1 }';
    const found = data !== null && typeof data === 'object' ? 'a map' : 'one value';
    return { ...opened, problems: [problem('wrong-type', { found, expected }, opened.place([]))], positions: [] };
  }
  const rows = data.map((row: unknown, i) => readEntry(row, i, opened));
  const { targets, faults } = correctionsOf(rows.map(({ value, stub }) => value ?? stub));
  const corrected = new Set(targets);
  const nameAt = (at: number) => nameOf(rows[at]?.value ?? (rows[at]?.stub as Referable));
  return {
    ...opened,
    problems: [
      ...rows.flatMap((row, i) => (corrected.has(i) ? [] : row.problems)),
      ...faults.map(({ at, fault, others }) => {
        const found = rows[at]?.value?.corrects ?? '';
        return problem(
          'journal-corrects',
          { found, fault, others: others.map(nameAt) },
          opened.place([at, 'corrects']),
        );
      }),
    ],
    value: rows.flatMap(({ value }) => value ?? []),
    positions: rows.flatMap(({ value }, i) => (value ? [i] : [])),
  };
}

/** One entry: its value, or what is wrong with it and the little that others may name it by. */
function readEntry(data: unknown, at: number, { file, place }: Parsed<unknown>) {
  const judged = judge(EntrySchema, {
    problems: [],
    file,
    data,
    place: (path: Path, part) => place([at, ...path], part),
  });
  const problems = judged.problems.map(({ message, line, column, length }): Problem => {
    const here = { file, line: line ?? 1, column: column ?? 1, length: length ?? 1 };
    return problem('journal-entry', { reason: message }, here);
  });
  return { value: judged.value as JournalEntry | undefined, problems, stub: stubOf(data) };
}

/** No day of the calendar: a damaged entry without a date cannot be named by one. */
const NO_DAY: Day = -1_000_000;

function stubOf(data: unknown): Referable {
  const row = data !== null && typeof data === 'object' ? (data as Readonly<Record<string, unknown>>) : {};
  const texts = (['id', 'step', 'work'] as const).flatMap((key) =>
    typeof row[key] === 'string' ? [[key, row[key]] as const] : [],
  );
  return { date: parseDay(String(row.date)) ?? NO_DAY, ...Object.fromEntries(texts) };
}

/** The ids that a journal may use; any step where `steps` is null. */
interface Known {
  readonly steps: readonly string[] | null;
  readonly products: readonly string[];
  readonly areas: readonly string[];
  readonly spreaders: readonly string[];
}

/** What the entries in force name that the lawn does not have: a warning each, since what was done was done. */
export function journalProblems({ value = [], positions, place }: JournalFile, known: Known): Problem[] {
  const { inForce } = correctionsOf(value);
  const check = (
    code: 'journal-step' | 'journal-product' | 'journal-area' | 'journal-spreader',
    found: string | undefined,
    allowed: readonly string[] | null,
    path: Path,
  ): Problem[] =>
    found === undefined || allowed === null || allowed.includes(found)
      ? []
      : [problem(code, { found, allowed, nearest: nearestWord(found, allowed) }, place(path))];
  return value.flatMap(({ step, product, areas, spreader }, i) => {
    if (!inForce[i]) return [];
    const at = positions[i] as number;
    return [
      ...check('journal-step', step, known.steps, [at, 'step']),
      ...check('journal-product', product, known.products, [at, 'product']),
      ...check('journal-spreader', spreader, known.spreaders, [at, 'spreader']),
      ...(areas ?? []).flatMap((area, j) => check('journal-area', area, known.areas, [at, 'areas', j])),
    ];
  });
}
