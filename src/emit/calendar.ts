import type { Ledger } from '../model/ledger.ts';
import type { Detail, Role } from '../model/reader.ts';
import type { Season } from '../model/season.ts';
import { carries, eventsOf } from './events/all.ts';
import { type Change, publishedAs } from './published-as.ts';
import { seenBy } from './readers/seen-by.ts';

/** How a feed is made. */
export interface FeedOptions {
  /** What the lawn's feeds have published so far. */
  readonly ledger: Ledger;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  readonly detail: Detail;
  /** What the reader may see: everything where left out. A season for the public is one that was planned of a `publicPlace`. */
  readonly reader?: Role;
  /** The reader's id, by which the feed has its own list in the ledger and its own events; the lawn's own feed where left out. */
  readonly feed?: string;
  /** What the calendar is called, in place of the usual name. */
  readonly title?: string | null;
}

/**
 * A season as an iCalendar feed, the ledger that the next revision needs, and what subscribers will see change.
 *
 * An event's SEQUENCE rises and its LAST-MODIFIED grows exactly when its content hash changes; its words then are
 * rewritten, and stay as they are otherwise.
 *
 * @throws RangeError where an instant is not one, or a season of somebody's lawn is to be told to the public.
 * @example calendarOf(season, { ledger: emptyLedger, revisedAt: '2027-04-02T06:00:00Z', detail: 'normal' }).text
 */
export function calendarOf(
  whole: Season,
  { ledger, revisedAt, detail, reader = 'owner', feed, title = null }: FeedOptions,
): { readonly text: string; readonly ledger: Ledger; readonly changes: readonly Change[] } {
  const { season, name, about } = seenBy(whole, { id: feed ?? null, as: reader, title });
  return publishedAs(season, eventsOf(season, detail, reader), {
    ledger,
    revisedAt,
    feed,
    name,
    about,
    // Who saw more before is not to have it told on here; the owner's own key may change. What is no longer carried was not called off.
    keeps: ({ uid, kind }) =>
      (feed === undefined || uid.startsWith(`${season.feedKey}-`)) && carries(detail, reader, kind),
  });
}
