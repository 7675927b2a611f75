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
  const random = seeded(run.seed);
  const { slow, fast } = SOIL_ERROR;
  const drawn = normal(random);
  const offset = offsetSd * (run.offset ?? run.sign * drawn);
  let [a, b] = [run.sign * slow.sd * normal(random), run.sign * fast.sd * normal(random)];
  const path = new Float64Array(to - from);
  for (let i = 0; i < path.length; i++) {
    path[i] = offset + a + b;
    a = slow.phi * a + run.sign * slow.sd * Math.sqrt(1 - slow.phi ** 2) * normal(random);
    b = fast.phi * b + run.sign * fast.sd * Math.sqrt(1 - fast.phi ** 2) * normal(random);
  }
  return path;
}
