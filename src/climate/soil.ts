import { type Day, dayOfYear } from '../base/day.ts';
import type { DailySeries } from '../base/series.ts';
import type { Metres } from '../base/units.ts';
import type { WeatherSeries } from '../model/weather.ts';
import type { Climatology } from './climatology.ts';
import { type Column, type Conduct, conduction, NODES, temperaturesAt, uniform } from './conduction.ts';
import {
  BY_CLIMATE,
  BY_RAIN,
  parametersAt,
  type SoilParameters,
  TEXTURE_FACTORS,
  type Texture,
} from './soil-parameters.ts';
import {
  dayForcing,
  ema60,
  type Place,
  placeOf,
  rainRatio,
  type Site,
  snowNext,
  surfaceTemperature,
  wetnessByClimate,
  wetnessByRain,
} from './surface.ts';

/** The soil on the evening of a day. */
export interface SoilState {
  readonly column: Column;
  /** 60-day means of rain and of evaporative demand [mm d⁻¹]. */
  readonly rain: number;
  readonly demand: number;
  /** Snow on the ground as water [mm]. */
  readonly snow: number;
}

/** A soil at a site, ready to be taken from day to day. */
export interface Soil {
  readonly place: Place;
  /** Mean annual vapour pressure deficit [kPa]. */
  readonly deficit: number;
  /** Whether rain decides how much the ground can evaporate; otherwise the climate does. */
  readonly byRain: boolean;
  readonly parameters: SoilParameters;
  readonly conduct: Conduct;
}

/** Soil columns of a run of days, five values a day, and the soil on the evening of the last. */
export interface SoilRun {
  readonly start: Day;
  readonly columns: Float64Array;
  readonly end: SoilState;
}

/** A day with more than this is a wet one [mm]. */
const WET_DAY = 1;

/**
 * The soil through a weather series without holes, from the state of the evening before; a day whose rain is not known
 * (NaN) changes nothing but the temperature.
 *
 * @example the eight vectors of `test/published/soil-vectors.test.ts`
 */
export function run(soil: Soil, before: SoilState, weather: WeatherSeries): SoilRun {
  const { place, deficit, parameters: p, byRain, conduct } = soil;
  const { tmin, tmax, precip, start } = weather;
  const size = NODES.length;
  const columns = new Float64Array(tmin.length * size);
  const column = before.column.slice();
  let { rain, demand, snow } = before;
  for (let i = 0; i < tmin.length; i++) {
    const wet = precip[i] as number;
    const known = byRain && !Number.isNaN(wet);
    const clearness = known && wet > WET_DAY ? p.wetDay : 1;
    const forcing = dayForcing(place, dayOfYear(start + i), tmin[i] as number, tmax[i] as number, clearness);
    // Rain and demand are compared, so they go on together; snow melts whether rain is known or not.
    if (known || !byRain) demand = ema60(demand, forcing.referenceEt);
    if (known) rain = ema60(rain, wet);
    if (byRain) snow = snowNext(snow, forcing.air, known ? wet : 0);
    const dry = byRain ? wetnessByRain(p, deficit, rainRatio(rain, demand)) : wetnessByClimate(p, deficit);
    conduct(column, surfaceTemperature(p, forcing, place.irrigated ? 1 : dry, snow));
    columns.set(column, i * size);
  }
  return { start, columns, end: { column, rain, demand, snow } };
}

/** Days of smooth climatology before a record begins. */
const SPIN_UP = 730;

/**
 * The soil on the evening before `start`: all nodes at the mean surface temperature of a usual year, then two usual years
 * with the mean rain of the place and no snow.
 */
export function spunUp(soil: Soil, climatology: Climatology, start: Day): SoilState {
  const { place, parameters: p, deficit } = soil;
  const usual = climatology.weather(start - SPIN_UP, start);
  let [demand, count] = [0, 0];
  const forcings = [];
  for (let i = SPIN_UP - 365; i < SPIN_UP; i++) {
    const forcing = dayForcing(place, dayOfYear(usual.start + i), usual.tmin[i] as number, usual.tmax[i] as number);
    forcings.push(forcing);
    demand += forcing.referenceEt;
    count++;
  }
  demand /= count;
  const rain = Number.isNaN(climatology.rain) ? demand : climatology.rain;
  const dry = soil.byRain ? wetnessByRain(p, deficit, rainRatio(rain, demand)) : wetnessByClimate(p, deficit);
  const surface =
    forcings.reduce((sum, one) => sum + surfaceTemperature(p, one, place.irrigated ? 1 : dry, 0), 0) / count;
  return run(soil, { column: uniform(surface), rain, demand, snow: 0 }, usual).end;
}

/** The soil under a whole record without holes, after spin-up. */
export const soilUnder = (weather: WeatherSeries, soil: Soil, climatology: Climatology): SoilRun =>
  run(soil, spunUp(soil, climatology, weather.start), weather);

/** Soil temperature at a depth through a run [°C]. @param shift Added to the column of each day before freezing is lumped. */
export const depthSeries = (
  { start, columns }: SoilRun,
  depth: Metres,
  { parameters }: Soil,
  shift?: Float64Array,
): DailySeries => ({ start, values: temperaturesAt(columns, depth, parameters.kf, shift) });

/** The columns of the days `[from, to)` of a run. */
export const columnsOf = ({ start, columns }: SoilRun, from: Day, to: Day): Float64Array =>
  columns.subarray((from - start) * NODES.length, (to - start) * NODES.length);

/** Share of a record's days with known rain from which on rain decides. */
const RAIN_KNOWN = 0.9;

/**
 * The soil of a place: by rain where the record knows it, by climate otherwise.
 *
 * @param parameters Instead of the shipped ones, for fitting.
 */
export function soilOf(
  site: Site,
  climatology: Climatology,
  texture: Texture = 'loam',
  parameters?: SoilParameters,
): Soil {
  const byRain = climatology.rainKnown >= RAIN_KNOWN;
  const p = parametersAt(parameters ?? (byRain ? BY_RAIN : BY_CLIMATE), climatology.amplitude);
  return {
    place: placeOf(site),
    deficit: climatology.deficit,
    byRain,
    parameters: p,
    conduct: conduction(p.D * TEXTURE_FACTORS[texture], p.h),
  };
}
