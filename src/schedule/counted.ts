import { inMeasure } from '../amounts/in-measure.ts';
import { type Dose, nutrientsOf } from '../amounts/product.ts';
import type { Rate } from '../model/fields.ts';
import type { Limited } from '../model/local-rule.ts';
import { activeOf, type Product } from '../model/product.ts';

/** What a limit counts: a nutrient, an active in whichever product holds it, or one product as it comes. */
export type Counted =
  | { readonly kind: 'nutrient'; readonly nutrient: Limited }
  | { readonly kind: 'active'; readonly active: string }
  | { readonly kind: 'product'; readonly product: string; readonly by: 'mass' | 'volume' };

/** The measure of what is counted: g on each square metre, or mL. */
export const measureOf = (counted: Counted): 'mass' | 'volume' => (counted.kind === 'product' ? counted.by : 'mass');

/** In which of the units that labels print a rate of it is written. */
export const writtenAs = (counted: Counted): 'whole' | 'active' | 'volume' =>
  measureOf(counted) === 'volume' ? 'volume' : counted.kind === 'active' ? 'active' : 'whole';

/** Rates of the model, in kg or m³ on each square metre, in the measure of limits: g or mL. */
export const inLimitUnits = (value: number, by: 'mass' | 'volume'): number => value * (by === 'mass' ? 1e3 : 1e6);

/** What a dose brings of what is counted [g/m² or mL/m²]. What cannot be known counts as none; `isUnknown` tells of it. */
export const broughtBy = (dose: Dose, counted: Counted): number => knownOf(dose, counted) ?? 0;

/** Whether a dose brings something of what is counted, and nobody can know how much: a liquid without its density. */
export const isUnknown = (dose: Dose, counted: Counted): boolean => knownOf(dose, counted) === null;

function knownOf({ product, rate }: Dose, counted: Counted): number | null {
  if (!rate) return 0;
  switch (counted.kind) {
    case 'nutrient':
      return limitedIn({ product, rate }, counted.nutrient);
    case 'active':
      return inGrams(activeOn(product, rate, counted.active));
    case 'product': {
      const amount = product.id === counted.product ? inMeasure(rate, counted.by, product) : 0;
      return amount === null ? null : inLimitUnits(amount, counted.by);
    }
  }
}

const inGrams = (kg: number | null): number | null => (kg === null ? null : inLimitUnits(kg, 'mass'));

function limitedIn({ product, rate }: Extract<Dose, { rate: Rate }>, limited: Limited): number | null {
  if (limited === 'lime') return product.neutralising === undefined ? 0 : inGrams(inMeasure(rate, 'mass', product));
  const nutrients = nutrientsOf({ product, rate });
  if (nutrients === null) return product.analysis?.[limited === 'quick-N' ? 'N' : limited] === 0 ? 0 : null;
  // An unknown slow share counts as none.
  return limited === 'quick-N' ? nutrients.N * (1 - (product.slowShare ?? 0)) : nutrients[limited];
}

/** The active that a rate of a product brings [kg/m²]; null where it cannot be known. */
export function activeOn(
  product: Product,
  rate: { readonly by: 'mass' | 'volume'; readonly value: number },
  active: string,
): number | null {
  const content = activeOf(product, active);
  if (!content) return 0;
  const amount = inMeasure(rate, content.by, product);
  return amount === null ? null : amount * content.value;
}

/** Actives of a dosed product whose amount cannot be worked out. */
export const unknownActives = ({ product, rate }: Dose): string[] =>
  product && rate
    ? Object.keys(product.actives ?? {}).filter((active) => activeOn(product, rate, active) === null)
    : [];
