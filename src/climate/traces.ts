import { type Day, dayOfYear, formatDay, inYear, yearOf } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { DailySeries } from '../base/series.ts';
import type { Metres } from '../base/units.ts';
import { cut, type WeatherSeries, weatherEnd } from '../model/weather.ts';
import { climatologyOf } from './climatology.ts';
import { filled, lastKnown, merge, placeOfDay } from './record.ts';
import { type AirDay, airOf, depthSeries, nextDay, type SoilState, soilOf, soilUnder } from './soil.ts';
import type { Site } from './surface.ts';

/** One possible run of weather: observed as far as that goes, then a past year. Days count as in the season it stands for. */
export interface Trace {
  readonly label: string;
  readonly tmin: DailySeries;
  readonly tmax: DailySeries;
  /** Daily mean soil temperature at a depth of 0.05 to 0.5 m [°C]. */
  soil(depth: Metres): DailySeries;
}

/** The runs of weather that a plan is made from. */
export interface Climate {
  /** What has been seen, then each past year. */
  readonly traces: readonly Trace[];
  /** Each past year from its beginning, as if this season had not been seen. */
  past(seasonStart: Day, seasonEnd: Day): readonly Trace[];
  readonly observedThrough: Day;
  readonly forecastThrough: Day | null;
  readonly problems: readonly Problem[];
}

/** As many past years as climate normals have; the latest ones. */
const MOST_YEARS = 30;
const FEWEST_YEARS = 5;
const GOOD_YEARS = 20;
/** Days before a season that a trace holds, for means and sums that began earlier. */
const LEAD = 400;
/** Share of filled days above which a year is no weather of its own. */
const FILLED = 0.1;

/** What the traces are made from: the weather, as far as it may be known on the as-of day. */
interface ClimateInput {
  readonly observed: WeatherSeries | null;
  readonly history: readonly WeatherSeries[];
  readonly forecast: WeatherSeries | null;
  readonly site: Site;
  readonly asOf: Day;
  /** The first season's start and the last day that a window may reach. */
  readonly from: Day;
  readonly to: Day;
}

/**
 * The traces of a plan, or null with the reason where the weather cannot carry one.
 * Nothing after the as-of day is looked at, but the forecast.
 */
export function climateOf(input: ClimateInput): {
  readonly climate: Climate | null;
  readonly problems: readonly Problem[];
} {
  const { site, asOf } = input;
  const sources = [...input.history, ...(input.observed ? [input.observed] : [])];
  const seen = merge(sources.map((series) => cut(series, series.start, asOf + 1)));
  const observedThrough = seen && lastKnown(seen);
  if (!seen || observedThrough === null) {
    const source = (input.observed ?? input.history[0])?.source;
    return {
      climate: null,
      problems: [problem('weather-too-short', { years: 0, needed: FEWEST_YEARS }, source ? { file: source } : null)],
    };
  }
  const climatology = climatologyOf(seen, site, asOf);
  const ahead = input.forecast && cut(input.forecast, observedThrough + 1, weatherEnd(input.forecast));
  const forecastThrough = ahead && lastKnown(ahead);
  const through = forecastThrough ?? observedThrough;
  const raw = merge(ahead ? [seen, ahead] : [seen]) as WeatherSeries;
  const mended = filled(cut(raw, raw.start, through + 1), climatology.usual, asOf, (day) => placeOfDay(sources, day));
  const record = mended.weather;
  const soil = soilOf(site, climatology, false);
  const soilRun = soilUnder(record, soil, climatology);
  const air = airOf(record);
  const stateOn = (day: Day): SoilState => soilRun.states[day - record.start] as SoilState;

  const usable = (from: Day, to: Day): boolean => {
    if (from < record.start || to > through) return false;
    let count = 0;
    for (let day = from; day <= to; day++) if (mended.filledDays.has(day)) count++;
    return count <= FILLED * (to - from + 1);
  };

  /** Days `[from, to)`: the record moved by `moved` days; beyond its end the record `back` days earlier. */
  const trace = (label: string, from: Day, to: Day, moved: number, back: number): Trace => {
    const airs: AirDay[] = [];
    const states: SoilState[] = [];
    let state = stateOn(through);
    for (let day = from; day < to; day++) {
      const there = day - moved;
      if (there <= through) {
        airs.push(there < record.start ? { tmin: Number.NaN, tmax: Number.NaN, precip: Number.NaN } : air(there));
        states.push(stateOn(Math.max(there, record.start)));
        continue;
      }
      let past = there - back;
      while (past > through) past -= back;
      airs.push(air(past));
      state = nextDay(soil, state, dayOfYear(day), air(past));
      states.push(state);
    }
    const soils = new Map<Metres, DailySeries>();
    const column = (name: 'tmin' | 'tmax') => ({ start: from, values: Float64Array.from(airs, (a) => a[name]) });
    return {
      label,
      tmin: column('tmin'),
      tmax: column('tmax'),
      soil: (depth) => {
        const known = soils.get(depth) ?? depthSeries({ start: from, states }, depth);
        soils.set(depth, known);
        return known;
      },
    };
  };

  /** Distances to the same day of each past year that the record holds, nearest first. */
  const yearsBack = (day: Day): number[] => {
    const distances: number[] = [];
    for (let year = yearOf(day) - 1; inYear(day, year) >= record.start; year--) distances.push(day - inYear(day, year));
    return distances;
  };

  const next = through + 1;
  const traces = yearsBack(next)
    .filter((back) => usable(next - back, next - back + 363))
    .slice(0, MOST_YEARS)
    .map((back) => trace(String(yearOf(next - back)), input.from - LEAD, input.to + 1, 0, back));
  const pasts = new Map<Day, readonly Trace[]>();
  const past = (seasonStart: Day, seasonEnd: Day) => {
    const known = pasts.get(seasonStart);
    if (known) return known;
    const made = yearsBack(seasonStart)
      .filter((back) => usable(seasonStart - back, seasonEnd - back))
      .slice(0, MOST_YEARS)
      .map((back) => trace(String(yearOf(seasonStart - back)), seasonStart - LEAD, input.to + 1, back, back));
    pasts.set(seasonStart, made);
    return made;
  };

  const years = Math.min(traces.length, past(input.from, input.from + 364).length);
  const file = { file: sources.at(-1)?.source ?? record.source };
  const problems = [...mended.problems];
  if (years < FEWEST_YEARS) problems.push(problem('weather-too-short', { years, needed: FEWEST_YEARS }, file));
  else if (years < GOOD_YEARS) problems.push(problem('weather-few-years', { years }, file));
  if (asOf - observedThrough > STALE) {
    problems.push(
      problem('weather-ends-early', { last: formatDay(observedThrough), days: asOf - observedThrough }, file),
    );
  }
  if (years < FEWEST_YEARS) return { climate: null, problems };
  return { climate: { traces, past, observedThrough, forecastThrough, problems }, problems };
}

/** Observed weather may end this many days before the as-of day; beyond that nothing is chosen close by. */
export const STALE = 3;

/** A signal of a trace by day, for the means of `air` triggers. */
export const airMean = (trace: Trace): DailySeries => ({
  start: trace.tmin.start,
  values: trace.tmin.values.map((low, i) => (low + (trace.tmax.values[i] as number)) / 2),
});
