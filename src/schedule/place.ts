import { type Dose, doseOf, nutrientsOf } from '../amounts/product.ts';
import { type Day, parseDay } from '../base/day.ts';
import { STALE } from '../climate/known-weather.ts';
import type { Trace } from '../climate/trace.ts';
import type { Climate } from '../climate/traces.ts';
import type { Condition } from '../model/condition.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import { type Program, type Step, triggersOf } from '../model/program.ts';
import type { Status } from '../model/season.ts';
import { type Choice, chooseDay } from './choose.ts';
import { type Progress, progressOf } from './progress.ts';
import { type Forbidden, forbiddenBy, type Placed } from './rules.ts';
import type { SeasonYear } from './season-year.ts';
import { chanceOf, edgeDay, LEAST_CHANCE, shareBy, shareHolding, type Windows, windowIn } from './windows.ts';

/** A day that was published before. */
export interface PublishedDay {
  readonly season: number;
  readonly step: string;
  readonly day: string;
  readonly dueSince: string | null;
}

/** What a program is placed on. */
export interface Ground {
  readonly program: Program;
  readonly lawn: Lawn;
  readonly products: ReadonlyMap<string, Product>;
  readonly journal: Journal;
  readonly climate: Climate;
  readonly asOf: Day;
  readonly previous: readonly PublishedDay[];
}

/** A step in its season: window, day, status, dose. */
export interface PlacedStep {
  readonly step: Step;
  readonly season: SeasonYear;
  readonly status: Status;
  readonly windows: Windows;
  readonly chance: number;
  readonly choice: Choice | null;
  readonly pinned: boolean;
  /** The first published day that passed without the work being done. */
  readonly dueSince: Day | null;
  /** Why the middle best day was not taken, where a rule forbids it. */
  readonly notBest: { readonly best: Day; readonly rule: Forbidden } | null;
  readonly dose: Dose | null;
  readonly progress: Progress;
}

/** In a window that has closed in this share of the traces nothing can be done any more. */
const CLOSED = 0.9;
/** Days from the as-of day on which nothing is chosen where the observed weather ends too early. */
const UNSEEN_DAYS = 5;

/**
 * Places the steps of a program in one season: by their references, then by earliest median close, then in file order.
 *
 * @param before Steps of an earlier season that are already placed.
 */
export function placeSteps(
  ground: Ground,
  steps: readonly Step[],
  season: SeasonYear,
  before: readonly PlacedStep[],
): PlacedStep[] {
  const past = ground.climate.past(season.start, season.end);
  const placed: PlacedStep[] = [];
  const windowsOf = new Map<Step, Windows>();
  const referenceDay = (id: string): Day | null => {
    const reference = placed.find(({ step }) => step.id === id);
    if (!reference || ['dropped', 'skipped', 'missed'].includes(reference.status)) return null;
    return reference.progress.doneOn ?? reference.choice?.day ?? null;
  };
  let waiting = [...steps];
  while (waiting.length > 0) {
    const isPlaced = (id: string) => placed.some(({ step }) => step.id === id);
    const ready = waiting.filter((step) =>
      triggersOf(step).every((one) => one.kind !== 'after' || one.step === undefined || isPlaced(one.step)),
    );
    if (ready.length === 0) throw new Error(`steps wait for each other: ${waiting.map(({ id }) => id).join(', ')}`);
    for (const step of ready) {
      // A step's references are placed for good once it is ready, so its windows are worked out once.
      if (windowsOf.has(step)) continue;
      const over = (traces: readonly Trace[]) =>
        traces.map((trace) => windowIn(step, { trace, site: ground.climate, season, referenceDay }));
      windowsOf.set(step, { ofTraces: over(ground.climate.traces), ofPastYears: over(past) });
    }
    const windows = (step: Step) => windowsOf.get(step) as Windows;
    const closing = (step: Step) => edgeDay(windows(step).ofTraces, 'closes', 0.5) ?? Number.POSITIVE_INFINITY;
    const next = ready.reduce((a, b) => (closing(b) < closing(a) ? b : a));
    placed.push(placeStep(ground, next, season, windows(next), [...before, ...placed]));
    waiting = waiting.filter((step) => step !== next);
  }
  return placed;
}

