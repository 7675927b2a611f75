/** Trailing mean, min, max and sum, and what each does with a gap. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trailingMean } from '../../src/base/series.ts';
import { trailing } from '../../src/climate/running.ts';
import { running } from '../../src/index.ts';

const GAP = Number.NaN;

test.each([
  { statistic: 'mean', expected: [GAP, GAP, 3, 4, 5] },
  { statistic: 'min', expected: [GAP, GAP, 1, 1, 4] },
  { statistic: 'max', expected: [GAP, GAP, 5, 6, 6] },
  { statistic: 'sum', expected: [GAP, GAP, 9, 12, 15] },
] as const)('$statistic of three days', ({ statistic, expected }) =>
  expect(running([3, 1, 5, 6, 4], 3, statistic)).toEqual(expected),
);

describe('a day without a value in a window of four', () => {
  const values = [1, GAP, 3, 4, 5, 6];
  test.each([
    { statistic: 'mean', third: 8 / 3 },
    { statistic: 'min', third: 1 },
    { statistic: 'max', third: 4 },
  ] as const)('$statistic is over the three that are there', ({ statistic, third }) =>
    expect(running(values, 4, statistic)[3]).toBeCloseTo(third, 12),
  );
  test('a sum is not known', () => expect(running(values, 4, 'sum')).toEqual([GAP, GAP, GAP, GAP, GAP, 18]));
  test('two are too many for any', () => {
    for (const statistic of ['mean', 'min', 'max', 'sum'] as const)
      expect(running([1, GAP, GAP, 4], 4, statistic)[3]).toBeNaN();
  });
  test('and none may be the day itself', () => {
    for (const statistic of ['mean', 'min', 'max', 'sum'] as const)
      expect(running([1, 2, 3, GAP], 4, statistic)[3]).toBeNaN();
  });
});

test.each([0, -1, 2.5, GAP])('a window of %d days is refused', (days) =>
  expect(() => running([1, 2], days, 'mean')).toThrow(RangeError),
);

test('min ≤ mean ≤ max, sum is mean × days, and the mean is that of base/series', () => {
  const reading = fc.oneof({ weight: 5, arbitrary: fc.double({ min: -40, max: 50, noNaN: true }) }, fc.constant(GAP));
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 40 }), fc.integer({ min: 1, max: 15 }), (values, days) => {
      const series = { start: 100, values: Float64Array.from(values) };
      for (let day = 100; day < 100 + values.length; day++) {
        const of = (statistic: 'mean' | 'min' | 'max' | 'sum') => trailing(series, day, days, statistic);
        expect(of('mean')).toBe(trailingMean(series, day, days));
        if (Number.isNaN(of('mean'))) expect([of('min'), of('max'), of('sum')]).toEqual([GAP, GAP, GAP]);
        else {
          expect(of('min')).toBeLessThanOrEqual(of('mean') + 1e-9);
          expect(of('max')).toBeGreaterThanOrEqual(of('mean') - 1e-9);
          if (!Number.isNaN(of('sum'))) expect(of('sum')).toBeCloseTo(of('mean') * days, 9);
        }
      }
    }),
  );
});
