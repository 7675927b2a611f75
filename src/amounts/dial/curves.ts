/**
 * What records say of the curve of delivered rate against setting. Every curve is monotone: its elasticity, by how many per
 * cent the rate grows for one per cent of opening, is positive and changes evenly along the dial.
 *
 * What is taken for likely before any record, from the geometry of openings and from nothing measured: a slot that opens one
 * way has an elasticity of 1, a hole that opens both ways 2; a dial that begins to open after its zero is steeper at its low
 * end, and an opening that flattens out is below 1 at its high end. So 1.5 in the middle of the dial, within a factor of 1.6
 * in four of five, falling towards the high end rather than rising.
 */
const MIDDLE = Math.log(0.45);
const ELASTICITY = 1.5;
const ELASTICITY_SD = 0.35; // of its logarithm
const TILT = -0.2; // change of the logarithm of the elasticity, for each e-fold of opening
const TILT_SD = 0.3;

/** Common practice holds ±5 % of a weighed pass for good; a hair more, so that what is told with a share keeps it. */
const NOISE = 0.055;
/** One record in thirty is taken for bad: a wrong weight or area, a clogged or an empty hopper. */
const BAD = 0.03;
const BAD_SD = 0.4;

const LEVEL_STEP = NOISE / 3;
/** Likelihoods this many logarithms below the best count for nothing. */
const NEGLIGIBLE = 9;
/** Records beyond these are of a spreader that has worn since. */
const LATEST = 20;

/** A point of a curve: logarithms of the opening (share of the dial) and of the rate. */
export interface Point {
  readonly opening: number;
  readonly rate: number;
}

interface Shape {
  readonly elasticity: number;
  readonly tilt: number;
  readonly logPrior: number;
}

/** A possible curve and how likely it is. `level` is the logarithm of its rate in the middle of the dial. */
interface Curve extends Shape {
  readonly level: number;
  readonly weight: number;
}

export type Curves = readonly Curve[];

const SHAPES: readonly Shape[] = [-7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
  [-3, -2, -1, 0, 1, 2, 3].map((j) => {
    const [steep, tilted] = [i / 2.8, j / 1.2]; // standard deviations
    return {
      elasticity: ELASTICITY * Math.exp(ELASTICITY_SD * steep),
      tilt: TILT + TILT_SD * tilted,
      logPrior: -(steep * steep + tilted * tilted) / 2,
    };
  }),
);

/** By how much the logarithm of the rate differs from that in the middle of the dial. No tilt of the grid is 0. */
const rise = ({ elasticity, tilt }: Shape, opening: number): number =>
  (elasticity * Math.expm1(tilt * (opening - MIDDLE))) / tilt;

/** The opening at which a curve has risen by so much; infinite where it never does. */
function openingFor({ elasticity, tilt }: Shape, risen: number): number {
  const grown = 1 + (tilt * risen) / elasticity;
  if (grown <= 0) return tilt < 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  return MIDDLE + Math.log(grown) / tilt;
}

const density = (off: number, sd: number): number => Math.exp(-(off * off) / (2 * sd * sd)) / sd;
const logLikelihood = (off: number): number =>
  Math.log((1 - BAD) * density(off, NOISE) + BAD * density(off, BAD_SD) + 1e-300);

/**
 * The curves that records leave possible, with their weights; Bayes' rule on a grid, so that the same records give the same.
 *
 * @param points At least one, in the order of their days.
 */
export function curvesThrough(points: readonly Point[]): Curves {
  const latest = points.slice(-LATEST);
  const found: { shape: Shape; level: number; logWeight: number }[] = [];
  let top = Number.NEGATIVE_INFINITY;
  for (const shape of SHAPES) {
    const levels = latest.map(({ opening, rate }) => rate - rise(shape, opening));
    const mean = levels.reduce((sum, one) => sum + one, 0) / levels.length;
    const steps = (to: number) => Math.ceil((Math.abs(to - mean) + 4 * NOISE) / LEVEL_STEP);
    for (let i = -steps(Math.min(...levels)); i <= steps(Math.max(...levels)); i++) {
      const level = mean + i * LEVEL_STEP;
      const logWeight = levels.reduce((sum, one) => sum + logLikelihood(one - level), shape.logPrior);
      top = Math.max(top, logWeight);
      if (logWeight > top - NEGLIGIBLE) found.push({ shape, level, logWeight });
    }
  }
  const counting = found.filter(({ logWeight }) => logWeight > top - NEGLIGIBLE);
  return counting.map(({ shape, level, logWeight }) => ({ ...shape, level, weight: Math.exp(logWeight - top) }));
}

/** Quantiles of a value over the curves. @param shares Rising, each 0 to 1. */
function quantiles(curves: Curves, shares: readonly number[], of: (curve: Curve) => number): number[] {
  const sorted = curves.map((curve) => ({ value: of(curve), weight: curve.weight }));
  sorted.sort((a, b) => a.value - b.value);
  const whole = sorted.reduce((sum, { weight }) => sum + weight, 0);
  const found: number[] = [];
  let below = 0;
  for (const { value, weight } of sorted) {
    below += weight;
    while (found.length < shares.length && below >= (shares[found.length] as number) * whole) found.push(value);
  }
  while (found.length < shares.length) found.push(sorted.at(-1)?.value ?? Number.NaN);
  return found;
}

/** Quantiles of the logarithm of the rate at an opening. */
export const ratesAt = (curves: Curves, opening: number, shares: readonly number[]): number[] =>
  quantiles(curves, shares, (curve) => curve.level + rise(curve, opening));

/** The opening below which a rate is not yet reached on this share of the curves. */
export const openingReaching = (curves: Curves, rate: number, share: number): number =>
  quantiles(curves, [share], (curve) => openingFor(curve, rate - curve.level))[0] as number;
