import { type Day, firstOnOrAfter, latestOnOrBefore, type MonthDay } from '../../base/day.ts';
import type { Lawn } from '../../model/lawn.ts';
import type { ForbidRule, LocalRule } from '../../model/local-rule.ts';
import type { Product } from '../../model/product.ts';
import { substancesIn } from '../../model/substance.ts';
import { soilTestOf } from '../condition.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { substancesOf } from './substances.ts';

/** A day on which the place forbids what the step puts down. */
export function forbiddenPeriod({ ground: { lawn }, assigned, dose }: RuleInput): DayRule | null {
  const substances = substancesOf(assigned.step, dose);
  const rules = forbidRules(lawn, assigned.areas).flatMap((rule) => {
    const substance = rule.forbid.find((one) => substances.has(one));
    return substance === undefined ? [] : [{ ...rule, substance }];
  });
  if (rules.length === 0) return null;
  return (day) => {
    const rule = rules.find(({ between }) => inPeriod(day, between));
    return rule ? { rule: 'local', substance: rule.substance, because: rule.because ?? null } : null;
  };
}

/** Whether the place lets a product be used at all on these areas: not forbidden all year, with the slow share it requires. */
export function suits(product: Product, lawn: Lawn, areas: readonly string[]): boolean {
  const substances = substancesIn(product);
  const banned = forbidRules(lawn, areas).some(
    ({ forbid, between }) => !between && forbid.some((one) => substances.has(one)),
  );
  const short = (lawn.localRules ?? []).some(
    (rule) =>
      'require' in rule && substances.has('nitrogen') && (product.slowShare ?? 0) < rule.require.slowShare - 1e-9,
  );
  return !banned && !short;
}

/** What the place forbids on these areas: a ban that a low soil test lifts falls away where all of them tested low. */
function forbidRules(lawn: Lawn, areas: readonly string[]): readonly ForbidRule[] {
  const low = (nutrient: 'phosphorus' | 'potassium') =>
    areas.length > 0 && areas.every((area) => soilTestOf(lawn, area)?.[nutrient] === 'low');
  const lifted = (substance: string) => (substance === 'phosphorus' || substance === 'potassium') && low(substance);
  return (lawn.localRules ?? [])
    .filter(isForbid)
    .map((rule) => (rule.unless === undefined ? rule : { ...rule, forbid: rule.forbid.filter((one) => !lifted(one)) }));
}

const isForbid = (rule: LocalRule): rule is ForbidRule => 'forbid' in rule;

/** Whether a day lies in a yearly period, which may go across New Year; always where there is none. */
export function inPeriod(day: Day, between: readonly [MonthDay, MonthDay] | undefined): boolean {
  if (!between) return true;
  const [from, to] = between;
  return day <= firstOnOrAfter(to, latestOnOrBefore(from, day));
}
