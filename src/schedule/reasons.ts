import type { Dose } from '../amounts/product.ts';
import type { Day } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import { limitRate } from '../model/limit.ts';
import { byTestOf, triggersIn } from '../model/program.ts';
import type { Trigger } from '../model/trigger.ts';
import type { Words } from '../words/words.ts';
import { broughtBy, writtenAs } from './counted.ts';
import type { DialOf } from './dial.ts';
import type { Ground } from './ground.ts';
import type { Stretch } from './hours/hours-on.ts';
import { droppedInWords, forbiddenInWords, limitName, limitSource, unwantedInWords } from './in-words/rules.ts';
import { testedInWords } from './in-words/soil-test.ts';
import { percent, triggerInWords } from './in-words/triggers.ts';
import { closingInWords, movedInWords, noDayInWords, openingInWords } from './in-words/window.ts';
import type { Walks } from './passes.ts';
import { readingOf } from './readings.ts';
import type { TestedArea, TestedStep } from './soil-test/tested.ts';
import { usualDate } from './usual-date.ts';
import { type Edge, edgeDay, LEAST_CHANCE } from './windows.ts';
import type { DosedStep } from './within-caps.ts';

/** What an application is written with. */
export interface Writing {
  readonly ground: Ground;
  readonly areas: ReadonlyMap<string, number>;
  readonly display: Display;
  readonly words: Words;
  /** The ways over the areas with the spreader. */
  readonly walks: Walks;
  /** What the journal has of the dial. */
  readonly dial: DialOf;
  readonly zone: string;
  /** The hours that earlier jobs take on a day; kept up to date here. */
  readonly takenOn: Map<Day, readonly Stretch[]>;
}

/** The rule, the value today and what is usual, the expected day and its spread, the limit that held. */
export function reasons(placed: TestedStep, writing: Writing): string[] {
  const { step, status, program } = placed;
  const { display, words } = writing;
  const stepName = (id: string) => program.steps.find((one) => one.id === id)?.name ?? id;
  const rule = (trigger: Trigger) => triggerInWords(trigger, display, stepName);
  const open = status === 'expected' || status === 'open' || status === 'due';
  return [
    ...standing(placed, writing),
    words.window.opensWhen(rule(step.window.opens)),
    ...(open ? [...expectation(placed, writing), ...choosing(placed, writing)] : []),
    ...(step.window.closes ? [words.window.closesWhen(rule(step.window.closes))] : []),
    ...(open && placed.dose?.chosen ? [productInWords(placed.dose.product, placed.dose.chosen, words)] : []),
    ...heldBack(placed, writing),
    ...askedByTest(placed, writing),
  ];
}

/** How the step stands: skipped, dropped, done, missed, late. */
function standing(placed: DosedStep, { display, words: { standing: words } }: Writing): string[] {
  const { step, status, progress, dropped, unwanted, areas, lateUntil } = placed;
  const note = typeof step.ifMissed === 'object' ? (step.ifMissed.note ?? null) : null;
  const lines: string[] = [];
  if (status === 'skipped') lines.push(words.skipped);
  if (dropped) lines.push(droppedInWords(dropped, unwanted, display));
  else if (unwanted.length > 0 && areas.length > 0) lines.push(words.onlyOn(areas, unwantedInWords(unwanted, display)));
  if (progress.doneOn !== null) lines.push(words.done(display.day(progress.doneOn)));
  else if (progress.areasDone.length > 0) lines.push(words.partlyDone(progress.areasDone));
  if (progress.firstPasses.size > 0) lines.push(words.halfDone([...progress.firstPasses.keys()]));
  if (status === 'missed') lines.push(words.missed(note, progress.entries.length > 0));
  else if (lateUntil !== null) lines.push(words.late(note, display.shortDay(lateUntil)));
  return lines;
}

