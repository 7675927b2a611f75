/**
 * Published or derived numbers of soil-temperature rules that our model is measured beside. The eight nodes of the SIMPLACE
 * module (13.62436 …) are left out: that variant doubles where SWAT squares, and its layers are not printed in full.
 */
import { describe, expect, test } from 'vitest';
import {
  elevenDayMean,
  stepLeft,
  surfaceStep,
  swatDamping,
  swatDepthFactor,
  swatStep,
} from '../accuracy/other-models.ts';

// Biome-BGC daymet: weights 1 to 11. Derived: a ramp of 1 to 11 gives 506/66.
test('an eleven-day weighted mean of 1 to 11 is 7.6667', () => {
  const ramp = Array.from({ length: 11 }, (_, i) => i + 1);
  expect(elevenDayMean(ramp, 10)).toBeCloseTo(7.6667, 4);
  expect(elevenDayMean([4, 8], 0)).toBe(4);
});

// Biome-BGC MuSo, multilayer_tsoil.c. Derived from its formula.
test.each([
  [{}, 11.5],
  [{ lai: 2, k: 0.5 }, 10.75],
  [{ snow: true }, 10.6],
])('the surface goes from 10 towards 16 °C under %j to %d', (cover, expected) => {
  expect(surfaceStep(10, 16, cover)).toBeCloseTo(expected, 10);
});

// Neitsch et al., SWAT; read in open copies of stmp_solt, the vectors derived with 0.867 and 2.078.
describe('SWAT', () => {
  const wet = { density: 1.4, waterMm: 150, profileMm: 1000 };
  test('damping depth', () => {
    const { largest, water, depth } = swatDamping(wet);
    expect([largest.toFixed(2), water.toFixed(4), depth.toFixed(2)]).toEqual(['3109.77', '0.9715', '3108.58']);
    expect(swatDamping({ ...wet, density: 1.6, waterMm: 60 }).depth.toFixed(2)).toBe('2658.94');
  });
  test.each([
    [50, wet, 10, 12, 20, 11.939],
    [100, wet, 10, 12, 20, 11.879],
    [100, { ...wet, density: 1.6, waterMm: 60 }, 25, 15, 32, 26.1],
  ])('soil at %d mm', (depthMm, soil, before, yearMean, surface, expected) => {
    const factor = swatDepthFactor(depthMm, swatDamping(soil).depth);
    expect(swatStep(before, yearMean, surface, factor)).toBeCloseTo(expected, 3);
  });
});

// Step response of a half-space. The first is Scilab TBC 587, example 4.6, which reads 0.78 m off a chart; by erf it is 0.80094.
test.each([
  [15, -10, 90, 0.80094],
  [8, -8, 60, 0.84114],
])('from %d °C with the surface at %d °C, 0 °C has come to a depth after %d d', (initial, surface, days, depth) => {
  const share = (0 - surface) / (initial - surface);
  expect(stepLeft(depth, 1.5e-7, days * 86_400)).toBeCloseTo(share, 4);
});
