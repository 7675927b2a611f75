/** What holds for degree days whatever the weather. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DegreeDayRule, degreeDays } from '../../src/climate/degree-days.ts';
import type { DegreeDayMethod } from '../../src/model/trigger.ts';

const methods: readonly DegreeDayMethod[] = ['average', 'average-clamped', 'modified', 'single-sine'];

const temperature = fc.double({ min: -60, max: 130, noNaN: true });
const day = fc.tuple(temperature, temperature).map(([a, b]) => ({ tmin: Math.min(a, b), tmax: Math.max(a, b) }));
const thresholds = fc.record(
  { lower: fc.double({ min: -20, max: 70, noNaN: true }), above: fc.double({ min: 0.1, max: 60, noNaN: true }) },
  { requiredKeys: ['lower'] },
);
const ruleOf = (method: DegreeDayMethod, { lower, above }: { lower: number; above?: number }): DegreeDayRule => ({
  method,
  lower,
  ...(above === undefined ? {} : { upper: lower + above }),
});
/** Room for rounding in sums of temperatures up to 200 [degrees]. */
const ROUNDING = 1e-9;

describe.each(methods)('%s', (method) => {
  test('is never below 0', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, limits) => {
        expect(degreeDays(extremes, ruleOf(method, limits))).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  test('is never above the gap between the thresholds', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, { lower, above = 40 }) => {
        const found = degreeDays(extremes, ruleOf(method, { lower, above }));
        expect(found).toBeLessThanOrEqual(above + ROUNDING);
      }),
    );
  });
  test('does not fall when the maximum rises', () => {
    fc.assert(
      fc.property(day, fc.double({ min: 0, max: 30, noNaN: true }), thresholds, (extremes, warmer, limits) => {
        const rule = ruleOf(method, limits);
        const before = degreeDays(extremes, rule);
        const after = degreeDays({ ...extremes, tmax: extremes.tmax + warmer }, rule);
        expect(after).toBeGreaterThanOrEqual(before - ROUNDING);
      }),
    );
  });
  test('does not fall when the minimum rises', () => {
    fc.assert(
      fc.property(day, fc.double({ min: 0, max: 1, noNaN: true }), thresholds, (extremes, share, limits) => {
        const rule = ruleOf(method, limits);
        const tmin = Math.min(extremes.tmax, extremes.tmin + share * (extremes.tmax - extremes.tmin));
        expect(degreeDays({ ...extremes, tmin }, rule)).toBeGreaterThanOrEqual(degreeDays(extremes, rule) - ROUNDING);
      }),
    );
  });
  test('is the same in °F as in °C, times 1.8', () => {
    const fahrenheit = (celsius: number) => celsius * 1.8 + 32;
    fc.assert(
      fc.property(day, thresholds, ({ tmin, tmax }, limits) => {
        const { upper, lower } = ruleOf(method, limits);
        const inF = degreeDays(
          { tmin: fahrenheit(tmin), tmax: fahrenheit(tmax) },
          { method, lower: fahrenheit(lower), ...(upper === undefined ? {} : { upper: fahrenheit(upper) }) },
        );
        const inC = degreeDays({ tmin, tmax }, ruleOf(method, limits));
        expect(Math.abs(inF - 1.8 * inC)).toBeLessThan(1e-6);
      }),
    );
  });
  test.each([
    { tmin: Number.NaN, tmax: 20 },
    { tmin: 8, tmax: Number.NaN },
    { tmin: Number.NaN, tmax: Number.NaN },
  ])('is NaN where an extreme is: $tmin, $tmax', (extremes) => {
    expect(degreeDays(extremes, { method, lower: 10, upper: 30 })).toBeNaN();
  });
  test('refuses an upper threshold that is not above the lower', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, { lower, above = 0 }) => {
        expect(() => degreeDays(extremes, { method, lower, upper: lower - above })).toThrow(RangeError);
      }),
    );
  });
  test('refuses a minimum above the maximum', () => {
    expect(() => degreeDays({ tmin: 12, tmax: 11 }, { method, lower: 10 })).toThrow(RangeError);
  });
});

test('a sine day without an upper threshold has at least the heat of its mean (average)', () => {
  fc.assert(
    fc.property(day, thresholds, (extremes, { lower }) => {
      const sine = degreeDays(extremes, { method: 'single-sine', lower });
      expect(sine).toBeGreaterThanOrEqual(degreeDays(extremes, { method: 'average', lower }) - ROUNDING);
    }),
  );
});
test('and at most the heat of its extremes, each raised to the threshold (average-clamped)', () => {
  fc.assert(
    fc.property(day, thresholds, (extremes, { lower }) => {
      const sine = degreeDays(extremes, { method: 'single-sine', lower });
      expect(sine).toBeLessThanOrEqual(degreeDays(extremes, { method: 'average-clamped', lower }) + ROUNDING);
    }),
  );
});
test('a sine day wholly between the thresholds is its mean less the lower one', () => {
  fc.assert(
    fc.property(
      fc.tuple(fc.double({ min: 10, max: 30, noNaN: true }), fc.double({ min: 10, max: 30, noNaN: true })),
      ([a, b]) => {
        const found = degreeDays(
          { tmin: Math.min(a, b), tmax: Math.max(a, b) },
          { method: 'single-sine', lower: 10, upper: 30 },
        );
        expect(Math.abs(found - ((a + b) / 2 - 10))).toBeLessThan(ROUNDING);
      },
    ),
  );
});
