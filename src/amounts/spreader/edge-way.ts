import type { Point } from '../../base/geometry.ts';
import type { Metres } from '../../base/units.ts';
import type { Outline } from '../outline.ts';
import { type Interval, nearAt, type Segment, without } from './intervals.ts';
import { backOf, edgesOf, lengthOf, ringsOf, turned, turnedSegment, turnOf } from './plane.ts';

/** A corner that turns outward is walked round in pieces of at most this angle [rad]. */
const ARC = Math.PI / 12;
/** A strip exactly as wide as two half swaths is walked once along its middle, not round: reach, a hair more than the inset. */
const WIDER = 1 + 1e-6;

/** A piece of the way that may be walked, and the edges that it was made from. */
interface Candidate {
  readonly piece: Segment;
  readonly own: readonly number[];
}

/**
 * The way round an area along its edge and round its holes, `inset` inside: closed rings with the grass outside them on the
 * right. Exact for straight edges: each edge is moved inward, and what lies nearer to another edge is taken off.
 *
 * @param inset How far inside the edge, half a swath [m].
 * @param shortest Rings shorter than this are left out [m].
 * @returns No ring where the area is nowhere two insets wide.
 */
export function edgeWay(outline: Outline, inset: Metres, shortest: Metres): Point[][] {
  const rings = ringsOf(outline).map(edgesOf);
  const edges = rings.flat();
  const candidates: Candidate[] = [];
  let first = 0;
  for (const ring of rings) {
    for (const [i, edge] of ring.entries()) {
      const next = (i + 1) % ring.length;
      candidates.push({ piece: moved(edge, inset), own: [first + i] });
      for (const piece of cornerArc(edge, ring[next] as Segment, inset))
        candidates.push({ piece, own: [first + i, first + next] });
    }
    first += ring.length;
  }
  const pieces = candidates.flatMap(({ piece, own }) => free(piece, own, edges, inset * WIDER));
  return chained(pieces, inset / 50).filter(
    (ring) => edgesOf(ring).reduce((sum, one) => sum + lengthOf(one), 0) >= shortest,
  );
}

/** An edge moved to its left. */
function moved([[ax, ay], [bx, by]]: Segment, by_: Metres): Segment {
  const length = Math.hypot(bx - ax, by - ay);
  const [nx, ny] = [(-by_ * (by - ay)) / length, (by_ * (bx - ax)) / length];
  return [
    [ax + nx, ay + ny],
    [bx + nx, by + ny],
  ];
}

/** The way round a corner that turns to the right, at `inset` from it; nothing where it turns left. */
function cornerArc([from, corner]: Segment, [, to]: Segment, inset: Metres): Segment[] {
  const heading = (a: Point, b: Point) => Math.atan2(b[1] - a[1], b[0] - a[0]);
  const before = heading(from, corner);
  const turn = Math.atan2(Math.sin(heading(corner, to) - before), Math.cos(heading(corner, to) - before));
  if (turn >= 0) return [];
  const count = Math.ceil(-turn / ARC);
  const at = (i: number): Point => {
    const normal = before + Math.PI / 2 + (turn * i) / count;
    return [corner[0] + inset * Math.cos(normal), corner[1] + inset * Math.sin(normal)];
  };
  return Array.from({ length: count }, (_, i): Segment => [at(i), at(i + 1)]);
}

/** What of a piece lies no nearer than `reach` to any edge but its own. */
function free(piece: Segment, own: readonly number[], edges: readonly Segment[], reach: Metres): Segment[] {
  const [[ax, ay], [bx, by]] = piece;
  const turn = turnOf(Math.atan2(by - ay, bx - ax));
  const [from, to] = turnedSegment(piece, turn);
  const box = [
    Math.min(ax, bx) - reach,
    Math.max(ax, bx) + reach,
    Math.min(ay, by) - reach,
    Math.max(ay, by) + reach,
  ] as const;
  const taken: Interval[] = [];
  for (const [i, edge] of edges.entries()) {
    const [[cx, cy], [dx, dy]] = edge;
    if (
      Math.max(cx, dx) < box[0] ||
      Math.min(cx, dx) > box[1] ||
      Math.max(cy, dy) < box[2] ||
      Math.min(cy, dy) > box[3]
    )
      continue;
    if (own.includes(i)) continue;
    taken.push(...nearAt(turnedSegment(edge, turn), reach, from[1]));
  }
  const back = backOf(turn);
  return without([[from[0], to[0]]], taken).map(
    ([begin, end]): Segment => [turned([begin, from[1]], back), turned([end, from[1]], back)],
  );
}

/** Pieces joined to rings, each to the one that begins nearest to its end; ends further apart than `gap` stay open and are dropped. */
function chained(pieces: readonly Segment[], gap: Metres): Point[][] {
  const left = new Set(pieces.filter((piece) => lengthOf(piece) > 1e-9));
  const rings: Point[][] = [];
  for (const first of left) {
    left.delete(first);
    const ring: Point[] = [...first];
    for (;;) {
      const end = ring.at(-1) as Point;
      const distance = (point: Point) => Math.hypot(point[0] - end[0], point[1] - end[1]);
      let [best, next] = [distance(ring[0] as Point), null as Segment | null];
      for (const piece of left) {
        const apart = distance(piece[0]);
        if (apart < best) [best, next] = [apart, piece];
      }
      if (best > gap) break;
      if (!next) {
        rings.push(simplified(ring));
        break;
      }
      left.delete(next);
      if (best > 1e-6) ring.push(next[0]);
      ring.push(next[1]);
    }
  }
  return rings;
}

/** A ring whose last point does not stand twice. */
function simplified(ring: readonly Point[]): Point[] {
  const [[ax, ay], [bx, by]] = [ring[0] as Point, ring.at(-1) as Point];
  return Math.hypot(ax - bx, ay - by) < 1e-6 ? ring.slice(0, -1) : [...ring];
}
