import type { Day } from '../../base/day.ts';
import type { Days } from '../../base/units.ts';
import type { Product } from '../../model/product.ts';
import type { DayRule, Placed, RuleInput } from './rule.ts';
import { overlaps } from './spacing.ts';
import { killsPlants, seeds } from './substances.ts';

/** Seeding within the waiting time that the label of a herbicide names, after it is down. */
export function seedAfter({ assigned, dose, placed }: RuleInput): DayRule | null {
  if (!seeds(assigned.step, dose)) return null;
  const down = placed.flatMap((one) => {
    const days = one.product?.label?.seedSafe?.after;
    return days !== undefined && overlaps(one.areas, assigned.areas) ? [{ ...one, days }] : [];
  });
  return near(down, (other, day) => (other.day <= day && day - other.day < other.days ? 'seed-after' : null));
}

/** A herbicide too soon after seed, or so soon before it that its waiting time would still run. */
export function seedBefore({ assigned, dose, placed }: RuleInput): DayRule | null {
  const safe = dose?.product?.label?.seedSafe;
  if (!safe || !killsPlants(assigned.step, dose)) return null;
  const sown = placed.filter((one) => one.seeds && overlaps(one.areas, assigned.areas));
  const { before = 0, after = 0 } = safe;
  return (day) => {
    const early = sown.find((one) => one.day <= day && day - one.day < before);
    if (early) return { rule: 'seed-before', of: early.name, from: early.day, days: before, way: 'after' };
    const late = sown.find((one) => day < one.day && one.day - day < after);
    return late ? { rule: 'seed-before', of: late.name, from: late.day, days: after, way: 'before' } : null;
  };
}

/** Too soon after, or before, another use of the product or of one of its actives. */
export function interval({ assigned, dose, placed }: RuleInput): DayRule | null {
  const product = dose?.product;
  if (!product) return null;
  const others = placed.flatMap((one) => {
    const days = Math.max(product.label?.interval ?? 0, one.product?.label?.interval ?? 0);
    const same = one.product !== null && alike(product, one.product) && overlaps(one.areas, assigned.areas);
    return same && days > 0 ? [{ ...one, days }] : [];
  });
  return near(others, (other, day) => (Math.abs(other.day - day) < other.days ? 'interval' : null));
}

/** Whether two products are one, or share an active. */
function alike(a: Product, b: Product): boolean {
  return a.id === b.id || Object.keys(a.actives ?? {}).some((active) => Object.hasOwn(b.actives ?? {}, active));
}

type Dated = Placed & { readonly days: Days };

function near(
  others: readonly Dated[],
  judge: (other: Dated, day: Day) => 'seed-after' | 'interval' | null,
): DayRule | null {
  if (others.length === 0) return null;
  return (day) => {
    for (const other of others) {
      const rule = judge(other, day);
      if (rule) return { rule, of: other.name, from: other.day, days: other.days };
    }
    return null;
  };
}
