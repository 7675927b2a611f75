import type { Day } from '../../base/day.ts';
import type { Product } from '../../model/product.ts';
import type { Forbidden } from './forbidden.ts';
import type { DayRule, Placed, RuleInput } from './rule.ts';
import { overlaps } from './spacing.ts';
import { killsPlants, seeds } from './substances.ts';

/**
 * Seed and a herbicide on the same turf, by the herbicide's label: it waits for `before` after seed, and keeps seed off for
 * `after`. Whichever of the two was placed first stands, and the other keeps clear of it.
 */
export function seedAndHerbicide({ assigned, dose, placed }: RuleInput): DayRule | null {
  const others = placed.filter((one) => overlaps(one.areas, assigned.areas));
  const own = killsPlants(assigned.step, dose) ? dose?.product?.label?.seedSafe : undefined;
  const sowing = seeds(assigned.step, dose);
  if (!own && !sowing) return null;
  return (day) => {
    for (const other of others) {
      const theirs = sowing ? other.product?.label?.seedSafe : undefined;
      const found =
        (theirs && tooNear(other, theirs, day, other.day)) ??
        (own && other.seeds && tooNear(other, own, other.day, day));
      if (found) return found;
    }
    return null;
  };
}

/** Why seed on one day and a herbicide on another do not go together; null where they do. */
function tooNear(
  { name: of, day: from }: Placed,
  { before = 0, after = 0 }: { readonly before?: number; readonly after?: number },
  seed: Day,
  herbicide: Day,
): Forbidden | null {
  if (herbicide <= seed && seed - herbicide < after)
    return { rule: 'seed-safe', of, from, days: after, wait: 'for-seed' };
  if (seed <= herbicide && herbicide - seed < before)
    return { rule: 'seed-safe', of, from, days: before, wait: 'for-herbicide' };
  return null;
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
  if (others.length === 0) return null;
  return (day) => {
    const near = others.find((one) => Math.abs(one.day - day) < one.days);
    return near ? { rule: 'interval', of: near.name, from: near.day, days: near.days } : null;
  };
}

/** Whether two products are one, or share an active. */
function alike(a: Product, b: Product): boolean {
  return a.id === b.id || Object.keys(a.actives ?? {}).some((active) => Object.hasOwn(b.actives ?? {}, active));
}
