import { type Day, dayOfYear, yearOf } from '../base/day.ts';
import { at } from '../base/series.ts';
import { signal, type WeatherSeries, weatherEnd } from '../model/weather.ts';
import { known, wholeYears } from './record.ts';
import { dayForcing, placeOf, type Site } from './surface.ts';

/** A smooth year: mean and two harmonics. */
type Harmonics = readonly [number, number, number, number, number];

/** The usual weather of a place: smooth mid-range and daily range of air temperature, and the mean annual dryness. */
export interface Climatology {
  /** Usual extremes on a day [°C]. */
  usual(day: Day): { readonly tmin: number; readonly tmax: number };
  /** Usual weather of `[from, to)`, with no rain known. */
  weather(from: Day, to: Day): WeatherSeries;
  /** Mean annual vapour pressure deficit V [kPa]. */
  readonly deficit: number;
  /** Half the range of the usual mid-range over a year [°C]; NaN where the record holds no whole year. */
  readonly amplitude: number;
  /** Mean rain [mm d⁻¹], NaN where none is known; and the share of days on which it is. */
  readonly rain: number;
  readonly rainKnown: number;
  /** The years it is made from. */
  readonly years: readonly number[];
}

/** By day of the year, 1 to 366. */
const BASIS: readonly Harmonics[] = Array.from({ length: 367 }, (_, day) => {
  const angle = (2 * Math.PI * day) / 365.25;
  return [1, Math.cos(angle), Math.sin(angle), Math.cos(2 * angle), Math.sin(2 * angle)];
});

const basis = (day: Day): Harmonics => BASIS[dayOfYear(day)] as Harmonics;

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
  const place = placeOf(site);
  let deficit = 0;
  for (const day of days) deficit += dayForcing(place, dayOfYear(day), at(tmin, day), at(tmax, day)).deficit;
  const rains = days.map((day) => at(signal(weather, 'precip'), day)).filter((value) => !Number.isNaN(value));
  const value = (harmonics: Harmonics, day: Day) =>
    basis(day).reduce((sum, b, i) => sum + b * (harmonics[i] as number), 0);
  const year = Array.from({ length: 365 }, (_, i) => value(middle, i));
  const usual = (day: Day) => {
    const [t, half] = [value(middle, day), Math.max(value(range, day), 0.5) / 2];
    return { tmin: t - half, tmax: t + half };
  };
  return {
    usual,
    weather: (from, to) => {
      const all = Array.from({ length: to - from }, (_, i) => usual(from + i));
      const column = (name: 'tmin' | 'tmax') => Float64Array.from(all, (one) => one[name]);
      const precip = new Float64Array(to - from).fill(Number.NaN);
      return { source: 'climatology', start: from, tmin: column('tmin'), tmax: column('tmax'), precip };
    },
    deficit: days.length === 0 ? 0 : deficit / days.length,
    rain: rains.reduce((sum, one) => sum + one, 0) / rains.length,
    rainKnown: rains.length / Math.max(days.length, 1),
    amplitude: days.length < FEW_DAYS ? Number.NaN : (Math.max(...year) - Math.min(...year)) / 2,
    years: past,
  };
}

/** Fewer days than this make no year. */
const FEW_DAYS = 300;

/** Least squares of the two-harmonic year, by the normal equations. Few days give just their mean. */
function fitYear(days: readonly Day[], reading: (day: Day) => number): Harmonics {
  if (days.length < FEW_DAYS) {
    const mean = days.reduce((sum, day) => sum + reading(day), 0) / Math.max(days.length, 1);
    return [mean, 0, 0, 0, 0];
  }
  const rows = Array.from({ length: 5 }, () => new Array<number>(6).fill(0));
  for (const day of days) {
    const b = basis(day);
    const last = reading(day);
    for (let i = 0; i < 5; i++) {
      const [row, own] = [rows[i] as number[], b[i] as number];
      for (let j = 0; j < 5; j++) row[j] = (row[j] as number) + own * (b[j] as number);
      row[5] = (row[5] as number) + own * last;
    }
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
