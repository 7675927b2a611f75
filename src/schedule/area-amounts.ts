import { areaAmount } from '../amounts/amount.ts';
import { adviseSetting } from '../amounts/dial/advise.ts';
import { adviceInWords } from '../amounts/dial/in-words.ts';
import type { Dose } from '../amounts/product.ts';
import { isPesticide } from '../model/product.ts';
import type { AreaAmount, SecondPass } from '../model/season.ts';
import { WHOLE } from './caps.ts';
import { passesOf, secondPassOf } from './passes.ts';
import type { Writing } from './reasons.ts';
import { type Halfway, halfwayOn } from './to-come.ts';
import type { DosedStep } from './within-caps.ts';

/** What each area gets of a step in all, inside the limits that hold there. */
export function areaAmounts(placed: DosedStep, writing: Writing): AreaAmount[] {
  return placed.areas.map((id) => {
    const { share } = placed.shares.get(id) ?? WHOLE;
    const dose = dosed(placed.dose, (value) => share * value);
    const amount = amountOf(placed, dose, id, writing);
    return { ...amount, passes: passesOf(amount, dose, writing.walks, writing.display) };
  });
}

/** What the second pass is to put down where the first alone is done. */
export function secondPassesOf(placed: DosedStep, writing: Writing): SecondPass[] {
  return placed.areas.flatMap((id) => {
    const halfway = halfwayOn(placed, id, placed.shares.get(id) ?? WHOLE);
    if (!halfway) return [];
    const dose = dosed(placed.dose, () => halfway.target);
    const amount = amountOf(placed, dose, id, writing);
    const byMass = dose?.rate?.by === 'mass';
    return [
      {
        ...amount,
        passes: secondPassOf(amount, dose, writing.walks),
        mostGPerM2: byMass && halfway.most !== null ? 1000 * halfway.most : null,
        dial: byMass ? dialFor(placed, halfway, writing) : [],
      },
    ];
  });
}

/** A dose at another rate. */
const dosed = (dose: Dose | null, rate: (value: number) => number): Dose | null =>
  dose?.rate ? { ...dose, rate: { ...dose.rate, value: rate(dose.rate.value) } } : dose;

function amountOf({ shares }: DosedStep, dose: Dose | null, id: string, { areas, display, words }: Writing) {
  const held = shares.get(id)?.tight ?? false;
  const { fromLabel, unknownAmount: unknown } = words.work;
  return areaAmount(dose, { id, area: areas.get(id) ?? 0, held, display, fromLabel, unknown });
}

/** What the dial of the usual spreader is to be set to; nothing where the lawn file does not tell of it. */
function dialFor({ dose }: DosedStep, { target, most }: Halfway, { dial, display }: Writing): string[] {
  const known = dose?.product ? dial(dose.product.id) : null;
  if (!known || !dose?.product) return [];
  const rounding = isPesticide(dose.product) ? 'down' : 'nearest';
  const advice = adviseSetting(known.records, known.dial, target, { rounding, most });
  return adviceInWords(advice, 'second', display);
}
