import * as v from 'valibot';

const EntrySchema = v.object({
  uid: v.string(),
  kind: v.picklist(['job', 'window', 'soil']),
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
  /** The words of that revision; they stay as they are until the hash changes. */
  summary: v.string(),
  description: v.string(),
});

/** What a feed has published: one entry an event, in the order of their UIDs. */
export const LedgerSchema = v.object({
  kind: v.literal('ledger'),
  version: v.literal(1),
  events: v.array(EntrySchema),
});

/** What a feed has published of one event. */
export type LedgerEntry = Readonly<v.InferOutput<typeof EntrySchema>>;
export interface Ledger {
  readonly kind: 'ledger';
  readonly version: 1;
  readonly events: readonly LedgerEntry[];
}

export const emptyLedger: Ledger = { kind: 'ledger', version: 1, events: [] };
