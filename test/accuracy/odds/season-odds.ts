/** What plans said of one past season of a station some weeks ahead, beside what came. */
import { type Day, yearOf } from '../../../src/base/day.ts';
import { contentHash } from '../../../src/base/hash.ts';
import { groundOf } from '../../../src/climate/ground.ts';
import type { ErrorRun } from '../../../src/climate/soil-error.ts';
import { type Trace, traceFrom } from '../../../src/climate/trace.ts';
import type { Climate } from '../../../src/climate/traces.ts';
import { type Step, triggersOf } from '../../../src/model/program.ts';
import { cut, type WeatherSeries } from '../../../src/model/weather.ts';
import type { Linked } from '../../../src/read/link.ts';
import { othersBefore, seasonIn } from '../../../src/replay.ts';
import { climateInputOf } from '../../../src/schedule/climate-input.ts';
import { climateFor, type PlacedSeason, placeOn } from '../../../src/schedule/placed-season.ts';
import type { SeasonYear } from '../../../src/schedule/season-year.ts';
import { resolveTrigger } from '../../../src/schedule/triggers.ts';
import { edgeDay, type Window, windowIn } from '../../../src/schedule/windows.ts';
import { judgedTriggers } from './programs.ts';

/** Weeks before the fixed median on which a plan is made. */
export const LEADS = [8, 4, 2, 1] as const;

/** What came: with one path of the soil model's stated error, and without. */
export interface Came {
  readonly withError: Day | null;
  readonly clean: Day | null;
}

/** A trigger's spread some weeks ahead. */
export interface TriggerCase {
  readonly station: string;
  readonly year: number;
  readonly label: string;
  readonly lead: number;
  readonly asOf: Day;
  /** The median of the other years. */
  readonly fixed: Day;
  readonly p10: Day | null;
  readonly p50: Day | null;
  readonly p90: Day | null;
  readonly came: Came;
}

/** A chosen day some weeks ahead of a step's usual opening. */
export interface ChoiceCase {
  readonly station: string;
  readonly year: number;
  readonly step: string;
  readonly lead: number;
  readonly asOf: Day;
  /** The share of runs of weather whose window holds the day, as the plan said. */
  readonly said: number;
  readonly held: { readonly withError: boolean; readonly clean: boolean };
  readonly opened: Day | null;
}

export interface SeasonOdds {
  readonly triggers: readonly TriggerCase[];
  readonly choices: readonly ChoiceCase[];
}

export interface OddsOptions {
  readonly leads?: readonly number[];
  /** How many days of the real weather beyond the as-of day a plan is told, as a forecast without any error would. */
  readonly foreseen?: number;
  /** Leaves the chosen days out. */
  readonly triggersOnly?: boolean;
}

/**
 * Plans a season again from each day that is a lead ahead of a fixed median.
 *
 * @param lawns The same lawn under several programs: a trigger that stands in more than one is judged once.
 */
