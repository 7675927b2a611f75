import * as v from 'valibot';
import { above0, choosing, map, maybe } from './fields.ts';
import { needs, oneOf, standing } from './standing.ts';

const sides = v.pipe(
  v.strictTuple([above0('length'), above0('length')]),
  v.transform(([length, width]) => length * width),
);
const size = above0('area');

/** A measured course: its two sides, or its area. Either becomes square metres. */
const course = choosing(
  (input): typeof sides | typeof size => (Array.isArray(input) ? sides : size),
  () => [sides, size],
);

/** Spray a course, time it, then catch for the same time: the 1/128-acre method, with a course of any size. */
const catchTest = v.pipe(
  map({ course, caught: above0('volume'), time: maybe(above0('duration')), 'caught-in': maybe(above0('duration')) }),
  standing('sprayer-caught-in', needs('caught-in', 'time')),
);

/** Catch one nozzle, and time a run: the 5940 method. */
const nozzleTest = map({
  caught: above0('volume'),
  in: above0('duration'),
  spacing: above0('length'),
  run: above0('length'),
  time: above0('duration'),
});

/** A sprayer: what its tank holds, and how much it puts down, known or measured in one of two ways. */
export const SprayerSchema = v.pipe(
  map({
    tank: above0('volume'),
    output: maybe(above0('volume per area')),
    'catch-test': maybe(catchTest),
    'nozzle-test': maybe(nozzleTest),
  }),
  standing('sprayer-output', oneOf('output', 'catch-test', 'nozzle-test')),
);
export type Sprayer = v.InferOutput<typeof SprayerSchema>;
export type CatchTest = v.InferOutput<typeof catchTest>;
export type NozzleTest = v.InferOutput<typeof nozzleTest>;
