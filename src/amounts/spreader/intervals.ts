import type { Point } from '../../base/geometry.ts';

/** A stretch of a level line, from its left to its right end [m]. */
export type Interval = readonly [from: number, to: number];

/** A straight piece between two points [m]. */
export type Segment = readonly [from: Point, to: Point];

/** Stretches in order, those that touch made one. */
export function united(intervals: readonly Interval[]): Interval[] {
  const sorted = [...intervals].sort((a, b) => a[0] - b[0]);
  const joined: [number, number][] = [];
  for (const [from, to] of sorted) {
    const last = joined.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/** What of `intervals` none of `taken` covers. */
export function without(intervals: readonly Interval[], taken: readonly Interval[]): Interval[] {
  const holes = united(taken);
  return intervals.flatMap(([from, to]) => {
    const left: Interval[] = [];
    let at = from;
    for (const [begin, end] of holes) {
      if (end <= at || begin >= to) continue;
      if (begin > at) left.push([at, begin]);
      at = end;
    }
    if (at < to) left.push([at, to]);
    return left;
  });
}

/** Where the line at height `y` lies inside the rings (even-odd). */
export function insideAt(edges: readonly Segment[], y: number): Interval[] {
  const crossings: number[] = [];
  for (const [[ax, ay], [bx, by]] of edges)
    if (ay <= y !== by <= y) crossings.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
  crossings.sort((a, b) => a - b);
  return crossings.flatMap((from, i): Interval[] => (i % 2 === 0 ? [[from, crossings[i + 1] ?? from]] : []));
}

/** Where the line at height `y` lies within `reach` of a segment: one stretch or none. */
export function nearAt([[ax, ay], [bx, by]]: Segment, reach: number, y: number): Interval[] {
  if (Math.min(ay, by) > y + reach || Math.max(ay, by) < y - reach) return [];
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const take = (x: number) => {
    from = Math.min(from, x);
    to = Math.max(to, x);
  };
  for (const [x, up] of [
    [ax, y - ay],
    [bx, y - by],
  ] as const) {
    const half = reach ** 2 - up ** 2;
    if (half < 0) continue;
    take(x - Math.sqrt(half));
    take(x + Math.sqrt(half));
  }
  // The two long sides of the band around the segment; with the round ends they bound a convex figure.
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0 || ay === by) return from <= to ? [[from, to]] : [];
  for (const side of [reach, -reach]) {
    const [nx, ny] = [(-side * (by - ay)) / length, (side * (bx - ax)) / length];
    const along = (y - ay - ny) / (by - ay);
    if (along >= 0 && along <= 1) take(ax + nx + along * (bx - ax));
  }
  return from <= to ? [[from, to]] : [];
}
