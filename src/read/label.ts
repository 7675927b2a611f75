import { type Problem, problem } from '../base/problem.ts';
import type { Rate } from '../model/fields.ts';
import type { Product } from '../model/product.ts';
import type { Parsed } from './validate.ts';

/** What rounding may make of two figures that are the same. */
const HAIR = 1e-9;

/**
 * A label entry whose rate is above its own limit for one application: one of the two is mistyped.
 *
 * @param path Where the product stands in its file.
 */
export function labelProblems(
  { id, density, label }: Product,
  path: readonly (string | number)[],
  place: Parsed<unknown>['place'],
): Problem[] {
  const most = label?.perApplication;
  if (!label || !most) return [];
  const rate = inMeasure(label.rate, most.by, density);
  const over = rate !== null && rate > most.value * (1 + HAIR);
  return over ? [problem('label-rate', { product: id }, place([...path, 'label', 'rate']))] : [];
}

function inMeasure({ by, value }: Rate, wanted: Rate['by'], density: number | undefined): number | null {
  if (by === wanted) return value;
  if (density === undefined) return null;
  return wanted === 'mass' ? value * density : value / density;
}
