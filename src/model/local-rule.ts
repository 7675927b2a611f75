import * as v from 'valibot';
import { choosing, id, map, maybe, monthDay, positive, quantity, text, word } from './fields.ts';
import { someOf, standing } from './standing.ts';

/** What a place limits. `quick-N` is nitrogen that is not slow-release; `lime` is the weight of any liming product. */
export const LIMITED = ['N', 'quick-N', 'P2O5', 'K2O', 'lime'] as const;
export type Limited = (typeof LIMITED)[number];

const period = { between: maybe(v.strictTuple([monthDay, monthDay])), because: maybe(text) };

/** What lifts a ban: a soil test that is low in it, or turf that was seeded or sodded within the year. */
const LIFTS = ['soil-test-low', 'new-lawn'] as const;
type Lift = (typeof LIFTS)[number];
const oneLift = v.pipe(
  word(LIFTS),
  v.transform((lift): readonly Lift[] => [lift]),
);
const someLifts = v.pipe(v.array(word(LIFTS)), v.minLength(1, 'wrong-type:a list of at least one'));
const lifts: v.GenericSchema<unknown, readonly Lift[]> = choosing(
  (input): v.GenericSchema<unknown, readonly Lift[]> => (Array.isArray(input) ? someLifts : oneLift),
  () => [oneLift, someLifts],
);

const share = v.pipe(
  quantity('share'),
  v.minValue(0, 'out-of-range:0% to 100%'),
  v.maxValue(1, 'out-of-range:0% to 100%'),
);

/** `above`: products with no more than this of a forbidden nutrient are let through. */
const forbid = map({ forbid: v.array(id), above: maybe(share), unless: maybe(lifts), ...period });

const limit = v.pipe(
  map({
    limit: word(LIMITED),
    yearly: maybe(positive('mass per area')),
    single: maybe(positive('mass per area')),
    ...period,
  }),
  standing('local-rule', someOf('yearly', 'single')),
);

const require = map({ require: map({ 'slow-share': share }), ...period });

export type ForbidRule = v.InferOutput<typeof forbid>;
export type LimitRule = v.InferOutput<typeof limit>;
export type RequireRule = v.InferOutput<typeof require>;
export type LocalRule = ForbidRule | LimitRule | RequireRule;

/** A rule of the place: something forbidden, a limit on a nutrient, or a share of slow-release nitrogen that is required. */
export const localRule: v.GenericSchema<unknown, LocalRule> = choosing(
  (input) => {
    const has = (key: string) => input !== null && typeof input === 'object' && key in input;
    return (has('limit') ? limit : has('require') ? require : forbid) as v.GenericSchema<unknown, LocalRule>;
  },
  () => [forbid, limit, require],
);
