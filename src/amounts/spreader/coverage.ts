import type { Point } from '../../base/geometry.ts';
import type { Metres, SquareMetres } from '../../base/units.ts';
import type { HalfWalk } from '../../model/walk.ts';
import { insideAt, nearAt, type Segment, united, without } from './intervals.ts';
import { edgesOf } from './plane.ts';

/** Level lines along which the area is looked at. */
const LOOKS = 96;
/** A hair more than half a swath, lest the edge itself count as missed. */
const HAIR = 1 + 1e-3;

/** Where a way goes with the spreader open. */
export const openWay = ({ round, pieces }: HalfWalk): Segment[] => [
  ...round.flatMap((ring) => edgesOf(ring as Point[])),
  ...pieces,
];

/**
 * How much of an area lies further than half a swath from the open way of either half: the larger of the two.
 * Along level lines exact, between them by their share.
 */
export function missedArea(edges: readonly Segment[], halves: readonly HalfWalk[], swath: Metres): SquareMetres {
  const ys = edges.map(([[, y]]) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const apart = (high - low) / LOOKS;
  const missedOf = (half: HalfWalk): SquareMetres => {
    const way = openWay(half);
    let length = 0;
    for (let i = 0; i < LOOKS; i++) {
      const y = low + (i + 0.5) * apart;
      const near = united(way.flatMap((piece) => nearAt(piece, (swath / 2) * HAIR, y)));
      for (const [from, to] of without(insideAt(edges, y), near)) length += to - from;
    }
    return length * apart;
  };
  return Math.max(...halves.map(missedOf));
}
