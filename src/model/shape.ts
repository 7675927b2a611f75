import * as v from 'valibot';
import type { Point } from '../base/geometry.ts';
import { factorOf, type Metres } from '../base/units.ts';
import { choosing, keysOf, map, maybe, quantity, whole } from './fields.ts';
import { geographicKinds } from './shapes/geographic.ts';
import type { Form, Kind, Shape } from './shapes/kind.ts';
import { LONGEST, length, MOST_CORNERS } from './shapes/lengths.ts';
import { seriesKinds } from './shapes/series.ts';
import { simpleKinds } from './shapes/simple.ts';
import { someOf, standing } from './standing.ts';

export type { GeoPolygon, Offsets, Shape } from './shapes/kind.ts';

/** A shape with its stated error: the share by which each length may be off. */
export interface Measured {
  readonly shape: Shape;
  readonly error?: number;
}

/** A part taken off an area; with a place where somebody measured that as well. */
export interface Part extends Measured {
  /** Where it begins, from where the area begins: its first corner, or its middle where it has no corners [m]. */
  readonly at?: Point;
}

/** A strip that stays untreated along some edges of an area, or round some of its holes. */
export interface Setback {
  /** Edges and holes, counted from 1. */
  readonly edges: readonly number[];
  readonly holes: readonly number[];
  readonly width: Metres;
}

/** A shape with the parts taken off it. */
export interface AreaShape extends Measured {
  readonly less: readonly Part[];
  readonly setback?: Setback;
}

const kinds: Readonly<Record<string, Kind>> = { ...simpleKinds, ...seriesKinds, ...geographicKinds };

const distance = v.pipe(
  quantity('length'),
  v.minValue(-LONGEST, 'out-of-range:a length of at most 10 km'),
  v.maxValue(LONGEST, 'out-of-range:a length of at most 10 km'),
);
/** The place of a part in its area. */
export const place = v.strictTuple([distance, distance]);

const one = v.pipe(
  whole(1, MOST_CORNERS),
  v.transform((number) => [number]),
);
const several = v.pipe(v.array(whole(1, MOST_CORNERS)), v.minLength(1, 'wrong-type:a list of at least one number'));
const oneOrSeveral = choosing(
  (input): v.GenericSchema<unknown, number[]> => (Array.isArray(input) ? several : one),
  () => [one, several],
);

export const setback = v.pipe(
  map({ 'from-edge': maybe(oneOrSeveral), 'from-hole': maybe(oneOrSeveral), width: length }),
  standing('missing-key:from-edge', someOf('from-edge', 'from-hole')),
  v.transform(({ fromEdge = [], fromHole = [], width }): Setback => ({ edges: fromEdge, holes: fromHole, width })),
);

/** Keys beside a shape that are none themselves. */
const BESIDE = ['in', 'error', 'point-error'];

/** What may stand beside a shape that belongs to its measuring. */
interface Written {
  readonly in?: string;
  readonly pointError?: Metres;
}

/** A shape with other keys beside it: a map with exactly one shape key. @param name What it is called in a JSON Schema. */
export function shaped<E extends v.ObjectEntries>(
  beside: E,
  name: string,
): v.GenericSchema<unknown, Measured & Record<string, unknown>> {
  const withForm = (name: string, form: Form) => map({ ...beside, ...form.beside, [name]: form.schema });
  const chosen = (input: unknown) => {
    const names = keysOf(input);
    const [name, second] = names.filter((key) => Object.hasOwn(kinds, key));
    if (name === undefined || second !== undefined) {
      const other = names.filter((key) => !Object.hasOwn(beside, key) && !BESIDE.includes(key));
      return v.custom<never>(() => false, `area-shape:${other.join(', ') || 'none'}:${Object.keys(kinds).join('|')}`);
    }
    const { forms, pick, build } = kinds[name] as Kind;
    const form = forms[pick?.((input as Record<string, unknown>)[name]) ?? 0] as Form;
    return v.pipe(
      withForm(name, form),
      v.transform((value) => {
        const { in: unit = 'm', pointError, [name]: inner, ...rest } = value as Record<string, unknown> & Written;
        const shape = build(inner as never, { unit: factorOf(unit), ...(pointError !== undefined && { pointError }) });
        return { ...rest, shape };
      }),
    );
  };
  return choosing(
    chosen,
    () => Object.entries(kinds).flatMap(([key, { forms }]) => forms.map((form) => withForm(key, form))),
    name,
  );
}
