import type { Dose } from '../amounts/product.ts';
import { type Day, formatDay } from '../base/day.ts';
import { type Display, displayOf } from '../base/display.ts';
import { contentHash } from '../base/hash.ts';
import { inOrder, type Problem, problem } from '../base/problem.ts';
import { zoneAt } from '../base/zone.ts';
import { stressAt } from '../climate/stress.ts';
import { climateOf } from '../climate/traces.ts';
import { entriesInForce } from '../model/corrections.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import { isPesticide, type Product } from '../model/product.ts';
import type { Program, Step } from '../model/program.ts';
import type { Season } from '../model/season.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { applicationOf } from './application.ts';
import { assign, programsOf, sizesOf } from './assign.ts';
import { climateInputOf } from './climate-input.ts';
import type { Ground, PublishedDay } from './ground.ts';
import { limitProblems, limitsOf } from './limits.ts';
import { movedAgainstUsual, whatNow } from './now.ts';
import { placeSteps } from './place.ts';
import type { PlacedStep } from './placed.ts';
import type { Writing } from './reasons.ts';
import { seasonsOf } from './season-year.ts';
import { shelfOf, workOf } from './shelf.ts';
import { shoppingFor } from './shopping.ts';
import { signalsOf, todayOf } from './signals.ts';
import { LEAST_CHANCE } from './windows.ts';
import { withinCaps } from './within-caps.ts';
import { en } from './words/en.ts';
import { forbiddenInWords } from './words/rules-en.ts';

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

/**
 * Plans a season: program × lawn × weather → dated applications with amounts and reasons.
 *
 * @returns The season, or null where the weather cannot carry one; problems either way. Days after `asOf` change nothing.
 * @example planSeason({ program, products, lawn, journal: [], observed, history: [], forecast: null, previous: [], asOf })
 */
export function planSeason(input: PlanInput): {
  readonly season: Season | null;
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
  const { climate, problems: weatherProblems } = climateOf(climateInputOf(lawn, weather, span));
  if (!climate) return { season: null, problems: weatherProblems };

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
  const areas = sizesOf(lawn);
  const undosed: PlacedStep[] = [];
  for (const assigned of inTurn) undosed.push(...placeSteps(ground, assigned, undosed));
  const placed = withinCaps(undosed, ground, areas);

  const units = lawn.display?.units ?? 'us';
  const language = lawn.display?.language ?? 'en-US';
  const currency = lawn.display?.currency ?? 'USD';
  const display = displayOf(units, language);
  const zone = lawn.timezone ?? zoneAt(lawn.location.latitude, lawn.location.longitude);
  const writing: Writing = { ground, areas, display, words: en, zone, minutesTaken: new Map() };
  const inTime = [...placed].sort((a, b) => dayOf(a) - dayOf(b));
  const applications = inTime.map((one) => applicationOf(one, writing));

  const today = todayOf(climate, season, asOf, southern, display, en);
  const shopping = shoppingFor(applications, { products, lawn, journal, asOf, display });
  const first = placed.filter((one) => one.season.start <= asOf);
  const limits = limitsOf(first, ground, areas);
  const problems = unique([
    ...weatherProblems,
    ...stepProblems(placed, display),
    ...limitProblems(first, limits, ground, display),
  ]);
  const plan: Season = {
    kind: 'season',
    version: 1,
    lawn: lawn.id,
    lawnName: lawn.name ?? lawn.id,
    program: program.id,
    programName: program.name,
    asOf: formatDay(asOf),
    timezone: zone,
    feedKey: lawn.feed?.key ?? contentHash(lawn.id, 12),
    remindersMin: (lawn.working?.remind ?? []).map((days) => Math.round(days * 24 * 60)),
    display: { units, language, currency },
    season: { year: season.year, start: formatDay(season.start), end: formatDay(season.end) },
    weather: {
      observedThrough: climate.observedThrough === null ? null : formatDay(climate.observedThrough),
      forecastThrough: climate.forecastThrough === null ? null : formatDay(climate.forecastThrough),
      traces: climate.traces.length,
      generated: climate.provenance(to) === 'generated',
      sources: [observed, ...history, forecast].flatMap((series) => (series ? [series.source] : [])),
    },
    now: whatNow({
      applications,
      names: productNames(products),
      begun: ({ id, season: year, window }) =>
        input.previous.some((one) => one.step === id && one.season === year) ||
        journal.some(({ date }) => formatDay(date) <= (window.closes.p50 ?? '')),
      shopping,
      asOf,
      display,
      words: en,
      currency,
    }),
    moved: movedAgainstUsual(applications, today, display, en),
    today,
    applications,
    shopping,
    shelf: shelfOf(lawn, products, workOf(journal, applications, products)),
    limits,
    signals: signalsOf(climate, season),
    problems: inOrder(problems),
  };
  return { season: plan, problems: plan.problems };
}

/** Problems without repetition: two seasons may have the same one. */
function unique(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ code, message, line }) => {
    const key = `${code} ${message} ${line}`;
    return !seen.has(key) && seen.add(key);
  });
}

const productNames =
  (products: ReadonlyMap<string, Product>) =>
  (id: string): string =>
    products.get(id)?.name ?? id;

/** The day that an application stands at in a list: done or chosen, else its middle opening. */
function dayOf({ progress, choice, windows, season }: PlacedStep): Day {
  const opening = windows.ofTraces.find((window) => window !== null)?.opens;
  return progress.doneOn ?? choice?.day ?? opening ?? season.end;
}

/** Why a step's amount is left open. */
function missingProblem({ id, apply }: Step, dose: Extract<Dose, { rate: null }>): Problem {
  const need =
    apply?.kind === 'nutrient'
      ? Object.keys(apply.rates).join(', ')
      : apply?.kind === 'pesticide'
        ? apply.pesticide
        : (dose.product?.id ?? (apply && 'product' in apply ? apply.product : ''));
  switch (dose.missing) {
    case 'label':
      return problem('no-label', { step: id, need }, null);
    case 'product':
      return problem('no-product', { step: id, need }, null);
    case 'bag-rate':
      return problem('no-bag-rate', { step: id, product: need }, null);
    case 'density':
      return problem('no-density', { step: id, product: dose.product?.id ?? need }, null);
  }
}

/** What a step lacks: a product, a label, a working day. */
function stepProblems(placed: readonly PlacedStep[], display: Display): Problem[] {
  return placed.flatMap(({ id, step, season, dose, choice, status, chance, blocked, pinned }) => {
    const problems: Problem[] = [];
    if (status === 'done' || status === 'skipped' || status === 'dropped' || status === 'missed') return problems;
    if (dose?.rate === null) problems.push(missingProblem({ ...step, id }, dose));
    if (dose?.product && step.apply && 'rate' in step.apply && isPesticide(dose.product)) {
      problems.push(problem('pesticide-rate', { step: id, product: dose.product.id }, null));
    }
    if (pinned && blocked.length > 0) {
      const reasons = blocked.map((rule) => forbiddenInWords(rule, display));
      problems.push(problem('pinned-against', { step: id, reasons }, null));
    }
    if (!choice && chance >= LEAST_CHANCE) {
      const reasons = blocked.map((rule) => forbiddenInWords(rule, display));
      problems.push(problem('no-working-day', { step: id, season: season.year, reasons }, null));
    }
    return problems;
  });
}
