import * as v from 'valibot';
import {
  above0,
  amount,
  byId,
  choosing,
  day,
  id,
  map,
  maybe,
  number,
  positive,
  quantity,
  rate,
  text,
  word,
} from './fields.ts';
import { neutralising } from './neutralising.ts';
import { analysis } from './nutrient.ts';

const share = v.pipe(
  quantity('share'),
  v.minValue(0, 'out-of-range:0% to 100%'),
  v.maxValue(1, 'out-of-range:0% to 100%'),
);

const packageSize = map({ size: amount, price: maybe(number(0, 1e6)) });

/** How much of an active is in a product: kg in each kg, or in each m³. */
export interface ActiveContent {
  readonly by: 'mass' | 'volume';
  readonly value: number;
}

const byShare = v.pipe(
  share,
  v.transform((value): ActiveContent => ({ by: 'mass', value })),
);
const byDensity = v.pipe(
  above0('density'),
  v.transform((value): ActiveContent => ({ by: 'volume', value })),
);

/** A share of the weight, or a weight in a volume as labels of liquids print it: `4 lb/gal`. */
const activeContent = choosing(
  (input) => (typeof input === 'string' && input.includes('/') ? byDensity : byShare),
  () => [byShare, byDensity],
);

/** What the label in hand says; every figure is typed from there. */
const label = map({
  rate,
  'per-application': maybe(rate),
  'per-year': maybe(rate),
  'active-per-application': maybe(byId(above0('mass per area'))),
  'active-per-year': maybe(byId(above0('mass per area'))),
  interval: maybe(positive('duration')),
  'seed-safe': maybe(map({ after: maybe(positive('duration')), before: maybe(positive('duration')) })),
  'water-in': maybe(map({ depth: maybe(positive('length')), within: maybe(positive('duration')) })),
  're-entry': maybe(text),
  grasses: maybe(v.array(id)),
  checked: maybe(day),
});

/** A product: granular, liquid, soluble, seed or amendment. `slow-share` left out means none: all nitrogen counts as quick. */
export const ProductSchema = map({
  name: maybe(text),
  form: word(['granular', 'liquid', 'soluble', 'seed', 'amendment']),
  analysis: maybe(analysis),
  'slow-share': maybe(share),
  covers: maybe(positive('area')),
  package: maybe(packageSize),
  packages: maybe(
    v.pipe(
      v.array(packageSize),
      v.minLength(1, 'wrong-type:a list of at least one package'),
      v.maxLength(4, 'out-of-range:at most 4 package sizes'),
    ),
  ),
  density: maybe(positive('density')),
  neutralising: maybe(neutralising),
  pesticide: maybe(id),
  registration: maybe(text),
  actives: maybe(byId(activeContent)),
  label: maybe(label),
});

/** A products file: products by id. */
export const ProductsSchema = map({
  kind: v.literal('products', 'wrong-kind:products'),
  version: v.literal(1, 'wrong-type:1, the version of the format'),
  products: byId(ProductSchema),
});

export type Product = v.InferOutput<typeof ProductSchema> & { readonly id: string };
export type ProductsFile = v.InferOutput<typeof ProductsSchema>;

/** Package sizes that a product is sold in. */
export const packagesOf = (product: Product) => product.packages ?? (product.package ? [product.package] : []);

/** Whether a product is a pesticide: its rates then come from its label entry alone. */
export const isPesticide = (product: Product): boolean =>
  product.actives !== undefined || product.pesticide !== undefined;

/** How much of an active is in a product; none where it holds none of it. */
export const activeOf = ({ actives }: Product, active: string): ActiveContent | undefined =>
  Object.hasOwn(actives ?? {}, active) ? actives?.[active] : undefined;

/** Kinds of pesticides that kill plants or keep seed from growing. */
const HERBICIDE = /herbicide|emergent|broadleaf|weed|sedge/;
export const isHerbicide = (pesticide: string): boolean => HERBICIDE.test(pesticide);
