import * as v from 'valibot';
import { positive, word } from '../fields.ts';

/** No lawn is longer than this [m]. */
export const LONGEST = 10_000;

/** A measured length with its unit. */
export const length = v.pipe(
  positive('length'),
  v.gtValue(0, 'out-of-range:a length above 0'),
  v.maxValue(LONGEST, 'out-of-range:a length of at most 10 km'),
);

/** The unit of lengths that are plain numbers. */
export const unitWord = word(['ft', 'yd', 'm']);

/** More corners than these are no outline of a lawn. */
export const MOST_CORNERS = 1000;

/** A plain number of the unit that stands beside it. */
export const numberFrom = (from: number) =>
  v.pipe(
    v.number('wrong-type:a number'),
    v.minValue(from, `out-of-range:${from} to 100000`),
    v.maxValue(1e5, `out-of-range:${from} to 100000`),
  );
