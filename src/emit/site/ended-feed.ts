import { formatDay } from '../../base/day.ts';
import { nameHash } from '../../base/hash.ts';
import { emptyLedger } from '../../model/ledger.ts';
import type { Telling } from '../../model/reader.ts';
import { rebuiltFrom } from '../ledger/rebuilt.ts';
import { endedCalendar } from '../readers/ended.ts';

/** The day on which a calendar ends, and how that is told. */
interface Ending {
  readonly publication: { readonly display: Telling };
  readonly asOf: number;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
}

/** A plan in which nothing is left to be done. @param feedKey What the events of the feed are called by. */
export const emptyPlan = (feedKey: string, { publication, asOf }: Omit<Ending, 'revisedAt'>) => {
  const { units = 'us', language = 'en-US', currency = 'USD' } = publication.display;
  const day = formatDay(asOf);
  const year = Number(day.slice(0, 4));
  return {
    asOf: day,
    feedKey,
    display: { units, language, currency },
    season: { year, start: `${year}-01-01`, end: `${year}-12-31` },
  };
};

/**
 * A feed that nobody plans any more, from its text alone: what was to come is called off, and it says that it has ended.
 *
 * @param address By which it is known; nothing of it can be read out of the feed.
 * @returns Null where the text is no feed of ours.
 */
export function endedFeed(text: string, address: string, ending: Ending): string | null {
  const events = rebuiltFrom(text)?.events;
  if (events === undefined) return null;
  const feed = 'ended';
  const ledger = { ...emptyLedger, readers: { [feed]: events } };
  return endedCalendar(emptyPlan(nameHash(`${address} ended`), ending), {
    ledger,
    revisedAt: ending.revisedAt,
    feed,
  }).text;
}
