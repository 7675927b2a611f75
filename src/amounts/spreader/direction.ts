import type { Metres } from '../../base/units.ts';
import type { Segment } from './intervals.ts';
import { piecesAlong } from './lines.ts';
import { lengthOf } from './plane.ts';

/** Directions that are tried beside those of the edges lie this far apart [rad]. */
const STEP = Math.PI / 18;
/** Directions nearer to one another than this are one [rad]. */
const SAME = Math.PI / 1800;

/** The directions of which the turns are then counted on the way itself; fewer of an outline that has many corners. */
const shortlist = (edges: number): number => (edges > 100 ? 2 : 16);

/**
 * The directions of lines that come first, by how many pieces the area would cut their lines into; of equal ones those of the
 * longer edges first.
 *
 * @param crossing Whether a second way crosses the first at a right angle and its pieces count too.
 * @returns Angles from 0 to below π [rad], the best one first.
 */
export function likelyDirections(edges: readonly Segment[], swath: Metres, crossing: boolean): number[] {
  const longestFirst = [...edges].sort((a, b) => lengthOf(b) - lengthOf(a));
  const ofEdges = longestFirst.map(([[ax, ay], [bx, by]]) => Math.atan2(by - ay, bx - ax));
  const tried = new Map<number, { readonly angle: number; readonly first: number; readonly pieces: number }>();
  for (const any of [...ofEdges, ...Array.from({ length: Math.round(Math.PI / STEP) }, (_, i) => i * STEP)]) {
    const angle = ((any % Math.PI) + Math.PI) % Math.PI;
    const key = Math.round(angle / SAME);
    if (tried.has(key)) continue;
    const first = piecesAlong(edges, swath, angle);
    const second = crossing ? piecesAlong(edges, swath, angle + Math.PI / 2) : 0;
    tried.set(key, { angle, first, pieces: first + second });
  }
  return [...tried.values()]
    .sort((a, b) => a.pieces - b.pieces || a.first - b.first)
    .slice(0, shortlist(edges.length))
    .map(({ angle }) => angle);
}
