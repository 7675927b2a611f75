/**
 * Source: McMaster & Wilhelm (1997), Growing degree-days: one equation, two interpretations, Agric. For. Meteorol.
 * 87:291-300, Table 1, base 0 °C. Read in a copy: tests/testthat of the R package degday. Exact. All ten rows.
 */
import { describe, expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

const rows = [
  { tmax: 20, tmin: 10, method1: 15, method2: 15 },
  { tmax: 10, tmin: 1, method1: 5.5, method2: 5.5 },
  { tmax: 8, tmin: -2, method1: 3, method2: 4 },
  { tmax: 6, tmin: 0, method1: 3, method2: 3 },
  { tmax: 10, tmin: 5, method1: 7.5, method2: 7.5 },
  { tmax: 5, tmin: -5, method1: 0, method2: 2.5 },
  { tmax: -2, tmin: -7, method1: 0, method2: 0 },
  { tmax: -5, tmin: -10, method1: 0, method2: 0 },
  { tmax: 10, tmin: -2, method1: 4, method2: 5 },
  { tmax: 15, tmin: 2, method1: 8.5, method2: 8.5 },
] as const;

describe('method 1 is `average`', () => {
  test.each(rows)('$tmin to $tmax °C: $method1', ({ tmin, tmax, method1 }) => {
    expect(degreeDays({ tmin, tmax }, { lower: 0, method: 'average' })).toBe(method1);
  });
});

describe('method 2 is `average-clamped`', () => {
  test.each(rows)('$tmin to $tmax °C: $method2', ({ tmin, tmax, method2 }) => {
    expect(degreeDays({ tmin, tmax }, { lower: 0, method: 'average-clamped' })).toBe(method2);
  });
});
