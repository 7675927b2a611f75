import { inWords } from '../amounts/amount.ts';
import { roundingOf } from '../amounts/measured/in-words.ts';
import { type Dose, NO_NUTRIENTS, nutrientsOf } from '../amounts/product.ts';
import { LIME_TABLE_SOURCE } from '../amounts/soil-test/lime-table.ts';
import { type Day, formatDay } from '../base/day.ts';
import { type Display, significant } from '../base/display.ts';
import type { Amount } from '../model/fields.ts';
import type { JournalEntry } from '../model/journal.ts';
import { isPesticide } from '../model/product.ts';
import type { Step } from '../model/program.ts';
import type { Application, AreaAmount, SecondPass, Tank, Total } from '../model/season.ts';
import type { Words } from '../words/words.ts';
import { afterwards, whenDown } from './afterwards.ts';
import { areaAmounts, secondPassesOf } from './area-amounts.ts';
import { askedRate } from './asked-rate.ts';
import type { Choice } from './choose.ts';
import { hoursFor } from './hours/hours-for.ts';
import { rightHours } from './hours/right-hours.ts';
import { usualCautions } from './in-words/cautions.ts';
import { movedInWords } from './in-words/window.ts';
import { labelLines } from './label-lines.ts';
import { reasons, type Writing, whyNow } from './reasons.ts';
import { isKnown } from './rules/shares.ts';
import { substancesOf } from './rules/substances.ts';
import { soilChecksOf } from './soil-checks.ts';
import type { TestedArea, TestedStep } from './soil-test/tested.ts';
import { sprayingInWords, sprays, tanksOf } from './tanks.ts';
import { wateringIn } from './water-in.ts';
import { spreadOf } from './windows.ts';
import type { DosedStep } from './within-caps.ts';

/** A placed step as plain data, with its reasons in words. */
export function applicationOf(placed: TestedStep, writing: Writing): Application {
  const { step, season, windows, choice, progress, chance, status } = placed;
  const areas = areaAmounts(placed, writing);
  const open = status === 'expected' || status === 'open' || status === 'due';
  const day = progress.doneOn ?? (open ? (choice?.day ?? null) : null);
  const secondPasses = open ? secondPassesOf(placed, writing) : [];
  const ofArea = (area: AreaAmount) => secondPasses.find(({ id }) => id === area.id) ?? area;
  const toDo = open ? areas.filter(({ id }) => !progress.areasDone.includes(id)).map(ofArea) : areas;
  const tanks = open ? tanksOf(placed, toDo, writing) : [];
  const hours = open && day !== null ? hoursFor(placed, day, toDo, writing) : null;
  return {
    id: placed.id,
    name: step.name,
    work: step.work,
    season: season.year,
    seasonSpan: { start: formatDay(season.start), end: formatDay(season.end) },
    status,
    window: { opens: spreadOf(windows, 'opens'), best: spreadOf(windows, 'best'), closes: spreadOf(windows, 'closes') },
    lateUntil: placed.lateUntil === null ? null : formatDay(placed.lateUntil),
    chance: Number(chance.toFixed(3)),
    date: day === null ? null : formatDay(day),
    moved: movedFrom(choice, open, writing.display),
    dueSince: placed.dueSince === null ? null : formatDay(placed.dueSince),
    start: hours?.start ?? null,
    end: hours?.end ?? null,
    hours: rightHours(placed),
    inWindow: open && choice ? Number(choice.inWindow.toFixed(3)) : null,
    why: reasons(placed, writing),
    whyNow: open ? whyNow(placed, writing) : null,
    notJudged: open ? notJudged(step, day, writing) : [],
    how: open ? howTo(placed, toDo, secondPasses, tanks, writing) : afterwards(placed, writing),
    cautions:
      open || status === 'done'
        ? [...(step.cautions ?? []), ...usualCautions(substancesOf(step, placed.dose), sprays(placed), writing.words)]
        : [],
    sources: sourcesOf(placed, writing),
    areas,
    areasDone: progress.areasDone,
    secondPasses,
    totals: totalsOf(toDo),
    tanks,
    soilTest: placed.tested.map(asData),
    inAll: inAll(placed, toDo, writing.display),
    used: progress.entries.map((entry) => entryInWords(entry, writing)),
    nutrientsGPerM2: placed.dose ? rounded(nutrientsOf(dosedMost(placed, placed.dose)) ?? NO_NUTRIENTS) : NO_NUTRIENTS,
    waterIn: wateringIn(placed, day, writing.ground),
    reEntry: placed.dose?.product?.label?.reEntry ?? null,
    soilChecks: soilChecksOf(step, writing),
  };
}

