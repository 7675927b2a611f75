/** Cover, skill and reliability of plans against what came. */
import type { ChoiceCase, TriggerCase } from './season-odds.ts';

export type Real = 'withError' | 'clean';

/**
 * Triggers at stations where at least half of the years have a day, and where that day is not mostly the same one: a crossing
 * that is complete on its own `from` in half of the years or more is a date.
 */
export function judgedCases(cases: readonly TriggerCase[]): TriggerCase[] {
  const groups = new Map<string, TriggerCase[]>();
  for (const one of cases) {
    const key = `${one.station} ${one.label}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap((group) => {
    const years = group.filter(({ lead }) => lead === group[0]?.lead);
    const have = years.filter(({ came }) => came.clean !== null);
    const dated = years.filter(({ came, fixed }) => came.clean === fixed);
    return have.length >= years.length / 2 && dated.length < years.length / 2 ? group : [];
  });
}

/** Which cases count as not yet reached on the as-of day. */
export const NOT_REACHED = {
  /** By the plan's own soil and heat on the as-of day: what it reads off has not met the trigger yet. */
  model: ({ came, p50, asOf }: TriggerCase, _: Real) => p50 !== null && (came.clean ?? asOf + 1) > asOf,
  /** By hindsight: the real day lies ahead, which no plan can know of a soil that may be off by its error. */
  hindsight: ({ came, p50, asOf }: TriggerCase, real: Real) => p50 !== null && (came[real] ?? asOf) > asOf,
} as const;

export interface Skill {
  readonly n: number;
  /** Share of real days from p10 to p90. */
  readonly cover: number;
  /** Mean absolute error of the plan's median and of the fixed one [d]. */
  readonly error: number;
  readonly fixed: number;
  /** 1 - error / fixed. */
  readonly skill: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Cover and skill over the cases that are not yet reached and have a real day. */
export function skillOf(cases: readonly TriggerCase[], real: Real, by: keyof typeof NOT_REACHED = 'model'): Skill {
  const rows = cases.flatMap((one) => {
    const day = one.came[real];
    return day !== null && one.p50 !== null && NOT_REACHED[by](one, real) ? [{ ...one, day, p50: one.p50 }] : [];
  });
  const error = mean(rows.map(({ p50, day }) => Math.abs(p50 - day)));
  const fixed = mean(rows.map((one) => Math.abs(one.fixed - one.day)));
  const inside = rows.map(({ p10, p90, day }) => Number((p10 ?? day) <= day && day <= (p90 ?? day)));
  return { n: rows.length, cover: mean(inside), error, fixed, skill: 1 - error / fixed };
}

export interface Reliability {
  readonly n: number;
  /** Mean share that the plans said, and the share of chosen days that lay in their real window. */
  readonly said: number;
  readonly held: number;
}

export const reliabilityOf = (choices: readonly ChoiceCase[], real: Real): Reliability => ({
  n: choices.length,
  said: mean(choices.map(({ said }) => said)),
  held: mean(choices.map(({ held }) => Number(held[real]))),
});
