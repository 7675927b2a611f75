/** What keeps an event from flickering: odds and middle days stay as published while they are about right. */
import { type Day, parseDay } from '../base/day.ts';
import { contentHash } from '../base/hash.ts';
import type { LedgerEntry } from '../model/ledger.ts';
import { type DraftEvent, type Leeway, odds } from './events/draft.ts';

/**
 * Published odds hold while the share is this near. Half of ten points would flicker at each edge; far ahead a share of thirty
 * runs is itself good to no more than 7 to 9 points (the standard error of a share), and one and a half of them are no news.
 */
const ODDS_HOLD = { far: 0.12, soon: 0.08 } as const;
/** Days that published days hold for at least, far ahead and within `SOON` of the day. */
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
  const { days: leeway } = about;
  const own = leeway ? ([draft.start, draft.end] as const) : null;
  if (before) {
    const days = leeway && holds(draft, leeway, before, asOf) ? ([before.start, before.end] as const) : own;
    const held = sharesAbout(about.odds, isSoon(draft.day, asOf) ? ODDS_HOLD.soon : ODDS_HOLD.far).find(
      (share) => hashWith(share, days) === before.hash,
    );
    if (held !== undefined) return before.hash;
  }
  return hashWith(odds(about.odds), own);
}

type Days = readonly [string, string] | null;

/** The rounded odds that a share may still be published as. */
const sharesAbout = (share: number | null, hold: number): readonly (number | null)[] =>
  share === null ? [null] : TENTHS.filter((tenth) => Math.abs(tenth - share) <= hold + HAIR);

/** Whether published days are near enough: each within its own limit, the nearer the day the less. */
function holds(
  { start, end }: Pick<DraftEvent, 'start' | 'end'>,
  leeway: { readonly start: Leeway; readonly end: Leeway },
  before: LedgerEntry,
  asOf: string,
): boolean {
  const near = (now: string, then: string, { early, late }: Leeway): boolean => {
    const [a, b] = [parseDay(now), parseDay(then)];
    if (a === null || b === null) return now === then;
    const least = isSoon(a < b ? now : then, asOf) ? DAYS_HOLD.soon : DAYS_HOLD.far;
    return a - b <= Math.max(least, early) && b - a <= Math.max(least, late);
  };
  return near(start, before.start, leeway.start) && near(end, before.end, leeway.end);
}

const isSoon = (day: string, asOf: string): boolean => (parseDay(day) as Day) - (parseDay(asOf) as Day) <= SOON;
