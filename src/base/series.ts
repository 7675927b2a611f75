import type { Day } from './day.ts';

/** One value a day from `start` on; NaN is missing. */
export interface DailySeries {
  readonly start: Day;
  readonly values: Float64Array;
}

/** The day after the last one of a series. */
export const endOf = (series: DailySeries): Day => series.start + series.values.length;

/** The value on a day; NaN outside the series. */
export const at = (series: DailySeries, day: Day): number => series.values[day - series.start] ?? Number.NaN;

/** A series over `[start, end)` with each day's value taken from `valueOn`. */
export function seriesOf(start: Day, end: Day, valueOn: (day: Day) => number): DailySeries {
  const values = new Float64Array(Math.max(end - start, 0));
  for (let i = 0; i < values.length; i++) values[i] = valueOn(start + i);
  return { start, values };
}

/** Share of its days that a trailing mean needs. */
const NEEDED = 0.75;

/**
 * Mean of the `days` values that end on `day`.
 *
 * Gap rule: the day itself must be there, and at least three quarters of the window; otherwise NaN.
 * The mean is over the values that are there. The sum is taken afresh for each day, so that the result does not
 * depend on where the series starts.
 *
 * @example trailingMean({ start: 0, values: Float64Array.of(1, NaN, 3, 4) }, 3, 4) //=> 2.6667
 */
export function trailingMean(series: DailySeries, day: Day, days: number): number {
  if (Number.isNaN(at(series, day))) return Number.NaN;
  let sum = 0;
  let count = 0;
  for (let d = day - days + 1; d <= day; d++) {
    const value = at(series, d);
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count >= days * NEEDED ? sum / count : Number.NaN;
}
