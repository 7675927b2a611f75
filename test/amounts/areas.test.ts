/** Areas and outlines of shapes as a lawn file has them. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { outlineOf } from '../../src/amounts/outline.ts';
import { polygonArea } from '../../src/base/geometry.ts';
import { areaOf } from '../../src/index.ts';
import { AreaSchema } from '../../src/model/area.ts';
import { ring } from '../ring.ts';

const FOOT = 0.3048;
const size = (shape: unknown): number => areaOf(shape).value ?? Number.NaN;
const codes = (shape: unknown): string[] => areaOf(shape).problems.map(({ code }) => code);

/** A length of the shapes below, in feet or in metres. */
type Write = (feet: number) => string | number;
const length = fc.double({ min: 3, max: 300, noNaN: true });
const lengths = fc.array(length, { minLength: 4, maxLength: 12 });

const written: Readonly<Record<string, (text: Write, number: Write, all: readonly number[]) => object>> = {
  rectangle: (text, _, [a = 0, b = 0]) => ({ rectangle: [text(a), text(b)] }),
  ellipse: (text, _, [a = 0, b = 0]) => ({ ellipse: [text(a), text(b)] }),
  circle: (text, _, [a = 0]) => ({ circle: { radius: text(a) } }),
  triangle: (text, _, [a = 0, b = 0]) => ({ triangle: { base: text(a), height: text(b) } }),
  sides: (text, _, [a = 0, b = 0]) => ({ triangle: { sides: [text(a), text(b), text(Math.abs(a - b) + 1)] } }),
  trapezoid: (text, _, [a = 0, b = 0, c = 0]) => ({ trapezoid: { sides: [text(a), text(b)], height: text(c) } }),
  offsets: (_, number, [every = 0, ...widths]) => ({ offsets: { every: number(every), widths: widths.map(number) } }),
  radii: (_, number, radii) => ({ radii: radii.map(number) }),
  polygon: (_, number, [a = 0, b = 0, c = 0, d = 0]) => ({
    polygon: [
      [0, 0],
      [number(a), 0],
      [number(a), number(b)],
      [number(-c), number(d)],
    ],
  }),
  'with a setback': (text, _, [a = 0, b = 0]) => ({
    rectangle: [text(a), text(b)],
    setback: { 'from-edge': [1, 2], width: text(2) },
  }),
};
const NUMBERS = ['offsets', 'radii', 'polygon'];

