import type { Day } from '../../base/day.ts';
import type { Problem } from '../../base/problem.ts';
import type { WeatherSeries } from '../../model/weather.ts';

/** What the lawn says the figures of a file are in, where the file does not say it itself. */
export type FileUnits = 'metric' | 'us';

/** A file turned into weather, or why not. */
export interface ReadWeather {
  readonly value?: WeatherSeries;
  readonly problems: readonly Problem[];
}

/** A format of weather files. A new one is one file with one of these, and one line in `formats.ts`. */
export interface WeatherFormat {
  readonly name: string;
  /** Whether a text is of this format, told by its beginning. Texts come without a byte order mark, lines end in LF. */
  detect(text: string): boolean;
  parse(text: string, file: string, units: FileUnits | undefined): ReadWeather;
}

export type Name = 'tmin' | 'tmax' | 'precip';
export const NAMES = ['tmin', 'tmax', 'precip'] as const;

/** A day of a file: air extremes [°C] and precipitation [mm], NaN where missing. */
export interface Reading {
  readonly day: Day;
  readonly values: Readonly<Record<Name, number>>;
  /** The line on which the day stands, where it stands on one of its own. */
  readonly line?: number;
}

/** What an everyday unit is in °C or mm. */
export const toSi = {
  c: (value: number) => value,
  'c/10': (value: number) => value / 10,
  f: (value: number) => (value - 32) / 1.8,
  mm: (value: number) => value,
  'mm/10': (value: number) => value / 10,
  in: (value: number) => value * 25.4,
} as const;
export type FileUnit = keyof typeof toSi;

/** Days in any order as one series without a day left out. */
export function seriesFrom(days: readonly Reading[], source: string): WeatherSeries {
  let [start, last] = [days[0]?.day ?? 0, (days[0]?.day ?? 0) - 1];
  for (const { day } of days) {
    start = Math.min(start, day);
    last = Math.max(last, day);
  }
  const column = () => new Float64Array(last - start + 1).fill(Number.NaN);
  const series = {
    source,
    start,
    tmin: column(),
    tmax: column(),
    precip: column(),
    lines: new Int32Array(last - start + 1),
  };
  for (const { day, values, line = 0 } of days) {
    series.lines[day - start] = line;
    for (const name of NAMES) series[name][day - start] = values[name];
  }
  return series;
}