export function seasonOdds(
  station: string,
  lawns: readonly [Linked, ...Linked[]],
  record: WeatherSeries,
  year: number,
  { leads = LEADS, foreseen = 0, triggersOnly = false }: OddsOptions = {},
): SeasonOdds {
  const [{ lawn, program }] = lawns;
  const season = seasonIn(program, lawn.location.latitude < 0, year);
  const weather = { observed: othersBefore(record, season.end), history: [], forecast: null, ofFiles: true };
  const inputOn = (linked: Linked, asOf: Day) => ({
    ...linked,
    ...weather,
    forecast: foreseen > 0 ? cut(record, asOf + 1, asOf + 1 + foreseen) : null,
    journal: [],
    previous: [],
    asOf,
  });
  const climates = new Map<Day, Climate>();
  const climateOn = (asOf: Day): Climate => {
    const found = climates.get(asOf) ?? climateFor(inputOn(lawns[0], asOf)).climate;
    if (!found) throw new Error(`${station} ${year}: no plan`);
    climates.set(asOf, found);
    return found;
  };
  const real = realTraces(
    climateInputOf(lawn, weather, { asOf: season.end, from: season.start, to: season.end }),
    station,
    season,
  );
  const before = climateOn(season.start);
  const past = before.past(season.start, season.end);
  const dayIn = (trigger: Parameters<typeof resolveTrigger>[0], trace: Trace, site: Climate): Day | null => {
    const day = resolveTrigger(trigger, { trace, site, season, opening: null, referenceDay: () => null });
    return day !== null && day <= season.end ? day : null;
  };
  const median = (days: readonly (Day | null)[], share: number) =>
    edgeDay(
      days.map((day) => (day === null ? null : { opens: day, best: day, closes: day, late: null })),
      'opens',
      share,
    );

  const triggers = judgedTriggers(lawns.flatMap((one) => one.program.steps)).flatMap(
    ({ label, trigger }): TriggerCase[] => {
      const fixed = median(
        past.map((trace) => dayIn(trigger, trace, before)),
        0.5,
      );
      if (fixed === null) return [];
      const came = {
        withError: dayIn(trigger, real.withError, before),
        clean: dayIn(trigger, real.clean, before),
      };
      return leads.map((lead) => {
        const asOf = fixed - 7 * lead;
        const climate = climateOn(asOf);
        const days = climate.traces.map((trace) => dayIn(trigger, trace, climate));
        const [p10, p50, p90] = [median(days, 0.1), median(days, 0.5), median(days, 0.9)];
        return { station, year, label, lead, asOf, fixed, p10, p50, p90, came };
      });
    },
  );

  const context = { site: before, season };
  const choicesOf = (linked: Linked) => {
    const plans = new Map<Day, PlacedSeason>();
    const planOn = (asOf: Day): PlacedSeason => {
      const found = plans.get(asOf) ?? placeOn(climateOn(asOf), inputOn(linked, asOf));
      plans.set(asOf, found);
      return found;
    };
    return linked.program.steps.filter(byWeather).flatMap((step): ChoiceCase[] => {
      const windows = past.map((trace) => windowIn(step, { ...context, trace, referenceDay: () => null }));
      const usual = edgeDay(windows, 'opens', 0.5);
      if (usual === null) return [];
      return leads.flatMap((lead) => {
        const asOf = usual - 7 * lead;
        const placed = planOn(asOf).placed.filter((other) => other.season.year === year);
        const one = placed.find((other) => other.step.id === step.id);
        if (!one?.choice) return [];
        const { day, inWindow } = one.choice;
        const referenceDay = (id: string) => placed.find((other) => other.step.id === id)?.choice?.day ?? null;
        const windowOf = (trace: Trace) => windowIn(step, { ...context, trace, referenceDay });
        const holds = (window: Window | null) => window !== null && window.opens <= day && day <= window.closes;
        const [withError, clean] = [windowOf(real.withError), windowOf(real.clean)];
        const held = { withError: holds(withError), clean: holds(clean) };
        return [
          {
            station,
            year,
            step: `${linked.program.id}: ${step.id}`,
            lead,
            asOf,
            said: inWindow,
            held,
            opened: withError?.opens ?? null,
          },
        ];
      });
    });
  };
  return { triggers, choices: triggersOnly ? [] : lawns.flatMap(choicesOf) };
}

/** Whether weather decides a step's window. */
const byWeather = (step: Step): boolean =>
  triggersOf(step).some(({ kind }) => kind === 'soil' || kind === 'degree-days' || kind === 'air' || kind === 'growth');

/** The season's real weather over the plan's own soil model: with a path of its stated error that no trace has, and without. */
function realTraces(input: ReturnType<typeof climateInputOf>, station: string, season: SeasonYear) {
  const { value } = groundOf(input);
  if (!value) throw new Error(`${station} ${season.year}: no ground`);
  const { ground } = value;
  const traceWith = (error: ErrorRun | null) =>
    traceFrom(ground, {
      label: 'real',
      from: season.start - 400,
      to: season.end + 1,
      moved: 0,
      back: 366,
      ahead: null,
      error,
    });
  return { withError: traceWith({ seed: seedOf(station, yearOf(season.start)), sign: 1 }), clean: traceWith(null) };
}

/** Beyond every year, which seed the traces. */
const seedOf = (station: string, year: number): number => Number.parseInt(contentHash(`${station} ${year}`, 8), 16);
