import * as v from 'valibot';
import { crossingEdges, type Point, polygonArea } from '../base/geometry.ts';
import { factorOf, type Metres, type SquareMetres } from '../base/units.ts';
import { choosing, keysOf, map, maybe, positive, quantity, word } from './fields.ts';
import { oneOf, standing } from './standing.ts';

/** A measured shape, in metres. */
export type Shape =
  | { readonly kind: 'rectangle'; readonly sides: readonly [Metres, Metres] }
  | { readonly kind: 'circle'; readonly radius: Metres }
  | { readonly kind: 'triangle'; readonly base: Metres; readonly height: Metres }
  | { readonly kind: 'sides'; readonly sides: readonly [Metres, Metres, Metres] }
  | { readonly kind: 'polygon'; readonly corners: readonly Point[] }
  | { readonly kind: 'measured'; readonly area: SquareMetres };

/** A shape with the parts taken off it. */
export interface AreaShape {
  readonly shape: Shape;
  readonly less: readonly Shape[];
}

/** No lawn is longer than this [m]. */
const LONGEST = 10_000;
const above0 = v.pipe(
  positive('length'),
  v.gtValue(0, 'out-of-range:a length above 0'),
  v.maxValue(LONGEST, 'out-of-range:a length of at most 10 km'),
);

const bySides = v.pipe(
  map({ sides: v.strictTuple([above0, above0, above0]) }),
  v.rawTransform<{ readonly sides: [Metres, Metres, Metres] }, Shape>(({ dataset, addIssue, NEVER }) => {
    const { sides } = dataset.value;
    if (2 * Math.max(...sides) < sides[0] + sides[1] + sides[2]) return { kind: 'sides', sides };
    addIssue({ message: 'area-triangle' });
    return NEVER;
  }),
);

const byHeight = v.pipe(
  map({ base: above0, height: above0 }),
  v.transform((value): Shape => ({ kind: 'triangle', ...value })),
);

const triangle = choosing(
  (input) => (input !== null && typeof input === 'object' && 'sides' in input ? bySides : byHeight),
  () => [bySides, byHeight],
);

const circle = v.pipe(
  map({ radius: maybe(above0), diameter: maybe(above0) }),
  standing('missing-key:radius', oneOf('radius', 'diameter')),
  v.transform(({ radius, diameter }): Shape => ({ kind: 'circle', radius: radius ?? (diameter as number) / 2 })),
);

const coordinate = v.pipe(
  v.number('wrong-type:a number'),
  v.minValue(-1e5, 'out-of-range:-100000 to 100000'),
  v.maxValue(1e5, 'out-of-range:-100000 to 100000'),
);

const MOST_CORNERS = 1000;

/** Whether no three corners span a triangle. The net area does not tell: the two halves of a bow tie cancel. */
const onOneLine = ([first, ...others]: readonly Point[]): boolean =>
  others.every((corner, i) => polygonArea([first ?? corner, corner, others[i + 1] ?? corner]) === 0);

/** Corners in the unit that stands beside them under `in`. */
const corners = v.pipe(
  v.array(v.strictTuple([coordinate, coordinate])),
  v.minLength(3, 'area-corners'),
  v.maxLength(MOST_CORNERS, `out-of-range:at most ${MOST_CORNERS} corners`),
  v.rawCheck<[number, number][]>(({ dataset, addIssue }) => {
    if (!dataset.typed || dataset.value.length < 3 || dataset.value.length > MOST_CORNERS) return;
    const crossing = crossingEdges(dataset.value);
    if (onOneLine(dataset.value)) addIssue({ message: 'area-corners' });
    else if (crossing) addIssue({ message: `area-crossing:${crossing.first}:${crossing.second}` });
  }),
);

const inKey = { in: maybe(word(['ft', 'yd', 'm'])) };

const kinds: Record<
  string,
  { readonly schema: v.GenericSchema<unknown, unknown>; readonly build: (value: never, unit: number) => Shape }
> = {
  rectangle: {
    schema: v.strictTuple([above0, above0]),
    build: (sides: [Metres, Metres]) => ({ kind: 'rectangle', sides }),
  },
  circle: { schema: circle, build: (shape: Shape) => shape },
  triangle: { schema: triangle, build: (shape: Shape) => shape },
  polygon: {
    schema: corners,
    build: (points: Point[], unit) => ({
      kind: 'polygon',
      corners: points.map(([x, y]): Point => [x * unit, y * unit]),
    }),
  },
  measured: {
    schema: v.pipe(
      quantity('area'),
      v.gtValue(0, 'out-of-range:an area above 0'),
      v.maxValue(LONGEST ** 2, 'out-of-range:an area of at most 100 km²'),
    ),
    build: (area: SquareMetres) => ({ kind: 'measured', area }),
  },
};

/** A shape with other keys beside it: a map with exactly one shape key. */
export function shaped<E extends v.ObjectEntries>(
  beside: E,
): v.GenericSchema<unknown, { shape: Shape } & Record<string, unknown>> {
  const withKind = (name: string) => {
    const unit = name === 'polygon' ? { in: word(['ft', 'yd', 'm']) } : inKey;
    return map({ ...beside, ...unit, [name]: (kinds[name] as (typeof kinds)[string]).schema });
  };
  const chosen = (input: unknown) => {
    const names = keysOf(input);
    const [name, second] = names.filter((key) => Object.hasOwn(kinds, key));
    if (name === undefined || second !== undefined) {
      const other = names.filter((key) => !Object.hasOwn(beside, key) && key !== 'in');
      return v.custom<never>(() => false, `area-shape:${other.join(', ') || 'none'}:${Object.keys(kinds).join('|')}`);
    }
    const { build } = kinds[name] as (typeof kinds)[string];
    return v.pipe(
      withKind(name),
      v.transform((value) => {
        const { in: unit, [name]: inner, ...rest } = value as Record<string, unknown>;
        return { ...rest, shape: build(inner as never, factorOf((unit as string) ?? 'm')) };
      }),
    );
  };
  return choosing(chosen, () => Object.keys(kinds).map(withKind));
}
