import type { Day } from '../base/day.ts';
import { at, type DailySeries, trailingMean } from '../base/series.ts';

export type Statistic = 'mean' | 'min' | 'max' | 'sum';

/**
 * Mean, least, greatest or sum of the `days` values that end on `day`.
 *
 * Gap rules. Mean, min and max: the day itself must be there, and three quarters of the window; the statistic is over the
 * values that are there (so a missing extreme may be missed). Sum: every day must be there, since a day without a reading
 * is not a dry one and may have brought most of the rain.
 *
 * @param days A whole number, at least 1.
 * @returns In the unit of the series; NaN where the rule is not met.
 * @throws RangeError where `days` is not a whole number from 1 on.
 * @example trailing({ start: 0, values: Float64Array.of(1, NaN, 3, 4) }, 3, 4, 'min') //=> 1
 */
export function trailing(series: DailySeries, day: Day, days: number, statistic: Statistic): number {
  if (!(Number.isInteger(days) && days >= 1)) throw new RangeError(`a window of ${days} days`);
  const mean = trailingMean(series, day, days);
  if (statistic === 'mean' || Number.isNaN(mean)) return mean;
  let [least, greatest, sum] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let d = day - days + 1; d <= day; d++) {
    const value = at(series, d);
    sum += value;
    if (value < least) least = value;
    if (value > greatest) greatest = value;
  }
  return { min: least, max: greatest, sum }[statistic];
}

/**
 * A trailing statistic for each day of a series.
 *
 * @param values One a day, NaN where missing.
 * @returns As long as `values`; the first days, whose window is not filled, follow the gap rules of `trailing`.
 * @throws RangeError where `days` is not a whole number from 1 on.
 * @example running([2, 0, 5, 1], 3, 'sum') //=> [NaN, NaN, 7, 6]
 */
export function running(values: readonly number[], days: number, statistic: Statistic): number[] {
  const series = { start: 0, values: Float64Array.from(values) };
  return values.map((_, day) => trailing(series, day, days, statistic));
}
