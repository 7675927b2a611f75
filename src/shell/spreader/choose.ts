import { type NamedSpreader, usualSpreader } from '../../amounts/spreader/spreader.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { nearestWord } from '../../base/quantity.ts';
import type { Spreaders } from '../../model/spreader.ts';

/** The spreader of this id, else the one that the lawn's work is planned with. */
export function chosenSpreader(
  equipment: Spreaders | undefined,
  id: string | undefined,
): NamedSpreader | { readonly problem: Problem } {
  const named = equipment?.spreaders ?? {};
  if (id !== undefined) {
    if (Object.hasOwn(named, id)) return { id, spreader: named[id] };
    const allowed = Object.keys(named);
    const nearest = nearestWord(id, allowed);
    return { problem: problem('unknown-spreader', { found: id, allowed, nearest }, null) };
  }
  return usualSpreader(equipment);
}
