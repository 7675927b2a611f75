import type * as v from 'valibot';
import type { Point } from '../../base/geometry.ts';
import type { GeoPoint } from '../../base/local-plane.ts';
import type { Metres, SquareMetres } from '../../base/units.ts';

/** A polygon on the ellipsoid; a ring's last point joins its first. */
export interface GeoPolygon {
  readonly outer: readonly GeoPoint[];
  readonly holes: readonly (readonly GeoPoint[])[];
}

/** A measured shape, in metres. */
export type Shape =
  | { readonly kind: 'rectangle'; readonly sides: readonly [Metres, Metres] }
  | { readonly kind: 'circle'; readonly radius: Metres }
  | { readonly kind: 'ellipse'; readonly axes: readonly [Metres, Metres] }
  | { readonly kind: 'triangle'; readonly base: Metres; readonly height: Metres }
  | { readonly kind: 'sides'; readonly sides: readonly [Metres, Metres, Metres] }
  | { readonly kind: 'trapezoid'; readonly sides: readonly [Metres, Metres]; readonly height: Metres }
  | { readonly kind: 'polygon'; readonly corners: readonly Point[] }
  | Offsets
  | { readonly kind: 'radii'; readonly radii: readonly Metres[] }
  | Geographic
  | { readonly kind: 'measured'; readonly area: SquareMetres };

/** Widths across a line at equal steps; `ends` are those at its two ends, one step before the first and after the last. */
export interface Offsets {
  readonly kind: 'offsets';
  readonly every: Metres;
  readonly widths: readonly Metres[];
  readonly ends: readonly [Metres, Metres];
}

/** A polygon by its coordinates. */
export interface Geographic {
  readonly kind: 'geographic';
  /** Null until `link` has read the file. */
  readonly polygon: GeoPolygon | null;
  /** The file that tells them; null where they stand in the lawn file. */
  readonly file: string | null;
  /** How far a point usually (root mean square) lies from the true one; null where it is not known. */
  readonly pointError: Metres | null;
}

/** What stands beside a shape and belongs to its measuring: the factor of its unit to metres, how far its points are off. */
export interface Beside {
  readonly unit: number;
  readonly pointError?: Metres;
}

/** One way in which a shape may be written: its value, and the keys beside it. */
export interface Form {
  readonly schema: v.GenericSchema<unknown, unknown>;
  readonly beside: v.ObjectEntries;
}

/** A kind of shape: the ways to write it, which of them a value is written in, and what it becomes. */
export interface Kind {
  readonly forms: readonly [Form, ...Form[]];
  readonly pick?: (value: unknown) => number;
  readonly build: (value: never, beside: Beside) => Shape;
}
