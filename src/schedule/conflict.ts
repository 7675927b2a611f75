import type { Day } from '../base/day.ts';
import { type Forbidden, reasonKey } from './rules/forbidden.ts';

/**
 * The fewest rules that together forbid every one of some days: why there is no day for a step.
 *
 * @param days The days of its window that are still to come. @param rulesOn Every rule that forbids a day.
 * @returns One reason a rule; empty where there are no days, or one of them is allowed.
 */
export function smallestReason(
  days: readonly Day[],
  rulesOn: (day: Day) => readonly Forbidden[],
): readonly Forbidden[] {
  const reasons = new Map<string, Forbidden>();
  const onDays = days.map((day) => {
    const found = rulesOn(day);
    for (const one of found) if (!reasons.has(reasonKey(one))) reasons.set(reasonKey(one), one);
    return new Set(found.map(reasonKey));
  });
  if (onDays.length === 0 || onDays.some((keys) => keys.size === 0)) return [];
  const keys = [...reasons.keys()];
  for (let size = 1; size <= keys.length; size++) {
    const found = choose(keys, size).find((some) => onDays.every((on) => some.some((key) => on.has(key))));
    if (found) return found.map((key) => reasons.get(key) as Forbidden);
  }
  return [];
}

/** Every set of so many of some keys, in their order. */
function choose(keys: readonly string[], size: number): readonly (readonly string[])[] {
  if (size === 0) return [[]];
  return keys.flatMap((key, i) => choose(keys.slice(i + 1), size - 1).map((rest) => [key, ...rest]));
}
