import type { Point } from '../base/geometry.ts';
import type { Metres, SquareMetres } from '../base/units.ts';

/** How one way over an area lies: along it, across the first, between its lines, or along the first once more where the area is too narrow. */
export type Direction = 'lengthwise' | 'crosswise' | 'between' | 'again';

/** One way over an area with the spreader, half of the load on it: round the edge first, then lines. */
export interface HalfWalk {
  readonly direction: Direction;
  /** Closed rings, half a swath inside the edge; the first begins at the start. */
  readonly round: readonly (readonly Point[])[];
  /** Pieces of the lines in the order in which they are walked, each from its beginning to its end. */
  readonly pieces: readonly (readonly [from: Point, to: Point])[];
  /** How many lines the pieces lie on. */
  readonly lines: number;
  /** How far neighbouring lines lie apart; null for fewer than two [m]. */
  readonly apart: Metres | null;
  readonly start: Point;
  /** Whole way, the turns too [m]. */
  readonly distance: Metres;
  /** The way with the spreader open [m]. */
  readonly open: Metres;
  readonly turns: number;
}

/** Both ways over an area, in the plane of its outline [m]. */
export interface AreaWalk {
  readonly outer: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
  /** Whether the area has no outline and a square of its size stands in. */
  readonly square: boolean;
  /** Effective swath of a pass; the lines of one way may lie closer [m]. */
  readonly swath: Metres;
  readonly halves: readonly [HalfWalk, HalfWalk];
  /** What a way leaves out of the area: corners and places narrower than a swath [m²]. */
  readonly missed: SquareMetres;
}
