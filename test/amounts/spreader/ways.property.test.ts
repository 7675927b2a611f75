/** The two ways over an area: whatever its outline, they lie in it, cover it, and turn as little as any direction lets them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaWalk } from '../../../src/amounts/spreader/area-walk.ts';
import { edgeWay } from '../../../src/amounts/spreader/edge-way.ts';
import { linesAlong } from '../../../src/amounts/spreader/lines.ts';
import { edgesOf } from '../../../src/amounts/spreader/plane.ts';
import { type Point, polygonArea } from '../../../src/base/geometry.ts';
import type { AreaWalk, HalfWalk } from '../../../src/model/walk.ts';
import { runs } from '../../kit.ts';

const SWATH = 3;
const passes = fc.constantFrom('crossing' as const, 'parallel' as const);

/** A star-shaped outline of 5 to 12 corners, at least four swaths across. */
const outlines = fc.array(fc.double({ min: 8, max: 30, noNaN: true }), { minLength: 5, maxLength: 12 }).map((radii) =>
  radii.map((radius, i): Point => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  }),
);

const walkOf = (outer: readonly Point[], kind: 'crossing' | 'parallel', holes: readonly (readonly Point[])[] = []) => {
  const walk = areaWalk({ outer, holes }, polygonArea(outer), SWATH, kind);
  if (!walk) throw new Error('no walk');
  return walk;
};

type Piece = readonly [Point, Point];
const openPieces = ({ round, pieces }: HalfWalk): Piece[] => [
  ...round.flatMap((ring) => ring.map((from, i): Piece => [from, ring[(i + 1) % ring.length]!])),
  ...pieces,
];

/** Even-odd, by another road than the code: angles are not needed, one ray is. */
function inside([x, y]: Point, ring: readonly Point[]): boolean {
  let odd = false;
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  }
  return odd;
}

function distanceTo([x, y]: Point, [[ax, ay], [bx, by]]: Piece): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

const lengthOf = ([[ax, ay], [bx, by]]: Piece) => Math.hypot(bx - ax, by - ay);

/** Points of a grid inside an area, and those of them that a way leaves out. */
function missedPoints({ outer, holes }: AreaWalk, half: HalfWalk, apart: number) {
  const way = openPieces(half);
  const [xs, ys] = [outer.map(([x]) => x), outer.map(([, y]) => y)];
  let [all, missed] = [0, 0];
  for (let x = Math.min(...xs) + apart / 2; x < Math.max(...xs); x += apart)
    for (let y = Math.min(...ys) + apart / 2; y < Math.max(...ys); y += apart) {
      if (!inside([x, y], outer) || holes.some((hole) => inside([x, y], hole))) continue;
      all++;
      if (!way.some((piece) => distanceTo([x, y], piece) <= SWATH / 2 + 1e-6)) missed++;
    }
  return { all, missed };
}

describe('the two ways over any outline', () => {
  test('leave out no more than they say', () => {
    fc.assert(
      fc.property(outlines, passes, (outer, kind) => {
        const walk = walkOf(outer, kind);
        for (const half of walk.halves) {
          const { all, missed } = missedPoints(walk, half, 0.7);
          expect((missed / all) * polygonArea(outer)).toBeLessThanOrEqual(walk.missed + 0.01 * polygonArea(outer) + 1);
        }
      }),
      { numRuns: runs(60) },
    );
  });
  test('leave out corners alone: less than a twelfth', () => {
    fc.assert(
      fc.property(outlines, passes, (outer, kind) => {
        expect(walkOf(outer, kind).missed).toBeLessThan(polygonArea(outer) / 12);
      }),
      { numRuns: runs(200) },
    );
  });
  test('have their middle on the grass', () => {
    fc.assert(
      fc.property(outlines, passes, (outer, kind) => {
        for (const half of walkOf(outer, kind).halves)
          for (const piece of openPieces(half)) {
            const [[ax, ay], [bx, by]] = piece;
            if (lengthOf(piece) < 1e-6) continue;
            expect(inside([(ax + bx) / 2, (ay + by) / 2], outer)).toBe(true);
          }
      }),
      { numRuns: runs(200) },
    );
  });
  test('go round half a swath inside the edge', () => {
    fc.assert(
      fc.property(outlines, passes, (outer, kind) => {
        const edges = outer.map((from, i): Piece => [from, outer[(i + 1) % outer.length]!]);
        for (const { round } of walkOf(outer, kind).halves)
          for (const point of round.flat()) {
            const nearest = Math.min(...edges.map((edge) => distanceTo(point, edge)));
            expect(Math.abs(nearest - SWATH / 2)).toBeLessThan(SWATH / 20);
          }
      }),
      { numRuns: runs(200) },
    );
  });
  test('are as long as what is walked open and shut', () => {
    fc.assert(
      fc.property(outlines, passes, (outer, kind) => {
        for (const half of walkOf(outer, kind).halves) {
          const open = openPieces(half).reduce((sum, piece) => sum + lengthOf(piece), 0);
          expect(half.open).toBeCloseTo(open, 6);
          expect(half.distance).toBeGreaterThanOrEqual(half.open - 1e-9);
          expect(half.apart ?? 0).toBeLessThanOrEqual(SWATH + 1e-9);
        }
      }),
      { numRuns: runs(200) },
    );
  });
});