/** The published day that was given up, and why. */
function movedFrom(choice: Choice | null, open: boolean, display: Display): Application['moved'] {
  const moved = open ? choice?.moved : null;
  return moved ? { from: formatDay(moved.from), reason: movedInWords(moved.reason, display) } : null;
}

const asData = ({
  area,
  what,
  test,
  by,
  asked,
  done,
  others,
  now,
  left,
}: TestedArea): Application['soilTest'][number] => ({
  area,
  what,
  test: test === null ? null : formatDay(test),
  by,
  askedGPerM2: asked,
  doneGPerM2: done,
  otherwiseGPerM2: others,
  nowGPerM2: Number.isFinite(now) ? now : null,
  leftGPerM2: left,
});

const rounded = (nutrients: Record<'N' | 'P2O5' | 'K2O', number>) => ({
  N: Number(significant(nutrients.N, 6)),
  P2O5: Number(significant(nutrients.P2O5, 6)),
  K2O: Number(significant(nutrients.K2O, 6)),
});

/** The dose of the area that gets the most on each square metre. */
function dosedMost({ shares }: DosedStep, dose: Dose): Dose {
  if (!dose.rate || shares.size === 0) return dose;
  const most = Math.max(...[...shares.values()].map(({ share }) => share));
  return { ...dose, rate: { ...dose.rate, value: most * dose.rate.value } };
}

function totalsOf(areas: readonly AreaAmount[]): Total[] {
  const [first] = areas;
  if (!first || first.product === null || (first.amountKg === null && first.amountL === null)) return [];
  const sum = (key: 'amountKg' | 'amountL') =>
    first[key] === null ? null : areas.reduce((total, area) => total + (area[key] ?? 0), 0);
  return [{ product: first.product, amountKg: sum('amountKg'), amountL: sum('amountL') }];
}

/** What the weather at hand cannot judge, with the limit: wind, which daily files do not hold; air and rain beyond what is forecast. */
function notJudged({ weather }: Step, day: Day | null, { ground, words: { work }, display }: Writing): string[] {
  const lines: string[] = [];
  if (weather?.windBelow !== undefined) lines.push(work.wind(display.speed(weather.windBelow)));
  if (day !== null && isKnown(ground.climate, day + 1)) return lines;
  const { from, to } = weather?.air ?? {};
  if (weather?.air)
    lines.push(
      work.airBetween(
        from === undefined ? null : display.temperature(from),
        to === undefined ? null : display.temperature(to),
      ),
    );
  if (weather?.rainBelow)
    lines.push(work.rain(display.depth(weather.rainBelow.depth), Math.round(weather.rainBelow.in * 24)));
  return lines;
}

/** Every source that a step names, in words, each once. */
function sourcesOf({ step, program, tested }: TestedStep, { words }: Writing): string[] {
  const { unpublished } = words.work;
  const keys = new Set<string>();
  const visit = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'source' && typeof inner === 'string') keys.add(inner);
      else visit(inner);
    }
  };
  visit(step);
  const table = tested.some(({ by }) => by === 'table') ? [LIME_TABLE_SOURCE] : [];
  return [
    ...[...keys].map((key) => program.sources?.[key] ?? unpublished[key === 'common-practice' ? key : 'from-memory']),
    ...table,
  ];
}

