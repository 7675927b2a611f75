import { type Point, polygonArea, signedArea } from '../base/geometry.ts';
import { keepAway } from '../base/keep-away.ts';
import { localPlane } from '../base/local-plane.ts';
import { edgesOf, isInside } from '../base/rings.ts';
import type { AreaShape, Part, Shape } from '../model/shape.ts';
import { ringOf } from './ring.ts';

/** The edge of an area on the ground [m]: closed rings, x to the right, y away from the reader; holes that have a place. */
export interface Outline {
  readonly outer: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}

/** Smaller pieces of ground are none [m²]. */
const SLIVER = 0.01;

/**
 * The outline of an area, without the ground of its setback. Parts taken off by their measures alone have no place in it
 * and are left out. By coordinates x is east and y is north.
 *
 * @returns Null for an area that is known by its size alone, or of which the setback leaves nothing.
 */
export function outlineOf(area: AreaShape): Outline | null {
  const [piece = null, ...others] = piecesOf(area);
  // A setback that leaves several pieces is refused where lawns are read; the largest is the area's.
  return others.reduce((largest, one) => (sizeOf(one) > sizeOf(largest ?? one) ? one : largest), piece);
}

/** The outline as it was measured, before anything is kept away from. */
export function wholeOutline({ shape, less }: AreaShape): Outline | null {
  const ring = ringOf(shape);
  if (!ring) return null;
  return { outer: ring.corners, holes: [...ring.holes, ...less.flatMap((part) => placed(part, shape) ?? [])] };
}

/** The ring of a part taken off; null where nobody knows its place. */
function placed({ shape, at }: Part, area: Shape): readonly (readonly Point[])[] | null {
  if (shape.kind === 'geographic' && area.kind === 'geographic')
    return shape.polygon && area.polygon && [shape.polygon.outer.map(localPlane(area.polygon.outer))];
  const ring = at && ringOf(shape);
  return ring ? [movedTo(ring.corners, at)] : null;
}

/** The ground of an outline [m²]; holes are taken to lie inside and apart. */
const sizeOf = ({ outer, holes }: Outline): number =>
  holes.reduce((left, hole) => left - polygonArea(hole), polygonArea(outer));

/** Ground that the setback takes [m²]. */
export function setbackArea(area: AreaShape): number {
  const whole = area.setback && wholeOutline(area);
  return whole ? sizeOf(whole) - piecesOf(area).reduce((sum, piece) => sum + sizeOf(piece), 0) : 0;
}

/** Pieces by their area: a plan asks for the same ones many times, and a long shore takes a while. */
const known = new WeakMap<AreaShape, readonly Outline[]>();

/** The pieces of ground that hang together once the setback is kept; one where there is none. */
export function piecesOf(area: AreaShape): readonly Outline[] {
  const before = known.get(area);
  if (before) return before;
  const whole = wholeOutline(area);
  const pieces = !whole ? [] : area.setback ? afterSetback(area, whole) : [whole];
  known.set(area, pieces);
  return pieces;
}

function afterSetback({ shape, setback }: AreaShape, whole: Outline): Outline[] {
  const sides = ringOf(shape)?.sides ?? [];
  const edges = [
    ...edgesOf(whole.outer).filter((_, i) => setback?.edges.includes(sides[i] ?? 0)),
    ...whole.holes.filter((_, i) => setback?.holes.includes(i + 1)).flatMap(edgesOf),
  ];
  const rings = keepAway([whole.outer, ...whole.holes], edges, setback?.width ?? 0);
  const large = rings.filter((ring) => polygonArea(ring) > SLIVER);
  const outers = large.filter((ring) => signedArea(ring) > 0);
  const holes = large.filter((ring) => signedArea(ring) < 0);
  return outers.map((outer) => ({
    outer,
    holes: outers.length === 1 ? holes : holes.filter(([corner]) => corner && isInside(corner, [outer])),
  }));
}

/** A part's ring with its own origin (its first corner, or the middle of a round one) at this place. */
const movedTo = (ring: readonly Point[], [x0, y0]: Point): Point[] => ring.map(([x, y]): Point => [x + x0, y + y0]);
