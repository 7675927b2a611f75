/**
 * Damping depth and the annual wave of soil temperature. Sources: Ochsner, Rain or Shine, Oklahoma State University open
 * textbook, ch. 13.4, eqs. 13-4 and 13-5 (read; author from memory); Nofziger, Soil temperature changes with time and
 * depth, Oklahoma State University, exercise (read). The deviations of a printed value are said where it stands.
 */
import { describe, expect, test } from 'vitest';
import { annualWave, dampingDepth } from '../../src/index.ts';

const SECONDS_PER_DAY = 86_400;

describe('damping depth', () => {
  const daily = dampingDepth(0.5e-6 * SECONDS_PER_DAY, 1);
  test('0.50e-6 m²/s, daily wave: printed 11.7 cm (Rain or Shine 13.4)', () => {
    expect((100 * daily).toFixed(1)).toBe('11.7');
  });
  test('an amplitude of 7 °C is 3 °C at 10 cm: printed 3, derived 2.98 (Rain or Shine 13.4)', () => {
    const left = 7 * Math.exp(-0.1 / daily);
    expect(left.toFixed(0)).toBe('3');
    expect(left.toFixed(2)).toBe('2.98');
  });
  test('the annual wave goes 19.1 times as deep as the daily one (Rain or Shine 13.4)', () => {
    expect((dampingDepth(0.05, 365) / dampingDepth(0.05, 1)).toFixed(1)).toBe('19.1');
  });
  test('2e-7 m²/s, annual wave: derived 1.417 m (inputs read: a textbook question)', () => {
    expect(dampingDepth(2e-7 * SECONDS_PER_DAY, 365).toFixed(3)).toBe('1.417');
  });
  test('and 5 % of the amplitude is left at 4.245 m (derived)', () => {
    const depth = dampingDepth(2e-7 * SECONDS_PER_DAY, 365) * Math.log(20);
    expect(Math.abs(depth - 4.245)).toBeLessThan(0.0006);
  });
  test('0.05 m²/d, annual wave: derived 2.410 m', () => {
    expect(dampingDepth(0.05, 365).toFixed(3)).toBe('2.410');
  });
});

// Diffusivity read: "Transport in the Atmosphere-Vegetation-Soil Continuum", Table 2.2 (after de Vries 1963, Smits 2010,
// O'Donnell 2009) [1e-6 m²/s]. Depths derived; one row for each kind of soil.
describe.each([
  { soil: 'loose sand, 0.2 water', kappa: 0.99, dailyCm: 16.5, annualM: 3.15 },
  { soil: 'tight sand, 0.33 water', kappa: 1.0, dailyCm: 16.6, annualM: 3.17 },
  { soil: 'clay, 0.2 water', kappa: 0.4, dailyCm: 10.5, annualM: 2.0 },
  { soil: 'peat, 0.9 water', kappa: 0.12, dailyCm: 5.7, annualM: 1.1 },
])('$soil', ({ kappa, dailyCm, annualM }) => {
  const diffusivity = kappa * 1e-6 * SECONDS_PER_DAY;
  test(`daily ${dailyCm} cm`, () => {
    expect(Math.abs(100 * dampingDepth(diffusivity, 1) - dailyCm)).toBeLessThan(0.0501);
  });
  test(`annual ${annualM} m`, () => {
    expect(Math.abs(dampingDepth(diffusivity, 365) - annualM)).toBeLessThan(0.00501);
  });
});

describe('annual wave: mean 15 °C, amplitude 15 K, coldest on day 10, D 0.05 m²/d (Nofziger)', () => {
  const wave = (depth: number, day: number) => annualWave(15, 15, 10, 0.05, depth, day);
  const surface = Array.from({ length: 365 }, (_, i) => wave(0, i + 1));

  test('the surface is coldest on day 10, at 0 °C', () => {
    expect(surface.indexOf(Math.min(...surface)) + 1).toBe(10);
    expect(Math.min(...surface)).toBeCloseTo(0, 9);
  });
  test('the surface is warmest at 30 °C', () => {
    expect(Math.max(...surface).toFixed(2)).toBe('30.00');
  });
  // Half a year after day 10 is day 192.5; the exercise reads "near day 190" from a graph.
  test('and so near day 190: derived 192.5', () => {
    expect(Math.abs(surface.indexOf(Math.max(...surface)) + 1 - 192.5)).toBeLessThanOrEqual(0.5);
  });
  test('37 % of the amplitude is left at the damping depth (Rain or Shine 13.4)', () => {
    const d = dampingDepth(0.05, 365);
    const there = Array.from({ length: 365 }, (_, i) => wave(d, i + 1));
    expect(((Math.max(...there) - 15) / 15).toFixed(2)).toBe('0.37');
  });
  test.each([
    { depth: 0.05, day: 10, derived: 0.311 },
    { depth: 0.1, day: 105, derived: 15.332 },
    { depth: 1, day: 200, derived: 24.504 },
    { depth: 2, day: 200, derived: 20.001 },
  ])('$depth m on day $day: derived $derived °C', ({ depth, day, derived }) => {
    expect(Math.abs(wave(depth, day) - derived)).toBeLessThan(0.00051);
  });
});
