import type { DegreeDayMethod } from '../model/trigger.ts';

/** Thresholds and method; temperatures in °C or °F, the same in and out. */
export interface DegreeDayRule {
  readonly lower: number;
  readonly upper?: number;
  readonly method: DegreeDayMethod;
}

type Method = (tmin: number, tmax: number, lower: number, upper: number) => number;

/** Each extreme raised to the lower threshold and, where there is one, cut at the upper. */
const clamped: Method = (tmin, tmax, lower, upper) => {
  const clamp = (t: number) => Math.min(Math.max(t, lower), upper);
  return (clamp(tmin) + clamp(tmax)) / 2 - lower;
};

/**
 * Mean degrees above a threshold on a day whose temperature is a sine wave between its extremes.
 * Source: Baskerville & Emin (1969), Ecology 50:514-517; Zalom et al. (1983), UC Leaflet 21373.
 */
function sineAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmax <= threshold) return 0;
  const mean = (tmin + tmax) / 2;
  if (tmin >= threshold) return mean - threshold;
  const amplitude = (tmax - tmin) / 2;
  // Clamped: an extreme a rounding error from the threshold would leave the arcsine's domain.
  const crossing = Math.asin(Math.min(1, Math.max(-1, (threshold - mean) / amplitude)));
  return ((mean - threshold) * (Math.PI / 2 - crossing) + amplitude * Math.cos(crossing)) / Math.PI;
}

/** One function a method: a new method is added here and to `DegreeDayMethod`. */
const methods: Record<DegreeDayMethod, Method> = {
  // Method 1 of McMaster & Wilhelm (1997): the day's mean, cut at the upper threshold, floored at the lower.
  average: (tmin, tmax, lower, upper) => Math.max(Math.min((tmin + tmax) / 2, upper) - lower, 0),
  // Method 2 of McMaster & Wilhelm (1997): each extreme is raised to the threshold first.
  'average-clamped': clamped,
  // The 86/50 method: each extreme is clamped to both thresholds.
  modified: clamped,
  // Horizontal cutoff: above the upper threshold heat counts as at it.
  'single-sine': (tmin, tmax, lower, upper) =>
    sineAbove(tmin, tmax, lower) - (upper === Number.POSITIVE_INFINITY ? 0 : sineAbove(tmin, tmax, upper)),
};

/**
 * Degree days of one day.
 *
 * @param day Minimum and maximum air temperature, °C or °F.
 * @returns Degree days in that scale, never negative; NaN where an extreme is NaN.
 * @throws RangeError where the upper threshold is not above the lower, or the minimum is above the maximum.
 * Source: McMaster & Wilhelm (1997), Agric. For. Meteorol. 87:291-300; Zalom et al. (1983), UC Leaflet 21373.
 * @example degreeDays({ tmin: 50, tmax: 82 }, { lower: 55, upper: 90, method: 'single-sine' }) //=> 11.85
 */
export function degreeDays(day: { readonly tmin: number; readonly tmax: number }, rule: DegreeDayRule): number {
  const upper = rule.upper ?? Number.POSITIVE_INFINITY;
  if (upper <= rule.lower) throw new RangeError(`the upper threshold ${upper} is not above the lower ${rule.lower}`);
  if (Number.isNaN(day.tmin) || Number.isNaN(day.tmax)) return Number.NaN;
  if (day.tmin > day.tmax) throw new RangeError(`the minimum ${day.tmin} is above the maximum ${day.tmax}`);
  const method = methods[rule.method];
  if (!method) throw new RangeError(`no degree-day method "${rule.method}"`);
  return method(day.tmin, day.tmax, rule.lower, upper);
}
