import type { Dose } from '../amounts/product.ts';
import { type Day, parseDay } from '../base/day.ts';
import { STALE } from '../climate/known-weather.ts';
import type { Climate } from '../climate/traces.ts';
import { type Step, triggersIn, triggersOf } from '../model/program.ts';
import type { Status } from '../model/season.ts';
import { type Assigned, sizesOf } from './assign.ts';
import { busyDays } from './busy.ts';
import { type Choice, chooseDay, daysInWindow } from './choose.ts';
import { smallestReason } from './conflict.ts';
import { doseFor } from './dose.ts';
import type { Ground, PublishedDay } from './ground.ts';
import type { Gone, PlacedStep } from './placed.ts';
import { type Progress, progressOf } from './progress.ts';
import { rulesFor } from './rules.ts';
import { chanceOf, edgeDay, LEAST_CHANCE, shareBy, shareHolding, type Windows, windowIn } from './windows.ts';

/** In a window that has closed in this share of the traces nothing can be done any more. */
const CLOSED = 0.9;
/** Days from the as-of day on which nothing is chosen where the observed weather ends too early. */
const UNSEEN_DAYS = 5;
/** A step that waits for one of these has nothing to wait for. */
const givesNone = (status: Status): status is Gone =>
  status === 'dropped' || status === 'skipped' || status === 'missed';

/**
 * Places steps in their season: by their references, then by earliest median close, then in the order given.
 *
 * @param before Steps of an earlier season that are already placed.
 */
export function placeSteps(ground: Ground, steps: readonly Assigned[], before: readonly PlacedStep[]): PlacedStep[] {
  const placed: PlacedStep[] = [];
  const windowsOf = new Map<Assigned, Windows>();
  let waiting = [...steps];
  while (waiting.length > 0) {
    const reference = (of: Assigned, id: string) =>
      placed.find(({ step, program }) => step.id === id && program === of.program);
    const ready = waiting.filter((one) =>
      triggersOf(one.step).every((t) => t.kind !== 'after' || t.step === undefined || reference(one, t.step)),
    );
    if (ready.length === 0) throw new Error(`steps wait for each other: ${waiting.map(({ id }) => id).join(', ')}`);
    for (const one of ready) {
      // A step's references are placed for good once it is ready, so its windows are worked out once.
      if (!windowsOf.has(one))
        windowsOf.set(
          one,
          windowsIn(ground, one, (id) => dayGivenBy(reference(one, id))),
        );
    }
    const windows = (one: Assigned) => windowsOf.get(one) as Windows;
    const closing = (one: Assigned) => edgeDay(windows(one).ofTraces, 'closes', 0.5) ?? Number.POSITIVE_INFINITY;
    const next = ready.reduce((a, b) => (closing(b) < closing(a) ? b : a));
    const pointless = referencesOf(next.step).flatMap((id) => reference(next, id) ?? []);
    placed.push(placeStep(ground, next, windows(next), [...before, ...placed], pointless));
    waiting = waiting.filter((one) => one !== next);
  }
  return placed;
}

/** The day from which a step that waits for another counts. */
function dayGivenBy(reference: PlacedStep | undefined): Day | null {
  if (!reference || givesNone(reference.status)) return null;
  return reference.progress.doneOn ?? reference.choice?.day ?? null;
}

const referencesOf = ({ window }: Step): string[] =>
  triggersIn(window.opens).flatMap((one) => (one.kind === 'after' && one.step !== undefined ? [one.step] : []));

function windowsIn({ climate }: Ground, { step, season }: Assigned, referenceDay: (id: string) => Day | null): Windows {
  const over = (traces: Climate['traces']) =>
    traces.map((trace) => windowIn(step, { trace, site: climate, season, referenceDay }));
  return { ofTraces: over(climate.traces), ofPastYears: over(climate.past(season.start, season.end)) };
}

/** Whether windows have closed before a day, of the traces that have one: one without would never close. */
function hasClosed(windows: Windows, asOf: Day): boolean {
  const chance = chanceOf(windows);
  return chance > 0 && shareBy(windows, 'closes', asOf - 1) / chance >= CLOSED;
}

/** What `if-missed` still allows: from the day after the close to its own last day. */
function lateWindows(windows: Windows): Windows {
  const late = windows.ofTraces.map((window) =>
    window && window.late !== null && window.late > window.closes
      ? { opens: window.closes + 1, best: window.closes + 1, closes: window.late, late: null }
      : null,
  );
  return { ofTraces: late, ofPastYears: windows.ofPastYears };
}

function placeStep(
  ground: Ground,
  assigned: Assigned,
  own: Windows,
  others: readonly PlacedStep[],
  references: readonly PlacedStep[],
): PlacedStep {
  const { step, season, areas } = assigned;
  const progress = progressOf(assigned.id, areas, season, { ...ground, sizes: sizesOf(ground.lawn) });
  const late = step.ifMissed && step.ifMissed !== 'skip' && hasClosed(own, ground.asOf) ? lateWindows(own) : null;
  const undated: PlacedStep = {
    ...assigned,
    status: 'expected',
    dropped: null,
    windows: own,
    chance: chanceOf(own),
    dose: doseBegun(ground, assigned, progress.doneOn ?? expectedDay(own, assigned, ground), others, progress),
    progress,
    choice: null,
    pinned: false,
    lateUntil: late && edgeDay(late.ofTraces, 'closes', 0.5),
    passedOver: null,
    blocked: [],
    dueSince: null,
  };
  const settled = settledAs(undated, ground, late, references);
  return settled ? { ...undated, ...settled } : { ...undated, ...datedOn(undated, ground, late ?? own, others) };
}

