import { error, type Found, list, meant, note, type Step, type Word, warning } from './forms.ts';

/** Problems of a plan and what it is made from. */
export const plan = {
  // Plan
  'as-of': error((a: Found) => `"${a.found}" is not a day; write --as-of YYYY-MM-DD.`),
  'plan-step': error(
    (a: Word) => `The program has no step "${a.found}".${meant(a.nearest)} Steps: ${list(a.allowed)}.`,
  ),
  'spreader-step': error(
    (a: { found: string; work: string; allowed: readonly string[] }) =>
      `Step "${a.found}" (${a.work}) is not put down by a spreader. Steps that are: ${list(a.allowed) || 'none'}.`,
  ),
  'step-over': error(
    (a: { step: string; status: string; allowed: readonly string[] }) =>
      `Step "${a.step}" is ${a.status}: nothing of it is left to put down. Still to come: ${list(a.allowed) || 'none'}.`,
  ),
  'compare-file': error(
    (a: { reason: string }) =>
      `The earlier plan cannot be compared: ${a.reason} It has to be what "plan --json" printed.`,
  ),
  'no-working-day': warning(
    (a: Step & { season: number; reasons: readonly string[] }) =>
      `Step "${a.step}" of ${a.season}: no day of its window is allowed: ${
        a.reasons.length === 0 ? 'none is left' : `on every one of them ${a.reasons.join(', or ')}`
      }. Widen "working" or the window, or pin a day under "steps".`,
  ),
  'pinned-against': warning(
    (a: Step & { reasons: readonly string[] }) =>
      `Step "${a.step}" is pinned to a day that the rules are against: ${a.reasons.join('; ')}. The pin is kept; move it if that was not meant.`,
  ),
  'ledger-damaged': error(
    (a: { reason: string }) =>
      `The ledger cannot be read: ${a.reason} It holds what the feed has published. Restore it from your backup, or remove it to publish every event anew.`,
  ),
  'ledger-rebuilt': note(
    (a: { state: 'lost' | 'damaged'; feeds: readonly string[]; events: number }) =>
      `The ledger is ${a.state}, so the ${a.events} events of ${list(a.feeds.map((feed) => `"${feed}"`))} were taken for what has been published. Events that had left a feed are forgotten, and so are feeds that are not in this folder. If you have a backup of the ledger, restore that instead.`,
  ),
  'feed-taken': error(
    (a: { feed: string }) =>
      `"${a.feed}" holds the feed of another lawn or another reader, and would be written over: two ids run together into one file name. Call this lawn or this reader otherwise, or move the file away.`,
  ),
} as const;
