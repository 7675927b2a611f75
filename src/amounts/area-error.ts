import type { GeoPoint } from '../base/local-plane.ts';
import { localPlane } from '../base/local-plane.ts';
import type { SquareMetres } from '../base/units.ts';
import type { AreaError } from '../model/area-sketch.ts';
import type { AreaShape, GeoPolygon, Measured } from '../model/shape.ts';
import { shapeArea } from './area.ts';

/** How far offsets along a line and radii round a point usually are off, as a share of the area. Common practice. */
const BY_FEW_LENGTHS = 0.05;

/**
 * By how much an area may be off by its measuring [m²]; null where nobody said and the method has no usual error.
 *
 * A stated error is one of every length alike (a stretched tape, a long pace), so that the area feels it twice. Errors of
 * the parts taken off add up as squares.
 */
export function areaError(area: AreaShape): AreaError | null {
  const own = measuringError(area);
  if (own === null) return null;
  const squares = [own, ...area.less.map(measuringError)].map((error) => (error?.value ?? 0) ** 2);
  return { ...own, value: Math.sqrt(squares.reduce((sum, one) => sum + one, 0)) };
}

function measuringError({ shape, error }: Measured): AreaError | null {
  const size = shapeArea(shape);
  if (shape.kind === 'geographic') {
    const { polygon, pointError } = shape;
    return polygon && pointError !== null ? { value: pointsError(polygon, pointError), basis: 'points' } : null;
  }
  if (error !== undefined) return { value: (shape.kind === 'measured' ? error : 2 * error) * size, basis: 'stated' };
  const few = shape.kind === 'offsets' || shape.kind === 'radii';
  return few ? { value: BY_FEW_LENGTHS * size, basis: 'common-practice' } : null;
}

/**
 * Standard error of the area of a polygon whose points are off by chance [m²], each on its own.
 *
 * The area moves with a point by half the distance of its neighbours, across it; half of the squared error of a point lies that
 * way. Derived from the shoelace formula. What is off by the same everywhere, as on one walk much is, moves no area: the true
 * error is smaller.
 */
function pointsError({ outer, holes }: GeoPolygon, pointError: number): SquareMetres {
  const flatten = localPlane(outer);
  const squared = (ring: readonly GeoPoint[]) => {
    const flat = ring.map(flatten);
    return flat.reduce((sum, _, i) => {
      const [before, after] = [flat.at(i - 1) ?? [0, 0], flat[(i + 1) % flat.length] ?? [0, 0]];
      return sum + ((pointError / 2) ** 2 * ((after[0] - before[0]) ** 2 + (after[1] - before[1]) ** 2)) / 2;
    }, 0);
  };
  return Math.sqrt([outer, ...holes].reduce((sum, ring) => sum + squared(ring), 0));
}
