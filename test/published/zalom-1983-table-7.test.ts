/**
 * Source: Zalom, Goodell, Wilson, Barnett, Bentley (1983), Degree-Days: the Calculation and Use of Heat Units in Pest
 * Management, UC Leaflet 21373, Table 7: lower threshold 55 °F, upper 90 °F, horizontal cutoff. Read in a copy:
 * tests/testthat/zalom83_tbl7.RData of the R package degday. All twelve rows, all four columns, but for one value.
 *
 * Left out: the double triangle of 60/100 °F before 75 °F, printed 24.88. It cannot stand beside the rest of the table. Its
 * first half day is the single triangle printed in the same row, 23.75. Its second half, from 100 down to 75, is warmer than
 * one from 95 to 75, which the next row prints as 29.38. So it is at least (23.75 + 29.38) / 2 = 26.56; the formula gives
 * 27.125. The printed 24.88 comes out if 30.5, the second half, is written 26.0. The tests of degday leave it out as well.
 */
import { describe, expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

const LEFT_OUT = Number.NaN;

/** Minimum, maximum, next minimum; single and double triangle, single and double sine. */
const rows = [
  [96, 110, 91, 35.0, 35.0, 35.0, 35.0],
  [91, 105, 96, 35.0, 35.0, 35.0, 35.0],
  [45, 54, 38, 0, 0, 0, 0],
  [38, 50, 45, 0, 0, 0, 0],
  [60, 80, 75, 15.0, 18.75, 15.0, 18.75],
  [75, 88, 60, 26.5, 22.75, 26.5, 22.75],
  [50, 82, 45, 11.39, 10.62, 11.85, 11.31],
  [45, 70, 50, 4.5, 5.06, 5.31, 5.7],
  [60, 100, 75, 23.75, LEFT_OUT, 22.82, 26.26],
  [75, 95, 60, 29.38, 25.76, 28.91, 25.3],
  [50, 101, 48, 19.56, 19.19, 18.95, 18.69],
  [48, 95, 50, 16.76, 17.13, 16.96, 17.23],
] as const;

describe.each([
  { method: 'single-triangle', column: 3 },
  { method: 'double-triangle', column: 4 },
  { method: 'single-sine', column: 5 },
  { method: 'double-sine', column: 6 },
] as const)('$method', ({ method, column }) => {
  const printed = rows
    .map((row) => ({ tmin: row[0], tmax: row[1], nextTmin: row[2], value: row[column] }))
    .filter(({ value }) => !Number.isNaN(value));
  test.each(printed)('$tmin to $tmax °F, then $nextTmin: $value', ({ value, ...day }) => {
    const found = degreeDays(day, { lower: 55, upper: 90, method });
    expect(Math.abs(found - value)).toBeLessThan(0.00501);
  });
});

test('the value left out: 27.125 by the formula, at least the 26.56 that the rest of the table asks', () => {
  const found = degreeDays({ tmin: 60, tmax: 100, nextTmin: 75 }, { lower: 55, upper: 90, method: 'double-triangle' });
  expect(found).toBe(27.125);
  expect(found).toBeGreaterThan((23.75 + 29.38) / 2);
});
