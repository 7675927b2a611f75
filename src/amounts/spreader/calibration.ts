import type { Kilograms, KilogramsPerSquareMetre, Metres, SquareMetres } from '../../base/units.ts';

/** A delivered rate this near to the wanted one keeps the setting. Source: UMass, rotary spreader fact sheet: 4.75 to 5.25 for 5. */
export const TOLERANCE = 0.05;

/** What binary fractions add to a tolerance that is met exactly. */
const HAIR = 1e-9;

/**
 * Length of the course on which a spreader covers an area.
 *
 * @param area What the course is to cover [m²].
 * @param swath Effective swath, for a drop spreader the width of its hopper [m].
 * @returns Length [m].
 * @throws RangeError where one is not above 0.
 * Source: equipment manuals and UGA (Reeves): 1000 ft² at a swath of 6 ft is 167 ft; 100 ft² at 1.5, 2 and 3 ft is 66.7, 50
 * and 33.3 ft.
 * @example courseLength(92.903, 1.8288) //=> 50.8 (167 ft)
 */
export function courseLength(area: SquareMetres, swath: Metres): Metres {
  if (!(area > 0) || !(swath > 0)) throw new RangeError('an area and a swath are above 0');
  return area / swath;
}

/**
 * Rate that a spreader delivered over a course.
 *
 * @param delivered What was caught, or what was filled in less what was left [kg].
 * @param length Length of the course [m].
 * @param swath Effective swath, for a drop spreader the width of its hopper from edge to edge [m].
 * @returns Rate of the pass [kg/m²].
 * @throws RangeError where one is not above 0, or the delivered amount is negative.
 * Source: UGA (weigh before and after); Univ. of Arizona, turf tips 4/1999 (30 in × 50 ft is 125 ft²).
 * @example deliveredRate(0.2268, 20.32, 0.4572) //=> 0.0244 (5 lb/1000 ft²)
 */
export function deliveredRate(delivered: Kilograms, length: Metres, swath: Metres): KilogramsPerSquareMetre {
  if (!(delivered >= 0)) throw new RangeError('a delivered amount is not negative');
  if (!(length > 0) || !(swath > 0)) throw new RangeError('a course and a swath are above 0');
  return delivered / (length * swath);
}

/**
 * Whether a delivered rate is near enough to keep the setting: within 5 %.
 *
 * @example keepsSetting(4.75, 5) //=> true
 */
export const keepsSetting = (delivered: number, wanted: number): boolean =>
  Math.abs(delivered / wanted - 1) <= TOLERANCE + HAIR;

/**
 * Passes that cover a width.
 *
 * @param width [m] @param swath [m]
 * @returns A whole number, at least 1. Source: arithmetic; passes lie one effective swath apart, so that the edge of the
 * pattern falls on the wheel track before (Purdue, spacing between passes).
 * @throws RangeError where the swath is not above 0.
 * @example passesAcross(12.2, 3.05) //=> 4
 */
export function passesAcross(width: Metres, swath: Metres): number {
  if (!(swath > 0)) throw new RangeError('a swath is above 0');
  return Math.max(1, Math.ceil(width / swath - HAIR));
}
