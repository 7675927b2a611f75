import type { UnitSystem } from './base/display.ts';
import { calendarOf } from './emit/calendar.ts';
import { endedCalendar } from './emit/readers/ended.ts';
import type { Ledger } from './model/ledger.ts';
import { type Reader, readersOf } from './model/reader.ts';
import type { Season } from './model/season.ts';
import { type PlacedSeason, type PlanInput, placeSeason } from './schedule/placed-season.ts';
import { publicPlace } from './schedule/public-place.ts';
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
    const made = calendarOf(toldTo(reader, lawn, season), { ledger, revisedAt, detail, reader: as, feed, title });
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

function toldTo({ as, telling }: Reader, lawn: Told, { display }: Season): Season {
  const { placed, input } = as === 'public' ? inPublic(lawn, telling.units ?? display.units) : lawn;
  return tellSeason(placed, input, telling);
}

/** The same weather carries the place where it carries the lawn. */
function inPublic({ input: ofLawn }: Told, units: UnitSystem): Told {
  const input = publicPlace(ofLawn, units);
  return { placed: placeSeason(input).value as PlacedSeason, input };
}
