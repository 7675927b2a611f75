import type { Point } from './geometry.ts';
import { between, type Edge, edgesOf, isInside } from './rings.ts';

/** Straight pieces that the half circle at the end of an edge is made of. They lie outside of it: never nearer than asked. */
const PIECES = 8;

/** Points nearer to each other than this are one [m]. */
const GRID = 1e-6;

/** How far to both sides of a line is looked, to tell whether it is a boundary [m]. */
const ASIDE = 1e-7;

/**
 * What is left of some ground that is not nearer to these edges than a distance.
 *
 * @param rings The ground: what lies inside an odd number of them [m].
 * @param edges What to keep away from.
 * @param distance How far [m], above 0.
 * @returns Rings with the ground on their left: those round it anticlockwise, holes in it clockwise. Round a corner at which
 * an edge ends up to 2 % more than the distance is kept.
 * @example keepAway([[[0, 0], [10, 0], [10, 10], [0, 10]]], [[[0, 0], [10, 0]]], 2) // a ring of 10 by 8
 */
export function keepAway(rings: readonly (readonly Point[])[], edges: readonly Edge[], distance: number): Point[][] {
  const strips = edges.map((edge) => stripOf(edge, distance));
  const isKept = (point: Point) => !strips.some((strip) => isIn(point, strip)) && isInside(point, rings);
  const lines = [...rings, ...strips.map(({ ring }) => ring)].flatMap(edgesOf);
  const boundary = new Map<string, Edge>();
  for (const piece of cutUp(lines)) {
    const directed = withGroundOnLeft(piece, isKept);
    if (directed) boundary.set(directed.map(keyOf).join(' '), directed);
  }
  return chained([...boundary.values()]);
}

interface Strip extends Bounds {
  readonly ring: readonly Point[];
}

interface Bounds {
  readonly low: Point;
  readonly high: Point;
}

const boundsOf = (points: readonly Point[]): Bounds => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)] };
};

