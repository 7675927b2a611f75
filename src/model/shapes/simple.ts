import * as v from 'valibot';
import type { Metres, SquareMetres } from '../../base/units.ts';
import { choosing, map, maybe, quantity } from '../fields.ts';
import { oneOf, standing } from '../standing.ts';
import type { Kind, Shape } from './kind.ts';
import { LONGEST, length, unitWord } from './lengths.ts';

const bySides = v.pipe(
  map({ sides: v.strictTuple([length, length, length]) }),
  v.rawTransform<{ readonly sides: [Metres, Metres, Metres] }, Shape>(({ dataset, addIssue, NEVER }) => {
    const { sides } = dataset.value;
    if (2 * Math.max(...sides) < sides[0] + sides[1] + sides[2]) return { kind: 'sides', sides };
    addIssue({ message: 'area-triangle' });
    return NEVER;
  }),
);

const byHeight = v.pipe(
  map({ base: length, height: length }),
  v.transform((value): Shape => ({ kind: 'triangle', ...value })),
);

const triangle = choosing(
  (input) => (input !== null && typeof input === 'object' && 'sides' in input ? bySides : byHeight),
  () => [bySides, byHeight],
);

const trapezoid = v.pipe(
  map({ sides: v.strictTuple([length, length]), height: length }),
  v.transform((value): Shape => ({ kind: 'trapezoid', ...value })),
);

const circle = v.pipe(
  map({ radius: maybe(length), diameter: maybe(length) }),
  standing('missing-key:radius', oneOf('radius', 'diameter')),
  v.transform(({ radius, diameter }): Shape => ({ kind: 'circle', radius: radius ?? (diameter as number) / 2 })),
);

const measured = v.pipe(
  quantity('area'),
  v.gtValue(0, 'out-of-range:an area above 0'),
  v.maxValue(LONGEST ** 2, 'out-of-range:an area of at most 100 km²'),
);

/** The error of every length in it, which an area feels twice. */
const share = v.pipe(
  quantity('share'),
  v.minValue(0, 'out-of-range:0% to 50%'),
  v.maxValue(0.5, 'out-of-range:0% to 50%'),
);

/** What stands beside a shape of lengths with their units: a unit that they do not need, and their error. */
export const besideLengths = { in: maybe(unitWord), error: maybe(share) };

const twoLengths = v.strictTuple([length, length]);
const asBuilt = (shape: Shape): Shape => shape;

/** Shapes by a few lengths, each with its unit. */
export const simpleKinds: Readonly<Record<string, Kind>> = {
  rectangle: {
    forms: [{ schema: twoLengths, beside: besideLengths }],
    build: (sides: [Metres, Metres]) => ({ kind: 'rectangle', sides }),
  },
  circle: { forms: [{ schema: circle, beside: besideLengths }], build: asBuilt },
  ellipse: {
    forms: [{ schema: twoLengths, beside: besideLengths }],
    build: (axes: [Metres, Metres]) => ({ kind: 'ellipse', axes }),
  },
  triangle: { forms: [{ schema: triangle, beside: besideLengths }], build: asBuilt },
  trapezoid: { forms: [{ schema: trapezoid, beside: besideLengths }], build: asBuilt },
  measured: {
    forms: [{ schema: measured, beside: besideLengths }],
    build: (area: SquareMetres) => ({ kind: 'measured', area }),
  },
};
