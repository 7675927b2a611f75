import type { CubicMetres, CubicMetresPerSquareMetre, SquareMetres } from '../../base/units.ts';
import type { Amount, Rate } from '../../model/fields.ts';
import type { Product } from '../../model/product.ts';
import { inMeasure } from '../in-measure.ts';

/** A product in the tank, at its own rate. */
export interface Dissolved {
  readonly product: Product;
  readonly rate: Rate;
}

/** Tanks that are filled alike. */
export interface Fill {
  readonly count: number;
  /** What one of them covers [m²]. */
  readonly area: SquareMetres;
  /** What goes into one of them in all [m³]. */
  readonly spray: CubicMetres;
  /**
   * The carrier water of it [m³]; null where a product's volume is not known, and the water tops it up; 0 where the products
   * alone are as much as the sprayer puts down.
   */
  readonly water: CubicMetres | null;
  /** What goes in of each product, in their order. */
  readonly amounts: readonly Amount[];
}

interface Job {
  readonly area: SquareMetres;
  /** What the sprayer puts down of the whole mix [m³/m²]: a second product takes the place of water. */
  readonly output: CubicMetresPerSquareMetre;
  readonly tank: CubicMetres;
  readonly products: readonly Dissolved[];
}

/** A last tank below this share of a full one is a slip of the machine's numbers. */
const HAIR = 1e-9;

/**
 * The tanks of a job: full ones, then the rest. The mix is the same in all of them.
 *
 * @returns No more than two kinds of fill; none for no area. Their sums are the job's, exactly.
 * @example tanksFor({ area: 929, output: 4.07e-5, tank: 0.0151, products: [] }) // 10,000 ft², 1 gal/1000 ft², 4 gal: 2 full, one of 2 gal
 */
export function tanksFor({ area, output, tank, products }: Job): Fill[] {
  const whole = (area * output) / tank;
  const full = Math.floor(whole + HAIR);
  const rest = whole - full;
  const fill = (count: number, share: number): Fill[] => {
    const covers = (share * tank) / output;
    const amounts = products.map(({ rate }): Amount => ({ by: rate.by, value: rate.value * covers }));
    const volumes = products.map(({ product }, i) => volumeOf(product, amounts[i] as Amount));
    const known = volumes.every((volume) => volume !== null);
    const spray = share * tank;
    const water = known
      ? roomIn(
          spray,
          volumes.reduce((sum, volume) => sum + volume, 0),
        )
      : null;
    return [{ count, area: covers, spray, water, amounts }];
  };
  return [...(full > 0 ? fill(full, 1) : []), ...(rest > HAIR ? fill(1, rest) : [])];
}

/** What a tank has room for beside its products; a hair is none. */
const roomIn = (spray: CubicMetres, taken: CubicMetres): CubicMetres =>
  spray - taken > HAIR * spray ? spray - taken : 0;

/** What an amount of product takes up in the tank [m³]: a liquid its volume; a powder next to nothing, the water is topped up. */
function volumeOf(product: Product, amount: Amount): CubicMetres | null {
  if (amount.by === 'volume') return amount.value;
  if (product.form !== 'liquid') return 0;
  return inMeasure(amount, 'volume', product);
}

/** Whether a product is put down with a sprayer. */
export const isSprayed = ({ form }: Product): boolean => form === 'liquid' || form === 'soluble';
