import * as v from 'valibot';
import { crossingEdges, crossingPoint, type Point } from '../../base/geometry.ts';
import { type GeoPoint, localPlane } from '../../base/local-plane.ts';
import { ringFits, ringsOverlap } from '../../base/rings.ts';
import { anyMap, choosing, maybe } from '../fields.ts';
import type { GeoPolygon, Kind } from './kind.ts';
import { LONGEST, length, MOST_CORNERS } from './lengths.ts';
import { onOneLine } from './series.ts';

/** How far a point of a satellite receiver in a hand usually is off [m]. Common practice. */
const RECEIVER_ERROR = 3;

const degrees = (what: string, most: number) =>
  v.pipe(
    v.number(`wrong-type:a ${what} in degrees`),
    v.minValue(-most, `out-of-range:a ${what} of ${-most} to ${most}`),
    v.maxValue(most, `out-of-range:a ${what} of ${-most} to ${most}`),
  );
const latitude = degrees('latitude', 90);
const longitude = degrees('longitude', 180);

const same = (one: GeoPoint | undefined, other: GeoPoint | undefined): boolean =>
  one?.[0] === other?.[0] && one?.[1] === other?.[1];

/** A ring without the points at which somebody stood still, and without its first one again at the end. */
const plainRing = (points: readonly GeoPoint[]): GeoPoint[] => {
  const moved = points.filter((point, i) => i === 0 || !same(point, points[i - 1]));
  return moved.length > 1 && same(moved[0], moved.at(-1)) ? moved.slice(0, -1) : moved;
};

/** What is wrong with a ring, as a fault of the problem table; null where nothing is. */
function ringFault(points: readonly GeoPoint[]): string | null {
  const ring = plainRing(points);
  const flat = ring.map(localPlane(ring));
  if (ring.length < 3 || onOneLine(flat)) return 'area-corners';
  if (flat.some(([x, y]) => Math.max(Math.abs(x), Math.abs(y)) > LONGEST / 2))
    return 'out-of-range:points at most 10 km apart';
  const crossing = crossingEdges(flat);
  if (!crossing) return null;
  const { first, second } = crossing;
  return `area-crossing-at:${first}:${second}:${placeOf(ring, flat, first - 1, second - 1)}`;
}

/** Where two edges of a ring cross, in degrees: as far along the first edge as it is in the plane. */
function placeOf(ring: readonly GeoPoint[], flat: readonly Point[], first: number, second: number): string {
  const edge = <T>(of: readonly T[], i: number) => [of[i], of[(i + 1) % of.length]] as [T, T];
  const [from, to] = edge(ring, first);
  const along = crossingPoint(edge(flat, first), edge(flat, second));
  return [0, 1].map((i) => (from[i as 0] + along * (to[i as 0] - from[i as 0])).toFixed(6)).join(', ');
}

/** A ring of points of this schema, in its order. */
const ringOf = (point: v.GenericSchema<unknown, GeoPoint>) =>
  v.pipe(
    v.array(point),
    v.minLength(3, 'area-corners'),
    v.maxLength(MOST_CORNERS, `out-of-range:at most ${MOST_CORNERS} points`),
    v.rawCheck<GeoPoint[]>(({ dataset, addIssue }) => {
      // What is wrong with a point is told there; the ring is looked at once its points are right.
      if (!dataset.typed || dataset.issues) return;
      const message = ringFault(dataset.value);
      if (message !== null) addIssue({ message });
    }),
    v.transform((points: GeoPoint[]) => plainRing(points)),
  );

const points = ringOf(v.strictTuple([latitude, longitude]));

/** A position of RFC 7946: longitude, latitude and perhaps a height. */
const position: v.GenericSchema<unknown, GeoPoint> = v.pipe(
  v.array(v.number('wrong-type:a number')),
  v.minLength(2, 'wrong-type:longitude and latitude in degrees'),
  v.check(
    ([east = 0, north = 0]) => Math.abs(east) <= 180 && Math.abs(north) <= 90,
    'out-of-range:a longitude of -180 to 180, then a latitude of -90 to 90',
  ),
  v.transform(([east = 0, north = 0]): GeoPoint => [north, east]),
);
const rings = v.pipe(
  v.array(ringOf(position)),
  v.minLength(1, 'wrong-type:a list of rings, the outer one first'),
  v.rawCheck<GeoPoint[][]>(({ dataset, addIssue }) => {
    if (!dataset.typed || dataset.issues) return;
    const stray = strayHole(dataset.value);
    if (stray !== null) addIssue({ message: `geojson-hole:${stray}` });
  }),
  v.transform(([outer = [], ...holes]): GeoPolygon => ({ outer, holes })),
);

