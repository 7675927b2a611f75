/**
 * An extreme a hair from a threshold, as when both were °F and took different ways to °C. The argument of the arc sine can
 * then pass 1 by a rounding, and a NaN of one day would take the day from a whole trace.
 */
import { expect, test } from 'vitest';
import { degreeDays } from '../../src/climate/degree-days.ts';

test.each([
  {
    name: 'maximum just above the lower threshold',
    tmin: -18.05472960866991,
    tmax: 1.8888378681152052,
    lower: 1.8888378681152045,
    expected: 0,
  },
  {
    name: 'minimum just below the lower threshold',
    tmin: 1.1843077904800712,
    tmax: 16.745051862470536,
    lower: 1.1843077904800714,
    expected: 7.780372036,
  },
  // -31.8 to 26 °F as the weather reader makes it, a base of 26 °F as the program reader does.
  {
    name: '-31.8 to 26 °F with base 26 °F',
    tmin: (-31.8 - 32) / 1.8,
    tmax: (26 - 32) / 1.8,
    lower: 26 * (5 / 9) - 160 / 9,
    expected: 0,
  },
])('$name: $expected', ({ tmin, tmax, lower, expected }) => {
  expect(degreeDays({ tmin, tmax }, { method: 'single-sine', lower })).toBeCloseTo(expected, 6);
});

test('maximum just above the upper threshold: all of the heat above the lower one', () => {
  const day = { tmin: -18.05472960866991, tmax: 1.8888378681152052 };
  const rule = { method: 'single-sine', lower: -23.05472960866991, upper: 1.8888378681152045 } as const;
  expect(degreeDays(day, rule)).toBeCloseTo(14.971783739, 6);
});
