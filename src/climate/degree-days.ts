import { CUTOFFS, type Cutoff, type DegreeDayMethod } from '../model/heat.ts';

/** Thresholds, method and cutoff; temperatures in °C or °F, the same in and out. */
export interface DegreeDayRule {
  readonly lower: number;
  readonly upper?: number;
  readonly method: DegreeDayMethod;
  /** What the upper threshold does; `horizontal` where there is one and nothing is said. Not with the averages. */
  readonly cutoff?: Cutoff;
}

/** The extremes of a day; the double methods look at the next day's minimum, and at the day's own where that is not known. */
export interface Extremes {
  readonly tmin: number;
  readonly tmax: number;
  readonly nextTmin?: number;
}

/** A day's temperature as a curve between its extremes: mean degrees above a threshold, and the share of the day above it. */
interface Curve {
  above(tmin: number, tmax: number, threshold: number): number;
  shareAbove(tmin: number, tmax: number, threshold: number): number;
}

/** Where the sine crosses a threshold [rad]; clamped, since an extreme a rounding error from it would leave the domain. */
const crossing = (tmin: number, tmax: number, threshold: number): number =>
  Math.asin(Math.min(1, Math.max(-1, (threshold - (tmin + tmax) / 2) / ((tmax - tmin) / 2))));

/** Source: Baskerville & Emin (1969), Ecology 50:514-517; Zalom et al. (1983), UC Leaflet 21373. */
const sine: Curve = {
  above: (tmin, tmax, threshold) => {
    const theta = crossing(tmin, tmax, threshold);
    return (((tmin + tmax) / 2 - threshold) * (Math.PI / 2 - theta) + ((tmax - tmin) / 2) * Math.cos(theta)) / Math.PI;
  },
  shareAbove: (tmin, tmax, threshold) => (Math.PI / 2 - crossing(tmin, tmax, threshold)) / Math.PI,
};

/** Source: Lindsey & Newman (1956), Ecology 37:812-823 (author and year from memory); Zalom et al. (1983). */
const triangle: Curve = {
  above: (tmin, tmax, threshold) => (tmax - threshold) ** 2 / (2 * (tmax - tmin)),
  shareAbove: (tmin, tmax, threshold) => (tmax - threshold) / (tmax - tmin),
};

/** Mean degrees above a threshold [°], and the share of the day above it, on a day that may lie on one side of it. */
function above(curve: Curve, tmin: number, tmax: number, threshold: number): { degrees: number; share: number } {
  if (tmax <= threshold) return { degrees: 0, share: 0 };
  if (tmin >= threshold) return { degrees: (tmin + tmax) / 2 - threshold, share: 1 };
  return { degrees: curve.above(tmin, tmax, threshold), share: curve.shareAbove(tmin, tmax, threshold) };
}

/** What a half or whole day brings by each cutoff. Source: Zalom et al. (1983); UC IPM, degree-day methods. */
function byCutoff(curve: Curve, a: number, b: number, lower: number, upper: number): Record<Cutoff, number> {
  const [tmin, tmax] = [Math.min(a, b), Math.max(a, b)];
  const none = above(curve, tmin, tmax, lower).degrees;
  const { degrees, share } =
    upper === Number.POSITIVE_INFINITY ? { degrees: 0, share: 0 } : above(curve, tmin, tmax, upper);
  return {
    none,
    horizontal: none - degrees,
    intermediate: none - 2 * degrees,
    vertical: share === 0 ? none : none - degrees - (upper - lower) * share,
  };
}

type Method = (day: Extremes, lower: number, upper: number, cutoff: Cutoff) => number;

/** Of the day's total, intermediate is never less than vertical: so the published tables have it. */
const total = (of: Record<Cutoff, number>, cutoff: Cutoff): number =>
  cutoff === 'intermediate' ? Math.max(of.intermediate, of.vertical) : of[cutoff];

