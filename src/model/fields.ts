/**
 * The building blocks of every file kind: schemas that check a plain value and turn it into the model's form.
 * They are the one source of types and of validation. A schema reports a fault by a code of the problem table
 * (`message`), with what was expected beside it; `read` turns that into a problem with its place.
 */
import * as v from 'valibot';
import { type Day, type MonthDay, parseDay, parseMonthDay } from '../base/day.ts';
import { expectedOf, type Measure, parseQuantity } from '../base/quantity.ts';
import type { Sign } from '../base/quantity-pattern.ts';
import { camel } from './standing.ts';

export type Camel<S> = S extends `${infer A}-${infer B}` ? `${A}${Capitalize<Camel<B>>}` : S;
type CamelKeys<T> = { readonly [K in keyof T as Camel<K>]: T[K] };

const isMap = (input: unknown): boolean => input !== null && typeof input === 'object' && !Array.isArray(input);

/** Any map. It stands before every look at keys, since a list has keys too. */
export const anyMap = v.custom<Readonly<Record<string, unknown>>>(isMap, 'wrong-type:a map');

/** The keys of a map, to choose a schema by; a list is named as such. */
export const keysOf = (input: unknown): string[] =>
  isMap(input) ? Object.keys(input as object) : Array.isArray(input) ? ['a list'] : [];

/** A map with exactly these keys; any other key is a fault. Keys of the file are kebab-case, those of the model camelCase. */
export function map<E extends v.ObjectEntries>(entries: E) {
  const allowed = Object.keys(entries).join('|');
  const refused = v.custom<never>(() => false, `unknown-key:${allowed}`);
  return v.pipe(
    anyMap,
    v.objectWithRest(entries, refused),
    v.transform((value) => {
      const renamed = Object.entries(value).map(([key, inner]) => [camel(key), inner]);
      return Object.fromEntries(renamed) as CamelKeys<v.InferOutput<v.ObjectSchema<E, undefined>>>;
    }),
  );
}

/** What a JSON Schema tells of a schema that it could not see into. */
export interface Told {
  /** The forms that a value may have, where the schema chooses one by what stands there; by their name once for all. */
  readonly forms?: () => readonly v.GenericSchema[];
  readonly name?: string;
  readonly quantity?: readonly Measure[];
  readonly sign?: Sign;
  readonly pattern?: string;
}
const told = <T>(about: Told) => v.metadata<T, Record<string, unknown>>({ ...about });

/** A schema that is chosen by what stands there. @param forms Every form that it may choose. */
export const choosing = <S extends v.GenericSchema>(
  choose: (input: unknown) => S,
  forms: () => readonly v.GenericSchema[],
  name?: string,
) => v.pipe(v.lazy(choose), told({ forms, ...(name !== undefined && { name }) }));

/** A key that may be left out. */
export const maybe = v.exactOptional;

/** A quantity as text with its unit, turned into SI. */
export const quantity = (measure: Measure) =>
  v.pipe(
    v.string(`wrong-type:${expectedOf(measure)}`),
    v.rawTransform<string, number>(({ dataset, addIssue, NEVER }) => {
      const result = parseQuantity(dataset.value, measure);
      if ('value' in result) return result.value;
      addIssue({ message: `quantity:${JSON.stringify(result)}`, expected: expectedOf(measure) });
      return NEVER;
    }),
    told({ quantity: [measure] }),
  );

/** A quantity that may not be negative. */
export const positive = (measure: Measure) =>
  v.pipe(quantity(measure), v.minValue(0, `out-of-range:${expectedOf(measure)}, not negative`));

/** A quantity above zero. */
export const above0 = (measure: Measure) =>
  v.pipe(quantity(measure), v.gtValue(0, `out-of-range:${expectedOf(measure)}, above 0`));

/** A temperature or degree-day threshold that keeps the scale it was written in. */
export const scaledTemperature = v.pipe(
  v.string(`wrong-type:${expectedOf('temperature')}`),
  v.rawTransform<string, { readonly celsius: number; readonly degree: number }>(({ dataset, addIssue, NEVER }) => {
    const result = parseQuantity(dataset.value, 'temperature');
    if ('value' in result) return { celsius: result.value, degree: /F$/.test(result.unit) ? 5 / 9 : 1 };
    addIssue({ message: `quantity:${JSON.stringify(result)}`, expected: expectedOf('temperature') });
    return NEVER;
  }),
  told({ quantity: ['temperature'] }),
);

/** A text that is read into something else, or is a fault of this code. @param pattern Its form, for a JSON Schema. */
export const parsed = <T>(code: string, expected: string, pattern: string, parse: (text: string) => T | null) =>
  v.pipe(
    v.string(`wrong-type:${expected}`),
    v.rawTransform<string, T>(({ dataset, addIssue, NEVER }) => {
      const value = parse(dataset.value);
      if (value !== null) return value;
      addIssue({ message: code, expected });
      return NEVER;
    }),
    told({ pattern }),
  );

