import type { Day } from '../../base/day.ts';
import { at, endOf } from '../../base/series.ts';
import { type DegreeDayRule, degreeDays } from '../../climate/degree-days.ts';
import type { Trace } from '../../climate/trace.ts';

/** Degree days of a day of a trace, in the rule's scale of °C. */
export function heatOf(trace: Trace, rule: DegreeDayRule, day: Day): number {
  const air = { tmin: at(trace.tmin, day), tmax: at(trace.tmax, day), nextTmin: at(trace.tmin, day + 1) };
  return degreeDays(air, rule);
}

/** Degree days from a day through another [°C·d]; NaN where one is missing. */
export function sumOfHeat(trace: Trace, rule: DegreeDayRule, from: Day, through: Day): number {
  let sum = 0;
  for (let day = from; day <= through; day++) sum += heatOf(trace, rule, day);
  return sum;
}

/** The first day on which the sum from a day reaches a value; null within a year. */
export function dayReached(trace: Trace, rule: DegreeDayRule, from: Day, reaches: number): Day | null {
  let sum = 0;
  for (let day = from; day < Math.min(from + 366, endOf(trace.tmin)); day++) {
    sum += heatOf(trace, rule, day);
    if (sum >= reaches - 1e-9) return day;
  }
  return null;
}
