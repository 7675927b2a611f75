import { usualSpreader } from '../../amounts/spreader/spreader.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { nearestWord } from '../../base/quantity.ts';
import type { Spreader, Spreaders } from '../../model/spreader.ts';

/** The spreader that a job is told for. */
export interface Chosen {
  /** Null for the single one, and where the lawn has none. */
  readonly id: string | null;
  readonly spreader: Spreader | undefined;
}

/** The spreader of this id, else the one that the lawn's work is planned with. */
export function chosenSpreader(
  equipment: Spreaders | undefined,
  id: string | undefined,
): Chosen | { readonly problem: Problem } {
  const named = equipment?.spreaders ?? {};
  if (id !== undefined) {
    if (Object.hasOwn(named, id)) return { id, spreader: named[id] };
    const allowed = Object.keys(named);
    const nearest = nearestWord(id, allowed);
    return { problem: problem('unknown-spreader', { found: id, allowed, nearest }, null) };
  }
  const spreader = usualSpreader(equipment);
  const found = Object.entries(named).find(([, one]) => one === spreader);
  return { id: found?.[0] ?? null, spreader };
}
