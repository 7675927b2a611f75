import type { Amount } from '../model/fields.ts';
import type { Product } from '../model/product.ts';

/**
 * An amount of a product, or a rate of it, in the other measure where its density is known.
 *
 * @returns kg or m³, or as much on each square metre; null where it cannot be known, which is not the same as none.
 * @example inMeasure({ by: 'volume', value: 0.001 }, 'mass', { id: 'tonic', form: 'liquid', density: 1200 }) //=> 1.2
 */
export function inMeasure(amount: Amount, by: Amount['by'], { density }: Pick<Product, 'density'>): number | null {
  if (amount.by === by) return amount.value;
  if (!density) return null;
  return by === 'mass' ? amount.value * density : amount.value / density;
}
