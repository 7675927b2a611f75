/**
 * Source: Zalom, Goodell, Wilson, Barnett, Bentley (1983), Degree-Days: the Calculation and Use of Heat Units in Pest
 * Management, UC Leaflet 21373, Table 7: lower threshold 55 °F, upper 90 °F, horizontal cutoff, single sine. Read in a
 * copy: tests/testthat/zalom83_tbl7.RData of the R package degday. All twelve rows.
 */
import { expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

test.each([
  { tmin: 96, tmax: 110, printed: 35.0 },
  { tmin: 91, tmax: 105, printed: 35.0 },
  { tmin: 45, tmax: 54, printed: 0 },
  { tmin: 38, tmax: 50, printed: 0 },
  { tmin: 60, tmax: 80, printed: 15.0 },
  { tmin: 75, tmax: 88, printed: 26.5 },
  { tmin: 50, tmax: 82, printed: 11.85 },
  { tmin: 45, tmax: 70, printed: 5.31 },
  { tmin: 60, tmax: 100, printed: 22.82 },
  { tmin: 75, tmax: 95, printed: 28.91 },
  { tmin: 50, tmax: 101, printed: 18.95 },
  { tmin: 48, tmax: 95, printed: 16.96 },
])('$tmin to $tmax °F: $printed', ({ tmin, tmax, printed }) => {
  const found = degreeDays({ tmin, tmax }, { lower: 55, upper: 90, method: 'single-sine' });
  expect(Math.abs(found - printed)).toBeLessThan(0.00501);
});
