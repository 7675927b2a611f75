import { type Dose, nutrientsOf, quickNitrogen } from '../amounts/product.ts';
import type { Limited } from '../model/local-rule.ts';
import { activeOf, type Product } from '../model/product.ts';
import { measured } from './shelf.ts';

/** What a limit counts: a nutrient, an active in whichever product holds it, or one product as it comes. */
export type Counted =
  | { readonly kind: 'nutrient'; readonly nutrient: Limited }
  | { readonly kind: 'active'; readonly active: string }
  | { readonly kind: 'product'; readonly product: string; readonly by: 'mass' | 'volume' };

/** The measure of what is counted: g on each square metre, or mL. */
export const measureOf = (counted: Counted): 'mass' | 'volume' => (counted.kind === 'product' ? counted.by : 'mass');

/** Rates of the model, in kg or m³ on each square metre, in the measure of limits: g or mL. */
export const inLimitUnits = (value: number, by: 'mass' | 'volume'): number => value * (by === 'mass' ? 1e3 : 1e6);

/**
 * What a dose brings of what is counted [g/m² or mL/m²]. What cannot be known, such as the active of a liquid that has neither
 * a density nor a content by volume, counts as none; `unknownActives` tells of it.
 */
export function broughtBy(dose: Dose, counted: Counted): number {
  switch (counted.kind) {
    case 'nutrient':
      return limitedIn(dose, counted.nutrient);
    case 'active':
      return dose.rate ? 1000 * (activeOn(dose.product, dose.rate, counted.active) ?? 0) : 0;
    case 'product':
      if (!dose.rate || dose.product.id !== counted.product) return 0;
      return inLimitUnits(measured(dose.rate, counted.by, dose.product) ?? 0, counted.by);
  }
}

function limitedIn(dose: Dose, limited: Limited): number {
  if (limited === 'quick-N') return quickNitrogen(dose);
  if (limited !== 'lime') return nutrientsOf(dose)[limited];
  return dose.rate && dose.product.neutralising !== undefined
    ? 1000 * (measured(dose.rate, 'mass', dose.product) ?? 0)
    : 0;
}

/** The active that a rate of a product brings [kg/m²]; null where it cannot be known. */
export function activeOn(
  product: Product,
  rate: { readonly by: 'mass' | 'volume'; readonly value: number },
  active: string,
): number | null {
  const content = activeOf(product, active);
  if (!content) return 0;
  const amount = measured(rate, content.by, product);
  return amount === null ? null : amount * content.value;
}

/** Actives of a dosed product whose amount cannot be worked out. */
export const unknownActives = ({ product, rate }: Dose): string[] =>
  product && rate
    ? Object.keys(product.actives ?? {}).filter((active) => activeOn(product, rate, active) === null)
    : [];
