import { plannedFor } from '../../amounts/record.ts';
import type { EntryDraft } from '../../emit/journal-entry.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { type DidInput, planNow } from './input.ts';

/** An entry as it is written and as it is read. */
interface Pair {
  readonly draft: EntryDraft;
  readonly entry: JournalEntry;
}

/**
 * An entry of a step with the product that the plan has for it today, where the entry names none: what was put down stays
 * what it was when a later plan takes another product. A correction that leaves the step as it was adds none, since what
 * the plan had on that day is not known any more.
 *
 * @param before What the entry that it corrects is written with; null where it corrects none.
 */
export function withProduct(input: DidInput, { draft, entry }: Pair, before: EntryDraft | null): Pair {
  if (entry.step === undefined || entry.product !== undefined || before?.step === entry.step) return { draft, entry };
  const product = plannedFor(entry, planNow(input).season)?.product ?? null;
  if (product === null) return { draft, entry };
  const { date, step, areas, ...rest } = draft as EntryDraft & { readonly date: string; readonly step: string };
  return { draft: { date, step, ...(areas && { areas }), product, ...rest }, entry: { ...entry, product } };
}
