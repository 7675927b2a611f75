import type { Dial } from '../../model/spreader.ts';

/** Where a dial is shut: at 0 where it begins at 0 or 1, else where it begins. */
export const shutAt = ({ from }: Dial): number => (from <= 1 ? 0 : from);

/** The marks below and above a setting that the dial has; twice the same where it stands on one. */
export function marksAround({ from, to, step }: Dial, setting: number): readonly [below: number, above: number] {
  const inside = Math.min(to, Math.max(from, setting));
  if (!(step > 0)) return [inside, inside];
  // Floats that stand a hair beside a mark stand on it.
  const steps = (inside - from) / step;
  const last = Math.floor((to - from) / step + 1e-9);
  const mark = (count: number) => Number((from + Math.min(count, last) * step).toFixed(6));
  return [mark(Math.floor(steps + 1e-9)), mark(Math.ceil(steps - 1e-9))];
}

/**
 * The setting to begin with where nothing is known of a product: a third of the dial, low on purpose, since what is left over
 * can still be put down and what is down cannot be taken up.
 *
 * @returns A mark of the dial, rounded downward; its lowest where a third lies below that.
 * Source: common practice: about a third open; a third of a fifteen-step dial is 5.
 * @example firstSetting({ from: 1, to: 15, step: 1 }) //=> 5
 */
export function firstSetting(dial: Dial): number {
  const shut = shutAt(dial);
  return marksAround(dial, shut + (dial.to - shut) / 3)[0];
}
