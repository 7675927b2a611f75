import { type Day, firstOnOrAfter, latestOnOrBefore, type MonthDay } from '../../base/day.ts';
import type { Lawn } from '../../model/lawn.ts';
import type { ForbidRule, LocalRule } from '../../model/local-rule.ts';
import type { Nutrient } from '../../model/nutrient.ts';
import type { Product } from '../../model/product.ts';
import { substancesIn } from '../../model/substance.ts';
import { soilTestOf } from '../condition.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { substancesOf } from './substances.ts';

/** A day on which the place forbids what the step puts down. */
export function forbiddenPeriod({ ground: { lawn }, assigned, dose }: RuleInput): DayRule | null {
  const substances = substancesOf(assigned.step, dose);
  const rules = (lawn.localRules ?? []).filter(isForbid);
  if (rules.length === 0) return null;
  return (day) => {
    for (const rule of rules) {
      if (!inPeriod(day, rule.between)) continue;
      const substance = rule.forbid.find(
        (one) =>
          substances.has(one) &&
          !isLifted(one, rule, { lawn, areas: assigned.areas, day }) &&
          !isTrace(one, rule, dose?.product),
      );
      if (substance !== undefined) return { rule: 'local', substance, because: rule.because ?? null };
    }
    return null;
  };
}

/**
 * Whether the place lets a product be used at all on these areas: not forbidden all year, with the slow share it requires.
 *
 * @param day The day of the work, as far as it is known: what lifts a ban may be over by then.
 */
export function suits(product: Product, lawn: Lawn, areas: readonly string[], day: Day): boolean {
  const substances = substancesIn(product);
  const banned = (lawn.localRules ?? [])
    .filter(isForbid)
    .some(
      (rule) =>
        !rule.between &&
        rule.forbid.some(
          (one) => substances.has(one) && !isLifted(one, rule, { lawn, areas, day }) && !isTrace(one, rule, product),
        ),
    );
  const short = (lawn.localRules ?? []).some(
    (rule) =>
      'require' in rule && substances.has('nitrogen') && (product.slowShare ?? 0) < rule.require.slowShare - 1e-9,
  );
  return !banned && !short;
}

interface Where {
  readonly lawn: Lawn;
  readonly areas: readonly string[];
  readonly day: Day;
}

/** Turf is new for so long after it was seeded or sodded. */
const NEW = 365;

/** Whether a ban is lifted on all of the areas: a test that is low in the nutrient, turf that is new. */
function isLifted(substance: string, { unless }: ForbidRule, { lawn, areas, day }: Where): boolean {
  if (areas.length === 0) return false;
  const low = (area: string) =>
    (substance === 'phosphorus' || substance === 'potassium') &&
    soilTestOf(lawn, area, substance)?.[substance] === 'low';
  const isNew = (area: string) => {
    const turf = lawn.areas[area]?.turf ?? lawn.turf;
    const since = turf?.seeded ?? turf?.sodded;
    return since !== undefined && day >= since && day - since <= NEW;
  };
  return areas.every((area) => (unless ?? []).some((lift) => (lift === 'new-lawn' ? isNew(area) : low(area))));
}

const NUTRIENT_OF: Readonly<Record<string, Nutrient>> = { nitrogen: 'N', phosphorus: 'P2O5', potassium: 'K2O' };

/** Whether a product holds so little of a forbidden nutrient that the rule lets it through. */
function isTrace(substance: string, { above }: ForbidRule, product: Product | null | undefined): boolean {
  const nutrient = NUTRIENT_OF[substance];
  if (above === undefined || nutrient === undefined || !product) return false;
  return (product.analysis?.[nutrient] ?? 0) <= above + 1e-9;
}

const isForbid = (rule: LocalRule): rule is ForbidRule => 'forbid' in rule;

/** Whether a day lies in a yearly period, which may go across New Year; always where there is none. */
export function inPeriod(day: Day, between: readonly [MonthDay, MonthDay] | undefined): boolean {
  if (!between) return true;
  const [from, to] = between;
  return day <= firstOnOrAfter(to, latestOnOrBefore(from, day));
}
