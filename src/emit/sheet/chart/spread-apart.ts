/**
 * Places for labels that want to stand at given heights, no two nearer than a gap, all inside a range where they fit into it.
 *
 * @returns In the order of `wanted`.
 * @example spreadApart([10, 11, 40], 5, [0, 50]) //=> [10, 15, 40]
 */
export function spreadApart(
  wanted: readonly number[],
  gap: number,
  [least, most]: readonly [number, number],
): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  const places = [...wanted];
  let from = least;
  for (const i of order) {
    places[i] = Math.max(places[i] ?? 0, from);
    from = (places[i] ?? 0) + gap;
  }
  // What was pushed over the end goes back, and pushes those before it.
  let to = most;
  for (const i of order.reverse()) {
    places[i] = Math.min(places[i] ?? 0, to);
    to = (places[i] ?? 0) - gap;
  }
  return places;
}
