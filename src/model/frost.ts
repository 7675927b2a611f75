import * as v from 'valibot';
import type { Celsius, Days } from '../base/units.ts';
import { map, maybe, quantity, source, wait } from './fields.ts';
import { atMostOneOf, oneOf, standing } from './standing.ts';

/** The first or last frost of past years at a chance, and how far from it the day lies. */
export interface FrostRule {
  readonly which: 'first' | 'last';
  /** A day with a minimum at or below it is a frost. */
  readonly threshold: Celsius;
  readonly chance: number;
  /** Days after the frost; negative before it. */
  readonly shift: Days;
}

const chance = v.pipe(
  quantity('share'),
  v.gtValue(0, 'out-of-range:a chance above 0% and below 100%'),
  v.ltValue(1, 'out-of-range:a chance above 0% and below 100%'),
);

/** The first or last frost of past years, as it stands in a program. */
export const frost = v.pipe(
  map({
    first: maybe(quantity('temperature')),
    last: maybe(quantity('temperature')),
    chance,
    before: maybe(wait),
    after: maybe(wait),
    source: maybe(source),
  }),
  standing('trigger-frost', oneOf('first', 'last'), atMostOneOf('before', 'after')),
  v.transform(({ first, last, before, after, ...rest }) => {
    const which = first === undefined ? ('last' as const) : ('first' as const);
    const threshold = (first ?? last) as Celsius;
    return { kind: 'frost' as const, ...rest, which, threshold, shift: (after ?? 0) - (before ?? 0) };
  }),
);
