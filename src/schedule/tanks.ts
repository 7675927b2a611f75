import { inWords, roundingOf } from '../amounts/amount.ts';
import { outputOf, speedOver, timeFor } from '../amounts/sprayer/output.ts';
import { type Fill, isOverfull, isSprayed, tanksFor } from '../amounts/sprayer/tanks.ts';
import type { Rate } from '../model/fields.ts';
import type { Product } from '../model/product.ts';
import type { AreaAmount, Tank } from '../model/season.ts';
import type { Sprayer } from '../model/sprayer.ts';
import type { Writing } from './reasons.ts';
import type { DosedStep } from './within-caps.ts';
import { PACE_AREA } from './words/sprayer-en.ts';

/** Areas that get the same rate, and the tanks for all of them. */
interface Mix {
  readonly areas: readonly string[];
  /** In words where no rate is known. */
  readonly open: string | null;
  readonly fills: readonly Fill[];
}

/** The rate that an area gets [kg or m³ on each m²]; null where it is not known. */
function rateOn({ amountKg, amountL, areaM2 }: AreaAmount): Rate | null {
  if (amountKg !== null) return { by: 'mass', value: amountKg / areaM2 };
  return amountL === null ? null : { by: 'volume', value: amountL / 1000 / areaM2 };
}

/** Whether a step is done with a sprayer: by its product where that is known. */
const sprays = ({ step, dose }: DosedStep): boolean =>
  dose?.product ? isSprayed(dose.product) : step.work === 'spray' && dose !== null;

const sprayerOf = ({ ground }: Writing): Sprayer | undefined => ground.lawn.equipment?.sprayer;

/** A rate that differs by less than this share is the same. */
const HAIR = 1e-9;
const alike = (a: Rate | null, b: Rate | null): boolean =>
  a === null || b === null ? a === b : a.by === b.by && Math.abs(a.value - b.value) <= HAIR * a.value;

/** The mixes of a step: one for all its areas, more where limits or soil tests give them different rates. */
function mixesOf(placed: DosedStep, areas: readonly AreaAmount[], sprayer: Sprayer): Mix[] {
  const product: Product | null = placed.dose?.product ?? null;
  const groups: { rate: Rate | null; of: AreaAmount[] }[] = [];
  for (const area of areas) {
    const rate = rateOn(area);
    const group = groups.find((one) => alike(one.rate, rate));
    if (group) group.of.push(area);
    else groups.push({ rate, of: [area] });
  }
  return groups.map(({ rate, of }) => ({
    areas: of.map(({ id }) => id),
    open: rate === null ? (of[0]?.amount ?? null) : null,
    fills: tanksFor({
      area: of.reduce((sum, { areaM2 }) => sum + areaM2, 0),
      output: outputOf(sprayer),
      tank: sprayer.tank,
      products: product && rate ? [{ product, rate }] : [],
    }),
  }));
}

/** The product of a tank in words, rounded downward for a pesticide: never above the label. */
function inTank({ amounts: [amount] }: Fill, { open }: Mix, { dose }: DosedStep, { display }: Writing): string {
  if (!amount || !dose?.product) return open ?? '';
  return inWords(amount, display, roundingOf(dose.product));
}

/** How the tanks of a step are filled, as plain data. */
export function tanksOf(placed: DosedStep, areas: readonly AreaAmount[], writing: Writing): Tank[] {
  const sprayer = sprayerOf(writing);
  if (!sprayer || !sprays(placed)) return [];
  return mixesOf(placed, areas, sprayer).flatMap((mix) =>
    mix.fills.map((fill): Tank => {
      const [amount] = fill.amounts;
      return {
        areas: mix.areas,
        count: fill.count,
        areaM2: fill.area,
        sprayL: fill.spray * 1000,
        waterL: fill.water === null ? null : fill.water * 1000,
        productKg: amount?.by === 'mass' ? amount.value : null,
        productL: amount?.by === 'volume' ? amount.value * 1000 : null,
        amount: inTank(fill, mix, placed, writing),
      };
    }),
  );
}

/** Spraying in words: what the sprayer puts down, the pace, the tanks; what to add where the lawn names no sprayer. */
export function sprayingInWords(placed: DosedStep, areas: readonly AreaAmount[], writing: Writing): string[] {
  const { words, display, ground } = writing;
  if (!sprays(placed) || areas.length === 0) return [];
  const sprayer = sprayerOf(writing);
  const units = ground.lawn.display?.units ?? 'us';
  if (!sprayer) return [words.noSprayer(units === 'metric')];
  const by = sprayer.catchTest ? 'catch' : sprayer.nozzleTest ? 'nozzle' : 'file';
  const mixes = mixesOf(placed, areas, sprayer);
  const tankLines = mixes.flatMap((mix) => [
    ...(mixes.length > 1 ? [words.tanksFor(mix.areas)] : []),
    ...mix.fills.map((fill) => {
      const isFull = fill.spray >= sprayer.tank * (1 - HAIR);
      return words.tank(fill, !isFull, fill.amounts.length > 0 ? inTank(fill, mix, placed, writing) : null, display);
    }),
  ]);
  return [
    words.sprayer({ tank: sprayer.tank, output: outputOf(sprayer), by }, display),
    ...paceInWords(sprayer, writing),
    ...tankLines,
    ...(mixes.some(({ fills }) => isOverfull(fills)) ? [words.tooThick] : []),
    words.mixing,
  ];
}

/** How fast to go: as in the test that the output comes from. */
function paceInWords({ catchTest, nozzleTest }: Sprayer, { words, display, ground }: Writing): string[] {
  if (nozzleTest) return [words.speed(speedOver(nozzleTest.run, nozzleTest.time), display)];
  const area = PACE_AREA[ground.lawn.display?.units ?? 'us'];
  const time = catchTest ? timeFor(catchTest, area) : null;
  return time === null ? [] : [words.pace(area, time, display)];
}
