import { bringsNitrogen } from '../../amounts/product.ts';
import type { DayRule, RuleInput } from './rule.ts';

/** Whether two pieces of work touch the same turf. */
export const overlaps = (a: readonly string[], b: readonly string[]): boolean => a.some((area) => b.includes(area));

/** Too close to other nitrogen on the same turf. */
export function spacing({ assigned: { step, program, areas }, dose, placed }: RuleInput): DayRule | null {
  const days = program.nitrogen?.spacing ?? 0;
  const asked = step.apply?.kind === 'nutrient' && step.apply.rates.N !== undefined;
  if (days === 0 || !(asked || (dose && bringsNitrogen(dose)))) return null;
  const others = placed.filter((one) => one.nitrogen && overlaps(one.areas, areas));
  return (day) => {
    const near = others.find((one) => Math.abs(one.day - day) < days);
    return near ? { rule: 'spacing', of: near.name, from: near.day, days } : null;
  };
}
