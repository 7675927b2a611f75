import type { Day } from '../base/day.ts';
import { normalQuantile } from '../base/normal-quantile.ts';
import { normal, seeded } from '../base/random.ts';

/**
 * The stated error of the soil model against a station under open sky: what is left over once the weather is right.
 * A site's own offset, and two first-order autoregressive parts, a slow and a fast one; the sum has the residuals' standard
 * deviation and correlation over days to weeks.
 * Source: residuals at 50 stations of the U.S. Climate Reference Network (2020) that took no part in the fit of the model;
 * one year, so the offset and the slow part are not fully told apart.
 */
export const SOIL_ERROR = {
  /** Standard deviation of a site's offset [°C]: 0.78 between stations left out of the fit, 0.92 with their region. */
  offset: 0.9,
  slow: { sd: 1, phi: 0.975 },
  fast: { sd: 0.75, phi: 0.6 },
} as const;

/** Standard deviation of the whole error at one moment [°C]. @param offset That of the site's offset, smaller once it is measured. */
export const errorSd = (offset: number = SOIL_ERROR.offset): number =>
  Math.hypot(offset, SOIL_ERROR.slow.sd, SOIL_ERROR.fast.sd);

/** Covariance of the two autoregressive parts some days apart [°C²]. */
export function covariance(days: number): number {
  const part = ({ sd, phi }: { readonly sd: number; readonly phi: number }) => sd ** 2 * phi ** Math.abs(days);
  return part(SOIL_ERROR.slow) + part(SOIL_ERROR.fast);
}

/** Which run of the error a trace has. */
export interface ErrorRun {
  readonly seed: number;
  /** A run and its mirror image have one seed. */
  readonly sign: 1 | -1;
  /** The site's offset in standard deviations; drawn from the seed where it is left out. */
  readonly offset?: number;
}

/**
 * Runs of the error that stand for all: each with its mirror image, and the sites' offsets spread evenly over their
 * distribution. Thirty drawn at will were 0.3 to 0.6 °C too warm in the mean and a third too narrow.
 *
 * @param count How many; an odd one has no mirror image.
 */
export function balancedRuns(count: number): readonly ErrorRun[] {
  const known = balanced.get(count) ?? balance(count);
  balanced.set(count, known);
  return known;
}

/** They depend on their number alone. */
const balanced = new Map<number, readonly ErrorRun[]>();

function balance(count: number): ErrorRun[] {
  const pairs = Math.ceil(count / 2);
  // A stride without a common divisor takes every pair once, and parts neighbours.
  const stride = [7, 11, 13, 1].find((one) => pairs % one !== 0) ?? 1;
  const offsets = Array.from({ length: pairs }, (_, k) =>
    normalQuantile(0.5 + (((k * stride) % pairs) + 0.5) / (2 * pairs)),
  );
  return Array.from({ length: count }, (_, i) => {
    const pair = Math.floor(i / 2);
    const sign = i % 2 === 0 ? 1 : -1;
    return { seed: pair + 1, sign, offset: sign * (offsets[pair] as number) };
  });
}

/**
 * One possible run of the model's error.
 *
 * @param run The same run gives the same path from the same day on, however far it is asked for.
 * @param offsetSd Standard deviation of the site's offset [°C].
 * @returns The error of each day of `[from, to)` [°C].
 */
export function errorPath(run: ErrorRun, offsetSd: number, from: Day, to: Day): Float64Array {
  const { drawn, slow, fast } = drawnPath(run.seed, to - from);
  const offset = offsetSd * (run.offset ?? run.sign * drawn);
  const path = new Float64Array(to - from);
  for (let i = 0; i < path.length; i++)
    path[i] = offset + run.sign * (slow[i] as number) + run.sign * (fast[i] as number);
  return path;
}

/** The two autoregressive parts of a seed's run [°C], at least so many days of them, and the number its offset is drawn with. */
interface DrawnPath {
  readonly drawn: number;
  readonly slow: Float64Array;
  readonly fast: Float64Array;
}

/** They depend on their seed alone, and every plan asks for the same few dozen. */
const drawnPaths = new Map<number, DrawnPath>();

function drawnPath(seed: number, days: number): DrawnPath {
  const known = drawnPaths.get(seed);
  if (known && known.slow.length >= days) return known;
  const random = seeded(seed);
  const parts = SOIL_ERROR;
  const path = { drawn: normal(random), slow: new Float64Array(days), fast: new Float64Array(days) };
  let [a, b] = [parts.slow.sd * normal(random), parts.fast.sd * normal(random)];
  for (let i = 0; i < days; i++) {
    path.slow[i] = a;
    path.fast[i] = b;
    a = parts.slow.phi * a + parts.slow.sd * Math.sqrt(1 - parts.slow.phi ** 2) * normal(random);
    b = parts.fast.phi * b + parts.fast.sd * Math.sqrt(1 - parts.fast.phi ** 2) * normal(random);
  }
  if (drawnPaths.size < MOST_PATHS) drawnPaths.set(seed, path);
  return path;
}

/** As many as a plan's runs have by far; other seeds are drawn anew each time. */
const MOST_PATHS = 64;
