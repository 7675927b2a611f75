import type { Dose } from '../amounts/product.ts';
import type { Day } from '../base/day.ts';
import type { Status } from '../model/season.ts';
import type { Assigned } from './assign.ts';
import type { Cap } from './caps.ts';
import type { Choice } from './choose.ts';
import type { Progress } from './progress.ts';
import type { Forbidden } from './rules/forbidden.ts';
import type { Windows } from './windows.ts';

/** How a step stands that gives no day to those that wait for it. */
export type Gone = Extract<Status, 'dropped' | 'skipped' | 'missed'>;

/** Why a step is not planned. */
export type Dropped =
  | { readonly because: 'unwanted' }
  | { readonly because: 'follows'; readonly step: string; readonly status: Gone }
  /** Where it holds whole doses, something of it may be left, but less than the label's rate. */
  | { readonly because: 'limit'; readonly cap: Cap }
  | { readonly because: 'soil-test' };

/** A step in its season: window, day, status, dose. */
export interface PlacedStep extends Assigned {
  readonly status: Status;
  readonly dropped: Dropped | null;
  readonly windows: Windows;
  readonly chance: number;
  readonly choice: Choice | null;
  readonly pinned: boolean;
  /** Where the window has closed and `if-missed` still allows the work: about until when. */
  readonly lateUntil: Day | null;
  /** The first published day that passed without the work being done. */
  readonly dueSince: Day | null;
  /** Why the middle best day, or the as-of day where that has passed, was not taken: the rule that forbids it. */
  readonly passedOver: { readonly day: Day; readonly isBest: boolean; readonly rule: Forbidden } | null;
  /** The fewest rules that leave no day, where none is left; every rule that a pinned day is against. */
  readonly blocked: readonly Forbidden[];
  readonly dose: Dose | null;
  readonly progress: Progress;
}
