/** What keeps an event from flickering: odds and middle days stay as published while they are about right. */
import { type Day, parseDay } from '../base/day.ts';
import { contentHash } from '../base/hash.ts';
import type { LedgerEntry } from '../model/ledger.ts';
import { type DraftEvent, odds } from './events/draft.ts';

/** Published odds hold while the share is this near; half of ten points would flicker at each edge. */
const ODDS_HOLD = 0.08;
/** Days that published days of a window hold for, far ahead and within `SOON` of the day. */
const DAYS_HOLD = { far: 3, soon: 1 } as const;
const SOON = 7;
const HAIR = 1e-9;

const TENTHS = Array.from({ length: 11 }, (_, i) => i / 10);

/**
 * The content hash of an event: the published one where only odds and days differ, and those by little.
 *
 * @param before The event as published, if it was.
 * @param asOf The day of the plan, `YYYY-MM-DD`.
 */
export function hashOf(draft: DraftEvent, before: LedgerEntry | undefined, asOf: string): string {
  const { substance, about } = draft;
  if (!about) return contentHash(JSON.stringify(substance));
  const hashWith = (share: number | null, days: Days) => contentHash(JSON.stringify([...substance, share, days]));
  const own = about.days ? ([draft.start, draft.end] as const) : null;
  if (before) {
    const days = own && holds(own, before, asOf) ? ([before.start, before.end] as const) : own;
    const held = sharesAbout(about.odds).find((share) => hashWith(share, days) === before.hash);
    if (held !== undefined) return before.hash;
  }
  return hashWith(odds(about.odds), own);
}

type Days = readonly [string, string] | null;

/** The rounded odds that a share may still be published as. */
const sharesAbout = (share: number | null): readonly (number | null)[] =>
  share === null ? [null] : TENTHS.filter((tenth) => Math.abs(tenth - share) <= ODDS_HOLD + HAIR);

/** Whether published days are near enough: each within its own limit, the nearer the day the less. */
function holds([start, end]: readonly [string, string], before: LedgerEntry, asOf: string): boolean {
  const today = parseDay(asOf);
  const near = (now: string, then: string): boolean => {
    const [a, b] = [parseDay(now), parseDay(then)];
    if (a === null || b === null || today === null) return now === then;
    return Math.abs(a - b) <= limitOn(Math.min(a, b), today);
  };
  return near(start, before.start) && near(end, before.end);
}

const limitOn = (day: Day, today: Day): number => (day - today <= SOON ? DAYS_HOLD.soon : DAYS_HOLD.far);
