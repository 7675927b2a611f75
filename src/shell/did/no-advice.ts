import { spreaderOf } from '../../amounts/spreader/spreader.ts';
import { type Problem, problem } from '../../base/problem.ts';
import type { JournalEntry } from '../../model/journal.ts';
import type { Season } from '../../model/season.ts';
import type { DidInput } from './input.ts';
import type { Meaning } from './meaning.ts';

/** Why an entry with a setting brings no advice on the next one. */
export function noAdvice(
  { linked }: DidInput,
  entry: JournalEntry,
  { product, next, areas }: Meaning,
  { applications }: Season,
): Problem[] {
  if (entry.setting === undefined || next !== null) return [];
  const application = applications.find(({ id }) => id === entry.step);
  const covered = (application?.areas ?? []).filter(({ id }) => areas.includes(id));
  const planned = covered.find((area) => area.product !== null)?.product ?? null;
  const why = !spreaderOf(linked.lawn.equipment, entry.spreader)?.spreader?.dial
    ? 'dial'
    : planned === null
      ? 'step'
      : planned !== product
        ? 'product'
        : entry.used
          ? 'weight'
          : 'used';
  return [problem('did-no-advice', { why, planned }, null)];
}
