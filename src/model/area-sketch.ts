import type { Point } from '../base/geometry.ts';
import type { Metres, SquareMetres } from '../base/units.ts';

/** A length that was measured, where it lies. */
export interface MeasuredLine {
  readonly from: Point;
  readonly to: Point;
  readonly length: Metres;
}

/** A number at a place. */
export interface Numbered {
  readonly number: number;
  readonly at: Point;
}

/** A part taken off at a place that was measured, by the number of its hole. */
export interface PlacedPart {
  readonly number: number;
  readonly kind: string;
  /** What it was measured by, where that is a length or two. */
  readonly lengths: readonly Metres[];
  readonly at: Point;
}

/** By how much an area may be off, and how that is known. */
export interface AreaError {
  readonly value: SquareMetres;
  readonly basis: 'stated' | 'points' | 'common-practice';
}

/** What a drawing of an area shows: plain data, x to the right, y upward [m]. */
export interface AreaSketch {
  readonly id: string;
  readonly kind: string;
  /** Less its setback and the parts taken off. */
  readonly size: SquareMetres;
  readonly error: AreaError | null;
  /** As it was measured: its edge, then those of its holes; none where its form is not known. */
  readonly measured: readonly (readonly Point[])[];
  /** What is left of it: rings round it and round holes in it. */
  readonly ground: readonly (readonly Point[])[];
  /** Lines that were measured, or could be to check it. */
  readonly lines: readonly MeasuredLine[];
  readonly sides: readonly Numbered[];
  readonly holes: readonly Numbered[];
  readonly parts: readonly PlacedPart[];
  readonly setback: { readonly width: Metres; readonly size: SquareMetres } | null;
  /** Parts taken off by their measures alone: how many, and how large all of them are. */
  readonly unplaced: { readonly count: number; readonly size: SquareMetres };
  /** Whether north is up. */
  readonly north: boolean;
  /** Whether the measures leave open how far the far side lies to the left or right. */
  readonly guessed: boolean;
}
