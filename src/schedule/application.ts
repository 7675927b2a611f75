import { type AreaInput, areaAmount, inWords, roundingOf } from '../amounts/amount.ts';
import { NO_NUTRIENTS, nutrientsOf } from '../amounts/product.ts';
import { type Day, formatDay } from '../base/day.ts';
import { type Display, significant } from '../base/display.ts';
import type { Condition } from '../model/condition.ts';
import type { Amount } from '../model/fields.ts';
import type { JournalEntry } from '../model/journal.ts';
import { isPesticide } from '../model/product.ts';
import { type Step, triggersIn } from '../model/program.ts';
import type { Application, AreaAmount, Total } from '../model/season.ts';
import type { Trigger } from '../model/trigger.ts';
import { hoursOn, minutesFor } from './hours.ts';
import type { Ground, PlacedStep } from './place.ts';
import { readingOf } from './readings.ts';
import { substancesOf } from './rules.ts';
import { edgeDay, spreadOf, type Window } from './windows.ts';
import { usualCautions } from './words/cautions-en.ts';
import type { Words } from './words/en.ts';
import { triggerInWords } from './words/triggers-en.ts';

/** What an application is written with. */
export interface Writing {
  readonly ground: Ground;
  readonly areas: ReadonlyMap<string, number>;
  readonly display: Display;
  readonly words: Words;
  readonly zone: string;
  /** Minutes that earlier jobs take on a day; kept up to date here. */
  readonly minutesTaken: Map<Day, number>;
}

/** A placed step as plain data, with its reasons in words. */
export function applicationOf(placed: PlacedStep, writing: Writing): Application {
  const { step, season, windows, choice, progress, chance, status } = placed;
  const areas = areaAmounts(placed, writing);
  const open = status === 'expected' || status === 'open' || status === 'due';
  const day = progress.doneOn ?? (open ? (choice?.day ?? null) : null);
  const hours = open && day !== null ? hoursFor(placed, day, areas, writing) : null;
  return {
    id: step.id,
    name: step.name,
    work: step.work,
    season: season.year,
    status,
    window: { opens: spreadOf(windows, 'opens'), best: spreadOf(windows, 'best'), closes: spreadOf(windows, 'closes') },
    chance: Number(chance.toFixed(3)),
    date: day === null ? null : formatDay(day),
    dueSince: placed.dueSince === null ? null : formatDay(placed.dueSince),
    start: hours?.start ?? null,
    end: hours?.end ?? null,
    inWindow: open && choice ? Number(choice.inWindow.toFixed(3)) : null,
    why: reasons(placed, writing),
    notJudged: open ? notJudged(step, writing) : [],
    how: howTo(placed, areas, writing),
    cautions: [...(step.cautions ?? []), ...usualCautions(substancesOf(step, placed.dose))],
    sources: sourcesOf(step, writing),
    areas,
    totals: totalsOf(areas),
    inAll: inAll(placed, areas, writing.display),
    used: progress.entries.map((entry) => entryInWords(entry, writing)),
    nutrientsGPerM2: placed.dose ? rounded(nutrientsOf(placed.dose)) : NO_NUTRIENTS,
  };
}

const rounded = (nutrients: Record<'N' | 'P2O5' | 'K2O', number>) => ({
  N: Number(significant(nutrients.N, 6)),
  P2O5: Number(significant(nutrients.P2O5, 6)),
  K2O: Number(significant(nutrients.K2O, 6)),
});

function areaAmounts({ dose }: PlacedStep, { ground, areas, display, words }: Writing): AreaAmount[] {
  const crossing = (ground.lawn.equipment?.spreader?.passes ?? 'crossing') === 'crossing';
  return [...areas].map(([id, area]) => {
    const input: AreaInput = { id, area, crossing, display, fromLabel: words.fromLabel, unknown: words.unknownAmount };
    return areaAmount(dose, input);
  });
}

