import * as v from 'valibot';
import type { MonthDay } from '../base/day.ts';
import type { Days, Metres } from '../base/units.ts';
import { air, type Crossing, dayLength, growth, soil } from './crossing.ts';
import { choosing, id, keysOf, map, maybe, monthDay, source, wait } from './fields.ts';
import { type FrostRule, frost } from './frost.ts';
import type { GrassSeason } from './grass.ts';
import { type HeatRule, heat, heatFields } from './heat.ts';
import { oneOf, standing } from './standing.ts';

/** A rule that gives a day, or none, in one run of weather. */
export type Trigger = { readonly source?: string } & (
  | { readonly kind: 'date'; readonly on: MonthDay }
  | ({ readonly kind: 'soil'; readonly depth: Metres } & Crossing)
  | ({ readonly kind: 'air'; readonly stat: 'min' | 'mean' | 'max' } & Crossing)
  | ({ readonly kind: 'degree-days'; readonly from: MonthDay } & HeatRule)
  | ({ readonly kind: 'growth'; readonly grass: GrassSeason } & Crossing)
  | ({ readonly kind: 'day-length' } & Crossing)
  | ({ readonly kind: 'frost' } & FrostRule)
  | {
      readonly kind: 'after';
      /** The step to count from; left out, it is the window's own opening. */
      readonly step?: string;
      readonly wait?: Days;
      readonly heat?: HeatRule;
      readonly otherwise?: Trigger;
    }
  | { readonly kind: 'any-of'; readonly of: readonly Trigger[] }
  | { readonly kind: 'all-of'; readonly of: readonly Trigger[] }
);

export type TriggerOf<K extends Trigger['kind']> = Extract<Trigger, { kind: K }>;

const degreeDays = v.pipe(
  map({ ...heatFields, from: monthDay }),
  heat(),
  v.transform((value) => ({ kind: 'degree-days' as const, ...value })),
);

/** A trigger inside another. */
const inner: v.GenericSchema<unknown, Trigger> = v.pipe(
  v.lazy(() => TriggerSchema),
  v.metadata({ name: 'trigger' }),
);

const after = v.pipe(
  map({
    step: maybe(id),
    opening: maybe(v.literal(true)),
    wait: maybe(wait),
    'degree-days': maybe(v.pipe(map(heatFields), heat())),
    otherwise: maybe(inner),
    source: maybe(source),
  }),
  standing('trigger-after', oneOf('step', 'opening'), oneOf('wait', 'degree-days')),
  v.transform(({ opening: _, degreeDays, ...rest }) => ({
    kind: 'after' as const,
    ...rest,
    ...(degreeDays && { heat: degreeDays }),
  })),
);

const several = <K extends 'any-of' | 'all-of'>(kind: K) =>
  v.pipe(
    v.array(inner),
    v.minLength(1, 'wrong-type:a list of at least one trigger'),
    v.transform((of) => ({ kind, of })),
  );

/** One schema a kind: a new kind of trigger is added here and in `schedule/triggers.ts`. */
const kinds = {
  date: v.pipe(
    monthDay,
    v.transform((on) => ({ kind: 'date' as const, on })),
  ),
  soil,
  air,
  'degree-days': degreeDays,
  growth,
  'day-length': dayLength,
  frost,
  after,
  'any-of': several('any-of'),
  'all-of': several('all-of'),
} satisfies Record<Trigger['kind'], v.GenericSchema>;

const besideKind = { 'not-before': maybe(monthDay), 'not-after': maybe(monthDay), source: maybe(source) };

/**
 * The trigger inside its limits: `not-before: D` is all-of with that date, `not-after: D` any-of with it.
 * A source beside the kind is the limits'; it is the trigger's as well where that names none.
 */
function limited(
  inner: Trigger,
  notBefore: MonthDay | undefined,
  notAfter: MonthDay | undefined,
  source: string | undefined,
): Trigger {
  const cited = source === undefined ? {} : { source };
  const dated = (on: MonthDay): Trigger => ({ ...cited, kind: 'date', on });
  const trigger: Trigger = { ...cited, ...inner };
  const begun: Trigger = notBefore ? { kind: 'all-of', of: [trigger, dated(notBefore)] } : trigger;
  return notAfter ? { kind: 'any-of', of: [begun, dated(notAfter)] } : begun;
}

/** A trigger as it stands in a program: a map with exactly one kind key, and optionally `not-before`, `not-after`, `source`. */
export const TriggerSchema: v.GenericSchema<unknown, Trigger> = choosing(
  triggerIn,
  () => Object.keys(kinds).map((kind) => withLimits(kind as Trigger['kind'])),
  'trigger',
);

/** A kind of trigger with the keys that may stand beside it. */
const withLimits = (kind: Trigger['kind']) =>
  map({ ...besideKind, [kind]: kinds[kind] as v.GenericSchema<unknown, Trigger> });

function triggerIn(input: unknown): v.GenericSchema<unknown, Trigger> {
  const names = keysOf(input);
  const found = names.filter((name): name is Trigger['kind'] => Object.hasOwn(kinds, name));
  const [kind] = found;
  if (kind === undefined || found.length > 1) {
    const other = names.filter((name) => !Object.hasOwn(besideKind, name));
    return v.custom<never>(() => false, `trigger-kind:${other.join(', ') || 'none'}:${Object.keys(kinds).join('|')}`);
  }
  return v.pipe(
    withLimits(kind),
    v.transform((value) => {
      const {
        notBefore,
        notAfter,
        source: beside,
        ...rest
      } = value as { notBefore?: MonthDay; notAfter?: MonthDay; source?: string };
      const [trigger] = Object.values(rest) as [Trigger];
      return limited(trigger, notBefore, notAfter, beside);
    }),
  );
}
