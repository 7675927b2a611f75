import * as v from 'valibot';
import { BasedOnSchema } from './based-on.ts';
import { ConditionSchema } from './condition.ts';
import {
  byId,
  choosing,
  id,
  keysOf,
  map,
  maybe,
  monthDay,
  number,
  orWord,
  positive,
  range,
  rate,
  source,
  text,
  word,
} from './fields.ts';
import { GRASSES } from './grass.ts';
import { nutrientRates } from './nutrient.ts';
import { needs, standing } from './standing.ts';
import { type Trigger, TriggerSchema } from './trigger.ts';

export const CLIMATES = [
  'cool-humid',
  'cool-arid',
  'maritime',
  'transition',
  'warm-humid',
  'warm-arid',
  'tropical',
] as const;
export const WORKS = ['spread', 'spray', 'seed', 'aerate', 'mow', 'water', 'scout', 'sample', 'other'] as const;
export type Work = (typeof WORKS)[number];

const massRate = positive('mass per area');
const rateKeys = { source: maybe(source) };
/** As much as the soil test asks for; the step's own rate is then the most at a time. */
const byTest = { by: maybe(word(['soil-test'])), spacing: maybe(positive('duration')) };

/** What a step puts down, or does: one schema a kind. A new kind is added here and in `amounts/product-amount.ts`. */
const applies = {
  product: v.pipe(
    map({ product: id, rate, ...byTest, ...rateKeys }),
    standing('by-soil-test', needs('spacing', 'by')),
    v.transform((value) => ({ kind: 'product' as const, ...value })),
  ),
  nutrient: v.pipe(
    map({
      nutrient: nutrientRates,
      prefer: maybe(map({ 'slow-share': maybe(positive('share')) })),
      ...byTest,
      ...rateKeys,
    }),
    standing('by-soil-test', needs('spacing', 'by')),
    v.check(({ nutrient, by }) => by === undefined || nutrient.N === undefined, 'soil-test-nitrogen'),
    v.transform(({ nutrient, ...value }) => ({
      kind: 'nutrient' as const,
      rates: nutrient,
      ...value,
    })),
  ),
  'bag-rate': v.pipe(
    map({ 'bag-rate': id, ...rateKeys }),
    v.transform(({ bagRate, ...value }) => ({ kind: 'bag-rate' as const, product: bagRate, ...value })),
  ),
  seed: v.pipe(
    map({ seed: id, rate, ...rateKeys }),
    v.transform(({ seed, ...value }) => ({ kind: 'seed' as const, product: seed, ...value })),
  ),
  amendment: v.pipe(
    map({ amendment: id, rate, ...byTest, goal: maybe(number(4, 8)), ...rateKeys }),
    standing('by-soil-test', needs('spacing', 'by'), needs('goal', 'by')),
    v.transform(({ amendment, ...value }) => ({ kind: 'amendment' as const, product: amendment, ...value })),
  ),
  pesticide: v.pipe(
    map({ pesticide: id, actives: maybe(byId(map({ compare: maybe(massRate), source: maybe(source) }))), ...rateKeys }),
    v.transform(({ pesticide, ...value }) => ({ kind: 'pesticide' as const, pesticide, ...value })),
  ),
  mow: v.pipe(
    map({ mow: map({ height: positive('length'), source: maybe(source) }), ...rateKeys }),
    v.transform(({ mow, ...value }) => ({ kind: 'mow' as const, height: mow.height, ...value })),
  ),
  water: v.pipe(
    map({ water: map({ depth: positive('length'), source: maybe(source) }), ...rateKeys }),
    v.transform(({ water, ...value }) => ({ kind: 'water' as const, depth: water.depth, ...value })),
  ),
};

export type Apply = { [K in keyof typeof applies]: v.InferOutput<(typeof applies)[K]> }[keyof typeof applies];
export type ApplyOf<K extends Apply['kind']> = Extract<Apply, { kind: K }>;

const ApplySchema: v.GenericSchema<unknown, Apply> = choosing(applyIn, () => Object.values(applies), 'apply');

function applyIn(input: unknown): v.GenericSchema<unknown, Apply> {
  const names = keysOf(input);
  const [kind, second] = names.filter((name) => Object.hasOwn(applies, name));
  if (kind === undefined || second !== undefined) {
    return v.custom<never>(
      () => false,
      `apply-one-of:${names.join(', ') || 'nothing'}:${Object.keys(applies).join('|')}`,
    );
  }
  return applies[kind as keyof typeof applies] as v.GenericSchema<unknown, Apply>;
}

