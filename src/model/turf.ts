import * as v from 'valibot';
import type { Day } from '../base/day.ts';
import { day, map, maybe, whole, word } from './fields.ts';
import { atMostOneOf, standing } from './standing.ts';

/** Why grass stands still: too little water, or too much heat. */
export const DORMANCIES = ['drought', 'heat'] as const;
export type Dormancy = (typeof DORMANCIES)[number];

/** How the turf stands: young since a day, mown so often since, dormant. */
export interface Turf {
  readonly seeded?: Day;
  readonly sodded?: Day;
  /** Mowings since; those in the journal count as well. */
  readonly mowings?: number;
  readonly dormant?: Dormancy;
}

export const TurfSchema: v.GenericSchema<unknown, Turf> = v.pipe(
  map({ seeded: maybe(day), sodded: maybe(day), mowings: maybe(whole(0, 1000)), dormant: maybe(word(DORMANCIES)) }),
  standing('turf-both', atMostOneOf('seeded', 'sodded')),
);
