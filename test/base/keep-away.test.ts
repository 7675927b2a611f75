import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Point, signedArea } from '../../src/base/geometry.ts';
import { keepAway } from '../../src/base/keep-away.ts';
import { distanceTo, type Edge, edgesOf, isInside } from '../../src/base/rings.ts';
import { runs } from '../kit.ts';

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const [south, east, north, west] = edgesOf(square) as [Edge, Edge, Edge, Edge];
const sizeOf = (rings: readonly (readonly Point[])[]): number => rings.reduce((sum, ring) => sum + signedArea(ring), 0);

describe('what is left of a square of 10 m', () => {
  test.each<[string, Edge[], number, number]>([
    ['2 m from one side', [south], 2, 80],
    ['2 m from two sides that meet', [south, east], 2, 64],
    ['2 m from two sides that do not', [south, north], 2, 60],
    ['2 m from all of them', [south, east, north, west], 2, 36],
    ['all of it from one side', [south], 10, 0],
    ['5 m from all of them', [south, east, north, west], 5, 0],
  ])('%s', (_, edges, distance, left) => expect(sizeOf(keepAway([square], edges, distance))).toBeCloseTo(left, 6));
  test('is two pieces where the strip goes through its middle', () => {
    const middle: Edge = [
      [5, -5],
      [5, 15],
    ];
    const pieces = keepAway([square], [middle], 1);
    expect(pieces.map((ring) => Math.round(signedArea(ring)))).toEqual([40, 40]);
  });
  test('round a hole is a ring about a larger hole', () => {
    const hole: Point[] = [
      [4, 4],
      [4, 6],
      [6, 6],
      [6, 4],
    ];
    const [one, other, ...more] = keepAway([square, hole], edgesOf(hole), 1)
      .map(signedArea)
      .toSorted((a, b) => b - a);
    expect(more).toEqual([]);
    expect(one).toBeCloseTo(100, 6);
    // A square of 4 m with rounded corners is 12 + π, those of straight pieces up to 2 % of the radius larger.
    expect(-(other ?? 0)).toBeGreaterThan(4 + 8 + Math.PI);
    expect(-(other ?? 0)).toBeLessThan(4 + 8 + Math.PI * 1.04);
  });
});

test('along a crooked shore nothing nearer than the distance is left, and nothing else is lost', () => {
  const radii = fc.array(fc.double({ min: 4, max: 20, noNaN: true }), { minLength: 3, maxLength: 14 });
  fc.assert(
    fc.property(radii, fc.double({ min: 0.1, max: 6, noNaN: true }), fc.nat(), (all, distance, seed) => {
      const ring = all.map((r, i): Point => {
        const angle = (2 * Math.PI * i) / all.length;
        return [r * Math.cos(angle), r * Math.sin(angle)];
      });
      const shore = edgesOf(ring).filter((_, i) => (seed >> i) % 2 === 0 || i === 0);
      const kept = keepAway([ring], shore, distance);
      for (let x = -20; x <= 20; x += 1.37)
        for (let y = -20; y <= 20; y += 1.37) {
          const near = Math.min(...shore.map((edge) => distanceTo([x, y], edge)));
          const expected = isInside([x, y], [ring]);
          if (near < distance - 1e-4) expect(isInside([x, y], kept)).toBe(false);
          else if (near > distance * 1.021) expect(isInside([x, y], kept)).toBe(expected);
        }
    }),
    { numRuns: runs(150) },
  );
});
