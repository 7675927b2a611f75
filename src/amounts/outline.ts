import type { Point } from '../base/geometry.ts';
import type { AreaShape, Shape } from '../model/shape.ts';

/** The edge of an area on the ground [m]: closed rings, x to the right, y away from the reader; holes that have a place. */
export interface Outline {
  readonly outer: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}

/** Corners of a circle's ring: its area is then within 0.1 %. */
const CORNERS = 96;

const circle = (radius: number): Point[] =>
  Array.from({ length: CORNERS }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / CORNERS;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

/**
 * The outline of an area. Parts taken off by their measures alone have no place in it and are left out.
 *
 * @returns Null for an area that is known by its size alone.
 */
export function outlineOf({ shape }: AreaShape): Outline | null {
  const outer = ringOf(shape);
  return outer && { outer, holes: [] };
}

function ringOf(shape: Shape): readonly Point[] | null {
  switch (shape.kind) {
    case 'rectangle': {
      const [width, depth] = shape.sides;
      return [
        [0, 0],
        [width, 0],
        [width, depth],
        [0, depth],
      ];
    }
    case 'circle':
      return circle(shape.radius);
    case 'triangle':
      // Base and height do not tell where the apex stands; above the middle of the base it is drawn.
      return [
        [0, 0],
        [shape.base, 0],
        [shape.base / 2, shape.height],
      ];
    case 'sides': {
      const [a, b, c] = shape.sides;
      const x = (a ** 2 + c ** 2 - b ** 2) / (2 * a);
      return [
        [0, 0],
        [a, 0],
        [x, Math.sqrt(Math.max(0, c ** 2 - x ** 2))],
      ];
    }
    case 'polygon':
      return shape.corners;
    case 'measured':
      return null;
  }
}
