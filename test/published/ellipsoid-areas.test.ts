/**
 * Areas on the WGS84 ellipsoid.
 *
 * Snyder (1987), Map Projections: A Working Manual, USGS Professional Paper 1395, eq. 3-11 and 3-12: the area between two
 * parallels and two meridians, by the authalic q. A parallel bends away from the geodesic between its ends; over 0.001° that is
 * less than a billionth of the area.
 */
import { describe, expect, test } from 'vitest';
import { areaOf } from '../../src/index.ts';

const A = 6_378_137;
const F = 1 / 298.257223563;
const E2 = F * (2 - F);
const E = Math.sqrt(E2);
const RADIANS = Math.PI / 180;

/** Snyder's eq. 3-12. */
function q(latitude: number): number {
  const s = Math.sin(latitude * RADIANS);
  return (1 - E2) * (s / (1 - E2 * s * s) - Math.log((1 - E * s) / (1 + E * s)) / (2 * E));
}

/** Between parallels and meridians [m²]. */
const quadrangle = (south: number, west: number, north: number, east: number): number =>
  ((A * A) / 2) * (east - west) * RADIANS * (q(north) - q(south));

/** Anticlockwise, the first position again at the end, as GeoJSON has it. */
const ring = (south: number, west: number, north: number, east: number) => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
  [west, south],
];

describe('GeoJSON', () => {
  test.each([
    ['on the equator', 0, 10],
    ['in the north', 52, 5],
    ['in the south and west', -38.4, -72.6],
    ['across 180°', 38, 179.9999],
    ['far north', 69, 25],
  ])('%s', (_, south, west) => {
    const [north, east] = [south + 0.001, west + 0.001];
    const coordinates = [ring(south, west, north, east).map(([x = 0, y = 0]) => [x > 180 ? x - 360 : x, y])];
    const { value = Number.NaN } = areaOf({ geojson: { type: 'Polygon', coordinates } });
    expect(value / quadrangle(south, west, north, east)).toBeCloseTo(1, 7);
  });
  test('less its hole', () => {
    const coordinates = [ring(52, 5, 52.001, 5.001), ring(52.0004, 5.0004, 52.0006, 5.0006)];
    const { value = Number.NaN } = areaOf({ geojson: { type: 'Polygon', coordinates } });
    const expected = quadrangle(52, 5, 52.001, 5.001) - quadrangle(52.0004, 5.0004, 52.0006, 5.0006);
    expect(value / expected).toBeCloseTo(1, 7);
  });
});

test('points of a walk, whichever way round', () => {
  const points = ring(52, 5, 52.001, 5.001).map(([x = 0, y = 0]) => [y, x]);
  const exact = quadrangle(52, 5, 52.001, 5.001);
  for (const walk of [points, [...points].reverse()])
    expect((areaOf({ points: walk }).value ?? Number.NaN) / exact).toBeCloseTo(1, 7);
});
