import type { Point } from './geometry.ts';

/** A point on the ground: degrees, north and east positive. */
export type GeoPoint = readonly [latitude: number, longitude: number];

/** The WGS84 ellipsoid: its larger half axis [m] and its flattening. Source: NGA.STND.0036 (2014), table 3.1. */
const WGS84 = { a: 6_378_137, f: 1 / 298.257223563 };
const RADIANS = Math.PI / 180;

/** Degrees from one longitude to another, the short way round. */
const eastward = (from: number, to: number): number => ((to - from + 540) % 360) - 180;

/**
 * A plane that touches the ellipsoid amid some points, to draw and to cut them in.
 *
 * Lengths north and east by the radii of curvature at the middle. Over 300 m an edge is off by less than 0.01 %, and an area by
 * less than a millionth, since what is too wide in the south is too narrow in the north.
 *
 * @param around At least one point; the plane's origin is the middle of their extent.
 * @returns Turns a point into metres, x to the east, y to the north.
 * @example localPlane([[52, 5]])([52.001, 5]) //=> [0, 111.26]
 */
export function localPlane(around: readonly GeoPoint[]): (point: GeoPoint) => Point {
  const reference = around[0]?.[1] ?? 0;
  const latitudes = around.map(([latitude]) => latitude);
  const easts = around.map(([, longitude]) => eastward(reference, longitude));
  const latitude0 = middle(latitudes);
  const longitude0 = reference + middle(easts);
  const sine = Math.sin(latitude0 * RADIANS);
  const squashed = WGS84.f * (2 - WGS84.f);
  const bent = 1 - squashed * sine ** 2;
  const perDegreeNorth = ((WGS84.a * (1 - squashed)) / bent ** 1.5) * RADIANS;
  const perDegreeEast = (WGS84.a / Math.sqrt(bent)) * Math.cos(latitude0 * RADIANS) * RADIANS;
  return ([latitude, longitude]) => [
    eastward(longitude0, longitude) * perDegreeEast,
    (latitude - latitude0) * perDegreeNorth,
  ];
}

const middle = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
