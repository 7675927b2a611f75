/** The error of an area by its measuring: against measurements made up with such errors, and by its rules. */

import * as v from 'valibot';
import { expect, test } from 'vitest';
import { areaError } from '../../src/amounts/area-error.ts';
import { normal, seeded } from '../../src/base/random.ts';
import { areaOf } from '../../src/index.ts';
import { AreaSchema } from '../../src/model/area.ts';

const errorOf = (shape: object) => areaError(v.parse(AreaSchema, shape));

test('of a walk is the spread that such walks have', () => {
  const walk = [
    [52, 5],
    [52, 5.0006],
    [52.0003, 5.0008],
    [52.0005, 5.0004],
    [52.0004, 5],
  ] as const;
  const random = seeded(1);
  const [metreNorth, metreEast] = [1 / 111_266, 1 / 68_678];
  // Half of the squared error lies north, half of it east.
  const off = (metre: number) => (normal(random) * 2 * metre) / Math.SQRT2;
  const areas = Array.from({ length: 4000 }, () => {
    const points = walk.map(([north, east]) => [north + off(metreNorth), east + off(metreEast)]);
    return areaOf({ points }).value ?? Number.NaN;
  });
  const mean = areas.reduce((sum, one) => sum + one, 0) / areas.length;
  const spread = Math.sqrt(areas.reduce((sum, one) => sum + (one - mean) ** 2, 0) / areas.length);
  const { value = Number.NaN, basis } = errorOf({ points: walk, 'point-error': '2 m' }) ?? {};
  expect(basis).toBe('points');
  expect(Math.abs(value / spread - 1)).toBeLessThan(0.04);
});

test('that is stated is felt twice by lengths, once by an area', () => {
  expect(errorOf({ rectangle: ['10 m', '10 m'], error: '3%' })?.value).toBeCloseTo(6, 9);
  expect(errorOf({ measured: '100 m2', error: '3%' })?.value).toBeCloseTo(3, 9);
});

test('that is stated stands in place of the usual one', () =>
  expect(errorOf({ radii: [5, 5, 5, 5], in: 'm', error: '1%' })).toMatchObject({ basis: 'stated' }));

test('of a part taken off adds up with that of the area as squares', () => {
  const less = [{ measured: '40 m2', error: '10%' }];
  expect(errorOf({ measured: '100 m2', error: '3%', less })?.value).toBeCloseTo(5, 9);
});

test('is not known where nobody told it', () => expect(errorOf({ rectangle: ['10 m', '10 m'] })).toBeNull());
