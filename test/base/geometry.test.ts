import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crossingEdges, type Point, polygonArea } from '../../src/base/geometry.ts';

describe('crossingEdges', () => {
  test.each<[string, Point[], { first: number; second: number } | null]>([
    [
      'a square',
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
      null,
    ],
    [
      'a triangle',
      [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
      null,
    ],
    [
      'an L',
      [
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 2],
        [2, 4],
        [0, 4],
      ],
      null,
    ],
    [
      'an arrow head, its notch inward',
      [
        [0, 0],
        [4, 4],
        [0, 2],
        [-4, 4],
      ],
      null,
    ],
    [
      'corners in the middle of a side',
      [
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ],
      null,
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ],
      { first: 1, second: 3 },
    ],
    [
      'a bow tie that the closing edge crosses',
      [
        [0, 0],
        [4, 0],
        [0, 4],
        [4, 4],
      ],
      { first: 2, second: 4 },
    ],
    [
      'a corner that touches a far side',
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
      { first: 1, second: 3 },
    ],
    [
      'a corner that touches a far corner',
      [
        [0, 0],
        [2, 2],
        [4, 0],
        [4, 4],
        [2, 2],
        [0, 4],
      ],
      { first: 1, second: 4 },
    ],
    [
      'an edge folded back on the one before',
      [
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 2],
      ],
      { first: 1, second: 2 },
    ],
    [
      'a spike',
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [8, 8],
        [4, 4],
        [0, 4],
      ],
      { first: 2, second: 4 },
    ],
    [
      'the closing edge in line with the first',
      [
        [2, 0],
        [4, 0],
        [4, 4],
        [0, 0],
      ],
      null,
    ],
    [
      'the closing edge along the first',
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
      ],
      { first: 1, second: 3 },
    ],
    [
      'sides on one another',
      [
        [0, 0],
        [4, 0],
        [4, 2],
        [3, 0],
        [1, 0],
        [0, 2],
      ],
      { first: 1, second: 3 },
    ],
  ])('%s', (_, corners, expected) => {
    expect(crossingEdges(corners)).toEqual(expected);
  });
  test('a star of five points crosses, a ring of the same points does not', () => {
    const on = (i: number): Point => [Math.cos((2 * Math.PI * i) / 5), Math.sin((2 * Math.PI * i) / 5)];
    expect(crossingEdges([0, 2, 4, 1, 3].map(on))).not.toBeNull();
    expect(crossingEdges([0, 1, 2, 3, 4].map(on))).toBeNull();
  });
  test('corners around one point, by rising angle, never cross', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 3, maxLength: 24 }), (radii) => {
        const ring = radii.map((r, i): Point => {
          const angle = (2 * Math.PI * i) / radii.length;
          return [r * Math.cos(angle), r * Math.sin(angle)];
        });
        expect(crossingEdges(ring)).toBeNull();
      }),
    );
  });
});

describe('polygonArea', () => {
  const square: Point[] = [
    [0, 0],
    [3, 0],
    [3, 3],
    [0, 3],
  ];

  test('of a square of 3 m is 9 m²', () => expect(polygonArea(square)).toBe(9));
  test('is the same the other way round', () => expect(polygonArea([...square].reverse())).toBe(9));
  test('is the same with the first corner again at the end', () => {
    expect(polygonArea([...square, [0, 0]])).toBe(9);
  });
  test('of a triangle with legs 3 and 4 is 6', () =>
    expect(
      polygonArea([
        [0, 0],
        [4, 0],
        [0, 3],
      ]),
    ).toBe(6));
  test('of corners on one line is 0', () =>
    expect(
      polygonArea([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toBe(0));
  test('of no corners is 0', () => expect(polygonArea([])).toBe(0));
  test('is the sum of the triangles around a point inside', () => {
    const radii = fc.array(fc.double({ min: 1, max: 50, noNaN: true }), { minLength: 3, maxLength: 16 });
    fc.assert(
      fc.property(radii, fc.integer({ min: -100, max: 100 }), (all, shift) => {
        const turn = (2 * Math.PI) / all.length;
        const ring = all.map((r, i): Point => [shift + r * Math.cos(i * turn), r * Math.sin(i * turn)]);
        const triangles = all.map((r, i) => (r * (all[(i + 1) % all.length] ?? 0) * Math.sin(turn)) / 2);
        expect(polygonArea(ring)).toBeCloseTo(
          triangles.reduce((sum, area) => sum + area, 0),
          6,
        );
      }),
    );
  });
});
