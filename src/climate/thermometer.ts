import type { Day } from '../base/day.ts';
import type { Celsius, Metres } from '../base/units.ts';
import { covariance, SOIL_ERROR } from './soil-error.ts';

/** A thermometer pushed into the lawn. */
export interface Reading {
  readonly day: Day;
  readonly depth: Metres;
  readonly value: Celsius;
}

/** What readings say of a site. */
export interface SiteOffset {
  /** How much warmer the soil is than the model says, as far as the readings support it [°C]. */
  readonly offset: number;
  /** What is still not known of it, standard deviation [°C]. */
  readonly sd: number;
  /** Readings so far off that they are more likely a mistake; not used. */
  readonly doubted: readonly { readonly reading: Reading; readonly modelled: Celsius; readonly sds: number }[];
  /** Readings in frozen or nearly frozen ground, which tell nothing of an offset; not used. */
  readonly frozen: readonly Reading[];
  /** How many were used. */
  readonly used: number;
}

/** Before any reading: the standard deviation of a site's offset that a few readings may move [°C], and of a reading. */
const PRIOR = 0.5;
const NOISE = 0.5;
/** A reading further off than this many standard deviations is doubted. */
const DOUBTED = 4;
/** Below these the model lumps freezing, and a reading says nothing of the offset [°C]. */
const THAWED = { reading: 0.5, model: 1 } as const;

/**
 * Updates the site's offset by readings: a Bayesian step (generalised least squares with a prior) that knows that the
 * model's error lasts, so that six readings of one week count for little more than one.
 *
 * @param model Soil temperature without an offset [°C]; NaN where it is not known.
 * The prior is narrower than stations differ: of 0.7, 0.5 and 0.4 °C, 0.5 helped most without making the next year worse
 * (`npm run accuracy`, section e; Phoenix Park left out of the fit: 1.508 to 1.505 °C).
 * @example siteOffset([], () => 10) //=> { offset: 0, sd: 0.5, doubted: [], frozen: [], used: 0 }
 */
export function siteOffset(readings: readonly Reading[], model: (day: Day, depth: Metres) => Celsius): SiteOffset {
  const sd = Math.sqrt(PRIOR ** 2 + covariance(0) + NOISE ** 2);
  const all = readings.map((reading) => ({ reading, modelled: model(reading.day, reading.depth) }));
  const thawed = ({ reading, modelled }: (typeof all)[number]) =>
    reading.value > THAWED.reading && modelled > THAWED.model;
  const frozen = all.filter((one) => !thawed(one)).map(({ reading }) => reading);
  const compared = all.filter(thawed).map((one) => ({ ...one, sds: Math.abs(one.reading.value - one.modelled) / sd }));
  const doubted = compared.filter(({ sds }) => sds > DOUBTED);
  const good = compared.filter(({ sds }) => sds <= DOUBTED);
  // Precision of the offset: 1/Q + 1'C⁻¹1; its mean is 1'C⁻¹(y - x) over that.
  const C = good.map(({ reading: a }, i) =>
    good.map(({ reading: b }, j) => covariance(a.day - b.day) + (i === j ? NOISE ** 2 : 0)),
  );
  const weights = solve(
    C,
    good.map(() => 1),
  );
  const precision = 1 / PRIOR ** 2 + weights.reduce((sum, weight) => sum + weight, 0);
  const pull = good.reduce(
    (sum, { reading, modelled }, i) => sum + (weights[i] as number) * (reading.value - modelled),
    0,
  );
  return { offset: pull / precision, sd: 1 / Math.sqrt(precision), doubted, frozen, used: good.length };
}

/**
 * What is not known of a site's offset, standard deviation [°C]: as much as at any lawn without readings; with them less, by
 * the part that they may move.
 */
export const offsetSd = (sd: number, used: number): number =>
  used === 0 ? SOIL_ERROR.offset : Math.sqrt(SOIL_ERROR.offset ** 2 - PRIOR ** 2 + sd ** 2);

/** Solves a symmetric positive definite system by Cholesky's method. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const L = matrix.map((row) => [...row]);
  const at = (i: number, j: number) => (L[i] as number[])[j] as number;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = at(i, j);
      for (let k = 0; k < j; k++) sum -= at(i, k) * at(j, k);
      (L[i] as number[])[j] = i === j ? Math.sqrt(sum) : sum / at(j, j);
    }
  }
  const y = [...right];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) y[i] = (y[i] as number) - at(i, k) * (y[k] as number);
    y[i] = (y[i] as number) / at(i, i);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) y[i] = (y[i] as number) - at(k, i) * (y[k] as number);
    y[i] = (y[i] as number) / at(i, i);
  }
  return y;
}
