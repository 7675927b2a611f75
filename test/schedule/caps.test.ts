/** How limits hold planned uses: each by itself, day by day, and nothing that a limit does not count. */
import { describe, expect, test } from 'vitest';
import { type Cap, cappedShares, type Use } from '../../src/schedule/caps.ts';
import { spanOf } from '../../src/schedule/spans.ts';
import { application, feed, PRODUCTS, plan, work } from './plan-kit.ts';

const urea = { id: 'urea', form: 'granular', analysis: { N: 0.46, P2O5: 0, K2O: 0 } } as const;
const lime = { id: 'lime', form: 'granular', neutralising: 0.9 } as const;
const season = { year: 2027, start: 0, end: 364 };
const yearly: Cap = {
  name: 'nitrogen-yearly',
  counted: { kind: 'nutrient', nutrient: 'N' },
  per: 'year',
  limit: 10,
  span: spanOf(season),
  by: 'program',
  source: null,
  whole: false,
};
const use = (product: Use['dose']['product'], value: number, day = 100): Use => ({
  day,
  season,
  dose: { product, rate: { by: 'mass', value } } as Use['dose'],
});

describe('a limit that is over already', () => {
  test('leaves alone what brings nothing of it', () => {
    const [share] = cappedShares([use(lime, 0.2)], [use(urea, 0.03)], [yearly]);
    expect(share).toEqual({ share: 1, cap: null, tight: false });
  });
  test('leaves nothing of what brings some', () => {
    const [share] = cappedShares([use(urea, 0.01)], [use(urea, 0.03)], [yearly]);
    expect(share).toMatchObject({ share: 0, cap: yearly });
  });
  test('drops no other work of a season', async () => {
    const steps =
      feed('a', '05-01', '05-10') + work('b', 'spread', '06-01', '06-10', ', apply: { pesticide: pre-emergent }');
    const planned = await plan({
      steps,
      lawn: PRODUCTS,
      program: 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n',
      files: { 'lawn.journal.yaml': '- { date: 2027-03-01, work: spread, product: urea, used: 20 lb }\n' },
    });
    expect([application(planned, 'a').status, application(planned, 'b').status]).toEqual(['dropped', 'expected']);
  });
});
