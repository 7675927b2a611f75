import type { Point } from '../../base/geometry.ts';
import type { Metres } from '../../base/units.ts';
import { passesAcross } from './calibration.ts';
import { type Interval, insideAt, nearAt, type Segment, united, without } from './intervals.ts';
import { backOf, lengthOf, turned, turnedSegment, turnOf } from './plane.ts';

/** Heights inside a strip at which it is looked at, as shares of its half width from the line in its middle outward. */
const LEVELS = [0, -0.5, 0.5, -0.999, 0.999] as const;
/** The way round the edge covers this much more than its half swath, lest the edge itself be left over by a hair. */
const HAIR = 1 + 1e-3;

/** A line of a pass: the pieces of it that are walked with the spreader open. */
export interface Line {
  readonly pieces: readonly Segment[];
}

/** Lines in a direction, and how far they lie apart [m]. */
export interface Lines {
  readonly lines: readonly Line[];
  readonly apart: Metres;
}

/** Heights of the lines across a span: as few as cover it, evenly; `shift` of a half puts them between those. */
function heights(
  low: Metres,
  high: Metres,
  swath: Metres,
  shift: number,
): { readonly at: number[]; readonly apart: Metres } {
  const count = passesAcross(high - low, swath);
  const apart = (high - low) / count;
  const shifted = count > 1 ? shift : 0;
  return {
    apart,
    at: Array.from({ length: shifted === 0 ? count : count - 1 }, (_, i) => low + (i + 0.5 + shifted) * apart),
  };
}

/**
 * How many pieces the lines in a direction would be cut into by the edges: the walker turns after each.
 *
 * @param angle Direction of the lines [rad].
 */
export function piecesAlong(edges: readonly Segment[], swath: Metres, angle: number): number {
  const level = edges.map((edge) => turnedSegment(edge, turnOf(angle)));
  const ys = level.map(([[, y]]) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const count = passesAcross(high - low, swath);
  const apart = (high - low) / count;
  let crossings = 0;
  for (const [[, ay], [, by]] of level) {
    // Lines lie at low + (i + ½) × apart; between two heights there is one for each half-integer passed.
    const passed = (y: number) => Math.ceil((y - low) / apart - 0.5);
    crossings += Math.abs(passed(by) - passed(ay));
  }
  return crossings / 2;
}

/**
 * Parallel lines over what the way round the edge has not covered, cut to the area.
 * A strip of one line's width is walked wherever any of it still needs product, along its middle where that lies on the
 * grass, else where grass is.
 *
 * @param angle Direction of the lines [rad].
 * @param round The way round the edge, as segments.
 * @param shift 0, or ½ for the lines between.
 */
export function linesAlong(
  edges: readonly Segment[],
  round: readonly Segment[],
  swath: Metres,
  angle: number,
  shift = 0,
): Lines {
  const turn = turnOf(angle);
  const back = backOf(turn);
  const level = edges.map((edge) => turnedSegment(edge, turn));
  const done = round.map((piece) => turnedSegment(piece, turn));
  const ys = level.map(([[, y]]) => y);
  const { at, apart } = heights(Math.min(...ys), Math.max(...ys), swath, shift);
  const reach = (swath / 2) * HAIR;
  const lines = at.map((middle) => {
    let walked: Interval[] = [];
    const pieces: Piece[] = [];
    const edgesHere = reaching(level, middle, apart / 2);
    const doneHere = reaching(done, middle, apart / 2 + reach);
    const needs = LEVELS.map((share) => {
      const y = middle + (share * apart) / 2;
      const inside = insideAt(edgesHere, y);
      return {
        y,
        inside,
        open: without(
          inside,
          doneHere.flatMap((piece) => nearAt(piece, reach, y)),
        ),
      };
    });
    const wanted = united(needs.flatMap(({ open }) => open));
    for (const { y, inside } of needs) {
      const here = within(without(wanted, walked), inside);
      walked = united([...walked, ...here]);
      const ringed = insideAt(doneHere, y);
      for (const [from, to] of here)
        pieces.push({ inner: middleIn([from, to], ringed), piece: [turned([from, y], back), turned([to, y], back)] });
    }
    return pieces;
  });
  return {
    lines: worthwhile(lines, swath, done.length > 0).map((pieces) => ({ pieces: inOrder(pieces, turn) })),
    apart,
  };
}

/** The pieces that come within `reach` of a height. */
const reaching = (pieces: readonly Segment[], y: Metres, reach: Metres): Segment[] =>
  pieces.filter(([[, ay], [, by]]) => Math.min(ay, by) <= y + reach && Math.max(ay, by) >= y - reach);

/** Whether the middle of a stretch lies inside rings at its height. */
const middleIn = ([from, to]: Interval, rings: readonly Interval[]): boolean =>
  rings.some(([begin, end]) => begin <= (from + to) / 2 && (from + to) / 2 <= end);

/** A piece of a line, and whether it lies inside the way round the edge. */
interface Piece {
  readonly inner: boolean;
  readonly piece: Segment;
}

/**
 * Lines without the pieces that are not worth a turn: inside the way round those shorter than half a swath, outside it those
 * shorter than a swath, which are corners. Of an area without a way round the longest piece stays however short it is.
 */
function worthwhile(lines: readonly (readonly Piece[])[], swath: Metres, ringed: boolean): Segment[][] {
  const longest = Math.max(...lines.flat().map(({ piece }) => lengthOf(piece)));
  const least = (inner: boolean) => (ringed ? (inner ? swath / 2 : swath) : Math.min(swath / 2, longest));
  return lines
    .map((pieces) => pieces.flatMap(({ inner, piece }) => (lengthOf(piece) >= least(inner) ? [piece] : [])))
    .filter((pieces) => pieces.length > 0);
}

/** What two sets of stretches share. */
const within = (a: readonly Interval[], b: readonly Interval[]): Interval[] =>
  a.flatMap(([from, to]) =>
    b.flatMap(([begin, end]): Interval[] => {
      const [left, right] = [Math.max(from, begin), Math.min(to, end)];
      return left < right ? [[left, right]] : [];
    }),
  );

const inOrder = (pieces: readonly Segment[], turn: { cos: number; sin: number }): Segment[] => {
  const along = (point: Point) => turned(point, turn)[0];
  return [...pieces].sort((a, b) => along(a[0]) - along(b[0]));
};
