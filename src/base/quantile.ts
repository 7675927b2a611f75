/**
 * Quantile of a sample by Hyndman & Fan's type 7 (linear between order statistics), where some members never happen.
 *
 * @param finite The values that happened, in any order.
 * @param count Size of the whole sample; the `count - finite.length` others lie beyond every value.
 * @param share 0 to 1.
 * @returns The quantile, or null where it falls on or is drawn towards a member that never happens.
 * Source: Hyndman & Fan (1996), Sample quantiles in statistical packages, Am. Stat. 50:361-365, definition 7.
 * @example quantile([1, 2, 3, 4], 4, 0.5) //=> 2.5
 */
export function quantile(finite: readonly number[], count: number, share: number): number | null {
  if (count === 0) return null;
  const sorted = [...finite].sort((a, b) => a - b);
  const position = (count - 1) * share;
  const below = sorted[Math.floor(position)];
  const above = sorted[Math.ceil(position)];
  if (below === undefined || above === undefined) return null;
  return below + (position - Math.floor(position)) * (above - below);
}
