import type { Ledger, LedgerEntry } from '../model/ledger.ts';
import type { Detail, Role } from '../model/reader.ts';
import type { Season } from '../model/season.ts';
import { eventsOf } from './events/all.ts';
import { icalendar } from './ical.ts';
import { KEPT_NAME, keptLine } from './ledger/kept-line.ts';
import { revise } from './ledger/revise.ts';
import { vanished } from './ledger/vanished.ts';
import { seenBy } from './readers/seen-by.ts';

/** How a feed is made. */
export interface FeedOptions {
  /** What the lawn's feeds have published so far. */
  readonly ledger: Ledger;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  readonly detail: Detail;
  /** What the reader may see: everything where left out. The season for the public is one planned of a `publicPlace`. */
  readonly reader?: Role;
  /** The reader's id, by which the feed has its list in the ledger and events of its own; the lawn's own feed where left out. */
  readonly feed?: string;
  /** What the calendar is called, in place of the usual name. */
  readonly title?: string | null;
}

/** What subscribers see change of one event. */
export interface Change {
  readonly what: 'new' | 'moved' | 'changed' | 'cancelled' | 'removed';
  readonly before: LedgerEntry | null;
  readonly after: LedgerEntry | null;
}

/** Twice a day is often enough: the dates move with the day's weather. */
const REFRESH_MIN = 720;
/** Entries of events that left the feed stay this long, so that a UID that comes back goes on counting. */
const KEPT_SEASONS = 1;

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
  const published = feed === undefined ? ledger.events : (ledger.readers[feed] ?? []);
  const known = new Map(published.map((entry) => [entry.uid, entry]));
  const drafts = eventsOf(season, detail, reader);
  const present = new Set(drafts.map(({ uid }) => uid));
  const events = [
    ...drafts.map((draft) => revise(draft, known.get(draft.uid), season.asOf, revisedAt)),
    ...published
      .filter(({ uid }) => !present.has(uid))
      .filter(({ removedOn, season: year }) => removedOn === null || year >= season.season.year - KEPT_SEASONS)
      .map((entry) => vanished(entry, season, revisedAt)),
  ].sort((a, b) => (a.uid < b.uid ? -1 : 1));
  const text = icalendar({
    name,
    description: about,
    language: season.display.language,
    refreshMin: REFRESH_MIN,
    events: events
      .filter(({ removedOn }) => removedOn === null)
      .map((entry) => ({ ...entry, own: { name: KEPT_NAME, value: keptLine(entry) } }))
      .sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0)),
  });
  return {
    text,
    ledger: feed === undefined ? { ...ledger, events } : { ...ledger, readers: { ...ledger.readers, [feed]: events } },
    changes: events.flatMap((after) => changeOf(known.get(after.uid) ?? null, after) ?? []),
  };
}

function changeOf(before: LedgerEntry | null, after: LedgerEntry): Change | null {
  if (before === after) return null;
  // What subscribers no longer have is new to them, and so is what was called off and stands again.
  if (before === null || before.removedOn !== null) return { what: 'new', before: null, after };
  if (after.removedOn !== null) return { what: 'removed', before, after: null };
  if (after.status === 'CANCELLED') return { what: 'cancelled', before, after };
  if (before.status === 'CANCELLED') return { what: 'new', before, after };
  return { what: before.start === after.start ? 'changed' : 'moved', before, after };
}
