import { cleaned } from '../../base/text.ts';
import type { LedgerEntry } from '../../model/ledger.ts';
import type { DraftEvent } from '../events/draft.ts';
import { hashOf } from '../steady.ts';

/**
 * The entry of an event in this revision: as before where its hash is the same and it stands in the feed.
 *
 * @param asOf The day of the plan, `YYYY-MM-DD`.
 * @param revisedAt The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`.
 * @throws RangeError where an instant is not one.
 */
export function revise(
  draft: DraftEvent,
  before: LedgerEntry | undefined,
  asOf: string,
  revisedAt: string,
): LedgerEntry {
  const hash = hashOf(draft, before, asOf);
  if (before?.hash === hash && before.removedOn === null) return before;
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
    removedOn: null,
  };
}

/** The instant of revision, or a second after the one before where that is later. */
export function laterOf(revisedAt: string, before: string | undefined): string {
  const now = Date.parse(revisedAt);
  const least = before === undefined ? now : Date.parse(before) + 1000;
  return new Date(Math.max(now, least)).toISOString().replace(/\.\d+Z$/, 'Z');
}
