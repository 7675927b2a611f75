import type { Display, Rounding } from '../base/display.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Amount, Rate } from '../model/fields.ts';
import { isPesticide, type Product } from '../model/product.ts';
import type { AreaAmount } from '../model/season.ts';
import type { Dose } from './product.ts';

/** What an area gets of a rate. */
export const amountOn = (rate: Rate, area: SquareMetres): Amount => ({ by: rate.by, value: rate.value * area });

/** An amount in kilograms or litres, the other null. */
export const inKgOrL = (amount: Amount | null): { amountKg: number | null; amountL: number | null } => ({
  amountKg: amount?.by === 'mass' ? amount.value : null,
  amountL: amount?.by === 'volume' ? amount.value * 1000 : null,
});

/** An amount in the reader's units. */
export const inWords = (amount: Amount, display: Display, rounding: Rounding = 'nearest'): string =>
  amount.by === 'mass' ? display.mass(amount.value, rounding) : display.volume(amount.value, rounding);

/** A pesticide is rounded downward, everything else to the nearest. */
export const roundingOf = (product: Product): Rounding => (isPesticide(product) ? 'down' : 'nearest');

/** An area and the words for what it gets. */
export interface AreaInput {
  readonly id: string;
  readonly area: SquareMetres;
  /** Words for an amount that only the label can tell. */
  readonly fromLabel: string;
  readonly unknown: string;
  readonly display: Display;
}

/** What one area gets: the amount, in words too. */
export function areaAmount(
  dose: Dose | null,
  { id, area, fromLabel, unknown, display }: AreaInput,
): Omit<AreaAmount, 'passes'> {
  const base = { id, areaM2: area, product: dose?.product?.id ?? null };
  if (dose === null) return { ...base, amountKg: null, amountL: null, amount: null };
  if (dose.rate === null) {
    return {
      ...base,
      amountKg: null,
      amountL: null,
      amount: dose.missing === 'label' ? fromLabel : unknown,
    };
  }
  const amount = amountOn(dose.rate, area);
  const rounding = roundingOf(dose.product);
  return { ...base, ...inKgOrL(amount), amount: inWords(amount, display, rounding) };
}