const single =
  (curve: Curve): Method =>
  ({ tmin, tmax }, lower, upper, cutoff) =>
    total(byCutoff(curve, tmin, tmax, lower, upper), cutoff);

/** Each half day has a minimum of its own: today's and tomorrow's. */
const double =
  (curve: Curve): Method =>
  ({ tmin, tmax, nextTmin = tmin }, lower, upper, cutoff) => {
    const [morning, evening] = [
      byCutoff(curve, tmin, tmax, lower, upper),
      byCutoff(curve, nextTmin, tmax, lower, upper),
    ];
    const mean = (key: Cutoff) => (morning[key] + evening[key]) / 2;
    return total(
      {
        none: mean('none'),
        horizontal: mean('horizontal'),
        intermediate: mean('intermediate'),
        vertical: mean('vertical'),
      },
      cutoff,
    );
  };

/** Each extreme raised to the lower threshold and, where there is one, cut at the upper. */
const clamped: Method = ({ tmin, tmax }, lower, upper) => {
  const clamp = (t: number) => Math.min(Math.max(t, lower), upper);
  return (clamp(tmin) + clamp(tmax)) / 2 - lower;
};

/** One function a method: a new method is added here and to `METHODS` of the trigger model. */
const methods: Record<DegreeDayMethod, Method> = {
  // Method 1 of McMaster & Wilhelm (1997): the day's mean, cut at the upper threshold, floored at the lower.
  average: ({ tmin, tmax }, lower, upper) => Math.max(Math.min((tmin + tmax) / 2, upper) - lower, 0),
  // Method 2 of McMaster & Wilhelm (1997): each extreme is raised to the threshold first.
  'average-clamped': clamped,
  // The 86/50 method: each extreme is clamped to both thresholds.
  modified: clamped,
  'single-sine': single(sine),
  'double-sine': double(sine),
  'single-triangle': single(triangle),
  'double-triangle': double(triangle),
};

/** Whether a method's upper threshold can be cut in several ways. */
export const takesCutoff = (method: DegreeDayMethod): boolean => /sine|triangle/.test(method);

/**
 * Degree days of one day.
 *
 * @param day Minimum and maximum air temperature, °C or °F, and for the double methods the next day's minimum.
 * @returns Degree days in that scale, never negative; NaN where an extreme is NaN.
 * @throws RangeError where the upper threshold is not above the lower, the minimum is above the maximum, the method or
 *   cutoff is not one of those there are, or a cutoff stands with an average.
 * Source: McMaster & Wilhelm (1997), Agric. For. Meteorol. 87:291-300; Zalom et al. (1983), UC Leaflet 21373.
 * @example degreeDays({ tmin: 50, tmax: 82 }, { lower: 55, upper: 90, method: 'single-sine' }) //=> 11.85
 */
export function degreeDays(day: Extremes, rule: DegreeDayRule): number {
  const { lower, method, cutoff = 'horizontal' } = rule;
  const upper = rule.upper ?? Number.POSITIVE_INFINITY;
  if (upper <= lower) throw new RangeError(`the upper threshold ${upper} is not above the lower ${lower}`);
  if (!Object.hasOwn(methods, method)) throw new RangeError(`no degree-day method "${method}"`);
  if (!CUTOFFS.includes(cutoff)) throw new RangeError(`no cutoff "${cutoff}"`);
  if (rule.cutoff !== undefined && !takesCutoff(method)) throw new RangeError(`the method "${method}" has no cutoff`);
  if (Number.isNaN(day.tmin) || Number.isNaN(day.tmax)) return Number.NaN;
  if (day.tmin > day.tmax) throw new RangeError(`the minimum ${day.tmin} is above the maximum ${day.tmax}`);
  const next = day.nextTmin === undefined || Number.isNaN(day.nextTmin) ? day.tmin : day.nextTmin;
  return Math.max(0, methods[method]({ ...day, nextTmin: next }, lower, upper, cutoff));
}
