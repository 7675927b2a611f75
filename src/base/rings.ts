/** Closed rings in the plane, the last corner joining the first: what lies inside, and which reach into each other. */
import { crossingPoint, type Point } from './geometry.ts';

/** An edge from one corner to the next. */
export type Edge = readonly [from: Point, to: Point];

/** The edges of a ring, the one that closes it included. */
export const edgesOf = (ring: readonly Point[]): Edge[] =>
  ring.map((from, i): Edge => [from, ring[(i + 1) % ring.length] ?? from]);

/** Whether a point lies inside an odd number of rings: in an outline, and in none of its holes. */
export function isInside([x, y]: Point, rings: readonly (readonly Point[])[]): boolean {
  let inside = false;
  for (const ring of rings) {
    let [x1, y1] = ring.at(-1) ?? [0, 0];
    for (const [x2, y2] of ring) {
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
      [x1, y1] = [x2, y2];
    }
  }
  return inside;
}

/** Distance from a point to an edge [m]. */
export function distanceTo([x, y]: Point, [[x1, y1], [x2, y2]]: Edge): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const squared = dx ** 2 + dy ** 2;
  const along = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / squared));
  return Math.hypot(x - x1 - along * dx, y - y1 - along * dy);
}

/** Half the width of a line on the ground [m]: what lies nearer to it lies on it. */
const LINE = 0.01;

const isOn = (point: Point, ring: readonly Point[]): boolean =>
  edgesOf(ring).some((edge) => distanceTo(point, edge) <= LINE);

/** The point so far along an edge: 0 at its start, 1 at its end. */
export const between = ([[x1, y1], [x2, y2]]: Edge, along: number): Point => [
  x1 + along * (x2 - x1),
  y1 + along * (y2 - y1),
];

const side = ([[ax, ay], [bx, by]]: Edge, [cx, cy]: Point): number => (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

/** Whether two edges cross, each having its ends on both sides of the other; to touch is not to cross. */
const edgesCross = (one: Edge, other: Edge): boolean =>
  side(one, other[0]) * side(one, other[1]) < 0 && side(other, one[0]) * side(other, one[1]) < 0;

const edgesOfCross = (one: readonly Point[], other: readonly Point[]): boolean =>
  edgesOf(one).some((first) => edgesOf(other).some((second) => edgesCross(first, second)));

/** Whether a ring lies inside another one; it may touch it. */
export const ringFits = (inner: readonly Point[], outer: readonly Point[]): boolean =>
  edgesOf(inner).every((edge) => {
    const cuts = edgesOf(outer)
      .filter((other) => edgesCross(edge, other))
      .map((other) => crossingPoint(edge, other))
      .toSorted((a, b) => a - b);
    return [0, ...cuts].every((from, i) => {
      const middle = between(edge, (from + (cuts[i] ?? 1)) / 2);
      return [edge[0], middle].every((point) => isInside(point, [outer]) || isOn(point, outer));
    });
  });

/** Whether two rings have ground in common; to touch is not to overlap. */
export const ringsOverlap = (one: readonly Point[], other: readonly Point[]): boolean =>
  edgesOfCross(one, other) ||
  one.some((point) => isInside(point, [other]) && !isOn(point, other)) ||
  other.some((point) => isInside(point, [one]) && !isOn(point, one));
