import { isPesticide, type Product } from '../../model/product.ts';

/** Whether what is left of a product is good for the next season. */
export interface Keeping {
  /** Null where only the label or the package can tell. */
  readonly nextSeason: boolean | null;
  readonly how: string;
}

/** How what is left keeps, by the form of the product: common practice; the label or the package in hand wins. */
export function keepingOf(product: Product): Keeping {
  if (isPesticide(product)) return { nextSeason: null, how: 'keeps as its label says, locked up in its own package' };
  switch (product.form) {
    case 'granular':
      return { nextSeason: true, how: 'keeps for years where it stays dry, in the closed bag' };
    case 'soluble':
      return { nextSeason: true, how: 'keeps for years in a tight box; it draws water from the air' };
    case 'liquid':
      return { nextSeason: null, how: 'keeps as its package says, away from frost and sun' };
    case 'seed':
      return {
        nextSeason: false,
        how: 'does not keep well: less of it comes up after a year, so count what sprouts of 50 first',
      };
    case 'amendment':
      return product.neutralising === undefined
        ? { nextSeason: false, how: 'is better put down now than kept' }
        : { nextSeason: true, how: 'keeps for years where it stays dry' };
  }
}
