import type { Day } from '../base/day.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Amount } from '../model/fields.ts';
import type { Journal, JournalEntry } from '../model/journal.ts';
import type { SeasonYear } from './season-year.ts';

/** What the journal says of a step in a season. */
export interface Progress {
  /** The day of the last area, once all areas are done; null before. */
  readonly doneOn: Day | null;
  readonly areasDone: readonly string[];
  /** Areas that have had the first of two passes alone, with what it has put down. */
  readonly firstPasses: ReadonlyMap<string, readonly FirstPass[]>;
  readonly entries: readonly JournalEntry[];
}

/** What one entry of a first pass has put on each square metre; null where it does not say. */
export interface FirstPass {
  readonly entry: JournalEntry;
  readonly rate: Amount | null;
}

/** First passes that have put down the whole and leave nothing for a second. */
export type WholePasses = (step: string, season: Pick<SeasonYear, 'year'>, area: string) => boolean;

interface ProgressInput {
  readonly journal: Journal;
  readonly sizes: ReadonlyMap<string, SquareMetres>;
  readonly isWhole: WholePasses;
}

/**
 * How far a step is done in a season. An entry that names no areas means all of them; an area of which every entry is of
 * the first pass is half done.
 */
export function progressOf(
  step: string,
  areas: readonly string[],
  season: SeasonYear,
  { journal, sizes, isWhole }: ProgressInput,
): Progress {
  const entries = journal.filter(
    (entry) => entry.step === step && entry.date >= season.start && entry.date <= season.end,
  );
  const begun = areas.flatMap((area) => {
    const own = entries.filter((entry) => entry.areas?.includes(area) ?? true);
    return own.length === 0 ? [] : [{ area, own }];
  });
  const halves = begun.filter(({ area, own }) => own.every(({ pass }) => pass === 1) && !isWhole(step, season, area));
  const firstPasses = new Map(
    halves.map(({ area, own }) => [area, own.map((entry) => ({ entry, rate: rateOf(entry, areas, sizes) }))]),
  );
  const areasDone = begun.flatMap(({ area }) => (firstPasses.has(area) ? [] : [area]));
  const all = entries.length > 0 && areasDone.length === areas.length;
  return { doneOn: all ? Math.max(...entries.map(({ date }) => date)) : null, areasDone, firstPasses, entries };
}

function rateOf(
  { areas: named, used }: JournalEntry,
  all: readonly string[],
  sizes: ReadonlyMap<string, SquareMetres>,
): Amount | null {
  const size = (named ?? all).reduce((sum, area) => sum + (sizes.get(area) ?? 0), 0);
  return used && size > 0 ? { by: used.by, value: used.value / size } : null;
}
