/**
 * A station with all that no parameter changes worked out once: radiation, evaporative demand, rain, snow on the ground.
 * The physics is the program's own; `test/measured/soil-accuracy.test.ts` holds the two runs against each other.
 */
import { dayOfYear } from '../../src/base/day.ts';
import { conduction, NODES, temperaturesAt, uniform } from '../../src/climate/conduction.ts';
import { parametersAt, type SoilParameters } from '../../src/climate/soil-parameters.ts';
import {
  type DayForcing,
  dayForcing,
  ema60,
  placeOf,
  rainRatio,
  snowNext,
  surfaceTemperature,
  wetnessByRain,
} from '../../src/climate/surface.ts';
import type { WeatherSeries } from '../../src/model/weather.ts';
import { scoreOf } from './score.ts';
import { DEPTHS, type Station } from './stations.ts';

/** One day, with net radiation under cloud beside what the daily range suggests. */
interface PreparedDay {
  readonly forcing: { -readonly [K in keyof DayForcing]: DayForcing[K] };
  readonly longwave: number;
  readonly solar: number;
  readonly wet: boolean;
  readonly ratio: number;
  readonly snow: number;
}

export interface Prepared {
  readonly station: Station;
  readonly spinUp: readonly PreparedDay[];
  readonly days: readonly PreparedDay[];
  /** Ratio of usual rain to usual demand. */
  readonly usualRatio: number;
}

const SPIN_UP = 730;
const WET_DAY = 1;

export function prepare(station: Station): Prepared {
  const { site, climatology, weather } = station;
  const place = placeOf(site);
  const daysOf = (
    { start, tmin, tmax, precip }: WeatherSeries,
    state: { rain: number; demand: number; snow: number },
  ) =>
    Array.from(tmin, (low, i): PreparedDay => {
      const [high, rain] = [tmax[i] as number, precip[i] as number];
      const forcing = dayForcing(place, dayOfYear(start + i), low, high);
      const dark = dayForcing(place, dayOfYear(start + i), low, high, 0).netRadiation;
      const known = !Number.isNaN(rain);
      if (known) {
        state.demand = ema60(state.demand, forcing.referenceEt);
        state.rain = ema60(state.rain, rain);
      }
      state.snow = snowNext(state.snow, forcing.air, known ? rain : 0);
      return {
        forcing,
        longwave: dark,
        solar: forcing.netRadiation - dark,
        wet: rain > WET_DAY,
        ratio: rainRatio(state.rain, state.demand),
        snow: state.snow,
      };
    });
  const usual = climatology.weather(weather.start - SPIN_UP, weather.start);
  const year = daysOf(usual, { rain: 0, demand: 0, snow: 0 }).slice(-365);
  const demand = year.reduce((sum, { forcing }) => sum + forcing.referenceEt, 0) / year.length;
  const state = { rain: climatology.rain, demand, snow: 0 };
  const spinUp = daysOf(usual, state);
  return { station, spinUp, days: daysOf(weather, state), usualRatio: rainRatio(climatology.rain, demand) };
}

/** Soil columns of the whole record, five values a day. */
export function columnsBy(fitted: SoilParameters, { station, spinUp, days, usualRatio }: Prepared): Float64Array {
  const { deficit, amplitude } = station.climatology;
  const p = parametersAt(fitted, amplitude);
  const conduct = conduction(p.D, p.h);
  const usual = wetnessByRain(p, deficit, usualRatio);
  const year = spinUp.slice(-365);
  const column = uniform(
    year.reduce((sum, one) => sum + surfaceTemperature(p, one.forcing, usual, 0), 0) / year.length,
  );
  const step = ({ forcing, longwave, solar, wet, ratio, snow }: PreparedDay) => {
    forcing.netRadiation = longwave + solar * (wet ? p.wetDay : 1);
    conduct(column, surfaceTemperature(p, forcing, wetnessByRain(p, deficit, ratio), snow));
  };
  for (const day of spinUp) step(day);
  const columns = new Float64Array(days.length * NODES.length);
  for (const [i, day] of days.entries()) {
    step(day);
    columns.set(column, i * NODES.length);
  }
  return columns;
}

/** Mean of the station's RMSE over its depths [°C]. */
export function rmseBy(p: SoilParameters, prepared: Prepared): number {
  const { weather, soil } = prepared.station;
  const columns = columnsBy(p, prepared);
  const all = DEPTHS.flatMap((depth) => {
    const measured = soil[depth];
    if (!measured) return [];
    return [scoreOf({ start: weather.start, values: temperaturesAt(columns, depth / 100, p.kf) }, measured).rmse];
  });
  return all.reduce((sum, one) => sum + one, 0) / all.length;
}
