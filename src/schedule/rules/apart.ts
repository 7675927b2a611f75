import type { JournalEntry } from '../../model/journal.ts';
import { byTestOf } from '../../model/program.ts';
import type { Ground } from '../ground.ts';
import { isLime } from '../soil-test/tested.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { overlaps } from './spacing.ts';

/** Too close to other lime, or to another part of the same product, where the step asks for a time between them. */
export function apart({ ground, assigned: { step, areas }, dose, placed }: RuleInput): DayRule | null {
  const days = byTestOf(step)?.spacing ?? 0;
  const own = dose?.product;
  if (days === 0 || !own) return null;
  const every = Object.keys(ground.lawn.areas);
  const written = ground.journal.map((entry) => ({
    name: ground.steps.get(entry.step ?? '')?.name ?? entry.step ?? entry.work ?? '',
    day: entry.date,
    areas: entry.areas ?? every,
    product: productOf(entry, ground),
  }));
  const others = [...placed, ...written].filter(
    ({ product, areas: theirs }) =>
      product && (product.id === own.id || (isLime(own) && isLime(product))) && overlaps(theirs, areas),
  );
  return (day) => {
    const near = others.find((one) => Math.abs(one.day - day) < days);
    return near ? { rule: 'apart', of: near.name, from: near.day, days } : null;
  };
}

/** The product of an entry: the one it names, or the one that its step names. An earlier season's step is not placed any more. */
function productOf({ product, step }: JournalEntry, { products, steps }: Ground) {
  const apply = steps.get(step ?? '')?.apply;
  const id = product ?? (apply && 'product' in apply ? apply.product : undefined);
  return id === undefined ? null : (products.get(id) ?? null);
}
