import type { Day } from '../base/day.ts';
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

/**
 * One possible run of the model's error.
 *
 * @param seed The same seed gives the same path from the same day on, however far it is asked for.
 * @param offsetSd Standard deviation of the site's offset [°C].
 * @returns The error of each day of `[from, to)` [°C].
 */
export function errorPath(seed: number, offsetSd: number, from: Day, to: Day): Float64Array {
  const random = seeded(seed);
  const { slow, fast } = SOIL_ERROR;
  const offset = offsetSd * normal(random);
  let [a, b] = [slow.sd * normal(random), fast.sd * normal(random)];
  const path = new Float64Array(to - from);
  for (let i = 0; i < path.length; i++) {
    path[i] = offset + a + b;
    a = slow.phi * a + slow.sd * Math.sqrt(1 - slow.phi ** 2) * normal(random);
    b = fast.phi * b + fast.sd * Math.sqrt(1 - fast.phi ** 2) * normal(random);
  }
  return path;
}