const rectangle = (width: number, depth: number): Point[] => [
  [0, 0],
  [width, 0],
  [width, depth],
  [0, depth],
];

describe('the direction', () => {
  test.each([
    [30, 15, [3, 8]],
    [15, 30, [3, 8]],
  ])('of a rectangle of %i × %i m is along its longer side first', (width, depth, lines) => {
    expect(walkOf(rectangle(width, depth), 'crossing').halves.map((half) => half.lines)).toEqual(lines);
  });
  test('has the fewest turns of all that are looked at, in 19 of 20 outlines', () => {
    // A share asks for as many as it was set for.
    const sampled = fc.sample(outlines, { numRuns: 100, seed: 5 });
    const beaten = sampled.filter((outer) => {
      const chosen = walkOf(outer, 'parallel').halves.reduce((sum, { pieces }) => sum + pieces.length, 0);
      const edges = edgesOf(outer as Point[]);
      const round = edgeWay({ outer, holes: [] }, SWATH / 2, SWATH).flatMap(edgesOf);
      const pieces = (angle: number, shift: number) =>
        linesAlong(edges, round, SWATH, angle, shift).lines.reduce((sum, line) => sum + line.pieces.length, 0);
      const others = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 24).map((a) => pieces(a, 0) + pieces(a, 0.5));
      return Math.min(...others) < chosen;
    });
    expect(beaten.length).toBeLessThanOrEqual(sampled.length / 20);
  });
  test('follows a lawn that lies askew', () => {
    const angle = 0.4;
    const turned = rectangle(30, 15).map(
      ([x, y]): Point => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)],
    );
    const [first] = walkOf(turned, 'parallel').halves;
    const [[ax, ay], [bx, by]] = first.pieces[0]!;
    expect(Math.abs(Math.tan(Math.atan2(by - ay, bx - ax) - angle))).toBeLessThan(1e-6);
  });
});

describe('an area that is narrow, holed, without outline or without end', () => {
  test('narrower than two swaths it is walked along its middle, twice', () => {
    const { halves, missed } = walkOf(rectangle(30, 2.5), 'crossing');
    expect(halves.map(({ direction, lines, round }) => [direction, lines, round.length])).toEqual([
      ['lengthwise', 1, 0],
      ['again', 1, 0],
    ]);
    expect(missed).toBeLessThan(0.5);
  });
  test('a bed in the middle is gone round, and no line crosses it', () => {
    const bed = rectangle(6, 6).map(([x, y]): Point => [x + 12, y + 12]);
    const walk = walkOf(rectangle(30, 30), 'crossing', [bed]);
    for (const half of walk.halves) {
      expect(half.round).toHaveLength(2);
      // A square of 27 m inside the edge; four sides of 6 m and a whole turn of 1.5 m outside the bed.
      const round = openPieces({ ...half, pieces: [] }).reduce((sum, piece) => sum + lengthOf(piece), 0);
      expect(Math.abs(round / (4 * 27 + 4 * 6 + Math.PI * SWATH) - 1)).toBeLessThan(0.001);
      for (const [[ax, ay], [bx, by]] of half.pieces)
        for (const share of [0.1, 0.5, 0.9])
          expect(inside([ax + share * (bx - ax), ay + share * (by - ay)], bed)).toBe(false);
    }
  });
  test('known by its size alone a square stands in', () => {
    const walk = areaWalk(null, 400, SWATH, 'crossing')!;
    expect([walk.square, polygonArea(walk.outer)]).toEqual([true, 400]);
  });
  test('of more than a thousand lines there is no way', () => {
    expect(areaWalk(null, 1e8, SWATH, 'crossing')).toBeNull();
  });
});
