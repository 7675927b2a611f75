import type { Problem } from '../base/problem.ts';
import type { Status } from './season.ts';
import type { Dial, Passes, SpreaderKind, SwathBasis } from './spreader.ts';
import type { Direction } from './walk.ts';

/** How a product is put down with a spreader, as `spreader --json` prints it. A unit stands in its key; absent is null. */
export interface SpreaderReport {
  readonly kind: 'spreader';
  readonly version: 1;
  readonly lawn: string;
  readonly lawnName: string;
  readonly asOf: string;
  /** The step of the plan; null where the plan has none to put down and the ways alone are told. */
  readonly step: {
    readonly id: string;
    readonly name: string;
    readonly season: number;
    readonly status: Status;
    readonly date: string | null;
  } | null;
  readonly product: { readonly id: string; readonly name: string; readonly pesticide: boolean } | null;
  /** What is put down in all, in the passes that are left over every area; null where it is not known. */
  readonly amountKg: number | null;
  readonly amount: string | null;
  readonly spreader: {
    /** Its id where the lawn has several. */
    readonly id: string | null;
    readonly kind: SpreaderKind;
    readonly swathM: number;
    readonly swathFrom: SwathBasis;
    /** How much more the right side of a pan test caught than the left, as a share of both. */
    readonly skew: number | null;
    readonly passes: Passes;
    readonly speedMps: number;
    readonly dial: Dial | null;
  };
  /** Settings to begin with: one for each rate that a pass is to put down. */
  readonly settings: readonly SettingAdvice[];
  readonly areas: readonly AreaReport[];
  /** Walking alone, without filling and setting. */
  readonly walkingMin: number;
  readonly cautions: readonly string[];
  /** Where the drawing was written; null where nothing was. */
  readonly drawing: string | null;
  readonly problems: readonly Problem[];
}

/** What is left to do: both passes, or the second where the journal has the first. */
type PassesLeft = 'both-passes' | 'second-pass';

/** A setting for a rate, and a course on which to try it. */
export interface SettingAdvice {
  readonly areas: readonly string[];
  readonly left: PassesLeft;
  /** What one pass is to put down; null where the amount is not known. */
  readonly passGPerM2: number | null;
  /** Null where the lawn file does not tell of the dial, or the label allows no pass. */
  readonly setting: number | null;
  readonly basis: 'first' | 'records' | 'keep';
  /** What the journal's records say of it and what goes with it, such as a label's maximum, line by line. */
  readonly learned: readonly string[];
  /** So far to walk to cover so much, and what is then to be gone; between least and most the setting is kept. Of a pesticide never more than the rate. */
  readonly course: {
    readonly areaM2: number;
    readonly lengthM: number;
    readonly deliversKg: number | null;
    readonly leastKg: number | null;
    readonly mostKg: number | null;
  };
}

export interface AreaReport {
  readonly id: string;
  readonly areaM2: number;
  /** Whether a square of its size stands in for an area without an outline. */
  readonly square: boolean;
  /** Whether parts are taken off it that have no place in the outline. */
  readonly partsWithoutPlace: boolean;
  readonly amountKg: number | null;
  /** In words, or what to do where it is not known. */
  readonly amount: string | null;
  readonly left: PassesLeft;
  /** Corners and narrow places that a way does not reach; null where the area is too large for a way. */
  readonly missedM2: number | null;
  readonly passes: readonly PassReport[];
}

export interface PassReport {
  readonly direction: Direction;
  readonly amountKg: number | null;
  readonly amount: string | null;
  /** The whole way, turns too; of it with the spreader open. */
  readonly distanceM: number;
  readonly openM: number;
  /** How much more than its outline the open way covers, as a share: where lines lie closer than a swath. */
  readonly overlap: number;
  readonly lines: number;
  /** How far the lines lie apart; null for fewer than two. */
  readonly apartM: number | null;
  readonly turns: number;
  readonly walkingMin: number;
}
