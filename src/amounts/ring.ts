import type { Point } from '../base/geometry.ts';
import { localPlane } from '../base/local-plane.ts';
import type { Offsets, Shape } from '../model/shape.ts';

/** The edge of a shape, anticlockwise or as it was walked [m]; and to which of its sides, from 1, each piece of it belongs. */
export interface Ring {
  readonly corners: readonly Point[];
  readonly sides: readonly number[];
  /** Rings of what a file says is no part of it. */
  readonly holes: readonly (readonly Point[])[];
}

/** Corners of a curve's ring: its area is then within 0.1 %. */
const CORNERS = 96;

const ring = (corners: readonly Point[], sides?: readonly number[]): Ring => ({
  corners,
  sides: sides ?? corners.map((_, i) => i + 1),
  holes: [],
});

/** A curve round the origin, by its distance from it in each direction. */
const curve = (at: (turn: number) => readonly [x: number, y: number]): Ring =>
  ring(
    Array.from({ length: CORNERS }, (_, i) => at(i / CORNERS)),
    Array.from({ length: CORNERS }, () => 1),
  );

/**
 * The ring of a shape.
 *
 * @returns Null for one that is known by its size alone. Base and height do not tell where the apex of a triangle stands, nor
 * where the shorter side of a trapezoid begins: they are drawn above the middle.
 */
export function ringOf(shape: Shape): Ring | null {
  switch (shape.kind) {
    case 'rectangle': {
      const [width, depth] = shape.sides;
      return ring([
        [0, 0],
        [width, 0],
        [width, depth],
        [0, depth],
      ]);
    }
    case 'circle':
      return curve((turn) => onEllipse(turn, shape.radius, shape.radius));
    case 'ellipse':
      return curve((turn) => onEllipse(turn, shape.axes[0] / 2, shape.axes[1] / 2));
    case 'triangle':
      return ring([
        [0, 0],
        [shape.base, 0],
        [shape.base / 2, shape.height],
      ]);
    case 'sides': {
      const [a, b, c] = shape.sides;
      const x = (a ** 2 + c ** 2 - b ** 2) / (2 * a);
      return ring([
        [0, 0],
        [a, 0],
        [x, Math.sqrt(Math.max(0, c ** 2 - x ** 2))],
      ]);
    }
    case 'trapezoid': {
      const [base, top] = shape.sides;
      return ring([
        [0, 0],
        [base, 0],
        [(base + top) / 2, shape.height],
        [(base - top) / 2, shape.height],
      ]);
    }
    case 'polygon':
      return ring(shape.corners);
    case 'offsets':
      return alongLine(shape);
    case 'radii':
      return curve((turn) => {
        const radius = between(shape.radii, turn);
        return onEllipse(turn, radius, radius);
      });
    case 'geographic': {
      if (!shape.polygon) return null;
      const { outer, holes } = shape.polygon;
      const flatten = localPlane(outer);
      return { ...ring(outer.map(flatten)), holes: holes.map((hole) => hole.map(flatten)) };
    }
    case 'measured':
      return null;
  }
}

const onEllipse = (turn: number, across: number, up: number): Point => [
  across * Math.cos(2 * Math.PI * turn),
  up * Math.sin(2 * Math.PI * turn),
];

/** Radii between those measured, in proportion to the angle. */
function between(radii: readonly number[], turn: number): number {
  const place = turn * radii.length;
  const before = Math.floor(place);
  const [from = 0, to = 0] = [radii[before], radii[(before + 1) % radii.length]];
  return from + (place - before) * (to - from);
}

/** The line is side 1, all that lies across from it side 2. */
function alongLine({ every, widths, ends }: Offsets): Ring {
  const length = (widths.length + 1) * every;
  const across = [ends[0], ...widths, ends[1]].map((width, i): Point => [i * every, width]).reverse();
  // An end without a width is a corner of the line itself.
  const corners: Point[] = [[0, 0], [length, 0], ...across.filter(([x, y]) => y > 0 || (x > 0 && x < length))];
  return ring(
    corners,
    corners.map((_, i) => (i === 0 ? 1 : 2)),
  );
}
