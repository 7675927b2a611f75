import { type Day, formatDay, inYear, yearOf } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import { at } from '../base/series.ts';
import {
  FEWEST_YEARS,
  type KnownWeather,
  knownWeather,
  type Provenance,
  staleProblems,
  type WeatherInput,
} from './known-weather.ts';
import { type SiteDays, siteDays } from './site-days.ts';
import { depthSeries, soilOf, soilUnder } from './soil.ts';
import type { Texture } from './soil-parameters.ts';
import { offsetSd, type Reading, siteOffset } from './thermometer.ts';
import { type Ground, type Trace, traceFrom } from './trace.ts';

/** The runs of weather that a plan is made from, and what is the same in all of them. */
export interface Climate extends SiteDays {
  /** What has been seen, then each past year; the soil with one possible error of the model each. */
  readonly traces: readonly Trace[];
  /** The first of them with the soil as the model has it: what is read off for today. */
  readonly modelled: Trace;
  /** Each past year from its beginning, as if this season had not been seen. */
  past(seasonStart: Day, seasonEnd: Day): readonly Trace[];
  /** The last observed day; null where nothing was observed. */
  readonly observedThrough: Day | null;
  readonly forecastThrough: Day | null;
  provenance(day: Day): Provenance;
}

/** As many past years as climate normals have; the latest ones. */
const MOST_YEARS = 30;
const GOOD_YEARS = 20;
/** Days before a season that a trace holds, for means and sums that began earlier. */
const LEAD = 400;
/** Share of filled days above which a year is no weather of its own. */
const FILLED = 0.1;

/** What the traces are made from. */
export interface ClimateInput extends WeatherInput {
  readonly texture?: Texture | undefined;
  /** The lawn's own thermometer. */
  readonly readings?: readonly Reading[] | undefined;
  /** The last day that a window may reach. */
  readonly to: Day;
}

/** The traces of a plan, or null with the reason where the weather cannot carry one. */
export function climateOf(input: ClimateInput): {
  readonly climate: Climate | null;
  readonly problems: readonly Problem[];
} {
  const { value: known, problems: weatherProblems } = knownWeather(input);
  if (!known) return { climate: null, problems: weatherProblems };
  const { record, climatology, filledDays, observedThrough, forecastThrough, provenance } = known;
  const through = record.start + record.tmin.length - 1;
  const soil = soilOf(input.site, climatology, input.texture);
  const run = soilUnder(record, soil, climatology);
  const given = (input.readings ?? []).filter(({ day }) => day <= input.asOf);
  const seen = (day: Day) => day >= record.start && day <= through && provenance(day) === 'observed';
  const readings = given.filter(({ day }) => seen(day));
  const site = siteOffset(readings, (day, depth) => at(depthSeries(run, depth, soil), day));
  const unused = [
    ...given
      .filter(({ day }) => !seen(day))
      .map((one) => ({ one, why: 'no weather was seen on that day to compare it with' })),
    ...site.frozen.map((one) => ({ one, why: 'frozen or nearly frozen ground tells nothing of how the soil differs' })),
  ].map(({ one, why }) => problem('reading-unused', { date: formatDay(one.day), why }, null));
  const ground: Ground = { record, soil, run, offset: site.offset, offsetSd: offsetSd(site.sd, site.used) };

  const usable = (from: Day, to: Day): boolean => {
    if (from < record.start || to > through) return false;
    let count = 0;
    for (let day = from; day <= to; day++) if (filledDays.has(day)) count++;
    return count <= FILLED * (to - from + 1);
  };
  /** Distances to the same day of each past year that the record holds, nearest first. */
  const yearsBack = (day: Day): number[] => {
    const distances: number[] = [];
    for (let year = yearOf(day) - 1; inYear(day, year) >= record.start; year--) distances.push(day - inYear(day, year));
    return distances;
  };

  const next = through + 1;
  const backs = yearsBack(next)
    .filter((back) => usable(next - back, next - back + 363))
    .slice(0, MOST_YEARS);
  const anomaly = observedThrough === null ? 0 : recentAnomaly(known, through);
  const span = { from: input.from - LEAD, to: input.to + 1, moved: 0, anomaly };
  const traces = backs.map((back) =>
    traceFrom(ground, { ...span, label: String(yearOf(next - back)), back, seed: yearOf(next - back) }),
  );
  const pasts = new Map<Day, readonly Trace[]>();
  const past = (seasonStart: Day, seasonEnd: Day) => {
    const made =
      pasts.get(seasonStart) ??
      yearsBack(seasonStart)
        .filter((back) => usable(seasonStart - back, seasonEnd - back))
        .slice(0, MOST_YEARS)
        .map((back) => {
          const year = yearOf(seasonStart - back);
          return traceFrom(ground, {
            label: String(year),
            from: seasonStart - LEAD,
            to: input.to + 1,
            moved: back,
            back,
            anomaly: 0,
            seed: year,
          });
        });
    pasts.set(seasonStart, made);
    return made;
  };

  const years = Math.min(traces.length, past(input.from, input.from + 364).length);
  const problems = [...weatherProblems, ...staleProblems(known, input.asOf), ...doubts(site.doubted), ...unused];
  const [nearest] = backs;
  if (years < FEWEST_YEARS || nearest === undefined) {
    return {
      climate: null,
      problems: [...problems, problem('weather-too-short', { years, needed: FEWEST_YEARS }, known.file)],
    };
  }
  if (years < GOOD_YEARS) problems.push(problem('weather-few-years', { years }, known.file));
  const modelled = traceFrom(ground, { ...span, label: 'modelled', back: nearest, seed: null });
  const days = siteDays(record, filledDays, input.site.latitude, span);
  return {
    climate: Object.assign(days, { traces, modelled, past, observedThrough, forecastThrough, provenance }),
    problems,
  };
}

/** How much warmer than usual the last month of a record was [°C]. */
function recentAnomaly({ record, climatology }: KnownWeather, through: Day): number {
  const MONTH = 30;
  let sum = 0;
  for (let day = through - MONTH + 1; day <= through; day++) {
    const usual = climatology.usual(day);
    const i = day - record.start;
    sum += ((record.tmin[i] as number) + (record.tmax[i] as number) - usual.tmin - usual.tmax) / 2;
  }
  return sum / MONTH;
}

/** Readings that are more likely a mistake than news. */
const doubts = (doubted: ReturnType<typeof siteOffset>['doubted']): Problem[] =>
  doubted.map(({ reading, modelled, sds }) =>
    problem(
      'reading-doubted',
      {
        date: formatDay(reading.day),
        reads: `${reading.value.toFixed(1)} °C`,
        modelled: `${modelled.toFixed(1)} °C`,
        sds: Number(sds.toFixed(1)),
      },
      null,
    ),
  );
