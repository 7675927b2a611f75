import { edgeDay, type Windows } from './windows.ts';

/** Days by which a median may differ from the usual one and still be it. */
const SAME = 1;
/** A spread has to be narrower than this share of the past years' to know more than they do. */
const NARROWER = 0.9;

/**
 * Whether the runs of weather say no more of an opening than the past years do: the same middle day, about as wide a spread.
 *
 * @example usualDate({ ofTraces: pastWindows, ofPastYears: pastWindows }) //=> true
 */
export function usualDate({ ofTraces, ofPastYears }: Windows): boolean {
  const [ahead, past] = [ofTraces, ofPastYears].map((windows) => {
    const [p10, p50, p90] = [0.1, 0.5, 0.9].map((share) => edgeDay(windows, 'opens', share));
    return { p50, width: typeof p10 === 'number' && typeof p90 === 'number' ? p90 - p10 : null };
  });
  if (typeof ahead?.p50 !== 'number' || typeof past?.p50 !== 'number') return false;
  if (Math.abs(ahead.p50 - past.p50) > SAME || past.width === null || past.width === 0) return false;
  return ahead.width === null || ahead.width >= NARROWER * past.width;
}
