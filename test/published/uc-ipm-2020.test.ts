/**
 * Days of the station-year 2020 as the UC IPM degree-day calculator gives them: lower threshold 50 °F, upper 70 °F, single
 * sine, horizontal cutoff. Read in a copy: repository UCANR-IGIS/degree-day-challenge, data/ucipm_results/
 * ucipm_low50_high70_all.csv, commit 1766f1c (MIT). Two digits printed.
 */
import { expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

test.each([
  { date: '2020-01-01', tmin: 38, tmax: 55, printed: 1.19 },
  { date: '2020-01-02', tmin: 36, tmax: 67, printed: 5.71 },
  { date: '2020-01-07', tmin: 30, tmax: 53, printed: 0.47 },
  { date: '2020-01-26', tmin: 54, tmax: 67, printed: 10.5 },
  { date: '2020-02-10', tmin: 52, tmax: 73, printed: 12.01 },
  { date: '2020-03-30', tmin: 45, tmax: 67, printed: 7.04 },
  { date: '2020-04-22', tmin: 49, tmax: 77, printed: 11.55 },
  { date: '2020-05-14', tmin: 50, tmax: 70, printed: 10 },
  { date: '2020-08-14', tmin: 71, tmax: 103, printed: 20 },
  { date: '2020-09-27', tmin: 72, tmax: 95, printed: 20 },
])('$date, $tmin to $tmax °F: $printed', ({ tmin, tmax, printed }) => {
  const found = degreeDays({ tmin, tmax }, { lower: 50, upper: 70, method: 'single-sine' });
  expect(Math.abs(found - printed)).toBeLessThan(0.0051);
});