describe('one shape in feet and in metres has the same area', () => {
  test.each(Object.entries(written))('%s', (name, write) => {
    const unit = (word: string) => (NUMBERS.includes(name) ? { in: word } : {});
    fc.assert(
      fc.property(lengths, (all) => {
        const us = {
          ...write(
            (feet) => `${feet} ft`,
            (feet) => feet,
            all,
          ),
          ...unit('ft'),
        };
        const metric = {
          ...write(
            (feet) => `${feet * FOOT} m`,
            (feet) => feet * FOOT,
            all,
          ),
          ...unit('m'),
        };
        expect(size(us) / size(metric)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('an outline holds as much ground as its area', () => {
  test.each(Object.entries(written).filter(([name]) => name !== 'radii'))('%s', (name, write) => {
    fc.assert(
      fc.property(lengths, (all) => {
        const shape = {
          ...write(
            (feet) => `${feet} ft`,
            (feet) => feet,
            all,
          ),
          ...(NUMBERS.includes(name) && { in: 'ft' }),
        };
        const { outer = [], holes = [] } = outlineOf(v.parse(AreaSchema, shape)) ?? {};
        const drawn = holes.reduce((left, hole) => left - polygonArea(hole), polygonArea(outer));
        expect(Math.abs(drawn / size(shape) - 1)).toBeLessThan(0.001);
      }),
    );
  });
  test('equal radii draw the circle that they are', () => {
    const { outer = [] } = outlineOf(v.parse(AreaSchema, { radii: [5, 5, 5, 5, 5], in: 'm' })) ?? {};
    expect(polygonArea(outer)).toBeCloseTo(25 * Math.PI, 0);
  });
  test('of a bare size there is none', () => expect(outlineOf(v.parse(AreaSchema, { measured: '9 m2' }))).toBeNull());
});

const lawn = { rectangle: ['20 m', '10 m'] };
describe('parts taken off', () => {
  const hole = (at: readonly string[]) => ({ rectangle: ['2 m', '2 m'], at });
  test('have a place in the outline where they were measured from', () => {
    const less = [hole(['3 m', '4 m']), { circle: { radius: '1 m' } }];
    expect(outlineOf(v.parse(AreaSchema, { ...lawn, less }))?.holes).toEqual([
      [
        [3, 4],
        [5, 4],
        [5, 6],
        [3, 6],
      ],
    ]);
  });
  test('lie beside each other without a word', () =>
    expect(areaOf({ ...lawn, less: [hole(['3 m', '4 m']), hole(['5 m', '4 m'])] })).toEqual({
      value: 192,
      problems: [],
    }));
  test('along the edge too', () => expect(codes({ ...lawn, less: [hole(['18 m', '8 m'])] })).toEqual([]));
  test.each([
    ['reach out of the area', [hole(['19 m', '4 m'])]],
    ['lie out of it', [hole(['30 m', '4 m'])]],
    ['reach into each other', [hole(['3 m', '4 m']), hole(['4 m', '5 m'])]],
  ])('that %s are warned of, and counted', (_, less) => {
    const { value, problems } = areaOf({ ...lawn, less });
    expect([value, problems.map(({ code }) => code)]).toEqual([200 - 4 * less.length, ['area-part']]);
  });
  test('by coordinates have their place by them', () => {
    const points = (at: number, step: number) => [
      [52 + at, 5 + at],
      [52 + at, 5 + at + step],
      [52 + at + step, 5 + at + step],
    ];
    const area = v.parse(AreaSchema, { points: points(0, 0.001), less: [{ points: points(0.0003, 0.0001) }] });
    expect(outlineOf(area)?.holes).toHaveLength(1);
  });
});

describe('a setback', () => {
  const setback = (keys: object) => ({ ...lawn, setback: { width: '2 m', ...keys } });
  test.each([
    ['along the long side', { 'from-edge': 1 }, 160],
    ['along a short one', { 'from-edge': 2 }, 180],
    ['along both', { 'from-edge': [1, 2] }, 144],
  ])('%s', (_, keys, left) => expect(size(setback(keys))).toBeCloseTo(left, 9));
  test('round a pond in the middle takes a ring about it', () => {
    const less = [{ circle: { radius: '2 m' }, at: ['10 m', '5 m'] }];
    const left = size({ ...setback({ 'from-hole': 1, width: '1 m' }), less });
    expect(left).toBeLessThan(200 - 9 * Math.PI + 0.1);
    expect(left).toBeGreaterThan(200 - 9 * Math.PI * 1.03);
  });
  test('counts ground that is taken off once', () => {
    const less = [{ rectangle: ['2 m', '2 m'], at: ['0 m', '0 m'] }];
    expect(size({ ...setback({ 'from-edge': 1 }), less })).toBeCloseTo(160, 9);
  });
  test('is measured from the edge of a circle', () =>
    expect(
      size({ circle: { radius: '10 m' }, setback: { 'from-edge': 1, width: '2 m' } }) / (64 * Math.PI),
    ).toBeCloseTo(1, 3));
  test.each([
    ['an edge that is not there', setback({ 'from-edge': 5 }), 'area-setback-edge'],
    ['a hole that is not there', setback({ 'from-hole': 1 }), 'area-setback-edge'],
    ['no edge at all', setback({}), 'missing-key'],
    ['a bare size', { measured: '9 m2', setback: { 'from-edge': 1, width: '1 m' } }, 'area-setback-form'],
    ['all of the area', setback({ 'from-edge': 1, width: '10 m' }), 'area-empty'],
    [
      'two areas, where it cuts one in two',
      {
        polygon: [
          [0, 0],
          [20, 0],
          [20, 10],
          [11, 10],
          [11, 1],
          [9, 1],
          [9, 10],
          [0, 10],
        ],
        in: 'm',
        setback: { 'from-edge': 5, width: '2 m' },
      },
      'area-setback-splits',
    ],
  ])('from %s is refused', (_, shape, code) => expect(codes(shape)).toEqual([code]));
});

describe('what is measured amiss is refused', () => {
  const moved = (by: number, scale: number) =>
    ring.map(([x = 0, y = 0]) => [5 + by + scale * (x - 5), 52 + by + scale * (y - 52)]);
  const geojson = (...coordinates: unknown[]) => ({ geojson: { type: 'Polygon', coordinates } });
  test.each([
    [
      'a walk that crosses itself',
      {
        points: [
          [52, 5],
          [52.001, 5.001],
          [52, 5.001],
          [52.001, 5],
        ],
      },
      'area-crossing-at',
    ],
    [
      'two points',
      {
        points: [
          [52, 5],
          [52.001, 5.001],
        ],
      },
      'area-corners',
    ],
    [
      'one point three times',
      {
        points: [
          [52, 5],
          [52, 5],
          [52, 5],
        ],
      },
      'area-corners',
    ],
    [
      'points far apart',
      {
        points: [
          [52, 5],
          [53, 5],
          [53, 6],
        ],
      },
      'out-of-range',
    ],
    [
      'latitude and longitude changed over',
      {
        points: [
          [100, 5],
          [100, 5.1],
          [100.1, 5],
        ],
      },
      'out-of-range',
    ],
    ['a line of GeoJSON', { geojson: { type: 'LineString', coordinates: ring } }, 'geojson-type'],
    ['a hole that reaches out', geojson(ring, moved(0.0008, 0.5)), 'geojson-hole'],
    ['holes in each other', geojson(ring, moved(0.0002, 0.3), moved(0.0003, 0.3)), 'geojson-hole'],
    ['several polygons', { geojson: { type: 'MultiPolygon', coordinates: [[ring], [ring]] } }, 'geojson-several'],
    ['a file, where none can be read', { geojson: 'front.geojson' }, 'file-missing'],
    ['three radii', { radii: [1, 2, 3], in: 'm' }, 'wrong-type'],
    ['offsets without their unit', { offsets: { every: 10, widths: [1, 2] } }, 'missing-key'],
    ['a width below 0', { offsets: { every: 10, widths: [1, -2] }, in: 'm' }, 'out-of-range'],
    ['an error of more than half', { rectangle: ['1 m', '2 m'], error: '60%' }, 'out-of-range'],
  ])('%s', (_, shape, code) => expect([...new Set(codes(shape))]).toEqual([code]));
  test('and told where: edges that cross, in degrees', () => {
    const [found] = areaOf({
      points: [
        [52, 5],
        [52.001, 5.001],
        [52, 5.001],
        [52.001, 5],
      ],
    }).problems;
    expect(found?.message).toContain('52.000500, 5.000500');
  });
});
