import type { Day } from '../base/day.ts';
import type { DailySeries } from '../base/series.ts';

/** Daily weather from one source: air minimum and maximum [°C], precipitation [mm]; NaN is missing. */
export interface WeatherSeries {
  readonly source: string;
  readonly start: Day;
  readonly tmin: Float64Array;
  readonly tmax: Float64Array;
  readonly precip: Float64Array;
  /** The line of its file on which each day stands, 0 where it stands on none; left out where there is no file. */
  readonly lines?: Int32Array;
}

export type Signal = 'tmin' | 'tmax' | 'precip';

/** One signal of a weather series. */
export const signal = (weather: WeatherSeries, name: Signal): DailySeries => ({
  start: weather.start,
  values: weather[name],
});

/** The day after the last one of a weather series. */
export const weatherEnd = (weather: WeatherSeries): Day => weather.start + weather.tmin.length;

/** The days of a weather series in `[from, to)`; days it does not hold are left out. */
export function cut(weather: WeatherSeries, from: Day, to: Day): WeatherSeries {
  const a = Math.max(0, from - weather.start);
  const b = Math.max(a, to - weather.start);
  const { tmin, tmax, precip, lines } = weather;
  return {
    ...weather,
    start: weather.start + a,
    tmin: tmin.slice(a, b),
    tmax: tmax.slice(a, b),
    precip: precip.slice(a, b),
    ...(lines && { lines: lines.slice(a, b) }),
  };
}
