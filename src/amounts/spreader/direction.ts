import type { Metres } from '../../base/units.ts';
import type { Segment } from './intervals.ts';
import { piecesAlong } from './lines.ts';
import { lengthOf } from './plane.ts';

/** Directions that are tried beside those of the edges lie this far apart [rad]. */
const STEP = Math.PI / 18;
/** Directions nearer to one another than this are one [rad]. */
const SAME = Math.PI / 1800;

/**
 * The direction of lines with the fewest turns, counted by cutting the lines to the area; of equal ones that of the longest
 * edge.
 *
 * @param crossing Whether a second way crosses the first at a right angle and its turns count too.
 * @returns Angle from 0 to below π [rad].
 */
export function bestDirection(edges: readonly Segment[], swath: Metres, crossing: boolean): number {
  const longestFirst = [...edges].sort((a, b) => lengthOf(b) - lengthOf(a));
  const ofEdges = longestFirst.map(([[ax, ay], [bx, by]]) => Math.atan2(by - ay, bx - ax));
  const tried = new Set<number>();
  let best = { angle: 0, pieces: Number.POSITIVE_INFINITY, first: Number.POSITIVE_INFINITY };
  for (const any of [...ofEdges, ...Array.from({ length: 18 }, (_, i) => i * STEP)]) {
    const angle = ((any % Math.PI) + Math.PI) % Math.PI;
    const key = Math.round(angle / SAME);
    if (tried.has(key)) continue;
    tried.add(key);
    const first = piecesAlong(edges, swath, angle);
    if (first > best.pieces) continue;
    const pieces = first + (crossing ? piecesAlong(edges, swath, angle + Math.PI / 2) : 0);
    if (pieces < best.pieces || (pieces === best.pieces && first < best.first)) best = { angle, pieces, first };
  }
  return best.angle;
}
