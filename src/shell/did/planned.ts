import { labelMostOf, secondPass } from '../../amounts/dial/second-pass.ts';
import { applicationFor } from '../../model/applied.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { Journal, JournalEntry } from '../../model/journal.ts';
import { isPesticide, type Product } from '../../model/product.ts';
import type { Application, AreaAmount } from '../../model/season.ts';

/** What an entry was to put down on an area [kg or m³]; null where the plan has no amount in that measure. */
export type PlannedOn = (area: AreaAmount, by: 'mass' | 'volume') => number | null;

/** What a plan had for an entry: the whole of an area, half of it for one pass, after a first pass what that has left. */
export function plannedFor(
  entry: JournalEntry,
  application: Application,
  journal: Journal,
  products: ReadonlyMap<string, Product>,
): PlannedOn {
  const before = entriesInForce([...journal, entry]).filter(
    (one) => one !== entry && one.step === entry.step && applicationFor(one, [application]) === application,
  );
  return (area, by) => {
    const { id, areaM2, amountKg, amountL } = area;
    const whole = by === 'mass' ? amountKg : amountL === null ? null : amountL / 1000;
    if (whole === null) return null;
    const earlier = before.filter(({ areas }) => areas?.includes(id) ?? true);
    if (earlier.length === 0 || earlier.some(({ pass }) => pass !== 1)) return entry.pass ? whole / 2 : whole;
    const delivered = earlier.reduce((sum, one) => sum + (usedOn(one, area, application, by) ?? whole / 2), 0);
    const product = products.get(area.product ?? '');
    const most = product ? labelMostOf(product, by) : null;
    const labelMost = most === null ? null : most * areaM2;
    return secondPass({ whole, delivered, labelMost, pesticide: product !== undefined && isPesticide(product) }).target;
  };
}

/** What an entry used on one of its areas, taken to lie on every square metre alike. */
function usedOn(
  { areas: named, used }: JournalEntry,
  { areaM2 }: AreaAmount,
  { areas }: Application,
  by: 'mass' | 'volume',
): number | null {
  const covered = areas.filter(({ id }) => named?.includes(id) ?? true).reduce((sum, one) => sum + one.areaM2, 0);
  return used?.by === by && covered > 0 ? (used.value * areaM2) / covered : null;
}
