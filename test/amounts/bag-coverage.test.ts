/** Facts of the trade, common practice: a bag, what it says it covers, and its halves. Through the command. */
import { describe, expect, test } from 'vitest';
import { LB, SQFT } from '../published/pounds.ts';
import { application, plan, work } from '../schedule/plan-kit.ts';

const BAG =
  'products: [{ id: bag, form: granular, analysis: 16-4-8, covers: 8000 sqft, package: { size: 40 lb, price: 32 } }]\n';
const bagOn = async (sqft: number) => {
  const steps = work('feed', 'spread', '05-01', '05-20', ', apply: { bag-rate: bag }');
  return plan({ steps, lawn: `${BAG}areas: { front: { measured: ${sqft} sqft } }\n` });
};

describe('A bag that states its coverage', () => {
  test('is what an area of that size takes, whole', async () => {
    const [area] = application(await bagOn(8000), 'feed').areas;
    expect((area?.amountKg ?? 0) / LB).toBeCloseTo(40, 9);
    expect(area?.measured).toMatchObject({ aid: '1 package of 40 lb', exact: null });
  });
  test('split in two halves covers the whole area in each half at half the bag rate', async () => {
    const { areas } = application(await bagOn(8000), 'feed');
    const passes = areas[0]?.passes ?? [];
    expect(passes).toHaveLength(2);
    const bagRate = 40 / 8; // lb/1000 ft²
    for (const { amountKg } of passes) {
      expect(amountKg / LB).toBeCloseTo(20, 9);
      expect(amountKg / LB / ((areas[0]?.areaM2 ?? 0) / SQFT / 1000)).toBeCloseTo(bagRate / 2, 9);
    }
    expect(passes.reduce((sum, { amountKg }) => sum + amountKg, 0) / LB).toBeCloseTo(40, 9);
  });
  test('covers what its analysis says: 40 lb × 16 % at 0.8 lb/1000 ft² is 8000 ft² (identity)', async () => {
    expect(application(await bagOn(8000), 'feed').nutrientsGPerM2.N / 4.88243).toBeCloseTo(0.8, 4);
  });
  test('is bought whole: a little more area takes a second one, of which the rest is left', async () => {
    expect((await bagOn(8000)).shopping[0]).toMatchObject({ packages: [{ size: '40 lb', count: 1 }], cost: 32 });
    const [more] = (await bagOn(8200)).shopping;
    expect(more).toMatchObject({ packages: [{ size: '40 lb', count: 2 }], cost: 64 });
    expect((more?.leftKg ?? 0) / LB).toBeCloseTo(39, 6);
  });
});
