/** Simple average degree days with base 50 °F: worked examples of extension services. Exact. */
import { expect, test } from 'vitest';
import { degreeDays } from '../../src/index.ts';

const average = (tmax: number, tmin: number): number => degreeDays({ tmin, tmax }, { lower: 50, method: 'average' });

// read: Purdue Univ. Turfgrass Science, "Using growing degree days".
test('74/52 °F: 13 (Purdue)', () => {
  expect(average(74, 52)).toBe(13);
});
test('58/40 °F: -1, which counts as 0 (Purdue)', () => {
  expect(average(58, 40)).toBe(0);
});
// read: Ohio State University Extension.
test('63/43 °F: 3 (Ohio State)', () => {
  expect(average(63, 43)).toBe(3);
});
