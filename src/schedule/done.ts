import type { SquareMetres } from '../base/units.ts';
import { type JournalEntry, plannedShare } from '../model/journal.ts';
import { isPesticide, type Product } from '../model/product.ts';
import type { Use } from './caps.ts';
import type { Ground } from './ground.ts';
import type { PlacedStep } from './placed.ts';
import type { SeasonYear } from './season-year.ts';

/** What an entry of the journal put on an area; a use of null where nobody can know how much of the product. */
export interface Done {
  readonly entry: JournalEntry;
  readonly season: SeasonYear | null;
  readonly product: Product;
  readonly use: Use | null;
}

/**
 * What the journal has put on an area, work outside the program too: by what was used, or as planned where an entry does not
 * say; a pass is then half of that, and passes are no more than the whole of a step.
 */
export function doneOn(
  area: string,
  placed: readonly PlacedStep[],
  { journal, products, programOf }: Pick<Ground, 'journal' | 'products' | 'programOf'>,
  sizes: ReadonlyMap<string, SquareMetres>,
): Done[] {
  const passes = new Map<string, number>();
  const own = programOf(area);
  return journal.flatMap((entry): Done[] => {
    const step = stepOf(entry, placed);
    const covered = entry.areas ?? step?.areas ?? [...sizes.keys()];
    const product = (entry.product === undefined ? step?.dose?.product : products.get(entry.product)) ?? null;
    if (!covered.includes(area)) return [];
    const season = placed.find((one) => one.program === own && isIn(entry, one.season))?.season ?? null;
    const done = (dose: Use['dose'] | null) => {
      const counted = product ?? dose?.product;
      return counted ? [{ entry, season, product: counted, use: dose && { day: entry.date, season, dose } }] : [];
    };
    const square = covered.reduce((sum, id) => sum + (sizes.get(id) ?? 0), 0);
    if (entry.used && product) return done({ product, rate: { by: entry.used.by, value: entry.used.value / square } });
    // A pesticide other than the planned one, of unknown amount, cannot be counted.
    const asPlanned = !product || !isPesticide(product) || step?.dose?.product === product;
    if (!step?.dose?.rate || !asPlanned) return done(null);
    const key = `${step.id} ${season?.year}`;
    const before = passes.get(key) ?? 0;
    const share = entry.pass === undefined ? 1 : Math.min(plannedShare(entry), Math.max(0, 1 - before));
    if (entry.pass !== undefined) passes.set(key, before + share);
    return done({ ...step.dose, rate: { ...step.dose.rate, value: share * step.dose.rate.value } });
  });
}

const isIn = ({ date }: JournalEntry, { start, end }: SeasonYear): boolean => date >= start && date <= end;

/** The step of an entry: in its season, or in the one that is planned where that of the entry is over. */
function stepOf(entry: JournalEntry, placed: readonly PlacedStep[]): PlacedStep | undefined {
  const named = placed.filter(({ id }) => id === entry.step);
  return named.find(({ season }) => isIn(entry, season)) ?? named[0];
}
