/** A point in the plane [m]. */
export type Point = readonly [x: number, y: number];

/** Area inside a closed polygon [m²], by the shoelace formula, above 0 where it goes anticlockwise; the last corner joins the first. */
export function signedArea(corners: readonly Point[]): number {
  let twice = 0;
  forEachEdge(corners, ([x1, y1], [x2, y2]) => {
    twice += x1 * y2 - x2 * y1;
  });
  return twice / 2;
}

/** Area inside a closed polygon [m²], whichever way round it goes. */
export const polygonArea = (corners: readonly Point[]): number => Math.abs(signedArea(corners));

/** The first two edges (counted from 1) that cross or touch without being neighbours; null for a simple polygon. */
export function crossingEdges(corners: readonly Point[]): { first: number; second: number } | null {
  const edges: [Point, Point][] = [];
  forEachEdge(corners, (from, to) => edges.push([from, to]));
  for (const [i, [a, b]] of edges.entries()) {
    for (const [j, [c, d]] of edges.entries()) {
      const neighbours = j === i + 1 || (i === 0 && j === edges.length - 1);
      if (j <= i || (neighbours && !foldedBack(a, b, c, d))) continue;
      if (neighbours || segmentsMeet(a, b, c, d)) return { first: i + 1, second: j + 1 };
    }
  }
  return null;
}

/** How far along the first of two edges that meet they do: 0 at its start, 1 at its end; 0 for edges on one line. */
export function crossingPoint([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number {
  const across = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
  return across === 0 ? 0 : ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / across;
}

function forEachEdge(corners: readonly Point[], visit: (from: Point, to: Point) => void): void {
  corners.forEach((from, i) => {
    visit(from, corners[(i + 1) % corners.length] ?? from);
  });
}

/** Twice the signed area of a triangle: which side of the line a-b the point c lies on. */
const side = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  Math.sign((bx - ax) * (cy - ay) - (by - ay) * (cx - ax));

const within = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): boolean =>
  Math.min(ax, bx) <= cx && cx <= Math.max(ax, bx) && Math.min(ay, by) <= cy && cy <= Math.max(ay, by);

function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const [abc, abd, cda, cdb] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)];
  if (abc !== abd && cda !== cdb) return true;
  return (
    (abc === 0 && within(a, b, c)) ||
    (abd === 0 && within(a, b, d)) ||
    (cda === 0 && within(c, d, a)) ||
    (cdb === 0 && within(c, d, b))
  );
}

/** Whether two edges that share a corner lie on one another. */
function foldedBack(a: Point, b: Point, c: Point, d: Point): boolean {
  const [before, corner, after] = b === c ? [a, b, d] : [c, a, b];
  if (side(before, corner, after) !== 0) return false;
  return (before[0] - corner[0]) * (after[0] - corner[0]) + (before[1] - corner[1]) * (after[1] - corner[1]) > 0;
}
