import { type Day, partsOf } from '../base/day.ts';
import { normal, type Random, seeded } from '../base/random.ts';
import type { MonthlyNormals } from '../model/normals.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { smoothYear } from './smooth-year.ts';

/** Constants of the generator: means over the months of the four stations named in `variability.ts`, 1991-2020. */
const FITTED = {
  /** Lag-1 correlation of the occurrence of wet days (0.10 to 0.45). */
  wetPersistence: 0.24,
  /** Daily range on wet days over that on dry days (0.6 to 0.95). */
  wetRange: 0.75,
  /** Standard deviation of the daily range [°C] (2.0 to 4.6). */
  sdRange: 3.4,
  /** Its lag-1 autocorrelation (0.15 to 0.7). */
  rangeLag: 0.4,
  /** Correlation of range and mid-range: maxima vary more than minima (-0.3 to 0.75). */
  rangeWithMid: 0.29,
  /** Shape of the gamma distribution of rain on wet days: 1 / (coefficient of variation 1.32)² (0.3 to 1.6). */
  rainShape: 0.57,
} as const;

/** The least rain that makes a wet day [mm]: 0.01 in. */
const LEAST_WET_MM = 0.25;
/** Days of a mean month. */
const MONTH = 30.44;
/** Lag-1 correlation of the slow part of the anomalies: it fades over about a month. The project's own choice. */
const SLOW_LAG = Math.exp(-1 / 30);

/** What the days of one month are drawn with. */
interface MonthRule {
  readonly wetAfterDry: number;
  readonly wetAfterWet: number;
  readonly wetShare: number;
  /** Mean rain of a wet day beyond `LEAST_WET_MM` [mm]. */
  readonly rainBeyond: number;
  readonly dryRange: number;
  readonly sdRange: number;
  readonly fastLag: number;
  readonly fastSd: number;
  readonly slowSd: number;
  /** Correlation of the day's innovations of range and fast mid-range. */
  readonly coupling: number;
}

/**
 * Daily weather drawn from monthly normals, for a place without a history: wet and dry days by a first-order Markov
 * chain, rain of wet days by a gamma distribution, and Tmin and Tmax by correlated first-order autoregressive residuals
 * whose means depend on whether the day is wet.
 *
 * Tmin and Tmax are drawn as mid-range -+ half the range, a linear change of variables of Richardson's two-variate
 * residuals in which the matrices are nearly diagonal. The mid-range has a fast and a slow part, so that daily standard
 * deviation, autocorrelation and the standard deviation of monthly means are all kept where they are compatible (a
 * first-order process alone fixes the third by the other two). Wet days have a smaller range about the same mid-range:
 * cooler maxima and milder minima. Left out: that wet days are also warmer in winter and cooler in summer (mid-range
 * -2.5 to +2.5 °C at the four stations, 0.15 on average), and skewness.
 *
 * @param seed Any 32-bit integer: the same seed gives the same days.
 * @param start The first day.
 * @param days How many; a longer run begins with the shorter one.
 * Source: Richardson (1981), Stochastic simulation of daily precipitation, temperature, and solar radiation, Water
 * Resources Research 17:182-190, 10.1029/WR017i001p00182.
 */
export function generate(normals: MonthlyNormals, seed: number, start: Day, days: number): WeatherSeries {
  const random = seeded(seed);
  const rules = normals.tmin.map((_, m) => ruleOf(normals, m));
  const [usualMin, usualMax] = [smoothYear(normals.tmin), smoothYear(normals.tmax)];
  const [tmin, tmax, precip] = [new Float64Array(days), new Float64Array(days), new Float64Array(days)];
  let wet: boolean | null = null;
  let [fast, slow, range] = [normal(random), normal(random), normal(random)];
  for (let i = 0; i < days; i++) {
    const day = start + i;
    const rule = rules[partsOf(day).month - 1] as MonthRule;
    wet = random() < (wet === null ? rule.wetShare : wet ? rule.wetAfterWet : rule.wetAfterDry);
    precip[i] = wet ? LEAST_WET_MM + rule.rainBeyond * gamma(random, FITTED.rainShape) : 0;
    const shock = normal(random);
    const ownShock = rule.coupling * shock + Math.sqrt(1 - rule.coupling ** 2) * normal(random);
    fast = next(fast, rule.fastLag, shock);
    slow = next(slow, SLOW_LAG, normal(random));
    range = next(range, FITTED.rangeLag, ownShock);
    const [low, high] = [usualMin(day), usualMax(day)];
    const middle = (low + high) / 2 + rule.fastSd * fast + rule.slowSd * slow;
    const usualRange = (high - low) * rule.dryRange * (wet ? FITTED.wetRange : 1);
    const half = Math.max(usualRange + rule.sdRange * range, 0.5) / 2;
    tmin[i] = middle - half;
    tmax[i] = middle + half;
  }
  return { source: 'generated', start, tmin, tmax, precip };
}

