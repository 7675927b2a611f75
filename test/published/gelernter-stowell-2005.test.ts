/**
 * Growth potential. Source: Gelernter & Stowell (2005), Improved overseeding programs 1: the role of weather, Golf Course
 * Management. °C form and the points marked read: M. Woods, posts "A number between 0 and 1", "Temperature-based growth
 * potential (GP) in April and November", "Last summer at 36 locations". °F optima read in the authors' "Predicting Turf
 * Performance", Grounds Maintenance; °F spreads 10 and 12 from memory, so that the °F table checks the formula as stated,
 * not print. Tables derived, four digits. The two forms are not the same curve, and each is tested by its own numbers.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { growthPotential, growthPotentialF } from '../../src/index.ts';

describe('°C form, derived', () => {
  test.each([
    [0, 0.0013, 0.0001],
    [5, 0.0243, 0.001],
    [10, 0.1915, 0.0111],
    [15, 0.6615, 0.0734],
    [16.9, 0.8531, 0.1315],
    [20, 1, 0.2909],
    [22, 0.936, 0.4376],
    [25, 0.6615, 0.6926],
    [28, 0.3472, 0.9123],
    [31, 0.1353, 1],
  ])('%d °C: cool %d, warm %d', (t, cool, warm) => {
    expect(Math.abs(growthPotential(t, 'cool') - cool)).toBeLessThan(0.00005);
    expect(Math.abs(growthPotential(t, 'warm') - warm)).toBeLessThan(0.00005);
  });
});

describe('°F form, derived', () => {
  test.each([
    [40, 0.0198, 0.0003],
    [50, 0.1979, 0.0066],
    [55, 0.4296, 0.0228],
    [59, 0.667, 0.0539],
    [62, 0.8353, 0.0956],
    [68, 1, 0.2494],
    [75, 0.7827, 0.5561],
    [80, 0.4868, 0.8007],
    [85, 0.2357, 0.9692],
    [88, 0.1353, 1],
  ])('%d °F: cool %d, warm %d', (t, cool, warm) => {
    expect(Math.abs(growthPotentialF(t, 'cool') - cool)).toBeLessThan(0.00005);
    expect(Math.abs(growthPotentialF(t, 'warm') - warm)).toBeLessThan(0.00005);
  });
});

describe('read', () => {
  test.each([
    [16.9, '0.85'],
    [15, '0.66'],
  ])('cool-season grass at %d °C: %s', (t, printed) => expect(growthPotential(t, 'cool').toFixed(2)).toBe(printed));
  test('0.90 and more within about 2.5 °C of 20 °C', () => {
    for (const t of [17.5, 22.5]) expect(growthPotential(t, 'cool').toFixed(1)).toBe('0.9');
    for (const t of [17.4, 22.6]) expect(growthPotential(t, 'cool')).toBeLessThan(0.9);
  });
  test('warm-season grass comes first above about 24.8 °C', () => {
    expect(growthPotential(24.8, 'cool')).toBeGreaterThan(growthPotential(24.8, 'warm'));
    expect(growthPotential(24.9, 'cool')).toBeLessThan(growthPotential(24.9, 'warm'));
  });
  // PACE Turf, "Modified warm season growth potential model".
  test('warm-season grass stays at 1 above its optimum', () => {
    for (const t of [31, 33, 45]) expect(growthPotential(t, 'warm')).toBe(1);
    for (const t of [88, 92, 110]) expect(growthPotentialF(t, 'warm')).toBe(1);
  });
});

describe('the two forms', () => {
  test('cross from cool to warm at 24.840 °C and at 77.091 °F (derived), 0.4 °F apart', () => {
    const gap = (t: number) => growthPotential(t, 'cool') - growthPotential(t, 'warm');
    const gapF = (t: number) => growthPotentialF(t, 'cool') - growthPotentialF(t, 'warm');
    expect(gap(24.8395) * gap(24.8405)).toBeLessThan(0);
    expect(gapF(77.0905) * gapF(77.0915)).toBeLessThan(0);
  });
  test('differ by at most 0.008 for cool-season and 0.045 for warm-season grass, and do differ', () => {
    const at = Array.from({ length: 701 }, (_, i) => i / 10 - 20);
    const apart = (grass: 'cool' | 'warm') =>
      Math.max(...at.map((t) => Math.abs(growthPotential(t, grass) - growthPotentialF(t * 1.8 + 32, grass))));
    expect(apart('cool')).toBeLessThan(0.008);
    expect(apart('warm')).toBeLessThan(0.045);
    expect(apart('cool')).toBeGreaterThan(0.007);
    expect(apart('warm')).toBeGreaterThan(0.04);
  });
});

test('is between 0 and 1, and rises with temperature for warm-season grass', () => {
  const temperature = fc.double({ min: -60, max: 60, noNaN: true });
  fc.assert(
    fc.property(temperature, fc.double({ min: 0, max: 30, noNaN: true }), (t, warmer) => {
      for (const grass of ['cool', 'warm'] as const) {
        expect(growthPotential(t, grass)).toBeGreaterThanOrEqual(0);
        expect(growthPotential(t, grass)).toBeLessThanOrEqual(1);
      }
      expect(growthPotential(t + warmer, 'warm')).toBeGreaterThanOrEqual(growthPotential(t, 'warm'));
    }),
  );
});
test('NaN stays NaN', () => expect(growthPotential(Number.NaN, 'warm')).toBeNaN());
test('a grass that there is not is refused', () =>
  expect(() => growthPotential(20, 'tepid' as unknown as 'cool')).toThrow(RangeError));
