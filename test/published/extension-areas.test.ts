/**
 * Areas of simple shapes: worked examples of the trade and of extension services, in ft².
 *
 * A printed value that was rounded, or made with π = 3.14, is not asserted; the exact one is, with the printed one beside
 * it. Rules of thumb (0.8 D² for a circle, 0.8 L W for an oval) are not shapes of a lawn file and are left out.
 */
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { areaOf } from '../../src/index.ts';
import { planOneStep } from './one-step-plan.ts';
import { SQFT } from './pounds.ts';

interface Example {
  readonly name: string;
  readonly shape: string;
  readonly sqft: number;
}

const examples: readonly Example[] = [
  // read: grounds-mag.com, "Calculate areas". Printed 4500.
  { name: 'rectangle 90 × 50 ft (Grounds Maintenance)', shape: '{ rectangle: [90 ft, 50 ft] }', sqft: 4500 },
  // read: Virginia Turfgrass Council, vaturf.org. Printed 1500.
  { name: 'rectangle 50 × 30 ft (Virginia Turfgrass Council)', shape: '{ rectangle: [50 ft, 30 ft] }', sqft: 1500 },
  // read: Wyoming Department of Agriculture. Printed 4800.
  { name: 'rectangle 80 × 60 ft (Wyoming)', shape: '{ rectangle: [80 ft, 60 ft] }', sqft: 4800 },
  // read: grounds-mag.com. Printed 4687, cut off.
  { name: 'triangle 125, 75 ft (Grounds)', shape: '{ triangle: { base: 125 ft, height: 75 ft } }', sqft: 4687.5 },
  // read: vaturf.org. Printed 1600.
  { name: 'triangle 40, 80 ft (Virginia)', shape: '{ triangle: { base: 40 ft, height: 80 ft } }', sqft: 1600 },
  // read: Wyoming. Printed 4000.
  { name: 'triangle 200, 40 ft (Wyoming)', shape: '{ triangle: { base: 200 ft, height: 40 ft } }', sqft: 4000 },
  // read: grounds-mag.com. Printed 2826, with π = 3.14; exact 2827.43.
  { name: 'circle of radius 30 ft (Grounds)', shape: '{ circle: { radius: 30 ft } }', sqft: 900 * Math.PI },
  // read: grounds-mag.com. Printed 2000 by 0.8 D², "within 5 %"; exact 1963.50.
  { name: 'circle of diameter 50 ft (Grounds)', shape: '{ circle: { diameter: 50 ft } }', sqft: 625 * Math.PI },
  // read: Victoria County TX Master Gardeners (2005). Printed: lot 80 × 100 ft = 8000, lawn 4030. The parts taken off are
  // not in the stored text; two rectangles of 40 × 60 and 20 × 78.5 ft stand for the 3970 ft² (derived).
  {
    name: 'lot less hardscape (Victoria County 2005)',
    shape: '{ rectangle: [80 ft, 100 ft], less: [{ rectangle: [40 ft, 60 ft] }, { rectangle: [20 ft, 78.5 ft] }] }',
    sqft: 4030,
  },
  // derived: the corners of the first rectangle; read: 4500 (Grounds).
  {
    name: 'polygon of the corners of 90 × 50 ft',
    shape: '{ polygon: [[0, 0], [90, 0], [90, 50], [0, 50]], in: ft }',
    sqft: 4500,
  },
  // derived: the same, turned by the 3-4-5 triangle and paced the other way round.
  {
    name: 'the same rectangle, askew and the other way round',
    shape: '{ polygon: [[0, 0], [-30, 40], [42, 94], [72, 54]], in: ft }',
    sqft: 4500,
  },
  // derived: right triangle of legs 75 and 125 ft; read: base 125, height 75 (Grounds).
  {
    name: 'polygon of the triangle 125, 75 ft',
    shape: '{ polygon: [[0, 0], [125, 0], [0, 75]], in: ft }',
    sqft: 4687.5,
  },
  // read: grounds-mag.com. Printed 1920 by 0.8 L W, "within 5 %"; exact ellipse 1884.96.
  { name: 'oval 60 × 40 ft (Grounds)', shape: '{ ellipse: [60 ft, 40 ft] }', sqft: 600 * Math.PI },
  // read: the offset method, step times the sum of the offsets; trapezoids with ends of no width give the same, Simpson's
  // rule would give 493.33. The widths are made up.
  { name: 'offsets every 10 ft', shape: '{ offsets: { every: 10, widths: [12, 14, 13, 9] }, in: ft }', sqft: 480 },
  // derived: the rectangle 50 × 30 ft by widths (Virginia).
  {
    name: 'offsets of 50 × 30 ft',
    shape: '{ offsets: { every: 10, widths: [30, 30, 30, 30], ends: [30, 30], in: ft } }',
    sqft: 1500,
  },
  // read: installer's sheet "How to measure a putting green" (abcdocz.com, document 187946), sixteen radii from the middle:
  // 157.8 / 16 = 9.86 ft. Printed 305.27, with the rounded radius and π = 3.14; exact 305.58.
  {
    name: 'sixteen radii round a point',
    shape: '{ radii: [7.1, 8.9, 9.7, 10.9, 12.4, 11.7, 11.8, 9.9, 6.8, 8.2, 9.7, 10.4, 12.0, 11.4, 8.9, 8.0], in: ft }',
    sqft: Math.PI * (157.8 / 16) ** 2,
  },
  // read: Western Australia's vocational training, "Calculating area" (westone.wa.gov.au, fn27): mean radius 15 m, printed
  // 706.5 m² with π = 3.14; exact 706.86. The radii are made up to have that mean.
  {
    name: 'radii of 15 m in the mean',
    shape: '{ radii: [14, 16, 15, 13, 17, 15], in: m }',
    sqft: (225 * Math.PI) / SQFT,
  },
  // derived: two rectangles side by side are a trapezoid of no slope; read: 4800 (Wyoming).
  {
    name: 'trapezoid of 80 × 60 ft',
    shape: '{ trapezoid: { sides: [80 ft, 80 ft], height: 60 ft } }',
    sqft: 4800,
  },
  // derived: half the sum of the sides times the height.
  {
    name: 'trapezoid 50, 70, 30 ft',
    shape: '{ trapezoid: { sides: [50 ft, 70 ft], height: 30 ft } }',
    sqft: 1800,
  },
];

