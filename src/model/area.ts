import * as v from 'valibot';
import { byId, maybe, word } from './fields.ts';
import { GRASSES, type Grass } from './grass.ts';
import { programRef } from './program-ref.ts';
import { type AreaShape, type Part, place, setback, shaped } from './shape.ts';
import { type Turf, TurfSchema } from './turf.ts';

/** A measured area of a lawn, with what is other there than on the rest of the lawn. */
export interface Area extends AreaShape {
  readonly grass?: Grass;
  /** A program of its own. */
  readonly program?: string;
  readonly facts?: Readonly<Record<string, boolean>>;
  readonly turf?: Turf;
}

/** A measured area as it stands in a lawn file: one shape and, if need be, parts taken off it. */
export const AreaSchema: v.GenericSchema<unknown, Area> = v.pipe(
  shaped(
    {
      less: maybe(v.array(shaped({ at: maybe(place) }, 'part'))),
      setback: maybe(setback),
      grass: maybe(word(GRASSES)),
      program: maybe(programRef),
      facts: maybe(byId(v.boolean())),
      turf: maybe(TurfSchema),
    },
    'area',
  ),
  v.transform(({ less, ...area }): Area => ({ ...area, less: (less ?? []) as Part[] })),
);