/** The value today and the days that are expected of the window. */
function expectation(placed: DosedStep, { ground, display, words }: Writing): string[] {
  const { step, windows } = placed;
  const spread = (edge: Edge) => ({
    p10: edgeDay(windows.ofTraces, edge, 0.1),
    p50: edgeDay(windows.ofTraces, edge, 0.5),
    p90: edgeDay(windows.ofTraces, edge, 0.9),
    usual: edgeDay(windows.ofPastYears, edge, 0.5),
  });
  const readings = triggersIn(step.window.opens).flatMap(
    (trigger) => readingOf(trigger, placed, ground, display, words) ?? [],
  );
  const opening =
    placed.lateUntil !== null || step.window.opens.kind === 'date'
      ? []
      : [
          openingInWords(spread('opens'), ground.asOf, display),
          ...(usualDate(windows) ? [words.window.usualDate] : []),
        ];
  return [...readings, ...opening, ...[closingInWords(spread('closes'), display)].flatMap((line) => line ?? [])];
}

/** The reason that names the chosen day, with its odds; null where none is chosen. */
export function whyNow({ choice, pinned }: DosedStep, { display, words }: Pick<Writing, 'display' | 'words'>) {
  return choice && words.choice[pinned ? 'pinned' : 'chosen'](display.day(choice.day), percent(choice.inWindow));
}

/** Why this day, and no other. */
function choosing(placed: DosedStep, writing: Writing): string[] {
  const {
    display,
    words: { choice: words },
  } = writing;
  const { choice, chance, blocked, dueSince, passedOver } = placed;
  const lines: string[] = [];
  const now = whyNow(placed, writing);
  if (now !== null) lines.push(now);
  else lines.push(chance < LEAST_CHANCE ? words.unlikely(percent(chance)) : noDayInWords(blocked, display));
  if (choice && blocked.length > 0)
    lines.push(words.pinnedAgainst(blocked.map((rule) => forbiddenInWords(rule, display))));
  if (choice && choice.insteadOf !== null) lines.push(words.kept(display.day(choice.insteadOf)));
  if (choice?.moved)
    lines.push(words.movedFrom(display.day(choice.moved.from), movedInWords(choice.moved.reason, display)));
  if (dueSince !== null) lines.push(words.dueSince(display.day(dueSince)));
  if (passedOver) {
    const { day, isBest, rule } = passedOver;
    lines.push(words.passedOver(display.day(day), isBest, forbiddenInWords(rule, display)));
  }
  return lines;
}

/** Why a product was taken rather than another. */
function productInWords(
  product: Dose['product'],
  { over, by }: NonNullable<Dose['chosen']>,
  { product: words }: Words,
): string {
  const name = (one: Dose['product']) => one?.name ?? one?.id ?? '';
  return by === 'only' ? words.only(name(product)) : words.chosen(name(product), name(over), words.because[by]);
}

/** The limits that held the amounts below what the program asks. */
function heldBack({ shares, dose }: DosedStep, { display, words }: Writing): string[] {
  if (!dose) return [];
  return [...shares].flatMap(([area, { share, cap }]) => {
    if (!cap) return [];
    const whole = broughtBy(dose, cap.counted);
    const rate = (value: number) => limitRate(value, writtenAs(cap.counted), display);
    return [words.product.held(area, rate(whole), rate(share * whole), limitName(cap, words), limitSource(cap, words))];
  });
}

/** What soil tests ask for, over the areas that are asked for the same. */
function askedByTest({ step, tested, choice }: TestedStep, { display }: Writing): string[] {
  const spacing = byTestOf(step)?.spacing;
  const next = choice && spacing !== undefined ? choice.day + Math.ceil(spacing) : null;
  const groups = new Map<string, TestedArea[]>();
  for (const one of tested) {
    const { area: _, ...same } = one;
    const key = JSON.stringify(same);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const areas = group.map(({ area }) => area);
    return [testedInWords(areas, first, next, display)];
  });
}