/** The day that work is pinned to in its season. */
function pinOf({ id, season }: Pick<Assigned, 'id' | 'season'>, { lawn }: Ground): Day | null {
  const asked = lawn.steps?.[id];
  const pin = asked === 'skip' ? undefined : asked?.date;
  return pin !== undefined && pin >= season.start && pin <= season.end ? pin : null;
}

/** The day of work before its day is chosen, which needs its product: the pinned one, else the middle best one. */
function expectedDay(windows: Windows, assigned: Assigned, ground: Ground): Day {
  const best = edgeDay(windows.ofTraces, 'best', 0.5) ?? ground.asOf;
  return pinOf(assigned, ground) ?? Math.max(best, ground.asOf);
}

/** The dose of a step: of work that is half done, of the product that it was begun with. */
function doseBegun(
  ground: Ground,
  assigned: Assigned,
  day: Day,
  others: readonly PlacedStep[],
  { firstPasses }: Progress,
): Dose | null {
  const products = [...firstPasses.values()].flat().flatMap(({ entry }) => {
    const product = ground.products.get(entry.product ?? '');
    return product ? [[product.id, product] as const] : [];
  });
  const begun =
    products.length === 0 ? null : doseFor({ ...ground, products: new Map(products) }, assigned, day, others);
  return begun?.rate ? { product: begun.product, rate: begun.rate } : doseFor(ground, assigned, day, others);
}

/** The standing of a step that is not to be dated; null for one that is. */
function settledAs(
  { id, progress, areas, windows, chance }: PlacedStep,
  { lawn, asOf }: Ground,
  late: Windows | null,
  references: readonly PlacedStep[],
): Pick<PlacedStep, 'status'> | Pick<PlacedStep, 'status' | 'dropped'> | null {
  if (progress.doneOn !== null) return { status: 'done' };
  if (lawn.steps?.[id] === 'skip') return { status: 'skipped' };
  if (areas.length === 0) return { status: 'dropped', dropped: { because: 'unwanted' } };
  const [gone] = references.flatMap(({ status, step }) => (givesNone(status) ? [{ step: step.name, status }] : []));
  if (gone && chance === 0) return { status: 'dropped', dropped: { because: 'follows', ...gone } };
  const over = hasClosed(windows, asOf) && (!late || chanceOf(late) < LEAST_CHANCE || hasClosed(late, asOf));
  return over ? { status: 'missed' } : null;
}

type Dated = Pick<PlacedStep, 'status'> & Partial<PlacedStep>;

/** The day of a step: the pinned one, or the best that the rules allow. @param windows Its own, or the late ones. */
function datedOn(one: PlacedStep, ground: Ground, windows: Windows, others: readonly PlacedStep[]): Dated {
  const { asOf, climate, previous } = ground;
  const { id, step, season, dose, lateUntil } = one;
  const published = previous.find((day) => day.step === id && day.season === season.year);
  const publishedDay = published ? parseDay(published.day) : null;
  const dueSince = passedDay(published, asOf);
  const statusOn = (day: Day | null): Status => {
    const open = shareBy(windows, 'opens', asOf) >= LEAST_CHANCE && shareBy(windows, 'closes', asOf - 1) < LEAST_CHANCE;
    if (!open) return 'expected';
    return dueSince !== null || (day !== null && day <= asOf) ? 'due' : 'open';
  };
  const seen = climate.observedThrough;
  const earliest = seen !== null && asOf - seen > STALE ? asOf + UNSEEN_DAYS : asOf;
  const apart = withoutFirstPasses(ground, one);
  const placed = busyDays(apart, others);
  const rulesOn = rulesFor({ ground: apart, assigned: one, dose, placed, earliest, published: publishedDay });
  const pin = pinOf(one, ground);
  if (pin !== null) {
    const choice: Choice = { day: pin, inWindow: shareHolding(windows, pin), insteadOf: null, moved: null };
    return { status: statusOn(pin), dueSince, choice, pinned: true, blocked: rulesOn(pin) };
  }
  if (chanceOf(windows) < LEAST_CHANCE) return { status: statusOn(null) };
  const lean = lateUntil === null ? step.lean : 'early';
  const choice = chooseDay({ windows, asOf, rulesOn, lean, published: publishedDay });
  if (!choice) {
    const days = daysInWindow(windows, asOf).map(({ day }) => day);
    return { status: statusOn(null), dueSince, blocked: smallestReason(days, rulesOn) };
  }
  const best = edgeDay(windows.ofTraces, 'best', 0.5);
  const wished = Math.max(best ?? asOf, asOf);
  const [rule] = wished === choice.day ? [] : rulesOn(wished);
  const passedOver = rule ? { day: wished, isBest: wished === best, rule } : null;
  return { status: statusOn(choice.day), dueSince, choice, passedOver };
}

/** What a second pass keeps clear of: not of the first, which is the same application. */
function withoutFirstPasses(ground: Ground, { progress: { firstPasses } }: PlacedStep): Ground {
  if (firstPasses.size === 0) return ground;
  const own = [...firstPasses.values()].flat().map(({ entry }) => entry);
  return { ...ground, journal: ground.journal.filter((entry) => !own.includes(entry)) };
}

/** The first published day that has passed undone, as far as the as-of day can know. */
function passedDay(published: PublishedDay | undefined, asOf: Day): Day | null {
  const days = [published?.dueSince, published?.day].flatMap((day) => parseDay(day ?? '') ?? []);
  return days.find((day) => day < asOf) ?? null;
}