describe('areaOf', () => {
  test.each(examples)('$name is $sqft ft²', ({ shape, sqft }) => {
    expect((areaOf(parse(shape)).value ?? Number.NaN) / SQFT).toBeCloseTo(sqft, 6);
  });
});

describe('a rule of thumb agrees with the exact shape within 5 %, as its source says', () => {
  // read: grounds-mag.com, "Calculate areas".
  test.each([
    ['0.8 D² of 50 ft, 2000', 2000, { circle: { diameter: '50 ft' } }],
    ['0.8 L W of 60 × 40 ft, 1920', 1920, { ellipse: ['60 ft', '40 ft'] }],
  ])('%s', (_, sqft, shape) => {
    expect(Math.abs(((areaOf(shape).value ?? Number.NaN) / SQFT - sqft) / sqft)).toBeLessThan(0.05);
  });
  test('and can be taken as it is printed, as an area that was measured', () =>
    expect((areaOf({ measured: '1920 sqft' }).value ?? Number.NaN) / SQFT).toBeCloseTo(1920, 6));
});

describe('plan', () => {
  test.each(examples)('$name is $sqft ft²', async ({ shape, sqft }) => {
    const apply = '{ nutrient: { N: 1 lb/1000 sqft } }';
    const { areas } = await planOneStep({ area: shape, analysis: '16-4-8', apply });
    expect((areas[0]?.areaM2 ?? Number.NaN) / SQFT).toBeCloseTo(sqft, 3);
  });
});
