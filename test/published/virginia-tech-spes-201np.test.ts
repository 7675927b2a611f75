/**
 * Nutrient conversion factors. Source: Virginia Tech, Virginia Cooperative Extension, SPES-201NP, conversion table (read).
 *
 * The table prints four digits, but not all of them follow from today's atomic masses: its K to K2O, 1.2051, is not the
 * inverse of its K2O to K, 0.8301 (which is 1.2047; exact 1.2046). So the printed factors are met to 0.05 %, which is the
 * size of that difference, and the exact ones (derived) to five digits.
 */
import { describe, expect, test } from 'vitest';
import { ELEMENT_SHARE } from '../../src/model/nutrient.ts';

describe.each([
  { name: 'P2O5 to P', found: ELEMENT_SHARE.P2O5, printed: 0.4365, exact: 0.43643 },
  { name: 'P to P2O5', found: 1 / ELEMENT_SHARE.P2O5, printed: 2.291, exact: 2.2913 },
  { name: 'K2O to K', found: ELEMENT_SHARE.K2O, printed: 0.8301, exact: 0.83015 },
  { name: 'K to K2O', found: 1 / ELEMENT_SHARE.K2O, printed: 1.2051, exact: 1.2046 },
])('$name', ({ found, printed, exact }) => {
  test(`printed ${printed}`, () => {
    expect(Math.abs(found / printed - 1)).toBeLessThan(0.0005);
  });
  test(`exact ${exact} (derived from atomic masses)`, () => {
    expect(Math.abs(found - exact)).toBeLessThan(0.00005);
  });
});

test('49.8 % K is 60 % K2O, the worked example of the table', () => {
  expect((49.8 / ELEMENT_SHARE.K2O).toFixed(0)).toBe('60');
});

// Penn State, plantscience.psu.edu, turfgrass fertilization fact sheet (read): rounded factors 0.44 and 0.83.
test('20 % P2O5 is 8.8 % P by the factor 0.44 (Penn State; exact 8.73)', () => {
  expect(Math.abs(20 * ELEMENT_SHARE.P2O5 - 8.8)).toBeLessThan(20 * 0.005);
});
test('10 % K2O is 8.3 % K (Penn State)', () => {
  expect((10 * ELEMENT_SHARE.K2O).toFixed(1)).toBe('8.3');
});
