import type { Day } from '../base/day.ts';
import type { Problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import { stressAt } from '../climate/stress.ts';
import { type Climate, climateOf } from '../climate/traces.ts';
import { entriesInForce } from '../model/corrections.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Program } from '../model/program.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { type Assigned, assign, programsOf, sizesOf } from './assign.ts';
import { WHOLE } from './caps.ts';
import { climateInputOf } from './climate-input.ts';
import { knownOn } from './condition.ts';
import type { Ground, PublishedDay } from './ground.ts';
import { placeSteps } from './place.ts';
import type { PlacedStep } from './placed.ts';
import { type SeasonYear, seasonsOf } from './season-year.ts';
import { bySoilTest } from './soil-test/by-soil-test.ts';
import type { TestedStep } from './soil-test/tested.ts';
import { halfwayOn } from './to-come.ts';
import { withinCaps } from './within-caps.ts';

/** Everything that a season is planned from. Plain data; the as-of day is an argument, never the clock. */
export interface PlanInput {
  readonly program: Program;
  /** Programs of areas that have one of their own, by area; left out where none has. */
  readonly areaPrograms?: ReadonlyMap<string, Program>;
  readonly products: ReadonlyMap<string, Product>;
  readonly lawn: Lawn;
  readonly journal: Journal;
  /** The lawn's own weather; days after the as-of day are not looked at. */
  readonly observed: WeatherSeries | null;
  /** Past years from other files; where two hold the same day, `observed` wins, then the later of these. */
  readonly history: readonly WeatherSeries[];
  readonly forecast: WeatherSeries | null;
  /** Whether files of the lawn's own are among the weather (true when left out): a few days of those are a mistake. */
  readonly ofFiles?: boolean;
  /** The days that subscribers have seen. */
  readonly previous: readonly PublishedDay[];
  readonly asOf: Day;
}

/** A window may reach this far past its season. */
const BEYOND = 150;

/** Every step of a lawn's programs, placed and dosed; not yet in words. */
export interface PlacedSeason {
  /** The season of the as-of day, by the lawn's own program. */
  readonly season: SeasonYear;
  readonly placed: readonly TestedStep[];
  readonly ground: Ground;
  readonly sizes: ReadonlyMap<string, SquareMetres>;
  /** The last day that a window may reach. */
  readonly to: Day;
  /** What was wrong with the weather. */
  readonly problems: readonly Problem[];
}

/** The season of the as-of day, and the steps in it and in the one that is near. */
function turnsOf({ program, lawn: whole, asOf, areaPrograms = new Map() }: PlanInput) {
  const lawn = knownOn(whole, asOf);
  const inTurn = assign(lawn, program, areaPrograms, asOf);
  const [season] = seasonsOf(program, lawn.location.latitude < 0, asOf);
  const seasons = [season, ...inTurn.flat().map((one) => one.season)];
  const from = Math.min(...seasons.map(({ start }) => start));
  const to = Math.max(...seasons.map(({ end }) => end)) + BEYOND;
  return { inTurn, season, lawn, span: { asOf, from, to } };
}

/** The climate of a plan: its traces and what is the same in all of them; null where the weather cannot carry one. */
export function climateFor(input: PlanInput): ReturnType<typeof climateOf> {
  const { observed, history, forecast, lawn } = input;
  const weather = { observed, history, forecast, ofFiles: input.ofFiles ?? true };
  const asked = climateInputOf(lawn, weather, turnsOf(input).span);
  const series = [observed, ...history, forecast];
  const rest = JSON.stringify({ ...asked, observed: null, history: history.length, forecast: null });
  const known = latest.find((one) => one.rest === rest && one.series.every((each, i) => each === series[i]));
  if (known) return known.made;
  const made = climateOf(asked);
  latest = [{ series, rest, made }, ...latest.slice(0, MOST_LATEST - 1)];
  return made;
}

/** Of a lawn that is planned again, for work that was done or with another journal, the climate is the same. */
let latest: readonly {
  readonly series: readonly (WeatherSeries | null)[];
  readonly rest: string;
  readonly made: ReturnType<typeof climateOf>;
}[] = [];
const MOST_LATEST = 3;

/** Places the steps of a lawn's programs on a climate of theirs. */
export function placeOn(climate: Climate, input: PlanInput, problems: readonly Problem[] = []): PlacedSeason {
  const { program, asOf, products, areaPrograms = new Map() } = input;
  const { inTurn, season, lawn, span } = turnsOf(input);
  const programs = new Map(
    [...programsOf(lawn, program, areaPrograms)].flatMap(([own, areas]) => areas.map((area) => [area, own] as const)),
  );
  const ground: Ground = {
    program,
    programOf: (area) => programs.get(area) ?? program,
    lawn,
    products,
    journal: entriesInForce(input.journal).filter(({ date }) => date <= asOf),
    climate,
    stress: stressAt(lawn.location.latitude),
    asOf,
    previous: input.previous,
    isWhole: () => false,
    steps: new Map(inTurn.flat().map(({ id, step }) => [id, step])),
  };
  const sizes = sizesOf(lawn);
  return { season, ...placedOn(ground, inTurn, sizes), sizes, to: span.to, problems };
}

/** Placed and dosed steps. Whether a first pass has put down the whole is known once they are dosed: then they are placed anew. */
function placedOn(
  ground: Ground,
  inTurn: readonly (readonly Assigned[])[],
  sizes: ReadonlyMap<string, SquareMetres>,
): Pick<PlacedSeason, 'placed' | 'ground'> {
  const undosed: PlacedStep[] = [];
  for (const assigned of inTurn) undosed.push(...placeSteps(ground, assigned, undosed));
  const placed = bySoilTest(withinCaps(undosed, ground, sizes), ground, sizes);
  const whole = wholePasses(placed);
  if (whole.size === 0) return { placed, ground };
  const isWhole: Ground['isWhole'] = (step, { year }, area) =>
    ground.isWhole(step, { year }, area) || whole.has(keyOf(step, year, area));
  return placedOn({ ...ground, isWhole }, inTurn, sizes);
}

const keyOf = (step: string, year: number, area: string): string => `${year} ${step} ${area}`;

/** First passes that leave nothing for a second. */
const wholePasses = (placed: readonly TestedStep[]): ReadonlySet<string> =>
  new Set(
    placed.flatMap((one) =>
      [...one.progress.firstPasses.keys()].flatMap((area) => {
        const halfway = halfwayOn(one, area, one.shares.get(area) ?? WHOLE);
        return halfway?.target === 0 ? [keyOf(one.id, one.season.year, area)] : [];
      }),
    ),
  );

/** Places the steps of a lawn's programs; null where the weather cannot carry a plan. */
export function placeSeason(input: PlanInput): {
  readonly value: PlacedSeason | null;
  readonly problems: readonly Problem[];
} {
  const { climate, problems } = climateFor(input);
  return { value: climate && placeOn(climate, input, problems), problems };
}