function totalsOf(areas: readonly AreaAmount[]): Total[] {
  const [first] = areas;
  if (!first || first.product === null || (first.amountKg === null && first.amountL === null)) return [];
  const sum = (key: 'amountKg' | 'amountL') =>
    first[key] === null ? null : areas.reduce((total, area) => total + (area[key] ?? 0), 0);
  return [{ product: first.product, amountKg: sum('amountKg'), amountL: sum('amountL') }];
}

function hoursFor(
  { step }: PlacedStep,
  day: Day,
  areas: readonly AreaAmount[],
  { ground, zone, minutesTaken }: Writing,
) {
  const area = areas.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const minutes = minutesFor(ground.lawn, step.work === 'spread' || step.work === 'seed', area);
  const taken = minutesTaken.get(day) ?? 0;
  minutesTaken.set(day, taken + minutes);
  return hoursOn(day, ground.lawn, zone, minutes, taken);
}

/** The rule, the value today and what is usual, the expected day and its spread, the limit that held. */
function reasons(placed: PlacedStep, { ground, display, words }: Writing): string[] {
  const { step, windows, choice, status, progress } = placed;
  const lines: string[] = [];
  if (status === 'skipped') lines.push(words.skipped());
  if (status === 'dropped') lines.push(words.dropped(conditionInWords(step, words)));
  if (progress.doneOn !== null) lines.push(words.done(progress.doneOn, display));
  else if (progress.areasDone.length > 0) lines.push(words.partlyDone(progress.areasDone));
  if (status === 'missed')
    lines.push(words.missed(typeof step.ifMissed === 'object' ? (step.ifMissed.note ?? null) : null));

  const spread = (edge: keyof Window) => ({
    p10: edgeDay(windows.ofTraces, edge, 0.1),
    p50: edgeDay(windows.ofTraces, edge, 0.5),
    p90: edgeDay(windows.ofTraces, edge, 0.9),
    usual: edgeDay(windows.ofPastYears, edge, 0.5),
  });
  const stepName = (id: string) => ground.program.steps.find((one) => one.id === id)?.name ?? id;
  const rule = (trigger: Trigger) => triggerInWords(trigger, display, stepName);
  lines.push(words.opensWhen(rule(step.window.opens)));
  if (status === 'expected' || status === 'open' || status === 'due') {
    for (const trigger of triggersIn(step.window.opens)) {
      const reading = readingOf(trigger, placed, ground, display, words);
      if (reading) lines.push(reading);
    }
    if (step.window.opens.kind !== 'date') lines.push(words.opening(spread('opens'), ground.asOf, display));
    const closing = words.closing(spread('closes'), display);
    if (closing) lines.push(closing);
    if (choice)
      lines.push(placed.pinned ? words.pinned(choice.day, choice.inWindow, display) : words.chosen(choice, display));
    else lines.push(placed.chance < 0.5 ? words.unlikely(placed.chance) : words.noDay());
    if (choice && choice.insteadOf !== null) lines.push(words.kept(choice.insteadOf, display));
    if (choice?.moved) lines.push(words.movedFrom(choice.moved, display));
    if (placed.dueSince !== null) lines.push(words.dueSince(placed.dueSince, display));
    if (placed.notBest) lines.push(words.notBest(placed.notBest.best, placed.notBest.rule, display));
  }
  if (step.window.closes) lines.push(words.closesWhen(rule(step.window.closes)));
  return lines;
}

function conditionInWords({ onlyIf, unless }: Step, words: Words): string {
  const parts = (condition: Condition | undefined, wanted: boolean): string[] => [
    ...Object.entries(condition?.lawn ?? {}).map(([fact, value]) => words.condition(fact, value === wanted)),
    ...Object.entries(condition?.soilTest?.pH ?? {}).map(([bound, value]) => words.soilTest('pH', `${bound} ${value}`)),
  ];
  return [...parts(onlyIf, true), ...parts(unless, false)].join(', ');
}

