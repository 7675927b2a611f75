import type { Dial } from '../../model/spreader.ts';

/**
 * The setting to begin with where nothing is known of a product: about a third of the dial, deliberately low, since what is
 * left over can still be put down. Common practice: a third of a fifteen-step dial is 5.
 *
 * @returns A setting that the dial has, rounded downward to its step; its lowest where a third lies below that.
 * @example firstSetting({ from: 1, to: 15, step: 0.25 }) //=> 5
 */
export function firstSetting({ from, to, step }: Dial): number {
  // A dial that begins at 0 or 1 is shut at 0; another is taken to be shut where it begins.
  const shut = from <= 1 ? 0 : from;
  const third = Math.max(from, shut + (to - shut) / 3);
  if (!(step > 0)) return third;
  return Number((from + Math.floor((third - from) / step + 1e-9) * step).toFixed(6));
}
