/**
 * Source: README of the R package degday (Lyons, UC Agriculture and Natural Resources), example of the single sine: lower
 * threshold 55 °F, upper 93.9 °F (read). Two digits printed.
 */
import { expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

test.each([
  { tmin: 36, tmax: 67, printed: 3.31 },
  { tmin: 33, tmax: 59, printed: 0.68 },
  { tmin: 38, tmax: 63, printed: 1.99 },
  { tmin: 36, tmax: 58, printed: 0.48 },
])('$tmin to $tmax °F: $printed', ({ tmin, tmax, printed }) => {
  const found = degreeDays({ tmin, tmax }, { lower: 55, upper: 93.9, method: 'single-sine' });
  expect(Math.abs(found - printed)).toBeLessThan(0.00501);
});