/** One step of a first-order autoregressive process of unit variance. */
const next = (value: number, lag: number, shock: number): number => lag * value + Math.sqrt(1 - lag * lag) * shock;

function ruleOf(normals: MonthlyNormals, m: number): MonthRule {
  const of = (name: keyof MonthlyNormals) => normals[name][m] as number;
  // A wet day brings twice the least amount on average, or else there are fewer wet days than asked for.
  const wetShare = Math.min(of('wetShare'), of('precip') / (MONTH * 2 * LEAST_WET_MM), 1);
  const wetAfterDry = wetShare * (1 - FITTED.wetPersistence);
  const usual = of('tmax') - of('tmin');
  const dryRange = 1 / (1 - wetShare * (1 - FITTED.wetRange));
  const betweenDays = wetShare * (1 - wetShare) * (usual * dryRange * (1 - FITTED.wetRange)) ** 2;
  const sdRange = Math.min(FITTED.sdRange, 0.4 * usual);
  const { fastLag, fastSd, slowSd } = parts(of('sdDaily'), of('autocorrelation'), of('sdMonthly'));
  const lag = FITTED.rangeLag;
  const coupling = (FITTED.rangeWithMid * (1 - lag * fastLag)) / Math.sqrt((1 - lag ** 2) * (1 - fastLag ** 2));
  return {
    wetAfterDry,
    wetAfterWet: wetAfterDry + FITTED.wetPersistence,
    wetShare,
    rainBeyond: wetShare > 0 ? of('precip') / (MONTH * wetShare) - LEAST_WET_MM : 0,
    dryRange,
    sdRange: Math.sqrt(Math.max(sdRange ** 2 - betweenDays, 0)),
    fastLag,
    fastSd,
    slowSd,
    coupling: Math.min(coupling, 0.95),
  };
}

/**
 * Splits the mid-range's anomaly into a fast and a slow part, so that together they have the daily standard deviation,
 * the lag-1 autocorrelation and the standard deviation of monthly means that are asked for. Where the monthly means
 * vary less than the fast part alone makes them, there is no slow part.
 */
function parts(sd: number, lag: number, sdMonthly: number): { fastLag: number; fastSd: number; slowSd: number } {
  let slow = 0;
  let fastLag = lag;
  for (let i = 0; i < 60; i++) {
    const fast = sd ** 2 - slow;
    fastLag = fast > 0 ? Math.min(Math.max((lag * sd ** 2 - SLOW_LAG * slow) / fast, 0), 0.98) : 0;
    const wanted = (sdMonthly ** 2 - fast * shareInMean(fastLag)) / shareInMean(SLOW_LAG);
    slow = (slow + Math.min(Math.max(wanted, 0), 0.9 * sd ** 2)) / 2;
  }
  return { fastLag, fastSd: Math.sqrt(sd ** 2 - slow), slowSd: Math.sqrt(slow) };
}

/** Variance of the mean of a month's days over that of one day, for a first-order autoregressive process. */
function shareInMean(lag: number): number {
  let sum = 1;
  for (let k = 1; k < 30; k++) sum += 2 * (1 - k / 30) * lag ** k;
  return sum / 30;
}

/**
 * A gamma-distributed number with mean 1.
 * Source: Marsaglia & Tsang (2000), A simple method for generating gamma variables, ACM Trans. Math. Softw. 26:363-372,
 * with their device for shapes below 1 (section 6).
 */
function gamma(random: Random, shape: number): number {
  const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal(random);
    const v = (1 + c * x) ** 3;
    if (v <= 0 || Math.log(1 - random()) >= 0.5 * x * x + d - d * v + d * Math.log(v)) continue;
    return ((shape < 1 ? (1 - random()) ** (1 / shape) : 1) * d * v) / shape;
  }
}