/** A civil day, `YYYY-MM-DD`. */
export const day = parsed<Day>('not-a-date', 'a day such as 2027-04-03', '^\\d{4}-\\d{2}-\\d{2}$', parseDay);

/** A day of any year, `MM-DD`. */
export const monthDay = parsed<MonthDay>(
  'not-a-date',
  'a month and day such as 04-03',
  '^\\d{2}-\\d{2}$',
  parseMonthDay,
);

/** A wall-clock time `HH:MM` in minutes after midnight. */
export const clock = parsed<number>('out-of-range', 'a time such as "08:00"', '^([01]\\d|2[0-3]):[0-5]\\d$', (text) => {
  const match = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  return match ? Number(match[1]) * 60 + Number(match[2]) : null;
});

/** The time of so many minutes after midnight. @example formatClock(490) //=> '08:10' */
export const formatClock = (minutes: number): string =>
  [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');

/** Free text of a person; never empty, on as many lines as wanted, without controls that could steer a terminal. */
export const text = v.pipe(
  v.string(),
  v.nonEmpty('wrong-type:a text'),
  v.maxLength(2000, 'out-of-range:at most 2000 characters'),
);

/** An identifier: lower-case letters, digits and hyphens. */
export const id = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'wrong-type:an id in lower-case letters, digits and single hyphens'),
  v.maxLength(64, 'out-of-range:an id of at most 64 characters'),
);

/** The id of a step as a lawn has it: for a program of an area, behind that program's id and a dot. */
export const stepId = v.pipe(
  v.string(),
  v.regex(
    /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)?$/,
    "wrong-type:a step's id, for a program of an area behind that program's id and a dot",
  ),
  v.maxLength(129, 'out-of-range:an id of at most 129 characters'),
);

/** A time to wait, in whole days. */
export const wait = v.pipe(
  positive('duration'),
  v.maxValue(366, 'out-of-range:at most 366 d'),
  v.integer('out-of-range:whole days'),
);

/** One of some words. */
export const word = <const T extends readonly string[]>(words: T) => v.picklist(words);

/** One word that stands alone, or a map. */
export const orWord = <const W extends string, S extends v.GenericSchema>(only: W, schema: S) => {
  const word = v.literal(only, `wrong-type:${only}, or a map`);
  return choosing(
    (input): v.LiteralSchema<W, string> | S => (typeof input === 'string' ? word : schema),
    () => [word, schema],
  );
};

/** A plain number within bounds. */
export const number = (from: number, to: number) =>
  v.pipe(
    v.number(),
    v.minValue(from, `out-of-range:${from} to ${to}`),
    v.maxValue(to, `out-of-range:${from} to ${to}`),
  );

/** A whole number within bounds. */
export const whole = (from: number, to: number) => v.pipe(number(from, to), v.integer('wrong-type:a whole number'));

/** A map whose keys are ids. */
export const byId = <S extends v.GenericSchema>(value: S) => v.pipe(anyMap, v.record(id, value));

/** A map whose keys are steps' ids. */
export const byStep = <S extends v.GenericSchema>(value: S) => v.pipe(anyMap, v.record(stepId, value));

/** A range of quantities, each end optional. */
export const range = (measure: Measure) => map({ from: maybe(quantity(measure)), to: maybe(quantity(measure)) });

/** The key of a source in the program's table, or one of the two words for a rule without one. */
export const source = v.string();

/** The words that stand in for a published source. */
export const UNPUBLISHED = ['common-practice', 'from-memory'] as const;

/** An amount of product, by weight or by volume, in SI. */
export interface Amount {
  readonly by: 'mass' | 'volume';
  readonly value: number;
}

/** An amount on each square metre, by weight or by volume, in SI. */
export type Rate = Amount;

const either = (mass: Measure, volume: Measure, takes: (value: number) => boolean, sign: Sign) =>
  v.pipe(
    v.string(`wrong-type:${expectedOf(mass)}`),
    v.rawTransform<string, Amount>(({ dataset, addIssue, NEVER }) => {
      const byMass = parseQuantity(dataset.value, mass);
      if ('value' in byMass && takes(byMass.value)) return { by: 'mass', value: byMass.value };
      const byVolume = parseQuantity(dataset.value, volume);
      if ('value' in byVolume && takes(byVolume.value)) return { by: 'volume', value: byVolume.value };
      if ('value' in byMass || 'value' in byVolume) addIssue({ message: `out-of-range:${expectedOf(mass)}, ${sign}` });
      else addIssue({ message: `quantity:${JSON.stringify(byMass)}`, expected: expectedOf(mass) });
      return NEVER;
    }),
    told({ quantity: [mass, volume], sign }),
  );

/** A rate of product by weight or by volume. */
export const rate = either('mass per area', 'volume per area', (value) => value > 0, 'above 0');

/** A weight or a volume. */
export const amount = either('mass', 'volume', (value) => value > 0, 'above 0');

/** A weight or a volume that may be nothing. */
export const amountOrNone = either('mass', 'volume', (value) => value >= 0, 'not negative');
