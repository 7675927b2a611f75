import { type Day, inYear, yearOf } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import { weatherEnd } from '../model/weather.ts';
import { type GroundInput, groundOf } from './ground.ts';
import { FEWEST_YEARS, type Provenance, staleProblems } from './known-weather.ts';
import { type SiteDays, siteDays } from './site-days.ts';
import { balancedRuns, type ErrorRun } from './soil-error.ts';
import { differenceTo, type Trace, traceFrom } from './trace.ts';

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
export interface ClimateInput extends GroundInput {
  /** The last day that a window may reach. */
  readonly to: Day;
}

/** The traces of a plan, or null with the reason where the weather cannot carry one. */
export function climateOf(input: ClimateInput): {
  readonly climate: Climate | null;
  readonly problems: readonly Problem[];
} {
  const { value, problems: groundProblems } = groundOf(input);
  if (!value) return { climate: null, problems: groundProblems };
  const { known, ground } = value;
  const { record, filledDays, observedThrough, forecastThrough, provenance } = known;
  const through = weatherEnd(record) - 1;

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
  const span = { from: input.from - LEAD, to: input.to + 1 };
  /** What is known, then a past year that joins on to it. */
  const joined = (back: number, label: string, error: ErrorRun | null) => {
    const ahead = observedThrough === null ? null : differenceTo(record, back);
    return traceFrom(ground, { ...span, label, moved: 0, back, ahead, error });
  };
  const runs = balancedRuns(backs.length);
  const traces = backs.map((back, i) => joined(back, String(yearOf(next - back)), runs[i] ?? null));
  const wholeYears = (seasonStart: Day, seasonEnd: Day): Trace[] => {
    const found = yearsBack(seasonStart)
      .filter((back) => usable(seasonStart - back, seasonEnd - back))
      .slice(0, MOST_YEARS);
    const errors = balancedRuns(found.length);
    return found.map((back, i) =>
      traceFrom(ground, {
        label: String(yearOf(seasonStart - back)),
        from: seasonStart - LEAD,
        to: input.to + 1,
        moved: back,
        back,
        ahead: null,
        error: errors[i] ?? null,
      }),
    );
  };
  const pasts = new Map<Day, readonly Trace[]>();
  const past = (seasonStart: Day, seasonEnd: Day) => {
    const made = pasts.get(seasonStart) ?? wholeYears(seasonStart, seasonEnd);
    pasts.set(seasonStart, made);
    return made;
  };

  const years = Math.min(traces.length, past(input.from, input.from + 364).length);
  const problems = [...groundProblems, ...staleProblems(known, input.asOf)];
  const [nearest] = backs;
  if (years < FEWEST_YEARS || nearest === undefined) {
    return {
      climate: null,
      problems: [...problems, problem('weather-too-short', { years, needed: FEWEST_YEARS }, known.file)],
    };
  }
  if (years < GOOD_YEARS) problems.push(problem('weather-few-years', { years }, known.file));
  const modelled = joined(nearest, 'modelled', null);
  const days = siteDays(record, filledDays, input.site.latitude, span);
  return {
    climate: Object.assign(days, { traces, modelled, past, observedThrough, forecastThrough, provenance }),
    problems,
  };
}
