import type { Day } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import { wordsOf } from '../../words/words.ts';
import type { Choice } from '../choose.ts';
import type { Forbidden } from '../rules/forbidden.ts';
import { forbiddenInWords } from './rules.ts';

/** A spread of days, or null where it falls on weather without one. */
interface SpreadDays {
  readonly p10: Day | null;
  readonly p50: Day | null;
  readonly p90: Day | null;
  readonly usual: Day | null;
}

/** The difference to the usual day, as "11 days later than usual (Mar 29)"; less than two days are none. */
export function againstUsual(day: Day, usual: Day, display: Display): string {
  const words = wordsOf(display.language).window;
  const late = Math.round(day - usual);
  const shown = display.shortDay(usual);
  return Math.abs(late) < 2 ? words.asUsual(shown) : words.offUsual(late, shown);
}

/** When a window opens, as far as that is known. */
export function openingInWords({ p10, p50, p90, usual }: SpreadDays, asOf: Day, display: Display): string {
  const words = wordsOf(display.language).window;
  if (p50 === null) return words.noMiddle;
  const against = usual === null ? null : againstUsual(p50, usual, display);
  const day = display.shortDay(p50);
  if (p90 !== null && p90 <= asOf) return words.openSince(day, against);
  if (p10 === p50 && p50 === p90) return words.opensOn(day, against);
  const shown = (edge: Day | null) => (edge === null ? null : display.shortDay(edge));
  return words.opensAbout(day, shown(p10), shown(p90), against);
}

/** The last good day of a window; null where it has no middle one. */
export function closingInWords({ p10, p50, p90 }: SpreadDays, display: Display): string | null {
  const words = wordsOf(display.language).window;
  if (p50 === null) return null;
  const day = display.shortDay(p50);
  if (p10 === p90 || p10 === null) return words.lastDay(day);
  return words.lastDayAbout(day, display.shortDay(p10), p90 === null ? null : display.shortDay(p90));
}

/** Why a published day was given up, in words that follow it. */
export function movedInWords(reason: NonNullable<Choice['moved']>['reason'], display: Display): string {
  const words = wordsOf(display.language).forbidden;
  if (reason === 'left-window') return words.leftWindow;
  return reason === 'better' ? words.better : forbiddenInWords(reason, display);
}

/** Why no day is chosen, where a window is likely. */
export function noDayInWords(blocked: readonly Forbidden[], display: Display): string {
  const words = wordsOf(display.language).choice;
  if (blocked.length === 0) return words.noneLeft;
  return words.noneAllowed(blocked.map((rule) => forbiddenInWords(rule, display)));
}
