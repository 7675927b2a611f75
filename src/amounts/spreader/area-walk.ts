import type { Point } from '../../base/geometry.ts';
import type { Metres, SquareMetres } from '../../base/units.ts';
import type { Passes } from '../../model/spreader.ts';
import type { AreaWalk, Direction, HalfWalk } from '../../model/walk.ts';
import type { Outline } from '../outline.ts';
import { missedArea } from './coverage.ts';
import { likelyDirections } from './direction.ts';
import { edgeWay } from './edge-way.ts';
import type { Segment } from './intervals.ts';
import { type Lines, linesAlong } from './lines.ts';
import { edgesOf, lengthOf, ringsOf } from './plane.ts';

/** Nobody walks more lines than these; an area or a swath that asks for more is a slip, and gets no walk. */
const MOST_LINES = 1000;

/**
 * The two half-rate ways over an area: each goes round the edge first, half a swath inside it, then in parallel lines at
 * most one swath apart over what is left, in the direction with the fewest turns.
 *
 * @param outline Null for an area known by its size alone: a square stands in.
 * @param swath Effective swath [m].
 * @returns Null where it would be more than a thousand lines.
 * Source: Ohio State Univ. Extension, Bulletin 817 (swath; half rate at half the swath in parallel, after research at LSU,
 * as better than a right angle where the pattern is poor); Purdue (passes one effective swath apart); UMass, Univ. of
 * Minnesota, Univ. of Illinois (two half-rate passes at a right angle). Round the edge first is common practice.
 */
export function areaWalk(outline: Outline | null, size: SquareMetres, swath: Metres, passes: Passes): AreaWalk | null {
  const key = JSON.stringify([outline, size, swath, passes]);
  const known = found.get(key);
  if (known !== undefined) return known;
  const walk = walkAnew(outline, size, swath, passes);
  if (found.size >= MOST_FOUND) found.clear();
  found.set(key, walk);
  return walk;
}

/** An outline stays the same from plan to plan and from reader to reader, and a way over it takes most of a plan's time. */
const found = new Map<string, AreaWalk | null>();
const MOST_FOUND = 500;

function walkAnew(outline: Outline | null, size: SquareMetres, swath: Metres, passes: Passes): AreaWalk | null {
  const whole = outline ?? squareOf(size);
  const edges = ringsOf(whole).flatMap(edgesOf);
  if (spanOf(edges) / swath > MOST_LINES) return null;
  const rings = edgeWay(whole, swath / 2, swath);
  const round = rings.flatMap(edgesOf);
  const second = rings.length === 0 ? 'again' : passes === 'crossing' ? 'crosswise' : 'between';
  const along = (angle: number, shift = 0) => linesAlong(edges, round, swath, angle, shift);
  const candidates = likelyDirections(edges, swath, second === 'crosswise').map((angle): [Lines, Lines] => {
    const lines = along(angle);
    const others = {
      again: () => lines,
      crosswise: () => along(angle + Math.PI / 2),
      between: () => along(angle, 0.5),
    };
    return [lines, others[second]()];
  });
  const [first, other] = fewestTurns(candidates);
  const same = first.lines.length + other.lines.length === 0;
  const halves = [halfWalk('lengthwise', rings, first), halfWalk(same ? 'again' : second, rings, other)] as const;
  return { ...whole, square: outline === null, swath, halves, missed: missedArea(edges, halves, swath) };
}

/** The pair of ways with the fewest pieces, since the walker turns after each; the earlier of equal ones. */
function fewestTurns(candidates: readonly [Lines, Lines][]): [Lines, Lines] {
  const pieces = ({ lines }: Lines) => lines.reduce((sum, line) => sum + line.pieces.length, 0);
  const turns = ([first, second]: [Lines, Lines]) => pieces(first) + pieces(second);
  return candidates.reduce((best, one) => (turns(one) < turns(best) ? one : best));
}

/** The longer side of the box around the edges [m]. */
function spanOf(edges: readonly Segment[]): Metres {
  const side = (axis: 0 | 1) => {
    const at = edges.map(([from]) => from[axis]);
    return Math.max(...at) - Math.min(...at);
  };
  return Math.max(side(0), side(1));
}

function squareOf(size: SquareMetres): Outline {
  const side = Math.sqrt(size);
  return {
    outer: [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ],
    holes: [],
  };
}

const between = (a: Point, b: Point): Metres => lengthOf([a, b]);

/** The rings and lines as one way: always on to what begins or ends nearest. */
function halfWalk(direction: Direction, rings: readonly (readonly Point[])[], { lines, apart }: Lines): HalfWalk {
  const all = lines.flatMap(({ pieces }) => pieces);
  // The way begins where the first line does, so that the ring leads back to it.
  const corner = all[0]?.[0] ?? rings[0]?.[0] ?? [0, 0];
  const round: (readonly Point[])[] = [];
  let at: Point = corner;
  for (const left = new Set(rings); left.size > 0; ) {
    const [ring, begin] = nearestRing(left, at);
    left.delete(ring);
    const turnedTo = [...ring.slice(begin), ...ring.slice(0, begin)];
    round.push(turnedTo);
    at = turnedTo[0] as Point;
  }
  const start = round[0]?.[0] ?? corner;
  const pieces: Segment[] = [];
  for (const left = new Set(all); left.size > 0; ) {
    const [piece, reversed] = nearestPiece(left, at);
    left.delete(piece);
    const walked: Segment = reversed ? [piece[1], piece[0]] : piece;
    pieces.push(walked);
    at = walked[1];
  }
  const ways = [...round.map((ring): readonly Point[] => [...ring, ring[0] as Point]), ...pieces];
  const open = ways.reduce((sum, way) => sum + lengthAlong(way), 0);
  const shut = ways.slice(1).reduce((sum, way, i) => sum + between(ways[i]?.at(-1) as Point, way[0] as Point), 0);
  return {
    direction,
    round,
    pieces,
    lines: lines.length,
    apart: lines.length > 1 ? apart : null,
    start,
    distance: open + shut,
    open,
    turns: Math.max(0, ways.length - 1),
  };
}

const lengthAlong = (points: readonly Point[]): Metres =>
  points.slice(1).reduce((sum, point, i) => sum + between(points[i] as Point, point), 0);

function nearestRing(rings: ReadonlySet<readonly Point[]>, at: Point): readonly [readonly Point[], number] {
  let found: { ring: readonly Point[]; begin: number; distance: number } | null = null;
  for (const ring of rings)
    for (const [begin, point] of ring.entries()) {
      const distance = between(point, at);
      if (!found || distance < found.distance) found = { ring, begin, distance };
    }
  return found ? [found.ring, found.begin] : [[], 0];
}

function nearestPiece(pieces: ReadonlySet<Segment>, at: Point): readonly [Segment, boolean] {
  let found: { piece: Segment; reversed: boolean; distance: number } | null = null;
  for (const piece of pieces)
    for (const reversed of [false, true]) {
      const distance = between(piece[reversed ? 1 : 0], at);
      if (!found || distance < found.distance - 1e-9) found = { piece, reversed, distance };
    }
  return found ? [found.piece, found.reversed] : [[at, at], false];
}
