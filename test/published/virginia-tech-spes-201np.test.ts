/**
 * Nutrient conversion factors. Source: Virginia Tech, Virginia Cooperative Extension, SPES-201NP, conversion table (read).
 *
 * The table prints four digits, but not all of them follow from today's atomic masses: its K to K2O, 1.2051, is not the
 * inverse of its K2O to K, 0.8301 (which is 1.2047; exact 1.2046). So the printed factors are met to 0.05 %, which is the
 * size of that difference, and the exact ones (derived) to five digits.
 */
import { describe, expect, test } from 'vitest';
import { readProducts } from '../../src/index.ts';
import { ELEMENT_SHARE } from '../../src/model/nutrient.ts';
import { planOneStep } from './one-step-plan.ts';
import { LB, LB_PER_1000_SQFT } from './pounds.ts';

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

describe('in a plan', () => {
  const area = '{ measured: 1000 sqft }';
  test('1 lb P/1000 ft² is 2.291 lb of phosphate', async () => {
    const { nutrientsGPerM2 } = await planOneStep({
      area,
      analysis: '0-46-0',
      apply: '{ nutrient: { P: 1 lb/1000 sqft } }',
    });
    expect(Math.abs(nutrientsGPerM2.P2O5 / LB_PER_1000_SQFT / 2.291 - 1)).toBeLessThan(0.0005);
  });
  test('1 lb K/1000 ft² is 1.2051 lb of potash', async () => {
    const { nutrientsGPerM2 } = await planOneStep({
      area,
      analysis: '0-0-50',
      apply: '{ nutrient: { K: 1 lb/1000 sqft } }',
    });
    expect(Math.abs(nutrientsGPerM2.K2O / LB_PER_1000_SQFT / 1.2051 - 1)).toBeLessThan(0.0005);
  });
  test('a bag of 8.73 % P is one of 20 % phosphate', async () => {
    const apply = '{ nutrient: { P2O5: 1 lb/1000 sqft } }';
    const { areas } = await planOneStep({ area, analysis: '0-8.73-0 elements', apply });
    expect(Math.abs((areas[0]?.amountKg ?? Number.NaN) / LB / 5 - 1)).toBeLessThan(0.0005);
  });
});

describe('lime told as calcium carbonate, calcium oxide, calcium or magnesium', () => {
  const neutralisingOf = (written: string) => {
    const text = `kind: products\nversion: 1\nproducts: { lime: { form: amendment, neutralising: ${written} } }\n`;
    const { value, problems } = readProducts(text, 'p.yaml');
    return { share: value?.products.lime?.neutralising, codes: problems.map(({ code }) => code) };
  };

  test.each([
    ['90%', 0.9],
    ['109%', 1.09],
    ['50% CaO', 0.5 / 0.5603], // printed: CaCO3 to CaO 0.5603
    ['30% Ca', (0.3 * 1.3992) / 0.5603], // printed: Ca to CaO 1.3992
  ])('lime of %s', (written, share) => expect(neutralisingOf(written).share).toBeCloseTo(share, 4));
  test('11 % Mg is as much as 1.6578 times that of MgO, as printed', () => {
    const [metal, oxide] = [neutralisingOf('11% Mg').share, neutralisingOf(`${(11 * 1.6578).toFixed(4)}% MgO`).share];
    expect(Math.abs((metal ?? Number.NaN) / (oxide ?? Number.NaN) - 1)).toBeLessThan(0.0005);
  });
  test('pure dolomite, 21.73 % Ca and 13.18 % Mg, is worth 108.5 % (by the moles: 200.17/184.40)', () =>
    expect(neutralisingOf('21.73% Ca + 13.18% Mg').share).toBeCloseTo(1.0855, 3));
  test.each(['0%', '250%', '101% CaO', '60% Ca + 50% Mg', '50% CO', '50 + 40%'])('%s is none', (written) =>
    expect(neutralisingOf(written).codes).toEqual(['out-of-range']),
  );
});
