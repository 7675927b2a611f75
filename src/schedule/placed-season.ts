import type { Day } from '../base/day.ts';
import type { Problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import { stressAt } from '../climate/stress.ts';
import { climateOf } from '../climate/traces.ts';
import { entriesInForce } from '../model/corrections.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Program } from '../model/program.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { assign, programsOf, sizesOf } from './assign.ts';
import { climateInputOf } from './climate-input.ts';
import type { Ground, PublishedDay } from './ground.ts';
import { placeSteps } from './place.ts';
import type { PlacedStep } from './placed.ts';
import { type SeasonYear, seasonsOf } from './season-year.ts';
import { type DosedStep, withinCaps } from './within-caps.ts';

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
  readonly placed: readonly DosedStep[];
  readonly ground: Ground;
  readonly sizes: ReadonlyMap<string, SquareMetres>;
  /** The last day that a window may reach. */
  readonly to: Day;
}

/** Places the steps of a lawn's programs; null where the weather cannot carry a plan. */
export function placeSeason(input: PlanInput): {
  readonly value: PlacedSeason | null;
  readonly problems: readonly Problem[];
} {
  const { program, lawn, asOf, products } = input;
  const southern = lawn.location.latitude < 0;
  const areaPrograms = input.areaPrograms ?? new Map<string, Program>();
  const inTurn = assign(lawn, program, areaPrograms, asOf);
  const [season] = seasonsOf(program, southern, asOf);
  const planned = [season, ...inTurn.flat().map((one) => one.season)];
  const to = Math.max(...planned.map(({ end }) => end)) + BEYOND;
  const { observed, history, forecast } = input;
  const weather = { observed, history, forecast, ofFiles: input.ofFiles ?? true };
  const span = { asOf, from: Math.min(...planned.map(({ start }) => start)), to };
  const { climate, problems } = climateOf(climateInputOf(lawn, weather, span));
  if (!climate) return { value: null, problems };

  const journal = entriesInForce(input.journal).filter(({ date }) => date <= asOf);
  const programs = new Map(
    [...programsOf(lawn, program, areaPrograms)].flatMap(([own, areas]) => areas.map((area) => [area, own] as const)),
  );
  const ground: Ground = {
    program,
    programOf: (area) => programs.get(area) ?? program,
    lawn,
    products,
    journal,
    climate,
    stress: stressAt(lawn.location.latitude),
    asOf,
    previous: input.previous,
    steps: new Map(inTurn.flat().map(({ id, step }) => [id, step])),
  };
  const sizes = sizesOf(lawn);
  const undosed: PlacedStep[] = [];
  for (const assigned of inTurn) undosed.push(...placeSteps(ground, assigned, undosed));
  const placed = withinCaps(undosed, ground, sizes);
  return { value: { season, placed, ground, sizes, to }, problems };
}
