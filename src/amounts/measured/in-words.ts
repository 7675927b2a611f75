import type { Display, Rounding } from '../../base/display.ts';
import type { Amount } from '../../model/fields.ts';
import { isPesticide, type Product } from '../../model/product.ts';

/** An amount in the reader's units, as near as three digits come. */
export const inWords = (amount: Amount, display: Display, rounding: Rounding = 'nearest'): string =>
  amount.by === 'mass' ? display.mass(amount.value, rounding) : display.volume(amount.value, rounding);

/** A pesticide is rounded downward, everything else to the nearest. */
export const roundingOf = (product: Product): Rounding => (isPesticide(product) ? 'down' : 'nearest');
