import { type Day, latestOnOrBefore, type MonthDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import { hasErrors, inOrder, type Problem, problem } from '../../base/problem.ts';
import { type Climate, climateOf } from '../../climate/traces.ts';
import { readAll, weatherOf } from '../../compile.ts';
import type { Lawn } from '../../model/lawn.ts';
import type { WeatherSeries } from '../../model/weather.ts';
import { climateInputOf } from '../../schedule/climate-input.ts';
import type { Io } from '../io.ts';
import { lookupFrom } from '../lookup.ts';
import { whichLawn } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { type KeptWeather, keptWeather } from './kept-weather.ts';

/** A lawn with its weather and climate, for commands that tell about those alone. */
export interface LawnClimate {
  readonly lawn: Lawn;
  readonly asOf: Day;
  /** The day that sums begin on. */
  readonly from: Day;
  readonly climate: Climate;
  /** The last observed day. */
  readonly today: Day;
  /** Every series of observed weather; later ones win. */
  readonly weather: readonly WeatherSeries[];
  readonly soil: KeptWeather['soil'];
  readonly display: Display;
  readonly problems: readonly Problem[];
}

/** The coldest time of the year, from which heat is counted. */
const newYear = (latitude: number): MonthDay => ({ month: latitude < 0 ? 7 : 1, day: 1 });

/** Reads a lawn, its files and what the cache holds of its services, into a climate. @param from The year's beginning when left out. */
export function lawnClimate(
  words: readonly string[],
  asOf: string | undefined,
  from: MonthDay | undefined,
  io: Io,
): LawnClimate | { readonly problems: readonly Problem[] } {
  const asked = whichLawn(words, asOf, io);
  if ('problems' in asked) return asked;
  const { value, problems } = readAll({ lawn: asked.source, lookup: lookupFrom(io.cwd), zips: zipLookup });
  if (!value || hasErrors(problems)) return { problems };
  const { lawn } = value;
  const kept = keptWeather(asked, io);
  const known = weatherOf(value, kept);
  const start = latestOnOrBefore(from ?? newYear(lawn.location.latitude), asked.asOf);
  const span = { asOf: asked.asOf, from: start, to: start + 366 };
  const { climate, problems: weatherProblems } = climateOf(climateInputOf(lawn, known, span));
  const all = inOrder([...problems, ...(kept?.problems ?? []), ...weatherProblems]);
  if (!climate || hasErrors(all)) return { problems: all };
  const today = climate.observedThrough;
  if (today === null) return { problems: [...all, problem('weather-unseen', {}, null)] };
  return {
    lawn,
    asOf: asked.asOf,
    from: start,
    climate,
    today,
    weather: [...known.history, ...(known.observed ? [known.observed] : [])],
    soil: kept?.soil ?? [],
    display: displayOf(lawn.display?.units ?? 'us', lawn.display?.language ?? 'en-US'),
    problems: all,
  };
}
