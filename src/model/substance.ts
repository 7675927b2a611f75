import { isPesticide, type Product } from './product.ts';

/** What a step puts on the lawn, in the words of local rules; the ids of products, their kinds and actives may stand there too. */
export const SUBSTANCES = ['fertilizer', 'pesticide', 'nitrogen', 'phosphorus', 'potassium', 'seed', 'lime'] as const;

/** What is in a product, in the words of local rules. */
export function substancesIn(product: Product): Set<string> {
  const { N, P2O5, K2O } = product.analysis ?? { N: 0, P2O5: 0, K2O: 0 };
  const words: readonly (readonly [string, boolean])[] = [
    [product.id, true],
    ['nitrogen', N > 0],
    ['phosphorus', P2O5 > 0],
    ['potassium', K2O > 0],
    ['fertilizer', N + P2O5 + K2O > 0],
    ['pesticide', isPesticide(product)],
    ['seed', product.form === 'seed'],
    ['lime', product.neutralising !== undefined],
    [product.pesticide ?? '', product.pesticide !== undefined],
    ...Object.keys(product.actives ?? {}).map((active) => [active, true] as const),
  ];
  return new Set(words.flatMap(([word, holds]) => (holds ? [word] : [])));
}