function placeStep(
  ground: Ground,
  step: Step,
  season: SeasonYear,
  windows: Windows,
  others: readonly PlacedStep[],
): PlacedStep {
  const { lawn, asOf, climate } = ground;
  const dose = step.apply
    ? doseOf(step.apply, {
        products: ground.products,
        shelf: new Set(Object.keys(lawn.shelf?.stock ?? {})),
        nitrogen: ground.program.nitrogen,
      })
    : null;
  const progress = progressOf(step.id, ground.journal, Object.keys(lawn.areas), season);
  const chance = chanceOf(windows);
  const base = {
    step,
    season,
    windows,
    chance,
    dose,
    progress,
    choice: null,
    pinned: false,
    notBest: null,
    dueSince: null,
  };
  const asked = lawn.steps?.[step.id];
  if (progress.doneOn !== null) return { ...base, status: 'done' };
  if (asked === 'skip') return { ...base, status: 'skipped' };
  if (!wanted(step, lawn)) return { ...base, status: 'dropped' };
  // Of the traces that have a window: one without would never close.
  if (chance > 0 && shareBy(windows, 'closes', asOf - 1) / chance >= CLOSED) return { ...base, status: 'missed' };

  const opened = shareBy(windows, 'opens', asOf) >= LEAST_CHANCE && shareBy(windows, 'closes', asOf - 1) < LEAST_CHANCE;
  const published = ground.previous.find((one) => one.step === step.id && one.season === season.year);
  const publishedDay = published ? parseDay(published.day) : null;
  const dueSince = passedDay(published, asOf);
  const statusOn = (day: Day | null): Status => {
    if (!opened) return 'expected';
    return dueSince !== null || (day !== null && day <= asOf) ? 'due' : 'open';
  };
  const pin = asked?.date;
  if (pin !== undefined && pin >= season.start && pin <= season.end) {
    const choice: Choice = { day: pin, inWindow: shareHolding(windows, pin), insteadOf: null, moved: null };
    return { ...base, dueSince, status: statusOn(pin), choice, pinned: true };
  }
  if (chance < LEAST_CHANCE) return { ...base, status: statusOn(null) };
  const seen = climate.observedThrough;
  const earliest = seen !== null && asOf - seen > STALE ? asOf + UNSEEN_DAYS : asOf;
  const forbidden = forbiddenBy({
    lawn,
    program: ground.program,
    climate,
    step,
    dose,
    placed: busyDays(ground, others),
    earliest,
    published: publishedDay,
  });
  const choice = chooseDay({ windows, asOf, forbidden, lean: step.lean, published: publishedDay });
  const best = edgeDay(windows.ofTraces, 'best', 0.5);
  const rule = best === null || best < asOf || best === choice?.day ? null : forbidden(best);
  return {
    ...base,
    dueSince,
    status: statusOn(choice?.day ?? null),
    choice,
    notBest: best !== null && rule ? { best, rule } : null,
  };
}

/** The first published day that has passed undone, as far as the as-of day can know. */
function passedDay(published: PublishedDay | undefined, asOf: Day): Day | null {
  const days = [published?.dueSince, published?.day].flatMap((day) => parseDay(day ?? '') ?? []);
  return days.find((day) => day < asOf) ?? null;
}

/** The days that other work takes: what is planned, and nitrogen that the journal holds. */
function busyDays(ground: Ground, others: readonly PlacedStep[]): Placed[] {
  const isNitrogen = (dose: Dose | null) => dose !== null && nutrientsOf(dose).N > 0;
  const planned = others.flatMap(({ choice, dose }) =>
    choice ? [{ day: choice.day, nitrogen: isNitrogen(dose), job: true }] : [],
  );
  const done = ground.journal.flatMap((entry) => {
    const other = others.find(({ step }) => step.id === entry.step);
    const product = entry.product === undefined ? other?.dose?.product : ground.products.get(entry.product);
    return (product?.analysis?.N ?? 0) > 0 ? [{ day: entry.date, nitrogen: true, job: false }] : [];
  });
  return [...planned, ...done];
}

/** Whether the step's conditions want it on this lawn. */
const wanted = (step: Step, lawn: Lawn): boolean =>
  (!step.onlyIf || conditionHolds(step.onlyIf, lawn)) && !(step.unless && conditionHolds(step.unless, lawn));

/** Whether all keys of a condition hold. A fact that the lawn does not name is false; without a soil test none of it holds. */
function conditionHolds(condition: Condition, lawn: Lawn): boolean {
  const facts = Object.entries(condition.lawn ?? {}).every(([fact, value]) => (lawn.facts?.[fact] ?? false) === value);
  const bounds = condition.soilTest?.pH;
  if (!bounds) return facts;
  const [latest] = [...(lawn.soil?.tests ?? [])].sort((a, b) => b.date - a.date);
  const pH = latest?.pH;
  return (
    facts &&
    pH !== undefined &&
    pH < (bounds.below ?? Number.POSITIVE_INFINITY) &&
    pH > (bounds.above ?? Number.NEGATIVE_INFINITY)
  );
}
