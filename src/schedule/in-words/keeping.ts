import { isPesticide, type Product } from '../../model/product.ts';
import type { Words } from '../../words/words.ts';

/** Whether what is left of a product is good for the next season. */
export interface Keeping {
  /** Null where only the label or the package can tell. */
  readonly nextSeason: boolean | null;
  readonly how: string;
}

/** Whether a kind of product is good for the next season: common practice; the label or the package in hand wins. */
const NEXT_SEASON: Readonly<Record<keyof Words['keeping'], boolean | null>> = {
  pesticide: null,
  granular: true,
  soluble: true,
  liquid: null,
  seed: false,
  amendment: false,
  lime: true,
};

/** How what is left of a product keeps. */
export function keepingOf(product: Product, { keeping }: Words): Keeping {
  const isLime = product.form === 'amendment' && product.neutralising !== undefined;
  const kind = isPesticide(product) ? 'pesticide' : isLime ? 'lime' : product.form;
  return { nextSeason: NEXT_SEASON[kind], how: keeping[kind] };
}
