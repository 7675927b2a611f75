import { type Day, dayOfYear } from '../base/day.ts';
import { at, type DailySeries } from '../base/series.ts';
import type { Celsius, Metres } from '../base/units.ts';
import { signal, type WeatherSeries, weatherEnd } from '../model/weather.ts';
import type { Climatology } from './climatology.ts';
import { type Column, conduct, temperatureAt, uniform } from './conduction.ts';
import {
  dayForcing,
  ema60,
  rainRatio,
  type Site,
  surfaceTemperature,
  wetnessByClimate,
  wetnessByRain,
} from './surface.ts';

/** The soil on the evening of a day: temperatures, and 60-day means of rain and evaporative demand [mm d⁻¹]. */
export interface SoilState {
  readonly column: Column;
  readonly rain: number;
  readonly demand: number;
}

/** One day's air for the soil; precipitation NaN where it is not known. */
export interface AirDay {
  readonly tmin: Celsius;
  readonly tmax: Celsius;
  readonly precip: number;
}

/** A soil at a site, ready to be taken from day to day. */
export interface Soil {
  readonly site: Site;
  /** Mean annual vapour pressure deficit [kPa]. */
  readonly deficit: number;
  /** Whether rain decides how much the ground can evaporate; otherwise the climate does. */
  readonly byRain: boolean;
}

/**
 * The soil one day on.
 *
 * @example the eight vectors of `test/published/soil-vectors.test.ts`
 */
export function nextDay(soil: Soil, state: SoilState, doy: number, air: AirDay): SoilState {
  const forcing = dayForcing(soil.site, doy, air.tmin, air.tmax);
  const rain = ema60(state.rain, Number.isNaN(air.precip) ? state.rain : air.precip);
  const demand = ema60(state.demand, forcing.referenceEt);
  const dry = soil.byRain ? wetnessByRain(soil.deficit, rainRatio(rain, demand)) : wetnessByClimate(soil.deficit);
  const column = conduct(state.column, surfaceTemperature(forcing, soil.site.irrigated ? 1 : dry));
  return { column, rain, demand };
}

/** Days of smooth climatology before the record begins. */
const SPIN_UP = 730;

/** The soil on the evening before `start`: all nodes at the mean surface temperature of a usual year, then two usual years. */
function spunUp(soil: Soil, climatology: Climatology, start: Day): SoilState {
  let [surface, demand] = [0, 0];
  const days = Array.from({ length: 365 }, (_, i) => start - 365 + i);
  for (const day of days) {
    const { tmin, tmax } = climatology.usual(day);
    const forcing = dayForcing(soil.site, dayOfYear(day), tmin, tmax);
    surface += surfaceTemperature(forcing, soil.site.irrigated ? 1 : wetnessByClimate(soil.deficit)) / days.length;
    demand += forcing.referenceEt / days.length;
  }
  let state: SoilState = { column: uniform(surface), rain: demand, demand };
  for (let day = start - SPIN_UP; day < start; day++) {
    state = nextDay(soil, state, dayOfYear(day), { ...climatology.usual(day), precip: Number.NaN });
  }
  return state;
}

/** Soil columns of a run of days. */
export interface SoilRun {
  readonly start: Day;
  readonly states: readonly SoilState[];
}

/** The soil through `[from, to)` from the state of the evening before. */
export function run(soil: Soil, before: SoilState, from: Day, to: Day, airOn: (day: Day) => AirDay): SoilRun {
  const states: SoilState[] = [];
  let state = before;
  for (let day = from; day < to; day++) {
    state = nextDay(soil, state, dayOfYear(day), airOn(day));
    states.push(state);
  }
  return { start: from, states };
}

/** Soil temperature at a depth through a run [°C]. */
export const depthSeries = ({ start, states }: SoilRun, depth: Metres): DailySeries => ({
  start,
  values: Float64Array.from(states, ({ column }) => temperatureAt(column, depth)),
});

/** The air of a weather series, day by day. */
export function airOf(weather: WeatherSeries): (day: Day) => AirDay {
  const [tmin, tmax, precip] = [signal(weather, 'tmin'), signal(weather, 'tmax'), signal(weather, 'precip')];
  return (day) => ({ tmin: at(tmin, day), tmax: at(tmax, day), precip: at(precip, day) });
}

/** The soil under a whole record without holes, after spin-up. */
export function soilUnder(weather: WeatherSeries, soil: Soil, climatology: Climatology): SoilRun {
  return run(soil, spunUp(soil, climatology, weather.start), weather.start, weatherEnd(weather), airOf(weather));
}

/** A soil as its climatology makes it. */
export const soilOf = (site: Site, climatology: Climatology, byRain: boolean): Soil => ({
  site,
  deficit: climatology.deficit,
  byRain,
});
