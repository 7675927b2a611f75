import type { KilogramsPerSquareMetre } from '../base/units.ts';
import type { Rate } from '../model/fields.ts';
import type { Nutrient } from '../model/nutrient.ts';
import { isPesticide, type Product, packagesOf } from '../model/product.ts';
import type { Apply, ApplyOf } from '../model/program.ts';
import { type Choice, type Chosen, chooseProduct } from './choose-product.ts';
import { inMeasure } from './in-measure.ts';

/** The product that a step puts down and how much of it on each square metre; what is missing otherwise. */
export type Dose = (
  | { readonly product: Product; readonly rate: Rate }
  | {
      readonly product: Product | null;
      readonly rate: null;
      readonly missing: 'label' | 'product' | 'bag-rate' | 'density';
    }
) & {
  /** Why this product, where the step names a nutrient and the lawn has products that bring it. */
  readonly chosen?: Pick<Chosen, 'over' | 'by'>;
};

/** Grams of nutrient on each square metre. */
export type Nutrients = Readonly<Record<Nutrient, number>>;

export const NO_NUTRIENTS: Nutrients = { N: 0, P2O5: 0, K2O: 0 };

/**
 * The dose of a step, from the lawn's own products.
 *
 * @returns Null for work that puts nothing down.
 */
export function doseOf(apply: Apply, choice: Choice): Dose | null {
  switch (apply.kind) {
    case 'mow':
    case 'water':
      return null;
    case 'product':
    case 'seed':
    case 'amendment': {
      const product = choice.products.get(apply.product);
      if (!product) return { product: null, rate: null, missing: 'product' };
      return isPesticide(product) ? labelDose(product) : { product, rate: apply.rate };
    }
    case 'bag-rate': {
      const product = choice.products.get(apply.product);
      return product ? bagDose(product) : { product: null, rate: null, missing: 'product' };
    }
    case 'nutrient':
      return nutrientDose(apply, choice);
    case 'pesticide':
      return pesticideDose(apply, choice);
  }
}

/** A pesticide takes its rate from its label entry alone. */
const labelDose = (product: Product): Dose =>
  product.label ? { product, rate: product.label.rate } : { product, rate: null, missing: 'label' };

/** The bag's own rate: one package over what it says it covers. */
function bagDose(product: Product): Dose {
  if (isPesticide(product)) return labelDose(product);
  const [bag] = packagesOf(product);
  if (!bag || !product.covers) return { product, rate: null, missing: 'bag-rate' };
  return { product, rate: { by: bag.size.by, value: bag.size.value / product.covers } };
}

/** The lawn's product of the wanted kind: one with the program's active, with a label entry, on the shelf, in that order. */
function pesticideDose(apply: ApplyOf<'pesticide'>, { products, shelf }: Choice): Dose {
  const wanted = Object.keys(apply.actives ?? {});
  const hasWanted = (product: Product) => Object.keys(product.actives ?? {}).some((active) => wanted.includes(active));
  const rank = (product: Product) =>
    (hasWanted(product) ? 4 : 0) + (product.label ? 2 : 0) + (shelf.has(product.id) ? 1 : 0);
  const [product] = [...products.values()]
    .filter(({ pesticide }) => pesticide === apply.pesticide)
    .sort((a, b) => rank(b) - rank(a));
  return product ? labelDose(product) : { product: null, rate: null, missing: 'label' };
}

/** The product that brings the wanted nutrient: the leading one exactly, by the guaranteed analysis. */
function nutrientDose(apply: ApplyOf<'nutrient'>, choice: Choice): Dose {
  const chosen = chooseProduct(apply, choice);
  if (!chosen) return { product: null, rate: null, missing: 'product' };
  const { product, kgPerM2, over, by } = chosen;
  return { ...dissolved(product, kgPerM2), chosen: { over, by } };
}

/** A rate by weight, by volume where the product is a liquid that is measured so. */
function dissolved(product: Product, kgPerM2: KilogramsPerSquareMetre): Dose {
  if (product.form !== 'liquid') return { product, rate: { by: 'mass', value: kgPerM2 } };
  const value = inMeasure({ by: 'mass', value: kgPerM2 }, 'volume', product);
  return value === null ? { product, rate: null, missing: 'density' } : { product, rate: { by: 'volume', value } };
}

/** Nutrients that a rate of a product brings [g/m²]; null where it brings some, as a liquid without density, that nobody can know. */
export function nutrientsOf({ product, rate }: Dose): Nutrients | null {
  if (!product?.analysis || !rate) return NO_NUTRIENTS;
  const kgPerM2 = inMeasure(rate, 'mass', product);
  if (kgPerM2 === null) return null;
  const { N, P2O5, K2O } = product.analysis;
  return { N: 1000 * kgPerM2 * N, P2O5: 1000 * kgPerM2 * P2O5, K2O: 1000 * kgPerM2 * K2O };
}

/** Whether a dose brings nitrogen, how much of it may be known or not. */
export const bringsNitrogen = ({ product }: Pick<Dose, 'product'>): boolean => (product?.analysis?.N ?? 0) > 0;