/** How to put it down, line by line. */
function howTo(
  placed: DosedStep,
  areas: readonly AreaAmount[],
  secondPasses: readonly SecondPass[],
  tanks: readonly Tank[],
  writing: Writing,
): string[] {
  const { step, dose } = placed;
  const { areas: sizes, display } = writing;
  const words = writing.words.work;
  const lines: string[] = [];
  if (step.apply?.kind === 'mow') lines.push(words.mowAt(display.depth(step.apply.height)));
  if (step.apply?.kind === 'water') lines.push(words.waterDepth(display.depth(step.apply.depth)));
  const isSecond = (id: string) => secondPasses.some((one) => one.id === id);
  const name = dose?.product?.name ?? dose?.product?.id ?? '';
  if (dose?.rate && areas.some(({ id }) => !isSecond(id))) {
    const rate = dose.rate.by === 'mass' ? display.massRate(dose.rate.value) : display.volumeRate(dose.rate.value);
    lines.push(words.rateOf(name, rate));
  }
  if (secondPasses.length > 0) lines.push(words.firstDown(name));
  // Without a product every area would say the same: the rate says more.
  if (dose?.product === null) lines.push(...askedRate(step, writing));
  for (const { id, amount, measured, passes } of areas) {
    if (amount === null || dose?.product === null) continue;
    const [first, second] = passes;
    const rest = isSecond(id) ? words.secondPass(first?.direction ?? null) : '';
    const crossing = first && second ? words.passes(first.amount, second.amount, second.direction) : rest;
    lines.push(words.areaLine(id, display.area(sizes.get(id) ?? 0), amount) + roundingOff(measured, words) + crossing);
  }
  if (dose?.rate === null && dose.product !== null && dose.missing === 'label') lines.push(words.noLabel);
  if (areas.some(({ passes }) => passes.length > 1)) lines.push(words.setLow);
  lines.push(...dialLines(secondPasses));
  if (dose?.product !== null) lines.push(...sprayingInWords(placed, areas, tanks, writing));
  const label = dose?.product?.label;
  lines.push(...labelLines(placed, writing), ...whenDown(placed, writing));
  if (label?.checked !== undefined && dose?.product && isPesticide(dose.product))
    lines.push(words.labelDate(formatDay(label.checked)));
  if (step.note) lines.push(step.note);
  return lines;
}

/** By which measure an amount is weighed off, and what it was before. */
function roundingOff(measured: AreaAmount['measured'], { aid, rounded }: Words['work']): string {
  if (!measured) return '';
  const { exact, rounding } = measured;
  return (measured.aid === null ? '' : aid(measured.aid)) + (exact === null ? '' : rounded(exact, rounding === 'down'));
}

/** What the dial is to be set to for second passes; with their areas where they differ. */
function dialLines(secondPasses: readonly SecondPass[]): string[] {
  const [first] = secondPasses;
  if (!first) return [];
  const alike = secondPasses.every(({ dial }) => dial.join() === first.dial.join());
  return alike ? [...first.dial] : secondPasses.flatMap(({ id, dial }) => dial.map((line) => `${id}: ${line}`));
}

/** What is put down in all, in words: as it is measured off on one area, on several the sum to three digits. */
function inAll({ dose, shares }: DosedStep, areas: readonly AreaAmount[], display: Display): string | null {
  const [total] = totalsOf(areas);
  if (!total || !dose?.rate) return null;
  if (areas.length === 1) return areas[0]?.amount ?? null;
  const { amountKg, amountL } = total;
  const amount: Amount =
    amountKg !== null ? { by: 'mass', value: amountKg } : { by: 'volume', value: (amountL ?? 0) / 1000 };
  const held = [...shares.values()].some(({ tight }) => tight);
  return inWords(amount, display, held ? 'down' : roundingOf(dose.product));
}

/** A journal entry as one line. */
function entryInWords(
  { date, areas, product, used, setting, note }: JournalEntry,
  { ground, display, words }: Writing,
): string {
  const name = product === undefined ? null : (ground.products.get(product)?.name ?? product);
  const amount = used === undefined ? null : inWords(used, display);
  const dial = setting === undefined ? null : display.number(setting);
  return words.work.entry(display.day(date), areas ?? null, amount, name, dial, note ?? null);
}
