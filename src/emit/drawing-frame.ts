import type { Point } from '../base/geometry.ts';

/** Where a point of the ground lies in a drawing, north up, and how many units of it a metre is. */
export interface Frame {
  readonly at: (point: Point) => Point;
  readonly scale: number;
  readonly height: number;
}

/** The frame in which points fill a panel, whose upper left corner is at `corner`. */
export function frameOf(points: readonly Point[], panel: number, [cornerX, cornerY]: Point = [0, 0]): Frame {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const [wide, high] = [Math.max(...xs) - left, top - Math.min(...ys)];
  const scale = panel / Math.max(wide, high);
  return {
    scale,
    height: high * scale,
    at: ([x, y]) => [cornerX + (x - left) * scale, cornerY + (top - y) * scale],
  };
}

/** A tenth of a unit is finer than anybody sees. */
export const round = (value: number): string => String(Number(value.toFixed(1)));

/** A way through points, as the data of an SVG path. */
export const pathOf = (points: readonly Point[], { at }: Frame): string =>
  `M${points
    .map(at)
    .map(([x, y]) => `${round(x)},${round(y)}`)
    .join(' L')}`;

/** Closed rings, as the data of an SVG path. */
export const closed = (rings: readonly (readonly Point[])[], frame: Frame): string =>
  rings.map((ring) => `${pathOf(ring, frame)} Z`).join(' ');
