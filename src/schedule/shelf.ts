import { inMeasure } from '../amounts/in-measure.ts';
import type { Day } from '../base/day.ts';
import { applicationFor } from '../model/applied.ts';
import type { Amount } from '../model/fields.ts';
import { type Journal, type JournalEntry, plannedShare } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Application, AreaAmount } from '../model/season.ts';

/** What one entry took of a product; null where it cannot be known. */
export interface Work {
  readonly date: Day;
  readonly product: string;
  readonly amount: Amount | null;
}

/** A step with what it is to put down on its areas. */
export interface Planned extends Pick<Application, 'id' | 'seasonSpan'> {
  readonly areas: readonly Pick<AreaAmount, 'id' | 'product' | 'amountKg' | 'amountL'>[];
}

/**
 * What the entries took of which product: of an entry that names none, its step's in the season of its day; of one that does not say how much, what
 * was planned for the areas it names.
 *
 * @param journal The entries in force.
 */
export function workOf(
  journal: Journal,
  applications: readonly Planned[],
  products: ReadonlyMap<string, Product>,
): Work[] {
  return journal.flatMap((entry) => {
    const application = applicationFor(entry, applications);
    const planned = application?.areas[0]?.product ?? null;
    const product = entry.product ?? planned;
    if (product === null || !products.has(product)) return [];
    const amount = entry.used ?? (product === planned && application ? plannedFor(entry, application) : null);
    return [{ date: entry.date, product, amount }];
  });
}

/** What a step was to put down on the areas of an entry; half of it in a pass. */
function plannedFor(entry: JournalEntry, { areas }: Planned): Amount | null {
  const covered = areas.filter(({ id }) => entry.areas?.includes(id) ?? true);
  const [first] = covered;
  const share = plannedShare(entry);
  if (first?.amountKg != null)
    return { by: 'mass', value: share * covered.reduce((sum, { amountKg }) => sum + (amountKg ?? 0), 0) };
  if (first?.amountL != null)
    return { by: 'volume', value: (share * covered.reduce((sum, { amountL }) => sum + (amountL ?? 0), 0)) / 1000 };
  return null;
}

/**
 * What is on the shelf: the counted stock less what the work since has taken. Work of the day of counting is taken to be
 * in the count.
 *
 * @returns kg or m³, never negative; 0 where none was counted or the measures cannot be compared.
 */
export function onShelf(product: Product, by: Amount['by'], lawn: Lawn, work: readonly Work[]): number {
  const stock = lawn.shelf?.stock[product.id];
  const counted = lawn.shelf?.counted ?? null;
  const had = stock ? inMeasure(stock, by, product) : null;
  if (had === null) return 0;
  const taken = work
    .filter((one) => one.product === product.id && (counted === null || one.date > counted))
    .reduce((sum, { amount }) => sum + (amount ? (inMeasure(amount, by, product) ?? 0) : 0), 0);
  return Math.max(0, had - taken);
}

/** What is left of everything that was counted, in the measure it was counted in. */
export function shelfOf(
  lawn: Lawn,
  products: ReadonlyMap<string, Product>,
  work: readonly Work[],
): { readonly product: string; readonly kg: number | null; readonly l: number | null }[] {
  return Object.entries(lawn.shelf?.stock ?? {}).flatMap(([id, { by }]) => {
    const product = products.get(id);
    if (!product) return [];
    const left = onShelf(product, by, lawn, work);
    return [{ product: id, kg: by === 'mass' ? left : null, l: by === 'volume' ? left * 1000 : null }];
  });
}
