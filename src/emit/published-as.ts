import type { Ledger, LedgerEntry } from '../model/ledger.ts';
import type { DraftEvent } from './events/draft.ts';
import { icalendar } from './ical.ts';
import { KEPT_NAME, keptLine } from './ledger/kept-line.ts';
import { revise } from './ledger/revise.ts';
import { feedWithin, withoutRoom } from './ledger/room.ts';
import { type Plan, removed, vanished } from './ledger/vanished.ts';

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

/** The events of one plan in a feed; an ordinary feed has one part, that of several lawns one a lawn. */
export interface Part {
  readonly plan: Plan;
  readonly drafts: readonly DraftEvent[];
  /** Whether an event that was published is of this part. */
  readonly owns: (uid: string) => boolean;
  /** A title, or the name of a step, as it stands in this feed. */
  readonly titled: (title: string) => string;
}

/** The one part of a feed of one plan. */
export const wholePart = (plan: Plan, drafts: readonly DraftEvent[] = []): Part => ({
  plan,
  drafts,
  owns: () => true,
  titled: (title) => title,
});

/** A revision of a feed, the ledger with it, and what subscribers will see change. */
interface Revision {
  readonly text: string;
  readonly ledger: Ledger;
  readonly changes: readonly Change[];
}

/** Events as the next revision of a feed, and the ledger with it. @throws RangeError where an instant is not one. */
export const publishedAs = (plan: Plan, drafts: readonly DraftEvent[], feed: Feed): Revision =>
  publishedOf([wholePart(plan, drafts)], plan.display.language, feed);

/**
 * The same of a feed of several plans. An event that no part owns stays as it was published.
 *
 * @throws RangeError where an instant is not one, or there is no event at all.
 */
export function publishedOf(
  parts: readonly Part[],
  language: string,
  { ledger, revisedAt, feed, name, about, keeps }: Feed,
): Revision {
  const published = feed === undefined ? ledger.events : (ledger.readers[feed] ?? []);
  const known = new Map(published.map((entry) => [entry.uid, entry]));
  const present = new Set(parts.flatMap(({ drafts }) => drafts.map(({ uid }) => uid)));
  /** What becomes of an event that no plan has; nothing of one that left the feed long ago. */
  const whatIsLeft = (entry: LedgerEntry): LedgerEntry[] => {
    const plan = parts.find(({ owns }) => owns(entry.uid))?.plan;
    if (plan === undefined) return [entry];
    if (entry.removedOn !== null && entry.season < plan.season.year - KEPT_SEASONS) return [];
    return [keeps(entry) ? vanished(entry, plan, revisedAt) : removed(entry, plan.asOf)];
  };
  const wanted = [
    ...parts.flatMap(({ plan, drafts }) =>
      drafts.map((draft) => revise(draft, known.get(draft.uid), plan.asOf, revisedAt)),
    ),
    ...published.flatMap((entry) => (present.has(entry.uid) ? [] : whatIsLeft(entry))),
  ].sort((a, b) => (a.uid < b.uid ? -1 : 1));
  const asOf =
    parts
      .map(({ plan }) => plan.asOf)
      .sort()
      .at(-1) ?? '';
  const { text, leftOut } = feedWithin(wanted, asOf, (entries) =>
    icalendar({
      name,
      description: about,
      language,
      refreshMin: REFRESH_MIN,
      events: entries.map((entry) => ({ ...entry, own: { name: KEPT_NAME, value: keptLine(entry) } })),
    }),
  );
  const events = wanted.flatMap((entry) =>
    leftOut.has(entry.uid) ? withoutRoom(known.get(entry.uid), asOf) : [entry],
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
