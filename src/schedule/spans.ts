import { type Day, firstOnOrAfter, latestOnOrBefore, type MonthDay } from '../base/day.ts';
import type { SeasonYear } from './season-year.ts';

/** The days that a limit counts together: a season with all that belongs to it, or one occurrence of a yearly period. */
export interface Span {
  readonly from: Day;
  readonly to: Day;
  /** Null for a period, which counts by the day alone. */
  readonly season: SeasonYear | null;
}

/** Whether something on a day, of a season, falls into a span. Work of a season may come after its last day, and stays in it. */
export const isWithin = (one: { readonly day: Day; readonly season: SeasonYear | null }, span: Span): boolean =>
  span.season ? one.season === span.season : one.day >= span.from && one.day <= span.to;

export const spanOf = (season: SeasonYear): Span => ({ from: season.start, to: season.end, season });

/**
 * The occurrences of a yearly period that reach into a season or hold a day. One that goes across New Year is one, wherever
 * the seasons are cut.
 *
 * @example occurrencesOf([{ month: 12, day: 1 }, { month: 3, day: 31 }], [season of 2027], []) // from 2026-12-01, from 2027-12-01
 */
export function occurrencesOf(
  [from, to]: readonly [MonthDay, MonthDay],
  seasons: readonly SeasonYear[],
  days: readonly Day[],
): Span[] {
  const asked = [...seasons.map(({ start, end }) => [start, end] as const), ...days.map((day) => [day, day] as const)];
  const starts = new Set(
    asked.flatMap(([first, last]) =>
      [latestOnOrBefore(from, first), latestOnOrBefore(from, last)].filter(
        (start) => firstOnOrAfter(to, start) >= first,
      ),
    ),
  );
  return [...starts]
    .sort((a, b) => a - b)
    .map((start) => ({ from: start, to: firstOnOrAfter(to, start), season: null }));
}
