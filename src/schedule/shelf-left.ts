import { amountOn, inKgOrL } from '../amounts/amount.ts';
import { formatDay } from '../base/day.ts';
import type { Amount } from '../model/fields.ts';
import { type Assigned, sizesOf } from './assign.ts';
import { WHOLE } from './caps.ts';
import type { Ground } from './ground.ts';
import type { PlacedStep } from './placed.ts';
import { onShelf, type Planned, type Work, workOf } from './shelf.ts';
import { shareToCome } from './to-come.ts';

/** Less than this share of a stock is a slip of the machine's numbers. */
const HAIR = 1e-9;

/**
 * What the shelf has left for a step, by product: what was counted, less what the journal has taken since and what the steps
 * that were placed before are still to take. What was done of the step itself stays in, or its product would change under
 * its own work. Limits are not looked at: they come after the products.
 */
export function shelfFor(
  { lawn, products, journal }: Ground,
  { id, season }: Assigned,
  before: readonly PlacedStep[],
): ReadonlyMap<string, Amount> {
  const stock = Object.entries(lawn.shelf?.stock ?? {});
  if (stock.length === 0) return new Map();
  const others = journal.filter(({ step, date }) => step !== id || date < season.start || date > season.end);
  const sizes = sizesOf(lawn);
  const done = workOf(
    others,
    before.map((one) => plannedOf(one, sizes)),
    products,
  );
  const work = [...done, ...before.flatMap((one) => toCome(one, sizes))];
  return new Map(
    stock.flatMap(([product, { by, value: counted }]): [string, Amount][] => {
      const known = products.get(product);
      const value = known ? onShelf(known, by, lawn, work) : 0;
      return value > HAIR * counted ? [[product, { by, value }]] : [];
    }),
  );
}

/** What a step puts down on its areas, by its dose. */
function plannedOf({ id, season, areas, dose }: PlacedStep, sizes: ReadonlyMap<string, number>): Planned {
  const amount = (area: string) => (dose?.rate ? amountOn(dose.rate, sizes.get(area) ?? 0) : null);
  const product = dose?.product?.id ?? null;
  return {
    id,
    seasonSpan: { start: formatDay(season.start), end: formatDay(season.end) },
    areas: areas.map((area) => ({ id: area, product, ...inKgOrL(amount(area)) })),
  };
}

/** What a step is still to take. */
function toCome(one: PlacedStep, sizes: ReadonlyMap<string, number>): Work[] {
  const { dose, choice, areas, progress } = one;
  if (!dose?.rate || !choice) return [];
  const open = areas.filter((area) => !progress.areasDone.includes(area));
  const size = open.reduce((sum, area) => sum + shareToCome(one, area, WHOLE) * (sizes.get(area) ?? 0), 0);
  return [{ date: choice.day, product: dose.product.id, amount: amountOn(dose.rate, size) }];
}
