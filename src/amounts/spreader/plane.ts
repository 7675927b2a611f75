import type { Point } from '../../base/geometry.ts';
import type { Outline } from '../outline.ts';
import type { Segment } from './intervals.ts';

/** A turn of the plane about the origin. */
export interface Turn {
  readonly cos: number;
  readonly sin: number;
}

/** The turn that lays a direction [rad] level, and the one back. */
export const turnOf = (angle: number): Turn => ({ cos: Math.cos(angle), sin: -Math.sin(angle) });
export const backOf = ({ cos, sin }: Turn): Turn => ({ cos, sin: -sin });

export const turned = ([x, y]: Point, { cos, sin }: Turn): Point => [x * cos - y * sin, x * sin + y * cos];
export const turnedSegment = ([a, b]: Segment, turn: Turn): Segment => [turned(a, turn), turned(b, turn)];

export const lengthOf = ([[ax, ay], [bx, by]]: Segment): number => Math.hypot(bx - ax, by - ay);

/** Twice the area of a ring, above 0 where it runs counter-clockwise. */
function windingOf(ring: readonly Point[]): number {
  let twice = 0;
  for (const [i, [x, y]] of ring.entries()) {
    const [nx, ny] = ring[(i + 1) % ring.length] as Point;
    twice += x * ny - nx * y;
  }
  return twice;
}

/** The rings of an outline with the grass on their left, without corners that stand twice. */
export function ringsOf({ outer, holes }: Outline): Point[][] {
  const tidy = (ring: readonly Point[], counter: boolean) => {
    const once = ring.filter(([x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length] as Point;
      return Math.hypot(nx - x, ny - y) > 1e-6;
    });
    return windingOf(once) > 0 === counter ? once : once.reverse();
  };
  return [tidy(outer, true), ...holes.map((hole) => tidy(hole, false))].filter((ring) => ring.length >= 3);
}

/** The edges of a ring, in order. */
export const edgesOf = (ring: readonly Point[]): Segment[] =>
  ring.map((from, i): Segment => [from, ring[(i + 1) % ring.length] as Point]);
