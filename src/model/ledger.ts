import * as v from 'valibot';
import { parseDay } from '../base/day.ts';

/** A word of ours: no blank, no line end. */
const plain = v.pipe(v.string(), v.regex(/^[\w.@-]{1,255}$/));
const day = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d{2}-\d{2}$/),
  v.check((text) => parseDay(text) !== null),
);
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/;
/** 30 February reads back as another day, or as none. */
const isInstant = (text: string): boolean =>
  INSTANT.test(text) &&
  Number.isFinite(Date.parse(text)) &&
  new Date(text).toISOString() === text.replace('Z', '.000Z');
const instant = v.pipe(v.string(), v.regex(INSTANT), v.check(isInstant));
const whole = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(Number.MAX_SAFE_INTEGER));

/** Whether an event lies where a calendar can show it: days or instants, the end after the start. */
const hasPlace = ({ allDay, start, end }: { allDay: boolean; start: string; end: string }): boolean =>
  [start, end].every((moment) => (allDay ? parseDay(moment) !== null : isInstant(moment))) && end > start;

const EntrySchema = v.pipe(
  v.object({
    uid: plain,
    kind: plain,
    /** The year in which the event's season begins. */
    season: whole,
    step: v.nullable(plain),
    /** The chosen day, or the first day of a window. */
    day,
    /** The first published day that passed without the work being done; null where none has. */
    dueSince: v.nullable(day),
    hash: plain,
    sequence: whole,
    lastModified: instant,
    // The event as that revision has it; it stays so until the hash changes.
    allDay: v.boolean(),
    start: v.string(),
    end: v.string(),
    summary: v.string(),
    description: v.string(),
    status: v.picklist(['TENTATIVE', 'CONFIRMED', 'CANCELLED']),
    transparent: v.boolean(),
    categories: v.array(v.string()),
    remindersMin: v.array(whole),
    /** The as-of day on which the event was cancelled; null where it stands. */
    cancelledOn: v.nullable(day),
    /** The as-of day on which the event left the feed; its words are gone then, its SEQUENCE counts on. Null while it stands. */
    removedOn: v.nullable(day),
  }),
  v.check((entry) => hasPlace(entry)),
  v.metadata({ name: 'event' }),
);

/** A feed's events; none stands there twice. */
const published = v.pipe(
  v.array(EntrySchema),
  v.check((entries) => new Set(entries.map(({ uid }) => uid)).size === entries.length),
);

/** What a lawn's feeds have published: one entry an event, in the order of their UIDs. */
export const LedgerSchema = v.object({
  kind: v.literal('ledger'),
  version: v.literal(2),
  /** The owner's feed, whose days are the published ones. */
  events: published,
  /** The feeds of other readers, by id. */
  readers: v.record(v.string(), published),
});

/** What a feed has published of one event. */
export type LedgerEntry = Readonly<v.InferOutput<typeof EntrySchema>>;
export interface Ledger {
  readonly kind: 'ledger';
  readonly version: 2;
  readonly events: readonly LedgerEntry[];
  readonly readers: Readonly<Record<string, readonly LedgerEntry[]>>;
}

export const emptyLedger: Ledger = { kind: 'ledger', version: 2, events: [], readers: {} };
