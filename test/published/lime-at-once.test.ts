/**
 * Lime on standing turf: the most at once.
 *
 * read: University of Maryland Extension, extension.umd.edu/hgic/topics/liming-lawn: at most 50 lb/1000 ft² on the surface at
 * once, the remainder after six months; printed example 85 = 50 + 35.
 * CONFLICT, both are reproduced: Purdue AY-18 (read in a copy) allows 100 lb/1000 ft² on turf that is cut high.
 */
import { describe, expect, test } from 'vitest';
import { application, plan, work } from '../schedule/plan-kit.ts';
import { LB_PER_1000_SQFT } from './pounds.ts';

const LIME = 'products: [{ id: lime, form: amendment, neutralising: 90% }, { id: gypsum, form: amendment }]\n';
const liming = (rate: number, product = 'lime') =>
  work('lime', 'spread', '05-01', '05-20', `, apply: { amendment: ${product}, rate: ${rate} lb/1000 sqft }`);

/** What the command puts down of a rate, in lb/1000 ft², and why. */
async function put(rate: number, rules = '', product = 'lime') {
  const { areas, why } = application(await plan({ steps: liming(rate, product), lawn: LIME + rules }), 'lime');
  const [area] = areas;
  return { rate: (1000 * (area?.amountKg ?? 0)) / (area?.areaM2 ?? 1) / LB_PER_1000_SQFT, why: why.join(' ') };
}

describe('Maryland', () => {
  test('of 85 lb/1000 ft² 50 are put down, and the rest waits six months', async () => {
    const { rate, why } = await put(85);
    expect(rate).toBeCloseTo(50, 4);
    expect(why).toMatch(/50 lb\/1000 sq ft instead of 85 .*six months/);
  });
  test('the rest of 85, 35, goes at once', async () => expect((await put(35)).rate).toBeCloseTo(35, 6));
  test('50 go at once', async () => expect((await put(50)).rate).toBeCloseTo(50, 6));
  test('it is of lime alone', async () => expect((await put(85, '', 'gypsum')).rate).toBeCloseTo(85, 6));
});

describe('Purdue', () => {
  const rules = 'local-rules: [{ limit: lime, single: 100 lb/1000 sqft, because: "Purdue AY-18" }]\n';
  test('85 go at once where the lawn takes its limit', async () =>
    expect((await put(85, rules)).rate).toBeCloseTo(85, 6));
  test('of 120 a hundred', async () => {
    const { rate, why } = await put(120, rules);
    expect(rate).toBeCloseTo(100, 4);
    expect(why).toContain('Purdue AY-18');
  });
});
