/** What to buy: need less shelf, the cheapest packages that cover it, by when, for how much, and what will be left. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cheapestCover } from '../../src/amounts/packages.ts';
import { LB } from '../published/pounds.ts';
import { feed, plan, work } from './plan-kit.ts';

// 0.46 lb N/1000 sqft on 10,000 sqft are 10 lb of urea.
const AREA = 'areas: { front: { measured: 10000 sqft } }\n';
const FEED = feed('a', '05-01', '05-20', '', '0.46');
const urea = (more: string) => `products: [{ id: urea, form: granular, analysis: 46-0-0${more} }]\n${AREA}`;
const buy = async (lawn: string, steps = FEED, files: Record<string, string> = {}) =>
  (await plan({ steps, lawn, files })).shopping[0];

describe('to buy is', () => {
  const sizes = ', packages: [{ size: 5 lb, price: 9 }, { size: 12 lb, price: 15 }]';
  test('the cheapest set of packages that covers the need', async () =>
    expect(await buy(urea(sizes))).toMatchObject({ packages: [{ size: '12 lb', count: 1 }], cost: 15 }));
  test('the need less the shelf', async () =>
    expect(await buy(`${urea(sizes)}shelf: { urea: 6 lb }\n`)).toMatchObject({
      packages: [{ size: '5 lb', count: 1 }],
      cost: 9,
    }));
  test('nothing where the shelf is enough', async () =>
    expect(await buy(`${urea(sizes)}shelf: { urea: 10 lb }\n`)).toMatchObject({ packages: [], buyBy: null, cost: 0 }));
  test('by a week before the first work that the shelf does not cover', async () => {
    const two = FEED + feed('b', '07-10', '07-20', '', '0.46');
    expect((await buy(urea(sizes), two))?.buyBy).toBe('2027-04-24');
    expect((await buy(`${urea(sizes)}shelf: { urea: 10 lb }\n`, two))?.buyBy).toBe('2027-07-03');
  });
  test('by now where that is past', async () => {
    const soon = feed('a', '04-03', '04-10', '', '0.46');
    expect((await buy(urea(sizes), soon))?.buyBy).toBe('2027-04-02');
  });
  test('without a cost where a price is missing', async () =>
    expect(await buy(urea(', package: { size: 5 lb }'))).toMatchObject({ packages: [{ count: 2 }], cost: null }));
});

describe('what will be left', () => {
  test('is what is bought over the need, and a dry feed keeps', async () => {
    const bought = await buy(urea(', package: { size: 12 lb }'));
    expect((bought?.leftKg ?? 0) / LB).toBeCloseTo(2, 6);
    expect(bought).toMatchObject({ left: '2 lb', keeps: { nextSeason: true } });
  });
  test('seed does not keep', async () => {
    const sow = work('sow', 'seed', '09-01', '09-20', ', apply: { seed: blend, rate: 4 lb/1000 sqft }');
    const bought = await buy(`products: [{ id: blend, form: seed, package: { size: 25 lb } }]\n${AREA}`, sow);
    expect(bought?.keeps?.nextSeason).toBe(false);
  });
  test('a pesticide keeps as its label says', async () => {
    const barrier = work('b', 'spread', '05-01', '05-20', ', apply: { pesticide: pre-emergent }');
    const product =
      '{ id: granule, form: granular, pesticide: pre-emergent, package: { size: 50 lb }, label: { rate: 4 lb/1000 sqft } }';
    const bought = await buy(`products: [${product}]\n${AREA}`, barrier);
    expect(bought?.keeps).toMatchObject({ nextSeason: null });
    expect(bought?.keeps?.how).toContain('label');
  });
  test('of nothing left nothing is said', async () =>
    expect(await buy(urea(', package: { size: 10 lb }'))).toMatchObject({ left: null, keeps: null }));
});

test('no other set of packages that covers the need is cheaper', () =>
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.array(fc.record({ size: fc.integer({ min: 1, max: 12 }), price: fc.integer({ min: 1, max: 30 }) }), {
        minLength: 1,
        maxLength: 3,
      }),
      (need, sizes) => {
        const cost = (counts: readonly number[]) => counts.reduce((sum, n, i) => sum + n * (sizes[i]?.price ?? 0), 0);
        const holds = (counts: readonly number[]) => counts.reduce((sum, n, i) => sum + n * (sizes[i]?.size ?? 0), 0);
        const found = cheapestCover(need, sizes);
        expect(holds(found)).toBeGreaterThanOrEqual(need);
        // The cheapest by trying every amount that is covered, smallest first.
        const best = [0];
        for (let covered = 1; covered <= need; covered++)
          best.push(Math.min(...sizes.map(({ size, price }) => price + (best[Math.max(0, covered - size)] as number))));
        expect(cost(found)).toBe(best[need]);
      },
    ),
    { seed: 27 },
  ));
