import { type Day, formatDay, yearOf } from '../base/day.ts';
import { contentHash } from '../base/hash.ts';
import { hasErrors, type Problem, problem } from '../base/problem.ts';
import { cut, type WeatherSeries, weatherEnd } from '../model/weather.ts';
import { type Climatology, climatologyOf } from './climatology.ts';
import { generate } from './generator.ts';
import { nearestPlace } from './nearest-place.ts';
import { filled, known, lastKnown, merge, placeOfDay, wholeYears } from './record.ts';
import type { Site } from './surface.ts';
import { suspicious } from './suspicious.ts';

/** Where a day's weather comes from. */
export type Provenance = 'observed' | 'filled' | 'forecast' | 'past-year' | 'generated';

/** The weather as it may be known on the as-of day, and the parts it was made from. */
export interface WeatherInput {
  readonly observed: WeatherSeries | null;
  /** Other files; where two hold the same day, `observed` wins, then the later of these. */
  readonly history: readonly WeatherSeries[];
  readonly forecast: WeatherSeries | null;
  readonly site: Site;
  /** Where to look for a reference climate; the height null where it is not known. */
  readonly position: { readonly longitude: number; readonly elevationM: number | null };
  /** Whether the lawn's own files are among the observed weather; a few days of those are a mistake, of a service not. */
  readonly ofFiles: boolean;
  readonly asOf: Day;
  /** The first season's start. */
  readonly from: Day;
}

/** One record without holes. */
export interface KnownWeather {
  readonly record: WeatherSeries;
  readonly climatology: Climatology;
  /** The last observed day; null where nothing was observed. */
  readonly observedThrough: Day | null;
  readonly forecastThrough: Day | null;
  /** Days filled from climatology. */
  readonly filledDays: ReadonlySet<Day>;
  provenance(day: Day): Provenance;
  /** The file to name in a problem about all of it. */
  readonly file: { readonly file: string } | null;
}

/** Whole past years from which on a record stands for its place; with fewer, generated years stand before it. */
export const FEWEST_YEARS = 5;
/** A record of fewer days says nothing of a climate; one that was meant as weather is then a mistake. */
const FEWEST_DAYS = 300;
/** Years that the generator makes: thirty to choose from, and one before the first. */
const GENERATED_YEARS = 32;

/**
 * Brings observed weather, forecast and, where the record is too short, generated years into one record.
 * Nothing after the as-of day is looked at, but the forecast.
 */
export function knownWeather(input: WeatherInput): {
  readonly value: KnownWeather | null;
  readonly problems: readonly Problem[];
} {
  const { site, position, ofFiles, asOf, from } = input;
  const sources = [...input.history, ...(input.observed ? [input.observed] : [])];
  const seen = merge(sources.map((series) => cut(series, series.start, asOf + 1)));
  const observedThrough = seen && lastKnown(seen);
  const file = sources.length > 0 ? { file: sources.at(-1)?.source ?? '' } : null;
  // A forecast without anything before it would stand behind a season that nobody saw.
  const ahead =
    seen && input.forecast && cut(input.forecast, (observedThrough ?? asOf - 1) + 1, weatherEnd(input.forecast));
  const forecastThrough = ahead && lastKnown(ahead);

  const years = seen ? wholeYears(seen, asOf).filter((year) => year < yearOf(asOf)).length : 0;
  const days = seen ? countKnown(seen) : 0;
  if (file && ofFiles && days < FEWEST_DAYS) {
    return { value: null, problems: [problem('weather-few-days', { days, needed: FEWEST_DAYS }, file)] };
  }
  const made = years < FEWEST_YEARS ? generatedBefore(site.latitude, position, seen?.start ?? from) : null;
  if (made && hasErrors(made.problems)) return { value: null, problems: made.problems };

  const raw = merge([made?.weather, seen, ahead].flatMap((series) => series ?? [])) as WeatherSeries;
  const through = forecastThrough ?? observedThrough ?? from - 1;
  const climatology = climatologyOf(made ? raw : (seen as WeatherSeries), site, asOf);
  const mended = filled(cut(raw, raw.start, through + 1), climatology.usual, asOf, (day) => placeOfDay(sources, day));
  const usualMiddle = (day: Day) => {
    const { tmin, tmax } = climatology.usual(day);
    return (tmin + tmax) / 2;
  };
  const doubts = (weather: WeatherSeries) => suspicious(weather, usualMiddle, (day) => placeOfDay(sources, day));
  const generatedTo = made ? weatherEnd(made.weather) : raw.start;
  const provenance = (day: Day): Provenance => {
    if (mended.filledDays.has(day)) return 'filled';
    if (day < generatedTo) return 'generated';
    if (observedThrough !== null && day <= observedThrough) return 'observed';
    if (forecastThrough !== null && day <= forecastThrough) return 'forecast';
    return made ? 'generated' : 'past-year';
  };
  return {
    value: {
      record: mended.weather,
      climatology,
      observedThrough,
      forecastThrough,
      filledDays: mended.filledDays,
      provenance,
      file,
    },
    problems: [...(made?.problems ?? []), ...mended.problems, ...(seen ? doubts(seen) : [])],
  };
}

function countKnown(weather: WeatherSeries): number {
  let count = 0;
  for (let day = weather.start; day < weatherEnd(weather); day++) if (known(weather, day)) count++;
  return count;
}

/** Years of made-up weather, after the climate of the nearest place that is known, that end before a day. */
function generatedBefore(latitude: number, { longitude, elevationM }: WeatherInput['position'], end: Day) {
  const { value, problems } = nearestPlace(latitude, longitude, elevationM);
  if (!value)
    return {
      weather: {
        source: '',
        start: end,
        tmin: new Float64Array(),
        tmax: new Float64Array(),
        precip: new Float64Array(),
      },
      problems,
    };
  const days = Math.round(GENERATED_YEARS * 365.25);
  const seed = Number.parseInt(contentHash(value.place.id, 8), 16);
  const weather = { ...generate(value.normals, seed, end - days, days), source: value.place.name };
  return { weather, problems };
}

/** Observed weather may end this many days before the as-of day; beyond that nothing is chosen close by. */
export const STALE = 3;

/** Says where observed weather ends long before the as-of day. */
export function staleProblems({ observedThrough, file }: KnownWeather, asOf: Day): Problem[] {
  if (observedThrough === null || asOf - observedThrough <= STALE) return [];
  return [problem('weather-ends-early', { last: formatDay(observedThrough), days: asOf - observedThrough }, file)];
}
