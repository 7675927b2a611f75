import type { KilogramsPerSquareMetre, SquareMetres } from '../base/units.ts';
import type { Amount } from '../model/fields.ts';
import type { Nutrient } from '../model/nutrient.ts';
import { isPesticide, type Product, packagesOf } from '../model/product.ts';
import type { ApplyOf } from '../model/program.ts';
import { inMeasure } from './in-measure.ts';
import { cheapestCover } from './packages.ts';

/** What a soil test says of a nutrient: some is wanted, none is, or so much for each unit of nitrogen. */
export type Ask = 'some' | 'none' | { readonly perNitrogen: number };

/** What a product is chosen from, and for what. */
export interface Choice {
  readonly products: ReadonlyMap<string, Product>;
  /** What the shelf has left, by product. */
  readonly shelf: ReadonlyMap<string, Amount>;
  /** The most quick nitrogen at once; null where nothing limits it. */
  readonly quickLimit: KilogramsPerSquareMetre | null;
  /** What the soil tests of all its areas ask; a nutrient that none of them speaks of is left out. */
  readonly asks: Readonly<Partial<Record<'P2O5' | 'K2O', Ask>>>;
  /** All that the step is for. */
  readonly area: SquareMetres;
}

/** What speaks for a product, in the order in which it counts. */
const CRITERIA = [
  'unasked-nitrogen',
  'quick-limit',
  'soil-test',
  'slow-share',
  'shelf',
  'unasked-phosphate',
  'packages',
  'cost',
  'order',
] as const;
export type Criterion = (typeof CRITERIA)[number];

/** The product that was chosen, the next best, and what decided between the two. */
export interface Chosen {
  readonly product: Product;
  /** Its rate by weight. */
  readonly kgPerM2: KilogramsPerSquareMetre;
  readonly over: Product | null;
  readonly by: Criterion | 'only';
}

const HAIR = 1e-9;
/** Dearer than any price. */
const UNPRICED = 1e9;
/** Shares of phosphate or potash that differ by less are as near to what a test asks: a laboratory tells them no finer. */
const AS_NEAR = 0.05;

/**
 * The product for a nutrient: the leading one, nitrogen where it is asked for, comes exactly. Of the products that bring it,
 * the one that is best by the first of the criteria on which they differ.
 *
 * @returns Null where no product brings the nutrient.
 */
export function chooseProduct(apply: ApplyOf<'nutrient'>, choice: Choice): Chosen | null {
  const lead = (['N', 'P2O5', 'K2O'] as const).find((nutrient) => apply.rates[nutrient] !== undefined);
  if (!lead) return null;
  const wanted = apply.rates[lead] as KilogramsPerSquareMetre;
  const scored = [...choice.products.values()]
    .filter((product) => !isPesticide(product) && (product.analysis?.[lead] ?? 0) > 0)
    .map((product, order) => ({ product, score: scoreOf(product, { apply, choice, lead, wanted, order }) }));
  const [best, next] = scored.sort((a, b) => compare(a.score, b.score));
  if (!best) return null;
  const kgPerM2 = wanted / (best.product.analysis?.[lead] as number);
  if (!next) return { product: best.product, kgPerM2, over: null, by: 'only' };
  const by = CRITERIA[firstDifference(best.score, next.score)] ?? 'order';
  return { product: best.product, kgPerM2, over: next.product, by };
}

const compare = (a: readonly number[], b: readonly number[]): number => {
  const at = firstDifference(a, b);
  return (a[at] as number) - (b[at] as number);
};

/** Where two scores differ first; the last place where they do not. */
function firstDifference(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, i) => Math.abs(value - (b[i] as number)) > HAIR);
  return at < 0 ? a.length - 1 : at;
}

interface Wanted {
  readonly apply: ApplyOf<'nutrient'>;
  readonly choice: Choice;
  readonly lead: Nutrient;
  readonly wanted: KilogramsPerSquareMetre;
  readonly order: number;
}

/** How a product stands by each criterion; less is better. */
function scoreOf(product: Product, { apply, choice, lead, wanted, order }: Wanted): number[] {
  const per = (nutrient: Nutrient) => (product.analysis?.[nutrient] ?? 0) / (product.analysis?.[lead] ?? 1);
  const slow = product.slowShare ?? 0;
  const quick = wanted * per('N') * (1 - slow);
  const { shelf, asks, quickLimit } = choice;
  const bought = purchaseOf(product, (wanted / (product.analysis?.[lead] ?? 1)) * choice.area, shelf.get(product.id));
  const byCriterion: Record<Criterion, number> = {
    'unasked-nitrogen': apply.rates.N === undefined ? per('N') : 0,
    'quick-limit': quick <= (quickLimit ?? Number.POSITIVE_INFINITY) * (1 + HAIR) ? 0 : 1,
    'soil-test':
      awayFrom('P2O5', per('P2O5'), lead, apply, wanted, asks) + awayFrom('K2O', per('K2O'), lead, apply, wanted, asks),
    'slow-share': slow >= (apply.prefer?.slowShare ?? 0) - HAIR ? 0 : 1,
    shelf: shelf.has(product.id) ? 0 : 1,
    'unasked-phosphate': apply.rates.P2O5 === undefined && asks.P2O5 === undefined ? per('P2O5') : 0,
    packages: bought.count,
    cost: bought.cost ?? UNPRICED,
    order,
  };
  return CRITERIA.map((criterion) => byCriterion[criterion]);
}

/** How far a product's share of a nutrient is from what the step or the soil test asks, in units of the leading nutrient. */
function awayFrom(
  nutrient: 'P2O5' | 'K2O',
  brought: number,
  lead: Nutrient,
  { rates }: ApplyOf<'nutrient'>,
  wanted: KilogramsPerSquareMetre,
  asks: Choice['asks'],
): number {
  if (nutrient === lead) return 0;
  const own = rates[nutrient];
  const ask = own === undefined ? asks[nutrient] : { perNitrogen: own / wanted };
  if (ask === undefined) return 0;
  if (ask === 'some') return brought > 0 ? 0 : 1;
  const asked = ask === 'none' ? 0 : ask.perNitrogen;
  return Math.round(Math.abs(brought - asked) / AS_NEAR);
}

/** New packages for a step and what they cost; one of unknown cost where the product names no package. */
function purchaseOf(product: Product, kg: number, stock: Amount | undefined): { count: number; cost: number | null } {
  // What cannot be weighed is no stock that could be counted on, and no package to reckon with.
  const inKg = (amount: Amount) => inMeasure(amount, 'mass', product) ?? 0;
  const short = kg - (stock ? inKg(stock) : 0);
  if (short <= HAIR) return { count: 0, cost: 0 };
  const sizes = packagesOf(product)
    .map(({ size, price }) => ({ size: inKg(size), price: price ?? null }))
    .filter(({ size }) => size > 0);
  if (sizes.length === 0) return { count: 1, cost: null };
  const counts = cheapestCover(short, sizes);
  const count = counts.reduce((sum, one) => sum + one, 0);
  const priced = sizes.every(({ price }) => price !== null);
  return { count, cost: priced ? counts.reduce((sum, one, i) => sum + one * (sizes[i]?.price ?? 0), 0) : null };
}
