/** The two half passes of a plan, and the time that they take. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { displayOf } from '../../src/base/display.ts';
import type { Product } from '../../src/model/product.ts';
import { readLawn } from '../../src/read/lawn.ts';
import { passesOf, walksOf } from '../../src/schedule/passes.ts';
import { lawnText } from '../kit.ts';
import { application, feed, PRODUCTS, plan } from './plan-kit.ts';

const display = displayOf('us', 'en-US');
const lawnOf = (extra: string) => readLawn(lawnText(extra), 'lawn.yaml').value!;
const urea: Product = { id: 'urea', form: 'granular', analysis: { N: 0.46, P2O5: 0, K2O: 0 } };

describe('conservation', () => {
  const side = fc.double({ min: 3, max: 80, noNaN: true });
  test('the passes add to the load, whatever area and rate', () => {
    fc.assert(
      fc.property(side, side, fc.double({ min: 1e-4, max: 1, noNaN: true }), (width, depth, rate) => {
        const lawn = lawnOf(`areas: { front: { rectangle: [${width} m, ${depth} m] } }\n`);
        const amountKg = rate * width * depth;
        const dose = { product: urea, rate: { by: 'mass' as const, value: rate } };
        const passes = passesOf({ id: 'front', amountKg, measured: null }, dose, walksOf(lawn), display);
        expect(passes).toHaveLength(2);
        const sum = passes.reduce((total, pass) => total + pass.amountKg, 0);
        expect(Math.abs(sum / amountKg - 1)).toBeLessThan(1e-9);
        for (const pass of passes) expect(Math.abs((2 * pass.amountKg) / amountKg - 1)).toBeLessThan(1e-9);
      }),
    );
  });
  test('the passes over all areas add to what the plan puts down', async () => {
    const lawn = `areas: { a: { rectangle: [50 ft, 40 ft] }, b: { circle: { radius: 7 m } }, c: { measured: 1200 sqft } }\n`;
    const season = await plan({ steps: feed('one', '04-10', '05-10'), lawn: lawn + PRODUCTS });
    const { areas, totals } = application(season, 'one');
    const passes = areas.flatMap((area) => area.passes);
    const sum = passes.reduce((total, { amountKg }) => total + amountKg, 0);
    expect(passes).toHaveLength(6);
    expect(Math.abs(sum / (totals[0]?.amountKg ?? 0) - 1)).toBeLessThan(1e-9);
  });
});

describe('the ways of a plan', () => {
  const one = async (lawn: string) =>
    application(await plan({ steps: feed('one', '04-10', '05-10'), lawn: lawn + PRODUCTS }), 'one');
  const AREA = 'areas: { front: { rectangle: [120 ft, 80 ft] } }\n';
  test.each([
    ['crossing', ['lengthwise', 'crosswise'], 'lengthwise, half .* crosswise'],
    ['parallel', ['lengthwise', 'between'], 'lengthwise, half .* between those lines'],
  ])('%s', async (passes, directions, words) => {
    const { areas, how } = await one(`equipment: { spreader: { swath: 10 ft, passes: ${passes} } }\n${AREA}`);
    expect(areas[0]?.passes.map(({ direction }) => direction)).toEqual(directions);
    expect(how.join('\n')).toMatch(new RegExp(words));
  });
  test('say how far each goes', async () => {
    const { areas } = await one(`equipment: { spreader: { swath: 10 ft } }\n${AREA}`);
    // 9600 ft² at 10 ft are 960 ft with the spreader open; the rest is the way from line to line.
    for (const { distanceM } of areas[0]?.passes ?? []) {
      expect(distanceM ?? 0).toBeGreaterThan(960 * 0.3048);
      expect(distanceM ?? 0).toBeLessThan(1.2 * 960 * 0.3048);
    }
  });
});

describe('the minutes of a job', () => {
  const ACRES = 'areas: { field: { rectangle: [1000 ft, 400 ft] } }\n';
  const minutes = async (lawn: string) => {
    const season = await plan({ steps: feed('one', '04-10', '05-10'), lawn: lawn + PRODUCTS });
    const { start, end } = application(season, 'one');
    return (Date.parse(end ?? '') - Date.parse(start ?? '')) / 60_000;
  };
  test('are those of both ways, turns too, and a quarter of an hour to set up', async () => {
    // 400,000 ft² at 10 ft are 40,000 ft each way; at 264 ft/min 303 min for both, and the way from line to line.
    const taken = await minutes(`equipment: { spreader: { swath: 10 ft, speed: 3 mph } }\n${ACRES}`);
    expect(taken).toBeGreaterThan(318);
    expect(taken).toBeLessThan(345);
  });
  test('of an area too large for a way follow its size', async () => {
    const lawn = 'equipment: { spreader: { swath: 1 ft, speed: 30 mph } }\nareas: { field: { measured: 1100 m2 } }\n';
    const large = lawn.replace('1100 m2', '1000 ha');
    // 10 km² at 1 ft and 30 mph, twice.
    expect(await minutes(large)).toBeCloseTo(15 + (2 * 1e7) / 0.3048 / 13.4112 / 60, -1);
    expect(await minutes(lawn)).toBeLessThan(30);
  });
});
