import type { Point } from '../base/geometry.ts';
import { edgesOf } from '../base/rings.ts';
import type { AreaSketch, MeasuredLine, Numbered, PlacedPart } from '../model/area-sketch.ts';
import type { AreaShape, Shape } from '../model/shape.ts';
import { netArea, shapeArea } from './area.ts';
import { areaError } from './area-error.ts';
import { outlineOf, setbackArea, wholeOutline } from './outline.ts';
import { type Ring, ringOf } from './ring.ts';

/** What a drawing of an area shows. */
export function sketchOf(id: string, area: AreaShape): AreaSketch {
  const { shape, less, setback } = area;
  const ring = ringOf(shape);
  const whole = wholeOutline(area);
  const kept = outlineOf(area);
  const bare = ring?.holes.length ?? 0;
  const unplaced = less.filter((part) => wholeOutline({ shape, less: [part] })?.holes[bare] === undefined);
  return {
    id,
    kind: shape.kind,
    size: netArea(area),
    error: areaError(area),
    measured: whole ? [whole.outer, ...whole.holes] : [],
    ground: kept ? [kept.outer, ...kept.holes] : [],
    lines: ring ? linesOf(shape, ring) : [],
    sides: ring ? sidesOf(ring) : [],
    holes: (whole?.holes ?? []).map((hole, i) => ({ number: i + 1, at: middleOf(hole) })),
    parts: partsOf(area, bare),
    setback: setback ? { width: setback.width, size: setbackArea(area) } : null,
    unplaced: { count: unplaced.length, size: unplaced.reduce((sum, part) => sum + shapeArea(part.shape), 0) },
    north: shape.kind === 'geographic',
    guessed: shape.kind === 'triangle' || shape.kind === 'trapezoid',
  };
}

/** The parts that have a place, their holes counted on from those of the area's own shape. */
function partsOf({ shape, less }: AreaShape, bare: number): PlacedPart[] {
  const drawn = less.filter((part) => wholeOutline({ shape, less: [part] })?.holes[bare] !== undefined);
  return drawn.flatMap(({ shape: { kind, ...measures }, at }, i) => {
    const lengths = 'radius' in measures ? [measures.radius] : 'axes' in measures ? measures.axes : sidesIn(measures);
    return at ? [{ number: bare + i + 1, kind, lengths, at }] : [];
  });
}

/** The sides of a part that they tell whole. */
const sidesIn = (measures: object): readonly number[] =>
  'sides' in measures && !('height' in measures) ? (measures.sides as readonly number[]) : [];

/** The middle of a ring's extent. */
function middleOf(ring: readonly Point[]): Point {
  const of = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [of(ring.map(([x]) => x)), of(ring.map(([, y]) => y))];
}

/** Each side's number at the middle of the piece in its middle. */
function sidesOf({ corners, sides }: Ring): Numbered[] {
  const edges = edgesOf(corners);
  return [...new Set(sides)].map((number) => {
    const own = edges.filter((_, i) => sides[i] === number);
    return { number, at: middleOf(own[Math.floor(own.length / 2)] ?? []) };
  });
}

const line = (from: Point, to: Point): MeasuredLine => ({
  from,
  to,
  length: Math.hypot(to[0] - from[0], to[1] - from[1]),
});

/** The lengths that a shape was measured by; of one by its corners, its edges. */
function linesOf(shape: Shape, { corners }: Ring): MeasuredLine[] {
  const middle: Point = [0, 0];
  switch (shape.kind) {
    case 'circle':
      return [line(middle, [shape.radius, 0])];
    case 'ellipse': {
      const [across, up] = [shape.axes[0] / 2, shape.axes[1] / 2];
      return [line([-across, 0], [across, 0]), line([0, -up], [0, up])];
    }
    case 'triangle':
      return [line([0, 0], [shape.base, 0]), line([shape.base / 2, 0], [shape.base / 2, shape.height])];
    case 'trapezoid': {
      const [base, top] = shape.sides;
      const [left, right] = [(base - top) / 2, (base + top) / 2];
      return [
        line([0, 0], [base, 0]),
        line([left, shape.height], [right, shape.height]),
        line([base / 2, 0], [base / 2, shape.height]),
      ];
    }
    case 'rectangle':
      return edgesOf(corners)
        .slice(0, 2)
        .map(([from, to]) => line(from, to));
    case 'offsets': {
      const widths = [shape.ends[0], ...shape.widths, shape.ends[1]];
      const across = widths.map((width, i) => line([i * shape.every, 0], [i * shape.every, width]));
      return [line([0, 0], [(shape.widths.length + 1) * shape.every, 0]), ...across.filter(({ length }) => length > 0)];
    }
    case 'radii':
      return shape.radii.map((radius, i) => {
        const angle = (2 * Math.PI * i) / shape.radii.length;
        return line(middle, [radius * Math.cos(angle), radius * Math.sin(angle)]);
      });
    case 'sides':
    case 'polygon':
    case 'geographic':
      return edgesOf(corners).map(([from, to]) => line(from, to));
    case 'measured':
      return [];
  }
}
