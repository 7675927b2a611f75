import type { Day } from '../base/day.ts';
import { at, endOf } from '../base/series.ts';
import type { HeatRule } from '../model/heat.ts';
import { degreeDays } from './degree-days.ts';
import type { Trace } from './trace.ts';

/** How a day's heat is counted, whatever sum it has to reach. */
export type HeatMeasure = Omit<HeatRule, 'reaches'>;

/** Sums of °F·d turned into °C·d keep their last bits. */
const HAIR = 1e-9;
/** The depth of soil heat where a rule names none [m]. */
const SHALLOW = 0.05;

/** Degree days of one day of a trace [°C·d]: of the air's extremes, or of the soil's daily mean. */
export function heatOn(trace: Trace, rule: HeatMeasure, day: Day): number {
  const { base: lower, upper, method, cutoff, of, depth } = rule;
  const thresholds = { lower, method, ...(upper !== undefined && { upper }), ...(cutoff && { cutoff }) };
  if (of === 'soil') {
    const mean = at(trace.soil(depth ?? SHALLOW), day);
    return degreeDays({ tmin: mean, tmax: mean }, thresholds);
  }
  const extremes = { tmin: at(trace.tmin, day), tmax: at(trace.tmax, day), nextTmin: at(trace.tmin, day + 1) };
  return degreeDays(extremes, thresholds);
}

/** Degree days from a day through another [°C·d]; NaN where a day is missing. */
export function heatBetween(trace: Trace, rule: HeatMeasure, from: Day, through: Day): number {
  let sum = 0;
  for (let day = from; day <= through; day++) sum += heatOn(trace, rule, day);
  return sum;
}

/** The first day in `[from, to)` on which the degree days summed from `from` reach the rule's sum. A missing day ends the search. */
export function heatReached(trace: Trace, rule: HeatRule, from: Day, to: Day): Day | null {
  let sum = 0;
  for (let day = from; day < Math.min(to, endOf(trace.tmin)); day++) {
    sum += heatOn(trace, rule, day);
    if (Number.isNaN(sum)) return null;
    if (sum >= rule.reaches - HAIR) return day;
  }
  return null;
}

/** The heat that is told of a place: degree days above 10 °C (50 °F) by single sine. */
export const TOLD_HEAT: HeatMeasure = { base: 10, method: 'single-sine' };
