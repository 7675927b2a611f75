/** The 86/50 method of growing degree days: both extremes clamped to 50 and 86 °F. Exact. */
import { expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

const modified = (tmax: number, tmin: number): number =>
  degreeDays({ tmin, tmax }, { lower: 50, upper: 86, method: 'modified' });

// read in a copy: wausharaargus.com (2018), column of a local agricultural agent.
const columnDays = [
  { tmax: 90, tmin: 65, printed: 25.5 },
  { tmax: 72, tmin: 46, printed: 11 },
  { tmax: 63, tmin: 42, printed: 6.5 },
] as const;

test.each(columnDays)('$tmax/$tmin °F: $printed (Waushara 2018)', ({ tmax, tmin, printed }) => {
  expect(modified(tmax, tmin)).toBe(printed);
});
test('the three days sum to 43 (Waushara 2018)', () => {
  expect(columnDays.reduce((sum, { tmax, tmin }) => sum + modified(tmax, tmin), 0)).toBe(43);
});
// read: Iowa State University, Agronomy 541.
test.each([
  [86, 86],
  [95, 86],
  [104, 90],
])('a day brings at most 36: %d/%d °F (Iowa State, Agron 541)', (tmax, tmin) => {
  expect(modified(tmax, tmin)).toBe(36);
});
// Inputs read in a copy: page of a seed company; answer derived.
test('90/48 °F: 18 (derived)', () => {
  expect(modified(90, 48)).toBe(18);
});
