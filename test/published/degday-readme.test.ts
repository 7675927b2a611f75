/**
 * Source: README of the R package degday (Lyons, UC Agriculture and Natural Resources), first days of its example: lower
 * threshold 55 °F, upper 93.9 °F, horizontal cutoff (read). Two digits printed.
 */
import { describe, expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

/** Minimum, maximum, next minimum; single and double triangle, single and double sine. */
const rows = [
  [38, 55, 36, 0.0, 0.0, 0.0, 0.0],
  [36, 67, 33, 2.32, 2.22, 3.31, 3.23],
  [33, 59, 37, 0.31, 0.34, 0.68, 0.71],
  [37, 59, 38, 0.36, 0.37, 0.74, 0.75],
  [38, 63, 36, 1.28, 1.23, 1.99, 1.95],
  [36, 58, 30, 0.2, 0.18, 0.48, 0.45],
] as const;

describe.each([
  { method: 'single-triangle', column: 3 },
  { method: 'double-triangle', column: 4 },
  { method: 'single-sine', column: 5 },
  { method: 'double-sine', column: 6 },
] as const)('$method', ({ method, column }) => {
  test.each(rows)('%d to %d °F, then %d', (...row) => {
    const [tmin, tmax, nextTmin] = row;
    const found = degreeDays({ tmin, tmax, nextTmin }, { lower: 55, upper: 93.9, method });
    expect(Math.abs(found - row[column])).toBeLessThan(0.00501);
  });
});
