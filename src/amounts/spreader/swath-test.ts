import type { Metres } from '../../base/units.ts';
import type { PanTest } from '../../model/spreader.ts';

/** Why a row of pans gives no swath: nothing in the middle, a row that ends too soon, a pattern with more than one hump. */
export type PanFault = 'centre' | 'short' | 'humps';

/** What a row of pans says of a spreader. */
export interface SwathTest {
  /** Null where the pattern cannot be used. */
  readonly swath: Metres | null;
  readonly fault: PanFault | null;
  /** How much more the right side catches than the left, as a share of both; below 0 the left catches more. */
  readonly skew: number;
}

/** Sides that differ by more than this share are worth a word; common practice. */
export const MOST_SKEW = 0.1;
/** A pan off the middle with this many times its catch is a hump of its own; common practice. */
const HUMP = 1.5;

/**
 * Effective swath of a rotary spreader from a row of pans: on each side the distance from the middle to where the catch is
 * half that of the middle, straight between two pans.
 *
 * @param test Pans at equal spacing [m]; with an even number of them, the middle is between the two middle ones.
 * @returns The swath [m], or why there is none; how far the pattern leans to one side.
 * @throws RangeError for fewer than three pans, a spacing that is not above 0, or a negative catch.
 * Source: Ohio State University Extension, Bulletin 817, "effective swath width" (ohioline.osu.edu/b817/b817_13.html):
 * twice the distance from the centre to where the catch is half the centre's average. Its passes in one direction are
 * added up before, by whoever reads the pans.
 * @example effectiveSwath({ spacing: 1.8288, catches: [2, 4, 2] }).swath //=> 3.6576 (12 ft)
 */
export function effectiveSwath({ spacing, catches }: PanTest): SwathTest {
  if (catches.length < 3 || !(spacing > 0) || catches.some((one) => !(one >= 0)))
    throw new RangeError('a row of pans has at least three catches, none negative, and a spacing above 0');
  const middle = (catches.length - 1) / 2;
  const [before, after] = [Math.floor(middle), Math.ceil(middle)];
  const centre = ((catches[before] ?? 0) + (catches[after] ?? 0)) / 2;
  const left = catches.slice(0, before + 1).reverse();
  const right = catches.slice(after);
  // The first pan of a side lies on the middle, or half a spacing from it.
  const first = after - middle;
  const [onLeft, onRight] = [sumOf(left), sumOf(right)];
  const skew = onLeft + onRight > 0 ? (onRight - onLeft) / (onRight + onLeft) : 0;
  const unusable = (fault: PanFault): SwathTest => ({ swath: null, fault, skew });
  if (!(centre > 0)) return unusable('centre');
  if (catches.some((one) => one > HUMP * centre)) return unusable('humps');
  const reaches = [left, right].map((side) => halfAt(side, centre / 2));
  if (reaches.includes('humps')) return unusable('humps');
  if (reaches.includes('short')) return unusable('short');
  const pans = reaches.reduce<number>((sum, reach) => sum + (reach as number) + first, 0);
  return { swath: pans * spacing, fault: null, skew };
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** How many spacings from the first pan the catch comes down to `half`, for good. */
function halfAt(side: readonly number[], half: number): number | PanFault {
  const below = side.findIndex((one) => one <= half);
  if (below === -1) return 'short';
  if (side.slice(below).some((one) => one > half)) return 'humps';
  if (below === 0) return 'humps';
  const [inner, outer] = [side[below - 1] as number, side[below] as number];
  return below - 1 + (inner - half) / (inner - outer);
}
