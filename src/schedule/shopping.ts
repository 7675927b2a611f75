import { inWords } from '../amounts/amount.ts';
import { cheapestCover } from '../amounts/packages.ts';
import { type Day, formatDay, parseDay } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import type { Amount } from '../model/fields.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import { type Product, packagesOf } from '../model/product.ts';
import type { Application, Purchase } from '../model/season.ts';
import type { Words } from '../words/words.ts';
import { keepingOf } from './in-words/keeping.ts';
import { onShelf, workOf } from './shelf.ts';

/** Days before the work by which to buy; common practice. */
const AHEAD = 7;

interface Need {
  readonly product: Product;
  readonly amount: Amount;
  readonly uses: readonly { readonly day: Day; readonly value: number }[];
}

interface ShoppingInput {
  readonly products: ReadonlyMap<string, Product>;
  readonly lawn: Lawn;
  /** The entries in force. */
  readonly journal: Journal;
  readonly asOf: Day;
  readonly display: Display;
  readonly words: Words;
}

/** What to buy for the work still to come: need less shelf, in packages. */
export function shoppingFor(
  applications: readonly Application[],
  { products, lawn, journal, asOf, display, words }: ShoppingInput,
): Purchase[] {
  return needsOf(applications, products).map(({ product, amount, uses }) => {
    const shelf = onShelf(product, amount.by, lawn, workOf(journal, applications, products));
    const sizes = packagesOf(product).filter(({ size }) => size.by === amount.by);
    const short = Math.max(0, amount.value - shelf);
    const counts = cheapestCover(
      short,
      sizes.map(({ size, price }) => ({ size: size.value, price: price ?? null })),
    );
    const bought = sizes.reduce((sum, { size }, i) => sum + size.value * (counts[i] ?? 0), 0);
    const priced = sizes.length > 0 && sizes.every(({ price }, i) => price !== undefined || counts[i] === 0);
    const runsOut = runOutDay(uses, shelf);
    const left = sizes.length === 0 && short > 0 ? null : shelf + bought - amount.value;
    const split = (value: number | null) => ({
      kg: amount.by === 'mass' ? value : null,
      l: amount.by === 'volume' && value !== null ? value * 1000 : null,
    });
    const [need, stock, rest] = [split(amount.value), split(shelf), split(left)];
    return {
      product: product.id,
      name: product.name ?? product.id,
      needKg: need.kg,
      needL: need.l,
      shelfKg: stock.kg,
      shelfL: stock.l,
      packages: sizes.flatMap(({ size }, i) =>
        counts[i] ? [{ size: inWords(size, display), count: counts[i] as number }] : [],
      ),
      neededOn: runsOut === null ? null : formatDay(runsOut),
      buyBy: runsOut === null ? null : formatDay(Math.max(asOf, runsOut - AHEAD)),
      cost: priced ? sizes.reduce((sum, { price }, i) => sum + (price ?? 0) * (counts[i] ?? 0), 0) : null,
      leftKg: rest.kg,
      leftL: rest.l,
      left: left === null || left <= 1e-9 ? null : inWords({ by: amount.by, value: left }, display),
      keeps: left === null || left <= 1e-9 ? null : keepingOf(product, words),
    };
  });
}

/** The products that dated work still needs, in the order of their first use. */
function needsOf(applications: readonly Application[], products: ReadonlyMap<string, Product>): Need[] {
  const needs = new Map<string, Need>();
  for (const { date, totals, status } of applications) {
    const day = date === null || status === 'done' ? null : parseDay(date);
    if (day === null) continue;
    for (const { product: id, amountKg, amountL } of totals) {
      const product = products.get(id);
      if (!product) continue;
      const use: Amount =
        amountKg !== null ? { by: 'mass', value: amountKg } : { by: 'volume', value: (amountL ?? 0) / 1000 };
      const need = needs.get(id) ?? { product, amount: { ...use, value: 0 }, uses: [] };
      needs.set(id, {
        ...need,
        amount: { ...use, value: need.amount.value + use.value },
        uses: [...need.uses, { day, value: use.value }],
      });
    }
  }
  return [...needs.values()];
}

/** The day of the first use that the shelf does not cover. */
function runOutDay(uses: readonly { readonly day: Day; readonly value: number }[], shelf: number): Day | null {
  let left = shelf;
  for (const { day, value } of [...uses].sort((a, b) => a.day - b.day)) {
    left -= value;
    if (left < -1e-9) return day;
  }
  return null;
}
