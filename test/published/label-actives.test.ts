/**
 * Actives in a product, and what a label allows of them in a year: examples from labels, through functions and the command.
 *
 * read: text of a label of a dithiopyr granule of 0.1 % (a label library, homedocbox 107156978): a 50 lb bag holds 0.05 lb of the
 * active and covers up to 8772 ft², at 5.7 lb/1000 ft² or 0.25 lb/acre; in New York at most 0.5 lb/acre in a year. Derived from
 * it: 0.2483 lb/acre over the whole bag, 0.501 lb/acre of 11.5 lb/1000 ft².
 */
import { describe, expect, test } from 'vitest';
import { readProducts } from '../../src/index.ts';
import type { Product } from '../../src/model/product.ts';
import { activeOn } from '../../src/schedule/counted.ts';
import { application, plan, work } from '../schedule/plan-kit.ts';
import { LB, LB_PER_1000_SQFT, SQFT } from './pounds.ts';

const PER_ACRE = LB / (43_560 * SQFT); // kg/m² in 1 lb/acre
const granule = (label: string) =>
  `{ form: granular, pesticide: pre-emergent, actives: { dithiopyr: 0.1% }, covers: 8772 sqft, package: { size: 50 lb }, label: ${label} }`;
const file = `kind: products\nversion: 1\nproducts: { granule: ${granule('{ rate: 5.7 lb/1000 sqft }')} }\n`;
const product = { id: 'granule', ...readProducts(file, 'p.yaml').value?.products.granule } as Product;

/** lb/acre of the active in lb/1000 ft² of the product. */
const perAcre = (rate: number): number =>
  (activeOn(product, { by: 'mass', value: (rate * LB_PER_1000_SQFT) / 1000 }, 'dithiopyr') ?? 0) / PER_ACRE;

describe('0.1 % dithiopyr', () => {
  test('50 lb on 8772 ft² are 0.2483 lb/acre (derived; printed 0.25)', () =>
    expect(perAcre(50 / 8.772)).toBeCloseTo(0.2483, 4));
  test('5.7 lb/1000 ft² are 0.25 lb/acre within half a percent of 0.2483', () =>
    expect(Math.abs(perAcre(5.7) / 0.2483 - 1)).toBeLessThan(0.005));
  test('11.5 lb/1000 ft² are 0.501 lb/acre (derived)', () => expect(perAcre(11.5)).toBeCloseTo(0.501, 3));
});

// read: PNW handbook: 2,4-D amine of 4 lb/gal at 2 to 4 pt/acre; derived: 1 to 2 lb of acid equivalent on an acre.
describe('2,4-D amine of 4 lb/gal', () => {
  const text = `kind: products\nversion: 1\nproducts: { amine: { form: liquid, pesticide: broadleaf, actives: { 2-4-d: 4 lb/gal }, label: { rate: 2 pt/acre } } }\n`;
  const amine = { id: 'amine', ...readProducts(text, 'p.yaml').value?.products.amine } as Product;
  const pint = (231 * 0.0254 ** 3) / 8 / (43_560 * SQFT);
  test.each([
    [2, 1],
    [4, 2],
  ])('%i pt/acre are %i lb/acre', (pints, pounds) => {
    const kg = activeOn(amine, { by: 'volume', value: pints * pint }, '2-4-d') ?? Number.NaN;
    expect(kg / PER_ACRE).toBeCloseTo(pounds, 9);
  });
});

describe('at most 0.5 lb/acre in a year', () => {
  const barrier = (id: string, opens: string, closes: string) =>
    work(id, 'spread', opens, closes, ', apply: { pesticide: pre-emergent }');
  const season = (rate: number, steps: string) =>
    plan({
      steps,
      lawn: `products:\n  - ${granule(`{ rate: ${rate} lb/1000 sqft, active-per-year: { dithiopyr: 0.5 lb/acre } }`).replace('{ form', '{ id: granule, form')}\n`,
    });
  test('two applications of 5.7 lb/1000 ft² fit, a third does not', async () => {
    const planned = await season(
      5.7,
      barrier('a', '05-01', '05-10') + barrier('b', '07-01', '07-10') + barrier('c', '09-01', '09-10'),
    );
    const statuses = ['a', 'b', 'c'].map((id) => application(planned, id).status);
    expect(statuses).toEqual(['expected', 'expected', 'dropped']);
    const [limit] = planned.limits;
    expect((limit?.plannedGPerM2 ?? 0) / 1000 / PER_ACRE).toBeCloseTo(2 * 5.7 * 0.001 * 43.56, 6);
  });
  test('one of 11.5 lb/1000 ft² is over it', async () =>
    expect(application(await season(11.5, barrier('a', '05-01', '05-10')), 'a').status).toBe('dropped'));
});
