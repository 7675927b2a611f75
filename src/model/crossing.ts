import * as v from 'valibot';
import type { MonthDay } from '../base/day.ts';
import type { Days } from '../base/units.ts';
import { map, maybe, monthDay, number, positive, quantity, source, word } from './fields.ts';
import { GRASS_SEASONS } from './grass.ts';
import { soilDepth } from './heat.ts';
import { oneOf, standing } from './standing.ts';

/** Which way a signal has to cross a threshold. */
export type Direction = 'rises' | 'falls';

/** A condition on the trailing mean of a signal, held for some days. */
export interface Crossing {
  readonly mean: Days;
  readonly direction: Direction;
  /** In the signal's unit: °C, a growth potential of 0 to 1, hours of sun above the horizon. */
  readonly threshold: number;
  readonly holds: Days;
  /** The day to begin looking; the season's start when left out. */
  readonly from?: MonthDay;
}

const days = v.pipe(
  positive('duration'),
  v.minValue(1, 'out-of-range:at least 1 d'),
  v.maxValue(366, 'out-of-range:at most 366 d'),
  v.integer('out-of-range:whole days'),
);

/** What a crossing of a signal is written with. */
const crossingFields = <S extends v.GenericSchema<unknown, number>>(threshold: S) => ({
  mean: maybe(days, '1 d'),
  'rises-to': maybe(threshold),
  'falls-to': maybe(threshold),
  holds: maybe(days, '1 d'),
  from: maybe(monthDay),
  source: maybe(source),
});

interface Threshold {
  readonly risesTo?: number;
  readonly fallsTo?: number;
}

/** Exactly one direction has to stand. */
const oneDirection = <T extends Threshold>() => standing<T>('trigger-direction', oneOf('rises-to', 'falls-to'));

/** Turns `rises-to` or `falls-to` into a direction and a threshold. */
const directed = <T extends Threshold>() =>
  v.transform<T, Omit<T, keyof Threshold> & { direction: Direction; threshold: number }>(
    ({ risesTo, fallsTo, ...rest }) => ({
      ...rest,
      direction: risesTo === undefined ? 'falls' : 'rises',
      threshold: (risesTo ?? fallsTo) as number,
    }),
  );

/** Mean soil temperature at a depth. */
export const soil = v.pipe(
  map({ depth: soilDepth, ...crossingFields(quantity('temperature')) }),
  oneDirection(),
  directed(),
  v.transform((value) => ({ kind: 'soil' as const, ...value })),
);

/** A day's lowest, mean or highest air temperature. */
export const air = v.pipe(
  map({ stat: maybe(word(['min', 'mean', 'max']), 'mean'), ...crossingFields(quantity('temperature')) }),
  oneDirection(),
  directed(),
  v.transform((value) => ({ kind: 'air' as const, ...value })),
);

/** Temperature growth potential of a kind of grass, 0 to 1. */
export const growth = v.pipe(
  map({ grass: word(GRASS_SEASONS), ...crossingFields(number(0, 1)) }),
  oneDirection(),
  directed(),
  v.transform((value) => ({ kind: 'growth' as const, ...value })),
);

/** Hours of a day in days, as every duration. */
const hours = v.pipe(
  positive('duration'),
  v.maxValue(1, 'out-of-range:at most 24 h'),
  v.transform((days) => 24 * days),
);

/** Hours with the sun above the horizon. */
export const dayLength = v.pipe(
  map({ 'rises-to': maybe(hours), 'falls-to': maybe(hours), from: maybe(monthDay), source: maybe(source) }),
  oneDirection(),
  directed(),
  v.transform((value) => ({ kind: 'day-length' as const, mean: 1, holds: 1, ...value })),
);