/** What the weather at hand cannot judge, with the limit: daily files hold no wind, and no day ahead. */
function notJudged({ weather }: Step, { words, display }: Writing): string[] {
  const lines: string[] = [];
  if (weather?.windBelow !== undefined) lines.push(words.wind(display.speed(weather.windBelow)));
  const { from, to } = weather?.air ?? {};
  if (weather?.air)
    lines.push(
      words.airBetween(
        from === undefined ? null : display.temperature(from),
        to === undefined ? null : display.temperature(to),
      ),
    );
  if (weather?.rainBelow)
    lines.push(words.rain(display.depth(weather.rainBelow.depth), Math.round(weather.rainBelow.in * 24)));
  return lines;
}

/** Every source that a step names, in words, each once. */
function sourcesOf(step: Step, { ground, words }: Writing): string[] {
  const keys = new Set<string>();
  const visit = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'source' && typeof inner === 'string') keys.add(inner);
      else visit(inner);
    }
  };
  visit(step);
  return [...keys].map((key) => ground.program.sources?.[key] ?? words.unpublished(key));
}

/** How to put it down, line by line. */
function howTo(
  { step, dose }: PlacedStep,
  areas: readonly AreaAmount[],
  { areas: sizes, display, words }: Writing,
): string[] {
  const lines: string[] = [];
  if (step.apply?.kind === 'mow') lines.push(words.mowAt(display.depth(step.apply.height)));
  if (step.apply?.kind === 'water') lines.push(words.waterDepth(display.depth(step.apply.depth)));
  if (dose?.rate) {
    const rate = dose.rate.by === 'mass' ? display.massRate(dose.rate.value) : display.volumeRate(dose.rate.value);
    lines.push(words.rateOf(dose.product.name ?? dose.product.id, rate));
  }
  for (const { id, amount, passes } of areas) {
    if (amount === null) continue;
    const [first, second] = passes;
    const crossing = first && second ? `: ${words.passes(first.amount, second.amount)}` : '';
    lines.push(words.areaLine(id, display.area(sizes.get(id) ?? 0), amount) + crossing);
  }
  if (dose?.rate === null && dose.missing === 'label') lines.push(words.noLabel);
  if (areas.some(({ passes }) => passes.length > 0)) lines.push(words.setLow);
  const label = dose?.product?.label;
  const waterIn = label?.waterIn ?? step.waterIn;
  if (waterIn)
    lines.push(
      words.waterIn(waterIn.depth === undefined ? null : display.depth(waterIn.depth), waterIn.within ?? null),
    );
  if (label?.reEntry) lines.push(words.reEntry(label.reEntry));
  if (label?.checked !== undefined && dose?.product && isPesticide(dose.product))
    lines.push(words.labelDate(formatDay(label.checked)));
  if (step.note) lines.push(step.note);
  return lines;
}

/** What is put down in all, in words: "5.7 lb". */
function inAll({ dose }: PlacedStep, areas: readonly AreaAmount[], display: Display): string | null {
  const [total] = totalsOf(areas);
  if (!total || !dose?.rate) return null;
  const { amountKg, amountL } = total;
  const amount: Amount =
    amountKg !== null ? { by: 'mass', value: amountKg } : { by: 'volume', value: (amountL ?? 0) / 1000 };
  return inWords(amount, display, roundingOf(dose.product));
}

/** A journal entry as one line. */
function entryInWords(
  { date, areas, product, used, setting, note }: JournalEntry,
  { ground, display, words }: Writing,
): string {
  const name = product === undefined ? null : (ground.products.get(product)?.name ?? product);
  const amount = used === undefined ? null : inWords(used, display);
  return words.entry({
    day: display.day(date),
    areas: areas ?? null,
    name,
    amount,
    setting: setting ?? null,
    note: note ?? null,
  });
}
