import * as v from 'valibot';
import { crossingEdges, type Point, polygonArea } from '../../base/geometry.ts';
import { factorOf } from '../../base/units.ts';
import { map, maybe } from '../fields.ts';
import type { Kind } from './kind.ts';
import { MOST_CORNERS, numberFrom, unitWord } from './lengths.ts';
import { besideLengths } from './simple.ts';

/** Whether no three corners span a triangle. The net area does not tell: the two halves of a bow tie cancel. */
export const onOneLine = ([first, ...others]: readonly Point[]): boolean =>
  others.every((corner, i) => polygonArea([first ?? corner, corner, others[i + 1] ?? corner]) === 0);

const coordinate = numberFrom(-1e5);

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

const width = numberFrom(0);
const MOST_WIDTHS = 500;
const offsets = {
  every: numberFrom(0.01),
  widths: v.pipe(
    v.array(width),
    v.minLength(1, 'wrong-type:a list of at least one width'),
    v.maxLength(MOST_WIDTHS, `out-of-range:at most ${MOST_WIDTHS} widths`),
  ),
  ends: maybe(v.strictTuple([width, width])),
};

const MOST_RADII = 360;
const radii = v.pipe(
  v.array(numberFrom(0.01)),
  v.minLength(4, 'wrong-type:a list of at least four radii'),
  v.maxLength(MOST_RADII, `out-of-range:at most ${MOST_RADII} radii`),
);

const besideNumbers = { ...besideLengths, in: unitWord };
const { error } = besideLengths;

interface WrittenOffsets {
  readonly every: number;
  readonly widths: readonly number[];
  readonly ends?: readonly [number, number];
  readonly in?: string;
}

/** Shapes by many numbers, whose unit stands beside them. */
export const seriesKinds: Readonly<Record<string, Kind>> = {
  polygon: {
    forms: [{ schema: corners, beside: besideNumbers }],
    build: (points: Point[], { unit }) => ({
      kind: 'polygon',
      corners: points.map(([x, y]): Point => [x * unit, y * unit]),
    }),
  },
  offsets: {
    // The unit stands inside or beside; whoever writes it in both places has one too many.
    forms: [
      { schema: map({ ...offsets, in: unitWord }), beside: { error } },
      { schema: map(offsets), beside: besideNumbers },
    ],
    pick: (value) => (value !== null && typeof value === 'object' && 'in' in value ? 0 : 1),
    build: ({ every, widths, ends = [0, 0], in: inside }: WrittenOffsets, beside) => {
      const unit = inside === undefined ? beside.unit : factorOf(inside);
      return {
        kind: 'offsets',
        every: every * unit,
        widths: widths.map((one) => one * unit),
        ends: [ends[0] * unit, ends[1] * unit],
      };
    },
  },
  radii: {
    forms: [{ schema: radii, beside: besideNumbers }],
    build: (values: number[], { unit }) => ({ kind: 'radii', radii: values.map((one) => one * unit) }),
  },
};
