import * as v from 'valibot';
import type { Metres } from '../base/units.ts';
import { above0, map, maybe, number, word } from './fields.ts';
import { atMostOneOf, standing } from './standing.ts';

/** Kinds of spreaders: one that throws to both sides, one that drops below itself, one that is carried and cranked. */
const KINDS = ['rotary', 'drop', 'hand'] as const;
export type SpreaderKind = (typeof KINDS)[number];

/** How the two half-rate ways lie: across one another, or side by side with the lines of one between those of the other. */
const PASSES = ['crossing', 'parallel'] as const;
export type Passes = (typeof PASSES)[number];

/** A row of pans across the way of a spreader, left to right as it is pushed, and what each has caught. */
const panTest = map({
  /** From the middle of a pan to the middle of the next. */
  spacing: above0('length'),
  /** In any one unit: depth, weight or count. The middle of the row is where the spreader goes. */
  catches: v.pipe(
    v.array(number(0, 1e6)),
    v.minLength(3, 'wrong-type:a list of at least three catches, left to right'),
    v.maxLength(101, 'out-of-range:at most 101 catches'),
  ),
});

/** The numbers of a spreader's dial. */
export interface Dial {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

const dial = v.pipe(
  map({ from: number(0, 1000), to: number(0, 1000), step: number(0, 1000) }),
  v.check(({ from, to }) => from < to, 'out-of-range:a dial from its lowest to its highest setting'),
);

/** A spreader as it stands in a lawn file; its swath as it is known, or as pans have caught it. */
export const SpreaderSchema = v.pipe(
  map({
    kind: maybe(word(KINDS)),
    swath: maybe(above0('length')),
    pans: maybe(panTest),
    dial: maybe(dial),
    speed: maybe(above0('speed')),
    passes: maybe(word(PASSES)),
  }),
  standing('spreader-swath', atMostOneOf('swath', 'pans')),
);
export type Spreader = v.InferOutput<typeof SpreaderSchema>;
export type PanTest = v.InferOutput<typeof panTest>;

/** The spreaders of a lawn by their names; the single one has none. */
export interface Spreaders {
  readonly spreader?: Spreader;
  readonly spreaders?: Readonly<Record<string, Spreader>>;
}

/** Where the width of a pass comes from. */
export type SwathBasis = 'file' | 'pans' | 'usual';

/** The effective width of a pass of a spreader. */
export interface Swath {
  readonly swath: Metres;
  readonly basis: SwathBasis;
  /** How much more the right side of a pan test caught than the left, as a share of both; null without a test. */
  readonly skew: number | null;
}
