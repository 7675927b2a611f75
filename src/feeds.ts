import { calendarOf } from './emit/calendar.ts';
import { endedCalendar } from './emit/readers/ended.ts';
import type { Ledger } from './model/ledger.ts';
import { type Reader, readersOf } from './model/reader.ts';
import type { Season } from './model/season.ts';
import type { PlacedSeason, PlanInput } from './schedule/placed-season.ts';
import { placeInPublic } from './schedule/public-place.ts';
import { tellSeason } from './schedule/tell.ts';

/** The feed of somebody beside the owner. */
export interface ReaderFeed {
  readonly id: string;
  readonly text: string;
  /** Whether the lawn file no longer names its reader. */
  readonly ended: boolean;
}

/** What a season is told from: how its steps were placed, and from what. */
interface Told {
  readonly placed: PlacedSeason;
  readonly input: PlanInput;
}

/**
 * The feeds of everybody beside the owner, in the lawn file's order, then those of former readers; and the ledger with all of them.
 * All owners and helpers are told the one placed season, in their own words; the public that of a place without a lawn.
 *
 * @param season The owner's.
 * @throws RangeError where an instant is not one.
 */
export function feedsOfReaders(
  season: Season,
  lawn: Told,
  { ledger: before, revisedAt }: { readonly ledger: Ledger; readonly revisedAt: string },
): { readonly feeds: readonly ReaderFeed[]; readonly ledger: Ledger } {
  const readers = readersOf(lawn.input.lawn);
  const feeds: ReaderFeed[] = [];
  let ledger = before;
  for (const reader of readers) {
    const { id: feed, as, detail, title } = reader;
    const told = toldTo(reader, lawn, season);
    if (told === null) continue;
    const made = calendarOf(told, { ledger, revisedAt, detail, reader: as, feed, title });
    feeds.push({ id: feed, text: made.text, ended: false });
    ledger = made.ledger;
  }
  for (const feed of Object.keys(before.readers).filter((id) => readers.every((reader) => reader.id !== id))) {
    const { text, ledger: after } = endedCalendar(season, { ledger, revisedAt, feed });
    if (text !== null) feeds.push({ id: feed, text, ended: true });
    ledger = after;
  }
  return { feeds, ledger };
}

/** The season in a reader's words; null where the weather does not carry one that is for the public, and what stands there stays. */
function toldTo({ as, telling }: Reader, lawn: Told, { display }: Season): Season | null {
  const told = as === 'public' ? placeInPublic(lawn.input, telling.units ?? display.units) : lawn;
  return told && tellSeason(told.placed, told.input, telling);
}