/** The first hole (counted from 1) that is not inside the outer ring, or meets one before it. */
function strayHole([outer = [], ...holes]: readonly (readonly GeoPoint[])[]): number | null {
  const flatten = localPlane(outer);
  const ring = outer.map(flatten);
  const flat = holes.map((hole) => hole.map(flatten));
  const stray = flat.findIndex(
    (hole, i) => !ringFits(hole, ring) || flat.slice(0, i).some((other) => ringsOverlap(hole, other)),
  );
  return stray < 0 ? null : stray + 1;
}

const typeOf = (input: unknown): unknown =>
  input !== null && typeof input === 'object' ? (input as { type?: unknown }).type : undefined;
const typed = <T extends string, E extends v.ObjectEntries>(type: T, entries: E) =>
  v.pipe(anyMap, v.object({ type: v.literal(type), ...entries }));
type OnePolygon = v.GenericSchema<unknown, GeoPolygon>;

/** The schema of the type that stands there, or a refusal that names it. */
const byType = (schemas: Readonly<Record<string, OnePolygon>>, name?: string): OnePolygon =>
  choosing(
    (input) => {
      const type = String(typeOf(input));
      const refused = v.custom<GeoPolygon>(() => false, `geojson-type:${type}:${Object.keys(schemas).join('|')}`);
      return Object.hasOwn(schemas, type) ? (schemas[type] as OnePolygon) : refused;
    },
    () => Object.values(schemas),
    name,
  );

/** A list with one entry, which stands for it. */
const only = (entry: OnePolygon): OnePolygon =>
  v.pipe(
    v.array(entry),
    v.minLength(1, 'geojson-several'),
    v.maxLength(1, 'geojson-several'),
    v.transform(([first]) => first as GeoPolygon),
  );

const geometries = {
  Polygon: v.pipe(
    typed('Polygon', { coordinates: rings }),
    v.transform(({ coordinates }) => coordinates),
  ),
  MultiPolygon: v.pipe(
    typed('MultiPolygon', { coordinates: only(rings) }),
    v.transform(({ coordinates }) => coordinates),
  ),
};
const feature = v.pipe(
  typed('Feature', { geometry: byType(geometries) }),
  v.transform(({ geometry }) => geometry),
);
const collection = v.pipe(
  typed('FeatureCollection', { features: only(byType({ Feature: feature })) }),
  v.transform(({ features }) => features),
);

/** One area as GeoJSON (RFC 7946): a polygon, alone, in a feature, or in a collection of one feature. */
export const GeojsonSchema: OnePolygon = byType(
  { ...geometries, Feature: feature, FeatureCollection: collection },
  'geojson',
);

const file = v.pipe(v.string(), v.nonEmpty('wrong-type:the path of a GeoJSON file'));
const fileOrPolygon = choosing(
  (input): v.GenericSchema<unknown, string | GeoPolygon> => (typeof input === 'string' ? file : GeojsonSchema),
  () => [file, GeojsonSchema],
);
const besidePoints = { 'point-error': maybe(length) };

/** Shapes by latitude and longitude. */
export const geographicKinds: Readonly<Record<string, Kind>> = {
  geojson: {
    forms: [{ schema: fileOrPolygon, beside: besidePoints }],
    build: (value: string | GeoPolygon, { pointError = null }) =>
      typeof value === 'string'
        ? { kind: 'geographic', polygon: null, file: value, pointError }
        : { kind: 'geographic', polygon: value, file: null, pointError },
  },
  points: {
    forms: [{ schema: points, beside: besidePoints }],
    build: (outer: GeoPoint[], { pointError = RECEIVER_ERROR }) => ({
      kind: 'geographic',
      polygon: { outer, holes: [] },
      file: null,
      pointError,
    }),
  },
};
