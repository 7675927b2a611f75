/** A package size with its price, both in any one unit. */
export interface PackageSize {
  readonly size: number;
  readonly price: number | null;
}

/** Counts of one size tried from none and from enough. */
const NEAR = 30;

/**
 * How many packages of each size to buy: the cheapest set that covers the need; where a price is missing, the set with
 * the least left over. Ties go to fewer packages.
 *
 * @param need Amount to cover, in the sizes' unit; nothing for 0 or less.
 * @returns A count for each size, in their order.
 * @example cheapestCover(45, [{ size: 40, price: 32 }, { size: 15, price: 15 }]) //=> [0, 3]
 */
export function cheapestCover(need: number, sizes: readonly PackageSize[]): number[] {
  if (need <= 0 || sizes.length === 0) return sizes.map(() => 0);
  const priced = sizes.every(({ price }) => price !== null);
  const weigh = (counts: readonly number[]): [number, number] => [
    counts.reduce((sum, count, i) => sum + count * (priced ? (sizes[i]?.price ?? 0) : (sizes[i]?.size ?? 0)), 0),
    counts.reduce((sum, count) => sum + count, 0),
  ];
  let best: number[] = [];
  let weight: [number, number] = [Number.POSITIVE_INFINITY, 0];
  const visit = (counts: readonly number[], left: number) => {
    const size = sizes[counts.length]?.size;
    if (size === undefined) return;
    const enough = Math.max(0, Math.ceil(left / size - 1e-9));
    const last = counts.length === sizes.length - 1;
    for (let count = last ? enough : 0; count <= enough; count++) {
      // Far from both ends nothing is gained, and a huge need must not take long.
      if (count === NEAR && enough > 2 * NEAR) count = enough - NEAR;
      const next = [...counts, count];
      if (!last) {
        visit(next, left - count * size);
        continue;
      }
      const [cost, number] = weigh(next);
      if (cost < weight[0] - 1e-9 || (cost < weight[0] + 1e-9 && number < weight[1]))
        [best, weight] = [next, [cost, number]];
    }
  };
  visit([], need);
  return best;
}
