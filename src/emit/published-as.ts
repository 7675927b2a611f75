import type { Ledger, LedgerEntry } from '../model/ledger.ts';
import type { Season } from '../model/season.ts';
import type { DraftEvent } from './events/draft.ts';
import { icalendar } from './ical.ts';
import { KEPT_NAME, keptLine } from './ledger/kept-line.ts';
import { revise } from './ledger/revise.ts';
import { feedWithin, withoutRoom } from './ledger/room.ts';
import { removed, vanished } from './ledger/vanished.ts';

/** One feed among those of a lawn. */
export interface Feed {
  readonly ledger: Ledger;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  /** Its id in the ledger; undefined for the lawn's own. */
  readonly feed: string | undefined;
  readonly name: string;
  readonly about: string;
  /** Whether an event that this plan does not have may be called off in words; else it leaves at once. */
  readonly keeps: (entry: LedgerEntry) => boolean;
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

/** Events as the next revision of a feed, and the ledger with it. @throws RangeError where an instant is not one. */
export function publishedAs(
  season: Season,
  drafts: readonly DraftEvent[],
  { ledger, revisedAt, feed, name, about, keeps }: Feed,
): { readonly text: string; readonly ledger: Ledger; readonly changes: readonly Change[] } {
  const published = feed === undefined ? ledger.events : (ledger.readers[feed] ?? []);
  const known = new Map(published.map((entry) => [entry.uid, entry]));
  const present = new Set(drafts.map(({ uid }) => uid));
  const wanted = [
    ...drafts.map((draft) => revise(draft, known.get(draft.uid), season.asOf, revisedAt)),
    ...published
      .filter(({ uid }) => !present.has(uid))
      .filter(({ removedOn, season: year }) => removedOn === null || year >= season.season.year - KEPT_SEASONS)
      .map((entry) => (keeps(entry) ? vanished(entry, season, revisedAt) : removed(entry, season.asOf))),
  ].sort((a, b) => (a.uid < b.uid ? -1 : 1));
  const { text, leftOut } = feedWithin(wanted, season.asOf, (entries) =>
    icalendar({
      name,
      description: about,
      language: season.display.language,
      refreshMin: REFRESH_MIN,
      events: entries.map((entry) => ({ ...entry, own: { name: KEPT_NAME, value: keptLine(entry) } })),
    }),
  );
  const events = wanted.flatMap((entry) =>
    leftOut.has(entry.uid) ? withoutRoom(known.get(entry.uid), season.asOf) : [entry],
  );
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