/** The ground round an edge, its ends rounded by straight pieces. */
function stripOf([from, to]: Edge, distance: number): Strip {
  const direction = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const radius = distance / Math.cos(Math.PI / (2 * PIECES));
  const end = ([x, y]: Point, start: number) =>
    Array.from({ length: PIECES }, (_, i): Point => {
      const angle = start + ((i + 0.5) * Math.PI) / PIECES;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
  const ring = [...end(to, direction - Math.PI / 2), ...end(from, direction + Math.PI / 2)];
  return { ring, ...boundsOf(ring) };
}

/** Whether a point lies in a strip: left of all its edges, since it bulges everywhere. */
function isIn([x, y]: Point, { ring, low, high }: Strip): boolean {
  if (x < low[0] || x > high[0] || y < low[1] || y > high[1]) return false;
  let from = ring.at(-1) as Point;
  for (const to of ring) {
    if ((to[0] - from[0]) * (y - from[1]) < (to[1] - from[1]) * (x - from[0])) return false;
    from = to;
  }
  return true;
}

/** A place on a line: how far along, and the point. */
interface Cut {
  readonly along: number;
  readonly point: Point;
}

/** All lines cut where others meet them. */
function cutUp(lines: readonly Edge[]): Edge[] {
  const cuts = lines.map(([from, to]): Cut[] => [
    { along: 0, point: from },
    { along: 1, point: to },
  ]);
  // From left to right, so that a line is held only against those that begin before it ends.
  const fromLeft = lines.map((line, i) => ({ line, i, ...boundsOf(line) })).toSorted((a, b) => a.low[0] - b.low[0]);
  for (const [at, one] of fromLeft.entries())
    for (let next = at + 1; next < fromLeft.length; next++) {
      const other = fromLeft[next] as typeof one;
      if (other.low[0] > one.high[0] + GRID) break;
      if (one.low[1] > other.high[1] + GRID || other.low[1] > one.high[1] + GRID) continue;
      for (const [first, second, point] of meetings(one.line, other.line)) {
        if (first !== null) cuts[one.i]?.push({ along: first, point });
        if (second !== null) cuts[other.i]?.push({ along: second, point });
      }
    }
  return cuts.flatMap((all) => {
    const points = all.toSorted((a, b) => a.along - b.along).map(({ point }) => point);
    return points.slice(1).flatMap((to, k) => {
      const from = points[k] as Point;
      return keyOf(from) === keyOf(to) ? [] : [[from, to] as Edge];
    });
  });
}

/** Where two lines meet, how far along each of them: once where they cross, at ends where one lies on the other. */
function meetings([a, b]: Edge, [c, d]: Edge): (readonly [number | null, number | null, Point])[] {
  const [u, w, gap] = [minus(b, a), minus(d, c), minus(c, a)];
  const [long, other] = [Math.hypot(...u), Math.hypot(...w)];
  if (long < GRID || other < GRID) return [];
  const across = cross(u, w);
  if (Math.abs(across) > 1e-9 * long * other) {
    const [t, s] = [cross(gap, w) / across, cross(gap, u) / across];
    const meet = t > -GRID / long && t < 1 + GRID / long && s > -GRID / other && s < 1 + GRID / other;
    return meet ? [[clamp(t), clamp(s), between([a, b], clamp(t))]] : [];
  }
  if (Math.abs(cross(gap, u)) / long > GRID) return [];
  const along = (point: Point, start: Point, way: Point) => {
    const [x, y] = minus(point, start);
    const t = (x * way[0] + y * way[1]) / (way[0] ** 2 + way[1] ** 2);
    return t > 0 && t < 1 ? t : null;
  };
  return [
    ...[c, d].map((end) => [along(end, a, u), null, end] as const),
    ...[a, b].map((end) => [null, along(end, c, w), end] as const),
  ];
}

const cross = (u: Point, w: Point): number => u[0] * w[1] - u[1] * w[0];
const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1]];
const clamp = (value: number): number => Math.min(1, Math.max(0, value));
const keyOf = ([x, y]: Point): string => `${Math.round(x / GRID)},${Math.round(y / GRID)}`;

/** A piece of line with the ground that is kept on its left; null where it is no boundary of it. */
function withGroundOnLeft([from, to]: Edge, isKept: (point: Point) => boolean): Edge | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const [x, y] = between([from, to], 0.5);
  const [left, right] = [1, -1].map((to) => isKept([x - (to * ASIDE * dy) / length, y + (to * ASIDE * dx) / length]));
  if (left === right) return null;
  return left ? [from, to] : [to, from];
}

/** Pieces of boundary joined into rings, corners between pieces of one line left out. */
function chained(pieces: readonly Edge[]): Point[][] {
  const next = new Map<string, Point[]>();
  for (const [from, to] of pieces) next.set(keyOf(from), [...(next.get(keyOf(from)) ?? []), to]);
  const rings: Point[][] = [];
  for (const [start] of pieces) {
    const ring: Point[] = [];
    for (let at: Point | undefined = start; at; at = next.get(keyOf(at))?.pop()) ring.push(at);
    if (ring.length > 3) rings.push(withoutStraight(ring.slice(0, -1)));
  }
  return rings.filter((ring) => ring.length >= 3);
}

/** A corner no farther than this from the line between its neighbours is none [m]. */
const STRAIGHT = 1e-5;

const withoutStraight = (ring: readonly Point[]): Point[] =>
  ring.filter(([x, y], i) => {
    const [before, after] = [ring.at(i - 1) as Point, ring[(i + 1) % ring.length] as Point];
    const bend = (x - before[0]) * (after[1] - y) - (y - before[1]) * (after[0] - x);
    return Math.abs(bend) > STRAIGHT * Math.hypot(after[0] - before[0], after[1] - before[1]);
  });
