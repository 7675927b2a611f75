import { measurable } from '../amounts/measured/measurable.ts';
import { outputOf } from '../amounts/sprayer/output.ts';
import { type Fill, isSprayed, tanksFor } from '../amounts/sprayer/tanks.ts';
import type { Rate } from '../model/fields.ts';
import type { Product } from '../model/product.ts';
import type { AreaAmount, Tank } from '../model/season.ts';
import type { Sprayer } from '../model/sprayer.ts';
import { fillInWords } from './in-words/sprayer.ts';
import type { Writing } from './reasons.ts';
import { sprayerOf } from './sprayer.ts';
import type { DosedStep } from './within-caps.ts';

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
export const sprays = ({ step, dose }: DosedStep): boolean =>
  dose?.product ? isSprayed(dose.product) : step.work === 'spray' && dose !== null;

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
    if (rate?.value === 0) continue;
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

/** The product of a tank in words: never above the label, nor above a limit that leaves no room on one of its areas. */
function inTank(
  { amounts: [amount] }: Fill,
  { areas, open }: Mix,
  { dose, shares }: DosedStep,
  { display }: Writing,
): string {
  if (!amount || !dose?.product) return open ?? '';
  const held = areas.some((area) => shares.get(area)?.tight ?? false);
  return measurable(amount, dose.product, display, held).words;
}

/** How the tanks of a step are filled, as plain data. */
export function tanksOf(placed: DosedStep, areas: readonly AreaAmount[], writing: Writing): Tank[] {
  const sprayer = writing.ground.lawn.equipment?.sprayer;
  if (!sprayer || !sprays(placed)) return [];
  const mixes = mixesOf(placed, areas, sprayer);
  return mixes.flatMap((mix) =>
    mix.fills.map((fill): Tank => {
      const [product] = fill.amounts;
      const amount = inTank(fill, mix, placed, writing);
      const isFull = fill.spray >= sprayer.tank * (1 - HAIR);
      const kind = isFull ? 'full' : mix.fills.length === 1 ? 'only' : 'last';
      const line = fillInWords(fill, kind, product ? amount : null, writing.display);
      return {
        areas: mix.areas,
        count: fill.count,
        areaM2: fill.area,
        sprayL: fill.spray * 1000,
        waterL: fill.water === null ? null : fill.water * 1000,
        productKg: product?.by === 'mass' ? product.value : null,
        productL: product?.by === 'volume' ? product.value * 1000 : null,
        amount,
        line: mixes.length > 1 ? writing.words.sprayer.tanksFor(mix.areas, line) : line,
      };
    }),
  );
}

/** Spraying in words: what the sprayer puts down, the pace, the tanks; what to add where the lawn names no sprayer. */
export function sprayingInWords(
  placed: DosedStep,
  areas: readonly AreaAmount[],
  tanks: readonly Tank[],
  { words, display, ground }: Writing,
): string[] {
  if (!sprays(placed) || areas.length === 0) return [];
  const sprayer = sprayerOf(ground.lawn, display, words);
  if (!sprayer) return [words.sprayer.none];
  const isThick = tanks.some(({ waterL }) => waterL === 0);
  return [
    ...sprayer.how,
    ...tanks.map(({ line }) => line),
    ...(isThick ? [words.sprayer.tooThick] : []),
    words.sprayer.mixing,
  ];
}
