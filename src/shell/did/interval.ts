import { formatDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { JournalEntry } from '../../model/journal.ts';
import type { Season } from '../../model/season.ts';
import { workOf } from '../../schedule/shelf.ts';
import type { DidInput } from './input.ts';

/** Work with a product nearer to other work with it on the same area than its label entry allows; the nearest is told. */
export function intervalProblems(
  { linked }: DidInput,
  entry: JournalEntry,
  areas: readonly string[],
  { applications }: Season,
): Problem[] {
  const productOf = (one: JournalEntry) => workOf([one], applications, linked.products)[0]?.product;
  const product = linked.products.get(productOf(entry) ?? '');
  const interval = product?.label?.interval;
  if (!product || interval === undefined) return [];
  const near = entriesInForce([...linked.journal, entry])
    .filter((one) => one !== entry && productOf(one) === product.id && !sameWork(one, entry))
    .map((one) => {
      const own = applications.find(({ id }) => id === one.step)?.areas.map(({ id }) => id);
      const covered = one.areas ?? own ?? Object.keys(linked.lawn.areas);
      return { one, days: Math.abs(entry.date - one.date), both: areas.filter((area) => covered.includes(area)) };
    })
    .filter(({ days, both }) => days < interval && both.length > 0)
    .sort((a, b) => a.days - b.days)[0];
  if (!near) return [];
  const { one, days, both } = near;
  const args = { product: product.name ?? product.id, areas: both, days, other: formatDay(one.date), interval };
  return [problem('did-interval', args, null)];
}

/** Two halves of one application: entries of a step on one day, or its passes on the next. */
const sameWork = (a: JournalEntry, b: JournalEntry): boolean =>
  a.step === b.step &&
  (a.date === b.date ||
    (Math.abs(a.date - b.date) === 1 && a.pass !== undefined && b.pass !== undefined && a.pass !== b.pass));
