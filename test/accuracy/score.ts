/** How far predicted soil temperature is from measured: by station, and over many. */
import { dayOfYear } from '../../src/base/day.ts';
import { at, type DailySeries } from '../../src/base/series.ts';
import { DEPTHS, type Depth, type Station } from './stations.ts';

export interface Score {
  /** Days compared. */
  readonly n: number;
  /** Root mean square, mean absolute and mean error, predicted less measured [°C]. */
  readonly rmse: number;
  readonly mae: number;
  readonly bias: number;
}

export interface StationScore extends Score {
  readonly station: Station;
  readonly depth: Depth;
}

/** Days of the year that are scored: from 1 February, when a record that begins in January has settled. */
const FIRST = 32;

/** @param counts Which days are compared; all from 1 February on where left out. */
export function scoreOf(
  predicted: DailySeries,
  measured: DailySeries,
  counts = (day: number) => dayOfYear(day) >= FIRST,
): Score {
  let [n, square, absolute, sum] = [0, 0, 0, 0];
  for (let day = measured.start; day < measured.start + measured.values.length; day++) {
    const error = at(predicted, day) - at(measured, day);
    if (Number.isNaN(error) || !counts(day)) continue;
    n++;
    square += error * error;
    absolute += Math.abs(error);
    sum += error;
  }
  return { n, rmse: Math.sqrt(square / n), mae: absolute / n, bias: sum / n };
}

/** Every station at every depth that it measures. */
export const scoresOf = (
  stations: readonly Station[],
  predict: (station: Station, depth: Depth) => DailySeries,
): StationScore[] =>
  stations.flatMap((station) =>
    DEPTHS.flatMap((depth) => {
      const measured = station.soil[depth];
      return measured ? [{ station, depth, ...scoreOf(predict(station, depth), measured) }] : [];
    }),
  );

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(middle)] ?? Number.NaN) + (sorted[Math.ceil(middle)] ?? Number.NaN)) / 2;
}

export const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Several stations as one. */
export interface Summary {
  readonly stations: number;
  /** RMSE and MAE of the median station [°C]. */
  readonly rmse: number;
  readonly mae: number;
  /** RMSE over all days [°C]. */
  readonly pooled: number;
  /** Mean of the stations' biases, and their standard deviation [°C]. */
  readonly bias: number;
  readonly biasSd: number;
}

export function summaryOf(scores: readonly Score[]): Summary {
  const bias = mean(scores.map((one) => one.bias));
  return {
    stations: scores.length,
    rmse: median(scores.map(({ rmse }) => rmse)),
    mae: median(scores.map(({ mae }) => mae)),
    pooled: Math.sqrt(mean(scores.flatMap(({ n, rmse }) => n * rmse ** 2)) / mean(scores.map(({ n }) => n))),
    bias,
    biasSd: Math.sqrt(mean(scores.map((one) => (one.bias - bias) ** 2))),
  };
}
