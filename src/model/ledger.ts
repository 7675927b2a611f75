import * as v from 'valibot';

const EntrySchema = v.pipe(
  v.object({
    uid: v.string(),
    kind: v.string(),
    /** The year in which the event's season begins. */
    season: v.number(),
    step: v.nullable(v.string()),
    /** The chosen day, or the first day of a window. */
    day: v.string(),
    /** The first published day that passed without the work being done; null where none has. */
    dueSince: v.nullable(v.string()),
    hash: v.string(),
    sequence: v.pipe(v.number(), v.integer(), v.minValue(0)),
    lastModified: v.pipe(v.string(), v.isoTimestamp()),
    // The event as that revision has it; it stays so until the hash changes.
    allDay: v.boolean(),
    start: v.string(),
    end: v.string(),
    summary: v.string(),
    description: v.string(),
    status: v.picklist(['TENTATIVE', 'CONFIRMED', 'CANCELLED']),
    transparent: v.boolean(),
    categories: v.array(v.string()),
    remindersMin: v.array(v.number()),
    /** The as-of day on which the event was cancelled; null where it stands. */
    cancelledOn: v.nullable(v.string()),
    /** The as-of day on which the event left the feed; its words are gone then, its SEQUENCE counts on. Null while it stands. */
    removedOn: v.nullable(v.string()),
  }),
  v.metadata({ name: 'event' }),
);

/** What a lawn's feeds have published: one entry an event, in the order of their UIDs. */
export const LedgerSchema = v.object({
  kind: v.literal('ledger'),
  version: v.literal(2),
  /** The owner's feed, whose days are the published ones. */
  events: v.array(EntrySchema),
  /** The feeds of other readers, by id. */
  readers: v.record(v.string(), v.array(EntrySchema)),
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
