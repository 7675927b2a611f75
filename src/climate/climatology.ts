import { type Day, dayOfYear, yearOf } from '../base/day.ts';
import { at } from '../base/series.ts';
import { signal, type WeatherSeries, weatherEnd } from '../model/weather.ts';
import { known, wholeYears } from './record.ts';
import { dayForcing, type Site } from './surface.ts';

/** A smooth year: mean and two harmonics. */
type Harmonics = readonly [number, number, number, number, number];

/** The usual weather of a place: smooth mid-range and daily range of air temperature, and the mean annual dryness. */
export interface Climatology {
  /** Usual extremes on a day [°C]. */
  usual(day: Day): { readonly tmin: number; readonly tmax: number };
  /** Mean annual vapour pressure deficit V [kPa]. */
  readonly deficit: number;
  /** The years it is made from. */
  readonly years: readonly number[];
}

const basis = (day: Day): Harmonics => {
  const angle = (2 * Math.PI * dayOfYear(day)) / 365.25;
  return [1, Math.cos(angle), Math.sin(angle), Math.cos(2 * angle), Math.sin(2 * angle)];
};

/**
 * Climatology of a record from its whole years before the as-of year, or from all of it where there is none.
 * Whole past years alone, so that it stays the same all season.
 */
export function climatologyOf(weather: WeatherSeries, site: Site, asOf: Day): Climatology {
  const past = wholeYears(weather, asOf).filter((year) => year < yearOf(asOf));
  const inYears = new Set(past);
  const days: Day[] = [];
  for (let day = weather.start; day < weatherEnd(weather); day++) {
    if (known(weather, day) && (past.length === 0 || inYears.has(yearOf(day)))) days.push(day);
  }
  const [tmin, tmax] = [signal(weather, 'tmin'), signal(weather, 'tmax')];
  const middle = fitYear(days, (day) => (at(tmin, day) + at(tmax, day)) / 2);
  const range = fitYear(days, (day) => at(tmax, day) - at(tmin, day));
  let deficit = 0;
  for (const day of days) deficit += dayForcing(site, dayOfYear(day), at(tmin, day), at(tmax, day)).deficit;
  const value = (harmonics: Harmonics, day: Day) =>
    basis(day).reduce((sum, b, i) => sum + b * (harmonics[i] as number), 0);
  return {
    usual: (day) => {
      const [t, half] = [value(middle, day), Math.max(value(range, day), 0.5) / 2];
      return { tmin: t - half, tmax: t + half };
    },
    deficit: days.length === 0 ? 0 : deficit / days.length,
    years: past,
  };
}

/** Least squares of the two-harmonic year, by the normal equations. Few days give just their mean. */
function fitYear(days: readonly Day[], reading: (day: Day) => number): Harmonics {
  if (days.length < 300) {
    const mean = days.reduce((sum, day) => sum + reading(day), 0) / Math.max(days.length, 1);
    return [mean, 0, 0, 0, 0];
  }
  const rows = Array.from({ length: 5 }, () => new Array<number>(6).fill(0));
  for (const day of days) {
    const b = [...basis(day), reading(day)];
    rows.forEach((row, i) => {
      for (let j = 0; j < 6; j++) row[j] = (row[j] as number) + (b[i] as number) * (b[j] as number);
    });
  }
  return solve(rows) as unknown as Harmonics;
}

/** Solves a symmetric positive system given as rows with the right-hand side last. */
function solve(rows: number[][]): number[] {
  const n = rows.length;
  const cell = (i: number, j: number) => (rows[i] as number[])[j] as number;
  for (let i = 0; i < n; i++) {
    for (let k = i + 1; k < n; k++) {
      const factor = cell(k, i) / cell(i, i);
      for (let j = i; j <= n; j++) (rows[k] as number[])[j] = cell(k, j) - factor * cell(i, j);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = cell(i, n);
    for (let j = i + 1; j < n; j++) sum -= cell(i, j) * (x[j] as number);
    x[i] = sum / cell(i, i);
  }
  return x;
}
