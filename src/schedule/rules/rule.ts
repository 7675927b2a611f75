import type { Dose } from '../../amounts/product.ts';
import type { Day } from '../../base/day.ts';
import type { Product } from '../../model/product.ts';
import type { Assigned } from '../assign.ts';
import type { Ground } from '../ground.ts';
import type { Forbidden } from './forbidden.ts';

/** Work already placed: what other steps have to keep clear of. */
export interface Placed {
  readonly name: string;
  readonly day: Day;
  readonly areas: readonly string[];
  /** Whether it is planned work that takes a place among the day's jobs. */
  readonly job: boolean;
  readonly nitrogen: boolean;
  readonly seeds: boolean;
  readonly product: Product | null;
}

/** What a day is judged for. */
export interface RuleInput {
  readonly ground: Ground;
  readonly assigned: Assigned;
  readonly dose: Dose | null;
  /** Other work on the lawn, planned and done. */
  readonly placed: readonly Placed[];
  /** Nothing is chosen afresh before this day. */
  readonly earliest: Day;
  /** The day that stands published; it may stay where nothing new may be chosen. */
  readonly published: Day | null;
}

/** A rule on days, bound to a step: why it forbids a day, or null. */
export type DayRule = (day: Day) => Forbidden | null;
