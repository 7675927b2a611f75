import { type Day, parseDay } from '../../base/day.ts';
import { contentHash } from '../../base/hash.ts';
import type { LedgerEntry } from '../../model/ledger.ts';
import type { Season } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { laterOf } from './revise.ts';

/** What of a plan decides on events that it no longer has. */
export type Plan = Pick<Season, 'asOf' | 'applications' | 'season' | 'display'>;

/** Subscribers have a month to see that an event was called off. */
const CANCELLED_DAYS = 30;
/** Done work stays at least this long after its day, and through its season. */
const DONE_DAYS = 90;

/**
 * What becomes of an event that this plan does not have: done work stays as it is, other work is called off and stays so
 * for 30 days; then it leaves the feed, while its entry goes on counting.
 *
 * @param revisedAt The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`.
 * @throws RangeError where an instant is not one.
 */
export function vanished(entry: LedgerEntry, plan: Plan, revisedAt: string): LedgerEntry {
  const { asOf, season } = plan;
  if (entry.removedOn !== null) return entry;
  if (entry.cancelledOn !== null)
    return daysSince(entry.cancelledOn, asOf) < CANCELLED_DAYS ? entry : removed(entry, asOf);
  if (isDone(entry, plan))
    return entry.season >= season.year || daysSince(entry.day, asOf) <= DONE_DAYS ? entry : removed(entry, asOf);
  return isOver(entry, plan) ? removed(entry, asOf) : cancelled(entry, plan, revisedAt);
}

/** What nobody waits for any more: the soil of a day, and what stands around work that is done. */
const isOver = ({ kind, step, season: year }: LedgerEntry, { applications }: Plan): boolean =>
  step === null ||
  (kind !== 'job' && applications.some((one) => one.id === step && one.season === year && one.status === 'done'));

const daysSince = (day: string, asOf: string): number => (parseDay(asOf) as Day) - (parseDay(day) as Day);

/** Whether the work was done, and the plan does not say otherwise by now. */
const isDone = ({ kind, transparent, step, season: year }: LedgerEntry, { applications }: Plan): boolean =>
  kind === 'job' && transparent && !applications.some((one) => one.id === step && one.season === year);

/** An event that leaves the feed; its entry goes on counting. */
export const removed = (entry: LedgerEntry, asOf: string): LedgerEntry =>
  entry.removedOn === null ? { ...entry, description: '', removedOn: asOf } : entry;

/** The event called off. Its words say so alone: nobody is to follow instructions that no longer hold. */
const cancelled = (entry: LedgerEntry, { asOf, display }: Plan, revisedAt: string): LedgerEntry => ({
  ...entry,
  // Of its own, so that the event counts as revised when it comes back.
  hash: contentHash(`cancelled ${entry.hash}`),
  sequence: entry.sequence + 1,
  lastModified: laterOf(revisedAt, entry.lastModified),
  summary: wordsOf(display.language).feed.cancelledTitle(entry.summary),
  description: wordsOf(display.language).feed.cancelledText(asOf),
  status: 'CANCELLED',
  transparent: true,
  remindersMin: [],
  cancelledOn: asOf,
});
