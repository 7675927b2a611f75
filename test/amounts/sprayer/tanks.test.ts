import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tanksFor } from '../../../src/amounts/sprayer/tanks.ts';
import type { Product } from '../../../src/model/product.ts';

const liquid = { id: 'liquid', form: 'liquid', density: 1200 } as Product;
const powder = { id: 'powder', form: 'soluble' } as Product;

/** 10,000 m² at 0.0004 m³/m² out of a tank of 1 m³: 4 m³, four tanks. */
const job = { area: 10_000, output: 0.0004, tank: 1, products: [] };

describe('Tanks of a job', () => {
  test('are full ones and the rest', () => {
    const fills = tanksFor({ ...job, area: 11_250 });
    expect(fills.map(({ count, spray }) => [count, Number(spray.toFixed(9))])).toEqual([
      [4, 1],
      [1, 0.5],
    ]);
  });
  test('are full ones alone where they come out even', () => {
    expect(tanksFor(job).map(({ count }) => count)).toEqual([4]);
  });
  test('are a last one alone where one is more than the job', () => {
    expect(tanksFor({ ...job, area: 1000 }).map(({ count, spray }) => [count, spray])).toEqual([[1, 0.4]]);
  });
  test('are none for no area', () => {
    expect(tanksFor({ ...job, area: 0 })).toEqual([]);
  });
  test('hold a liquid in place of as much water', () => {
    const [fill] = tanksFor({ ...job, products: [{ product: liquid, rate: { by: 'volume', value: 4e-5 } }] });
    expect(fill?.water).toBeCloseTo(0.9, 12);
  });
  test('hold a weighed liquid by its density', () => {
    const [fill] = tanksFor({ ...job, products: [{ product: liquid, rate: { by: 'mass', value: 0.048 } }] });
    expect(fill?.water).toBeCloseTo(0.9, 12);
  });
  test('are topped up where a weighed liquid has no density', () => {
    const { density: _, ...unknown } = liquid;
    const [fill] = tanksFor({ ...job, products: [{ product: unknown, rate: { by: 'mass', value: 0.048 } }] });
    expect(fill?.water).toBeNull();
  });
  test('hold as much water as spray with a powder', () => {
    const [fill] = tanksFor({ ...job, products: [{ product: powder, rate: { by: 'mass', value: 0.001 } }] });
    expect(fill?.water).toBe(1);
  });
  test('leave no room for water where the product alone is the whole output', () => {
    const [fill] = tanksFor({ ...job, products: [{ product: liquid, rate: { by: 'volume', value: 0.0004 } }] });
    expect(fill?.water).toBe(0);
  });
  test('hold no less than no water where the products are more than the output', () => {
    const [fill] = tanksFor({ ...job, products: [{ product: liquid, rate: { by: 'volume', value: 0.0005 } }] });
    expect(fill?.water).toBe(0);
  });

  const positive = (max: number) => fc.double({ min: 1e-3, max, noNaN: true });
  test('give the job its area, its spray and its product, to 1e-9', () => {
    fc.assert(
      fc.property(positive(1e5), positive(1), positive(10), positive(0.1), (area, output, tank, value) => {
        const fills = tanksFor({ area, output, tank, products: [{ product: powder, rate: { by: 'mass', value } }] });
        const sum = (of: (fill: (typeof fills)[number]) => number) =>
          fills.reduce((total, fill) => total + fill.count * of(fill), 0);
        // A last tank below a billionth of a full one is none.
        const hair = 1e-9 * (1 + tank / (area * output));
        expect(Math.abs(sum((fill) => fill.area) / area - 1)).toBeLessThanOrEqual(hair);
        expect(Math.abs(sum((fill) => fill.spray) / (area * output) - 1)).toBeLessThanOrEqual(hair);
        expect(Math.abs(sum(({ amounts }) => amounts[0]?.value ?? 0) / (area * value) - 1)).toBeLessThanOrEqual(hair);
      }),
    );
  });
  test('are never filled above the brim', () => {
    fc.assert(
      fc.property(positive(1e5), positive(1), positive(10), (area, output, tank) => {
        const fills = tanksFor({ area, output, tank, products: [] });
        expect(fills.every(({ spray }) => spray <= tank * (1 + 1e-12))).toBe(true);
      }),
    );
  });
});
