import { contentHash } from '../base/hash.ts';
import { cleaned } from '../base/text.ts';
import type { Ledger, LedgerEntry } from '../model/ledger.ts';
import type { Season } from '../model/season.ts';
import { type Detail, type DraftEvent, eventsOf } from './events.ts';
import { icalendar } from './ical.ts';
import { feedWords as words } from './words-en.ts';

/** How a feed is made. */
export interface FeedOptions {
  /** What the feed has published so far. */
  readonly ledger: Ledger;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  readonly detail: Detail;
}

/** Twice a day is often enough: the dates move with the day's weather. */
const REFRESH_MIN = 720;
/** Entries of events that left the feed stay this long, so that a UID that comes back goes on counting. */
const KEPT_SEASONS = 1;

/**
 * A season as an iCalendar feed, and the ledger that the next revision needs.
 *
 * An event's SEQUENCE rises and its LAST-MODIFIED grows exactly when its content hash changes; its words then are
 * rewritten, and stay as they are otherwise.
 *
 * @throws RangeError where an instant is not one.
 * @example calendarOf(season, { ledger: emptyLedger, revisedAt: '2027-04-02T06:00:00Z', detail: 'normal' }).text
 */
export function calendarOf(
  season: Season,
  { ledger, revisedAt, detail }: FeedOptions,
): { readonly text: string; readonly ledger: Ledger } {
  const known = new Map(ledger.events.map((entry) => [entry.uid, entry]));
  const revised = eventsOf(season, detail).map((draft) => ({
    draft,
    entry: revise(draft, known.get(draft.uid), revisedAt),
  }));
  const text = icalendar({
    name: season.lawnName,
    description: words.calendarAbout(season.lawnName, season.programName),
    language: season.display.language,
    refreshMin: REFRESH_MIN,
    events: revised.map(({ draft, entry }) => ({
      ...draft,
      summary: entry.summary,
      description: entry.description,
      sequence: entry.sequence,
      lastModified: entry.lastModified,
    })),
  });
  const present = new Set(revised.map(({ entry }) => entry.uid));
  const gone = ledger.events.filter(
    (entry) => !present.has(entry.uid) && entry.season >= season.season.year - KEPT_SEASONS,
  );
  const events = [...revised.map(({ entry }) => entry), ...gone].sort((a, b) => (a.uid < b.uid ? -1 : 1));
  return { text, ledger: { kind: 'ledger', version: 1, events } };
}

/** The entry of an event in this revision: as before where its hash is the same. */
function revise(draft: DraftEvent, before: LedgerEntry | undefined, revisedAt: string): LedgerEntry {
  const hash = contentHash(JSON.stringify(draft.substance));
  if (before?.hash === hash) return before;
  const { uid, kind, season, step, day, dueSince } = draft;
  return {
    uid,
    kind,
    season,
    step,
    day,
    dueSince,
    hash,
    sequence: before ? before.sequence + 1 : 0,
    lastModified: laterOf(revisedAt, before?.lastModified),
    summary: cleaned(draft.summary),
    description: cleaned(draft.description),
  };
}

/** The instant of revision, or a second after the one before where that is later. */
function laterOf(revisedAt: string, before: string | undefined): string {
  const now = Date.parse(revisedAt);
  const least = before === undefined ? now : Date.parse(before) + 1000;
  return new Date(Math.max(now, least)).toISOString().replace(/\.\d+Z$/, 'Z');
}