const weather = map({
  'wind-below': maybe(positive('speed')),
  air: maybe(range('temperature')),
  'rain-below': maybe(map({ depth: positive('length'), in: positive('duration') })),
  source: maybe(source),
});

const stepKeys = {
  id,
  name: text,
  work: word(WORKS),
  window: map({ opens: TriggerSchema, best: maybe(TriggerSchema), closes: maybe(TriggerSchema) }),
  lean: maybe(word(['early', 'late'])),
  leaves: maybe(word(['dry', 'wet'])),
  apply: maybe(ApplySchema),
  'water-in': maybe(
    map({ depth: maybe(positive('length')), within: maybe(positive('duration')), source: maybe(source) }),
  ),
  weather: maybe(weather),
  'if-missed': maybe(orWord('skip', map({ until: maybe(TriggerSchema), note: maybe(text), source: maybe(source) }))),
  'only-if': maybe(ConditionSchema),
  unless: maybe(ConditionSchema),
  cautions: maybe(v.array(text)),
  note: maybe(text),
  source: maybe(source),
};
const StepSchema = map(stepKeys);
export type Step = v.InferOutput<typeof StepSchema>;

const programKeys = {
  kind: v.literal('program', 'wrong-kind:program'),
  version: v.literal(1, 'wrong-type:1, the version of the format'),
  id,
  name: text,
  grass: v.pipe(v.array(word(GRASSES)), v.minLength(1, 'wrong-type:a list of at least one grass')),
  climate: maybe(v.array(word(CLIMATES))),
  season: maybe(map({ from: monthDay })),
  about: maybe(text),
  author: maybe(text),
  license: maybe(text),
  'based-on': maybe(v.array(BasedOnSchema)),
  sources: maybe(byId(text)),
  nitrogen: maybe(
    map({
      yearly: maybe(map({ from: maybe(massRate), to: maybe(massRate), source: maybe(source) })),
      single: maybe(map({ total: maybe(massRate), quick: maybe(massRate), source: maybe(source) })),
      spacing: maybe(positive('duration')),
      source: maybe(source),
    }),
  ),
  steps: v.pipe(v.array(StepSchema), v.minLength(1, 'wrong-type:a list of at least one step')),
};

/** A season program: steps for a kind of grass in a kind of climate; holds no private data and no pesticide dose. */
export const ProgramSchema = map(programKeys);
export type Program = v.InferOutput<typeof ProgramSchema>;

/** The keys of a program, in the order in which they are written. */
export const PROGRAM_KEYS: readonly string[] = Object.keys(programKeys);

/** Keys of which none has to stand. */
const optional = (entries: v.ObjectEntries): v.ObjectEntries =>
  Object.fromEntries(
    Object.entries(entries).map(([key, entry]) => [
      key,
      entry.type.endsWith('optional') ? entry : maybe(entry as v.GenericSchema),
    ]),
  );

/** A program before what it extends is joined to it: only what is other has to stand. */
export const ExtendingSchema = map({
  ...optional(programKeys),
  kind: programKeys.kind,
  version: programKeys.version,
  id,
  extends: v.string(),
  steps: maybe(v.array(map({ ...optional(stepKeys), id, drop: maybe(v.literal(true)) }))),
});

/** What a step puts down by the soil test. */
export type ByTest = ApplyOf<'product' | 'nutrient' | 'amendment'>;

/** What a step puts down, where it goes by the soil test; null where it does not. */
export const byTestOf = ({ apply }: Step): ByTest | null =>
  apply && 'by' in apply && apply.by === 'soil-test' ? apply : null;

/** Every trigger inside a trigger, itself first. */
export function triggersIn(trigger: Trigger): Trigger[] {
  if (trigger.kind === 'any-of' || trigger.kind === 'all-of') return [trigger, ...trigger.of.flatMap(triggersIn)];
  if (trigger.kind === 'after' && trigger.otherwise) return [trigger, ...triggersIn(trigger.otherwise)];
  return [trigger];
}

/** Every trigger of a step's window. */
export const triggersOf = ({ window }: Step): Trigger[] =>
  [window.opens, window.best, window.closes].flatMap((trigger) => (trigger ? triggersIn(trigger) : []));
