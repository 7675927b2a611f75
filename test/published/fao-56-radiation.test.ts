/**
 * Source: Allen, Pereira, Raes, Smith (1998), Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, Examples 8, 18
 * and 20. Printed values read in copies: tests of PyETo (commit 15d9e64) for 8 and 18, NCL documentation for 20; digits
 * beyond the printed ones derived from the paper's equations.
 */
import { expect, test } from 'vitest';
import { extraterrestrialRadiation } from '../../src/climate/sun.ts';
import { dayForcing, placeOf } from '../../src/climate/surface.ts';

/** MJ m⁻² d⁻¹ of extraterrestrial radiation per mm d⁻¹ of evaporation, FAO-56 Eq. 20. */
const MM_PER_MJ = 0.408;

test('Example 8, 3 September at 20° S: printed 32.2 MJ m⁻² d⁻¹, derived 32.194', () => {
  const found = extraterrestrialRadiation(-20, 246);
  expect(found.toFixed(1)).toBe('32.2');
  expect(found).toBeCloseTo(32.194, 3);
});
test('Example 8 in evaporation: derived 13.135 mm/d', () => {
  expect(extraterrestrialRadiation(-20, 246) * MM_PER_MJ).toBeCloseTo(13.135, 3);
});
test('Example 20, Lyon, 15 July at 45.72° N: read 16.5463 mm/d, derived 40.5546 MJ m⁻² d⁻¹', () => {
  const found = extraterrestrialRadiation(45.72, 196);
  expect(found).toBeCloseTo(40.5546, 3);
  expect(found * MM_PER_MJ).toBeCloseTo(16.5463, 3);
});
// The latitude is from memory; with it the printed value is met.
test('Example 18, Uccle, 6 July at 50.80° N: printed 41.09 MJ m⁻² d⁻¹', () => {
  expect(extraterrestrialRadiation(50.8, 187).toFixed(2)).toBe('41.09');
});
// Eq. 52 with 1/2.45 in place of the paper's rounded 0.408 (0.04 % more).
test('Example 20, reference evapotranspiration after Hargreaves: printed 5.0 mm/d', () => {
  const { referenceEt } = dayForcing(placeOf({ latitude: 45.72, elevationM: 200, irrigated: false }), 196, 14.8, 26.6);
  expect(referenceEt.toFixed(1)).toBe('5.0');
  expect(Math.abs(referenceEt / 5.033 - 1)).toBeLessThan(0.0005);
});
