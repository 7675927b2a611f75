import type { Day } from '../../base/day.ts';
import type { KilogramsPerSquareMetre } from '../../base/units.ts';
import type { Dial } from '../../model/spreader.ts';
import { keepsSetting, TOLERANCE } from '../spreader/calibration.ts';
import { type Curves, curvesThrough, openingReaching, type Point, ratesAt } from './curves.ts';
import { firstSetting, marksAround, shutAt } from './dial.ts';

/** What one pass delivered at a setting. */
export interface DialRecord {
  readonly date: Day;
  readonly setting: number;
  readonly rate: KilogramsPerSquareMetre;
}

/**
 * What goes with a setting:
 * - `label-reached`: the label's maximum of one application is down; nothing more is put down
 * - `load-no-more`: the rate may come out above what the label leaves; only that much goes into the hopper
 * - `held-back`: it lies beyond the settings tried, and is kept so low that too much is unlikely
 * - `coarse`: the nearest mark of the dial is expected to be more than 5 % off
 * - `dial-ends-low`, `dial-ends-high`: the dial ends before the target is reached, or begins above it
 */
export type DialNote = 'label-reached' | 'load-no-more' | 'held-back' | 'coarse' | 'dial-ends-low' | 'dial-ends-high';

/** What the dial is to be set to for the next pass. */
export interface DialAdvice {
  /** Null: no further pass. */
  readonly setting: number | null;
  readonly basis: 'first' | 'records' | 'keep';
  /** What a pass at that setting is expected to deliver, with `share` between low and high; null without records. */
  readonly rate: {
    readonly low: KilogramsPerSquareMetre;
    readonly middle: KilogramsPerSquareMetre;
    readonly high: KilogramsPerSquareMetre;
  } | null;
  readonly share: number;
  readonly notes: readonly DialNote[];
}

export interface DialOptions {
  /** Downward for pesticides. */
  readonly rounding: 'nearest' | 'down';
  /** The most that this pass may still deliver by the label; null where no label limits it. */
  readonly most: KilogramsPerSquareMetre | null;
}

/** Share of the real rates that lie in a stated range. */
export const SHARE = 0.8;
const [LOW, HIGH] = [(1 - SHARE) / 2, (1 + SHARE) / 2];

/** More than this above the target is too much, ... */
const TOO_MUCH = Math.log(1.1);
/** ... and may come of a setting in at most this share of cases. */
const RISK = 0.1;
/** Nothing is advised more than so many times as open as the widest setting tried, or that part of the narrowest. */
const REACH = Math.log(2);

/**
 * The next setting of a spreader for a product, learned from what passes have delivered.
 *
 * Within ±5 % the setting stays, unless all records together deny it. Otherwise it is where half of the curves
 * that the records leave possible have reached the target, but no higher than where one in ten is 10 % above it: among the
 * settings tried that hardly matters, beyond them it shortens the stride. Without records: a third of the dial.
 *
 * @param records Of this product and this spreader, in any order. Those without a rate or below the dial's shut mark are left
 *   out.
 * @param target What the pass is to deliver [kg/m²]; not more than `options.most` is aimed at.
 * @example adviseSetting([], { from: 1, to: 15, step: 1 }, 0.01, { rounding: 'nearest', most: null }).setting //=> 5
 */
export function adviseSetting(
  records: readonly DialRecord[],
  dial: Dial,
  target: KilogramsPerSquareMetre,
  { rounding, most }: DialOptions,
): DialAdvice {
  const none = { rate: null, share: SHARE };
  if (most !== null && most <= 0) return { setting: null, basis: 'records', ...none, notes: ['label-reached'] };
  const aim = Math.min(target, most ?? target);
  const usable = records.filter(({ setting, rate }) => setting > shutAt(dial) && rate > 0);
  const sorted = [...usable].sort((a, b) => a.date - b.date);
  const last = sorted.at(-1);
  if (!last)
    return { setting: firstSetting(dial), basis: 'first', ...none, notes: most === null ? [] : ['load-no-more'] };
  const points = sorted.map(({ setting, rate }) => ({ opening: openingOf(dial, setting), rate: Math.log(rate) }));
  const curves = curvesThrough(points);
  const kept = rateAt(curves, dial, last.setting);
  const believed = kept.low <= aim && aim <= kept.high;
  const stays = keepsSetting(last.rate, aim) && believed && (most === null || kept.middle <= most * (1 + 1e-9));
  const next = stays
    ? { setting: last.setting, notes: [] }
    : nextSetting(curves, points, dial, Math.log(aim), rounding);
  const rate = rateAt(curves, dial, next.setting);
  return {
    setting: next.setting,
    basis: stays ? 'keep' : 'records',
    rate,
    share: SHARE,
    notes: [
      ...next.notes,
      ...(!stays && next.notes.length === 0 && !keepsSetting(rate.middle, aim) ? (['coarse'] as const) : []),
      ...(most !== null && rate.high > most ? (['load-no-more'] as const) : []),
    ],
  };
}

const openingOf = (dial: Dial, setting: number): number =>
  Math.log((setting - shutAt(dial)) / (dial.to - shutAt(dial)));

function rateAt(curves: Curves, dial: Dial, setting: number): NonNullable<DialAdvice['rate']> {
  const [low = 0, middle = 0, high = 0] = ratesAt(curves, openingOf(dial, setting), [LOW, 0.5, HIGH]).map(Math.exp);
  return { low, middle, high };
}

function nextSetting(
  curves: Curves,
  points: readonly Point[],
  dial: Dial,
  aim: number,
  rounding: DialOptions['rounding'],
): { readonly setting: number; readonly notes: readonly DialNote[] } {
  const tried = points.map(({ opening }) => opening);
  const [narrowest, widest] = [Math.min(...tried), Math.max(...tried)];
  const best = openingReaching(curves, aim, 0.5);
  const careful = Math.min(best, openingReaching(curves, aim + TOO_MUCH, RISK));
  const within = Math.max(narrowest - REACH, Math.min(widest + REACH, careful));
  const wanted = shutAt(dial) + (dial.to - shutAt(dial)) * Math.exp(within);
  const middle = (opening: number) => ratesAt(curves, opening, [0.5])[0] as number;
  const heldBack = within > widest && wanted <= dial.to && aim - middle(within) > TOLERANCE;
  const [below, above] = marksAround(dial, wanted);
  const off = (setting: number) => Math.abs(middle(openingOf(dial, setting)) - aim);
  const open = below > shutAt(dial);
  const setting = open && (rounding === 'down' || heldBack || off(below) <= off(above)) ? below : above;
  const notes: DialNote[] = [];
  if (wanted > dial.to) notes.push('dial-ends-high');
  if (wanted < dial.from || !open) notes.push('dial-ends-low');
  if (heldBack) notes.push('held-back');
  return { setting, notes };
}
