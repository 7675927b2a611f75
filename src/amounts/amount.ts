import type { Display } from '../base/display.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Amount, Rate } from '../model/fields.ts';
import type { AreaAmount } from '../model/season.ts';
import { measurable } from './measured/measurable.ts';
import type { Dose } from './product.ts';

export { inWords } from './measured/in-words.ts';

/** What an area gets of a rate. */
export const amountOn = (rate: Rate, area: SquareMetres): Amount => ({ by: rate.by, value: rate.value * area });

/** An amount in kilograms or litres, the other null. */
export const inKgOrL = (amount: Amount | null): { amountKg: number | null; amountL: number | null } => ({
  amountKg: amount?.by === 'mass' ? amount.value : null,
  amountL: amount?.by === 'volume' ? amount.value * 1000 : null,
});

/** An area and the words for what it gets. */
export interface AreaInput {
  readonly id: string;
  readonly area: SquareMetres;
  /** Words for an amount that only the label can tell. */
  readonly fromLabel: string;
  readonly unknown: string;
  /** Whether a limit leaves no room above: its amount is rounded downward. */
  readonly held: boolean;
  readonly display: Display;
}

/** What one area gets: the amount, in words too. */
export function areaAmount(
  dose: Dose | null,
  { id, area, fromLabel, unknown, held, display }: AreaInput,
): Omit<AreaAmount, 'passes'> {
  const base = { id, areaM2: area, product: dose?.product?.id ?? null };
  if (dose === null) return { ...base, amountKg: null, amountL: null, amount: null, measured: null };
  if (dose.rate === null) {
    return {
      ...base,
      amountKg: null,
      amountL: null,
      amount: dose.missing === 'label' ? fromLabel : unknown,
      measured: null,
    };
  }
  const amount = amountOn(dose.rate, area);
  const { words, aid, exact, rounding, amount: found } = measurable(amount, dose.product, display, held);
  const { amountKg: kg, amountL: l } = inKgOrL(found);
  return { ...base, ...inKgOrL(amount), amount: words, measured: { kg, l, rounding, aid, exact } };
}
