import { type RecordStep, recordOf } from '../../amounts/record.ts';
import { yearOf } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { recordWords } from '../../emit/record-words-en.ts';
import type { JournalEntry } from '../../model/journal.ts';
import type { ApplicatorRecord, RecordEntry } from '../../model/record.ts';
import type { Season } from '../../model/season.ts';
import type { Linked } from '../../read/link.ts';
import type { DidInput } from './input.ts';
import { stepsByIdOf } from './step-of.ts';

/** The applicator's record of a year. @param season The plan, for products that entries do not name. */
export function recordOfYear(
  { linked, today }: DidInput,
  year: number,
  season: Season | null,
  unreadLines: readonly number[],
): ApplicatorRecord {
  return recordOf({ ...linked, steps: stepsOf(linked), plan: season, year, asOf: today, unreadLines });
}

/** What the record of pesticides lacks: said, and nothing made up in its place. */
export const missingProblems = (entries: readonly RecordEntry[]): Problem[] =>
  entries.flatMap(({ name, missing }) =>
    missing.length === 0 ? [] : [problem('did-record', { entry: name, missing: recordWords.missing(missing) }, null)],
  );

/** What a new entry lacks, on a lawn of which a record is kept. */
export function lacking(input: DidInput, entry: JournalEntry, season: Season | null): Problem[] {
  if (!input.linked.lawn.record) return [];
  const linked = { ...input.linked, journal: [entry] };
  return missingProblems(recordOfYear({ ...input, linked }, yearOf(entry.date), season, []).entries);
}

/** The steps of all programs of a lawn, by their ids in its journal. */
const stepsOf = (linked: Linked): ReadonlyMap<string, RecordStep> =>
  new Map(
    [...stepsByIdOf(linked)].map(([id, { step, areas }]) => [
      id,
      { name: step.name, work: step.work, pesticide: step.apply?.kind === 'pesticide', areas },
    ]),
  );
