/**
 * Days of the station-year 2020 as the UC IPM degree-day calculator gives them: lower threshold 50 °F, upper 70 °F, single
 * and double sine and triangle with all three cutoffs. Read in a copy: repository UCANR-IGIS/degree-day-challenge,
 * data/ucipm_results/ucipm_low50_high70_all.csv, commit 1766f1c (MIT). Two digits printed.
 *
 * What the calculator does and its formulas do not say: where intermediate falls below vertical, it is set to vertical, of
 * the day's total (11 July, 15 August; on 6 September the halves' own maxima would give 3.69). And the last day of a double
 * method takes its own minimum for the next day's (31 December).
 */
import { describe, expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

/** Horizontal, vertical, intermediate. */
type Cut = readonly [number, number, number];
/** Date, minimum, maximum, the next day's minimum; single sine, double sine, single triangle, double triangle. */
type Row = readonly [string, number, number, number | undefined, Cut, Cut, Cut, Cut];

const same = (value: number): Cut => [value, value, value];
const rows: readonly Row[] = [
  ['2020-01-01', 38, 55, 36, same(1.19), same(1.15), same(0.74), same(0.7)],
  ['2020-01-02', 36, 67, 33, same(5.71), same(5.56), same(4.66), same(4.46)],
  ['2020-01-07', 30, 53, 41, same(0.47), same(0.56), same(0.2), same(0.29)],
  ['2020-01-26', 54, 67, 50, same(10.5), same(9.5), same(10.5), same(9.5)],
  ['2020-02-10', 52, 73, 44, [12.01, 7.08, 11.52], [10.64, 6.09, 10.19], [12.29, 9.43, 12.07], [10.63, 8.16, 10.44]],
  ['2020-03-30', 45, 67, 52, same(7.04), same(8.27), same(6.57), same(8.03)],
  ['2020-04-22', 49, 77, 59, [11.55, 4.89, 10.03], [13.81, 6.19, 12.08], [12.14, 7.14, 11.27], [14.39, 8, 13.27]],
  ['2020-05-14', 50, 70, 56, same(10), same(11.5), same(10), same(11.5)],
  ['2020-07-11', 59, 103, 59, [17.6, 4.27, 4.27], [17.6, 4.27, 4.27], [18.63, 3.63, 6.25], [18.63, 3.63, 6.25]],
  ['2020-08-14', 71, 103, 68, [20, 0, 3], [19.9, 1.43, 3.55], [20, 0, 3], [19.97, 0.54, 3.69]],
  ['2020-08-15', 68, 107, 60, [19.81, 2.72, 2.72], [18.9, 3.41, 3.41], [19.95, 0.97, 2.4], [19.44, 2.08, 3.38]],
  ['2020-09-06', 67, 105, 58, [19.64, 3.27, 3.28], [18.5, 3.68, 3.68], [19.88, 1.46, 3.76], [19.17, 2.52, 4.6]],
  ['2020-09-27', 72, 95, 69, [20, 0, 6.5], [19.96, 1.21, 7.17], [20, 0, 6.5], [19.99, 0.38, 7.23]],
  ['2020-12-31', 38, 55, undefined, same(1.19), same(1.19), same(0.74), same(0.74)],
];

const methods = ['single-sine', 'double-sine', 'single-triangle', 'double-triangle'] as const;
const cutoffs = ['horizontal', 'vertical', 'intermediate'] as const;
const values = rows.flatMap(([date, tmin, tmax, nextTmin, ...cuts]) =>
  methods.flatMap((method, m) =>
    cutoffs.map((cutoff, c) => ({ date, tmin, tmax, nextTmin, method, cutoff, printed: cuts[m]![c]! })),
  ),
);

describe.each(methods)('%s', (method) => {
  test.each(values.filter((value) => value.method === method))(
    '$date, $tmin to $tmax °F, $cutoff: $printed',
    ({ tmin, tmax, nextTmin, cutoff, printed }) => {
      const day = { tmin, tmax, ...(nextTmin === undefined ? {} : { nextTmin }) };
      const found = degreeDays(day, { lower: 50, upper: 70, method, cutoff });
      expect(Math.abs(found - printed)).toBeLessThan(0.0051);
    },
  );
});

test('on 6 September the maxima of the half days would give 3.69', () => {
  const half = (tmin: number) =>
    degreeDays({ tmin, tmax: 105 }, { lower: 50, upper: 70, method: 'single-sine', cutoff: 'intermediate' });
  expect(((half(67) + half(58)) / 2).toFixed(2)).toBe('3.69');
});
