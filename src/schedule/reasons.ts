import type { Day } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import { limitRate } from '../model/limit.ts';
import { byTestOf, triggersIn } from '../model/program.ts';
import type { Trigger } from '../model/trigger.ts';
import { broughtBy, writtenAs } from './counted.ts';
import type { DialOf } from './dial.ts';
import type { Ground } from './ground.ts';
import type { Stretch } from './hours/hours-on.ts';
import type { Walks } from './passes.ts';
import { readingOf } from './readings.ts';
import type { TestedArea, TestedStep } from './soil-test/tested.ts';
import { usualDate } from './usual-date.ts';
import { type Edge, edgeDay, LEAST_CHANCE } from './windows.ts';
import type { DosedStep } from './within-caps.ts';
import type { Words } from './words/en.ts';
import { triggerInWords } from './words/triggers-en.ts';

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
    words.opensWhen(rule(step.window.opens)),
    ...(open ? [...expectation(placed, writing), ...choosing(placed, writing)] : []),
    ...(step.window.closes ? [words.closesWhen(rule(step.window.closes))] : []),
    ...(open && placed.dose?.chosen ? [words.chosenProduct(placed.dose.product, placed.dose.chosen)] : []),
    ...heldBack(placed, writing),
    ...askedByTest(placed, writing),
  ];
}

/** How the step stands: skipped, dropped, done, missed, late. */
function standing(placed: DosedStep, { display, words }: Writing): string[] {
  const { step, status, progress, dropped, unwanted, areas, lateUntil } = placed;
  const note = typeof step.ifMissed === 'object' ? (step.ifMissed.note ?? null) : null;
  const lines: string[] = [];
  if (status === 'skipped') lines.push(words.skipped());
  if (dropped) lines.push(words.dropped(dropped, unwanted, display));
  else if (unwanted.length > 0 && areas.length > 0) lines.push(words.onlyOn(areas, unwanted, display));
  if (progress.doneOn !== null) lines.push(words.done(progress.doneOn, display));
  else if (progress.areasDone.length > 0) lines.push(words.partlyDone(progress.areasDone));
  if (progress.firstPasses.size > 0) lines.push(words.halfDone([...progress.firstPasses.keys()]));
  if (status === 'missed') lines.push(words.missed(note, progress.entries.length > 0));
  else if (lateUntil !== null) lines.push(words.late(note, lateUntil, display));
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
      : [words.opening(spread('opens'), ground.asOf, display), ...(usualDate(windows) ? [words.usualDate()] : [])];
  return [...readings, ...opening, ...[words.closing(spread('closes'), display)].flatMap((line) => line ?? [])];
}

/** The reason that names the chosen day, with its odds; null where none is chosen. */
export function whyNow({ choice, pinned }: DosedStep, { display, words }: Pick<Writing, 'display' | 'words'>) {
  if (!choice) return null;
  return pinned ? words.pinned(choice.day, choice.inWindow, display) : words.chosen(choice, display);
}

/** Why this day, and no other. */
function choosing(placed: DosedStep, { display, words }: Writing): string[] {
  const { choice, chance, blocked, dueSince, passedOver } = placed;
  const lines: string[] = [];
  const now = whyNow(placed, { display, words });
  if (now !== null) lines.push(now);
  else lines.push(chance < LEAST_CHANCE ? words.unlikely(chance) : words.noDay(blocked, display));
  if (choice && blocked.length > 0) lines.push(words.pinnedAgainst(blocked, display));
  if (choice && choice.insteadOf !== null) lines.push(words.kept(choice.insteadOf, display));
  if (choice?.moved) lines.push(words.movedFrom(choice.moved, display));
  if (dueSince !== null) lines.push(words.dueSince(dueSince, display));
  if (passedOver) lines.push(words.passedOver(passedOver.day, passedOver.isBest, passedOver.rule, display));
  return lines;
}

/** The limits that held the amounts below what the program asks. */
function heldBack({ shares, dose }: DosedStep, { display, words }: Writing): string[] {
  if (!dose) return [];
  return [...shares].flatMap(([area, { share, cap }]) => {
    if (!cap) return [];
    const whole = broughtBy(dose, cap.counted);
    const rate = (value: number) => limitRate(value, writtenAs(cap.counted), display);
    return [words.held(area, rate(whole), rate(share * whole), cap.name, cap.source)];
  });
}

/** What soil tests ask for, over the areas that are asked for the same. */
function askedByTest({ step, tested, choice }: TestedStep, { display, words }: Writing): string[] {
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
    return first
      ? [
          words.tested(
            group.map(({ area }) => area),
            first,
            next,
            display,
          ),
        ]
      : [];
  });
}
