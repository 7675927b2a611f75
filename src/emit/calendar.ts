import { cleaned } from '../base/text.ts';
import type { Ledger, LedgerEntry } from '../model/ledger.ts';
import type { Season } from '../model/season.ts';
import { type Detail, eventsOf, type Reader } from './events/all.ts';
import type { DraftEvent } from './events/draft.ts';
import { icalendar } from './ical.ts';
import { hashOf } from './steady.ts';
import { feedWords as words } from './words-en.ts';

/** How a feed is made. */
export interface FeedOptions {
  /** What the lawn's feeds have published so far. */
  readonly ledger: Ledger;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  readonly detail: Detail;
  /** Who reads it; the owner where left out. */
  readonly reader?: Reader;
  /** The feed's id in the ledger; the owner's where left out. */
  readonly feed?: string;
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
 * @throws RangeError where an instant is not one.
 * @example calendarOf(season, { ledger: emptyLedger, revisedAt: '2027-04-02T06:00:00Z', detail: 'normal' }).text
 */
export function calendarOf(
  season: Season,
  { ledger, revisedAt, detail, reader = 'owner', feed }: FeedOptions,
): { readonly text: string; readonly ledger: Ledger; readonly changes: readonly Change[] } {
  const published = feed === undefined ? ledger.events : (ledger.readers[feed] ?? []);
  const known = new Map(published.map((entry) => [entry.uid, entry]));
  const revised = eventsOf(season, detail, reader).map((draft) =>
    revise(draft, known.get(draft.uid), season.asOf, revisedAt),
  );
  const text = icalendar({
    name: season.lawnName,
    description: words.calendarAbout(season.lawnName, season.programName),
    language: season.display.language,
    refreshMin: REFRESH_MIN,
    events: revised,
  });
  const present = new Set(revised.map(({ uid }) => uid));
  const gone = published.filter(
    (entry) => !present.has(entry.uid) && entry.season >= season.season.year - KEPT_SEASONS,
  );
  const events = [...revised, ...gone].sort((a, b) => (a.uid < b.uid ? -1 : 1));
  return {
    text,
    ledger: feed === undefined ? { ...ledger, events } : { ...ledger, readers: { ...ledger.readers, [feed]: events } },
    changes: revised.flatMap((after) => changeOf(known.get(after.uid) ?? null, after) ?? []),
  };
}

function changeOf(before: LedgerEntry | null, after: LedgerEntry): Change | null {
  if (before === after) return null;
  const what = before === null ? 'new' : before.start === after.start ? 'changed' : 'moved';
  return { what, before, after };
}

/** The entry of an event in this revision: as before where its hash is the same. */
function revise(draft: DraftEvent, before: LedgerEntry | undefined, asOf: string, revisedAt: string): LedgerEntry {
  const hash = hashOf(draft, before, asOf);
  if (before?.hash === hash) return before;
  // In the order in which a ledger is read back, so that the same ledger is the same bytes.
  return {
    uid: draft.uid,
    kind: draft.kind,
    season: draft.season,
    step: draft.step,
    day: draft.day,
    dueSince: draft.dueSince,
    hash,
    sequence: before ? before.sequence + 1 : 0,
    lastModified: laterOf(revisedAt, before?.lastModified),
    allDay: draft.allDay,
    start: draft.start,
    end: draft.end,
    summary: cleaned(draft.summary),
    description: cleaned(draft.description),
    status: draft.status,
    transparent: draft.transparent,
    categories: [...draft.categories],
    remindersMin: [...draft.remindersMin],
    cancelledOn: null,
  };
}

/** The instant of revision, or a second after the one before where that is later. */
function laterOf(revisedAt: string, before: string | undefined): string {
  const now = Date.parse(revisedAt);
  const least = before === undefined ? now : Date.parse(before) + 1000;
  return new Date(Math.max(now, least)).toISOString().replace(/\.\d+Z$/, 'Z');
}
