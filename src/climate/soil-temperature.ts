import { type Day, formatDay, parseDay } from '../base/day.ts';
import { at } from '../base/series.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { climatologyOf } from './climatology.ts';
import { filled } from './record.ts';
import { depthSeries, soilOf, soilUnder } from './soil.ts';
import { errorSd } from './soil-error.ts';
import type { Texture } from './soil-parameters.ts';
import { offsetSd, siteOffset } from './thermometer.ts';

/** Daily weather as plain arrays: °C and mm, NaN where missing. */
interface PlainWeather {
  readonly start: string;
  readonly tmin: readonly number[];
  readonly tmax: readonly number[];
  readonly precip?: readonly number[];
}

interface PlainSite {
  readonly latitude: number;
  readonly elevationM: number;
  readonly irrigated?: boolean;
  readonly texture?: Texture;
  /** What a thermometer in the lawn has read; it moves the whole series as far as the readings support it. */
  readonly readings?: readonly { readonly date: string; readonly depthCm: number; readonly valueC: number }[];
}

/**
 * Daily mean soil temperature under grass, from daily extremes of air temperature.
 *
 * @param weather At least some days; a whole year or more gives the model a climate to begin from. With `precip`, rain
 *   decides how much the ground can evaporate.
 * @param depthCm 5 to 50 cm.
 * @returns Soil temperature [°C] for each day of the weather, and the standard deviation of its error.
 * @throws RangeError for a date that is no day, extremes of unequal length, or a depth outside 5 to 50 cm.
 * Source: energy balance after FAO-56 and conduction between five nodes; see `surface.ts` and `conduction.ts`.
 * @example soilTemperature({ start: '2026-01-01', tmin, tmax }, { latitude: 43, elevationM: 205 }, 5).values[0]
 */
export function soilTemperature(
  weather: PlainWeather,
  site: PlainSite,
  depthCm: number,
): { start: string; values: number[]; sd: number[] } {
  const start = dayOf(weather.start);
  const { tmin, tmax, precip } = weather;
  if (tmin.length !== tmax.length || (precip && precip.length !== tmin.length))
    throw new RangeError('the series are not of one length');
  const series: WeatherSeries = {
    source: 'weather',
    start,
    tmin: Float64Array.from(tmin),
    tmax: Float64Array.from(tmax),
    precip: precip ? Float64Array.from(precip) : new Float64Array(tmin.length).fill(Number.NaN),
  };
  const place = { latitude: site.latitude, elevationM: site.elevationM, irrigated: site.irrigated ?? false };
  const end = start + tmin.length;
  const climatology = climatologyOf(series, place, end);
  const { weather: whole } = filled(series, climatology.usual, end, () => ({ file: series.source }));
  const soil = soilOf(place, climatology, site.texture);
  const run = soilUnder(whole, soil, climatology);
  const readings = (site.readings ?? []).map(({ date, depthCm: cm, valueC }) => ({
    day: dayOf(date),
    depth: cm / 100,
    value: valueC,
  }));
  const { offset, sd, used } = siteOffset(readings, (day, depth) => at(depthSeries(run, depth, soil), day));
  const { values } = depthSeries(run, depthCm / 100, soil, new Float64Array(tmin.length).fill(offset));
  const error = errorSd(offsetSd(sd, used));
  return { start: formatDay(start), values: [...values], sd: Array.from(values, () => error) };
}

function dayOf(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new RangeError(`"${text}" is not a day`);
  return day;
}
