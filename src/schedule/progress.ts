import type { Day } from '../base/day.ts';
import type { Journal, JournalEntry } from '../model/journal.ts';
import type { SeasonYear } from './season-year.ts';

/** What the journal says of a step in a season. */
export interface Progress {
  /** The day of the last area, once all areas are done; null before. */
  readonly doneOn: Day | null;
  readonly areasDone: readonly string[];
  readonly entries: readonly JournalEntry[];
}

/** How far a step is done in a season. An entry that names no areas means all of them. */
export function progressOf(step: string, journal: Journal, areas: readonly string[], season: SeasonYear): Progress {
  const entries = journal.filter(
    (entry) => entry.step === step && entry.date >= season.start && entry.date <= season.end,
  );
  const areasDone = areas.filter((area) => entries.some((entry) => entry.areas?.includes(area) ?? true));
  const all = entries.length > 0 && areasDone.length === areas.length;
  return { doneOn: all ? Math.max(...entries.map(({ date }) => date)) : null, areasDone, entries };
}
