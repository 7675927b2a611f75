import type { Product } from '../model/product.ts';
import type { Cap } from './caps.ts';
import { activeOn, type Counted, inLimitUnits } from './counted.ts';
import type { SeasonYear } from './season-year.ts';
import { spanOf } from './spans.ts';

/**
 * The limits that labels set for an area, from the products that are used there in a season. A limit on a product holds that
 * product. A limit on an active holds every product that contains it, and of several labels the strictest counts; where a
 * label limits the product alone, its active in that much product is the limit for the others that hold it too.
 *
 * @param products What is planned or done on the area, each once.
 */
export function labelCaps(products: readonly Product[], season: SeasonYear): readonly Cap[] {
  const span = spanOf(season);
  return [...products.flatMap(productCaps), ...activeCaps(products)].map((cap) => ({ ...cap, span }));
}

/** A limit of a label before it is known over which days it counts. */
export type LabelCap = Omit<Cap, 'span'>;

/** One application needs no cap here: a rate above its own `per-application` is an error of the label entry. */
function productCaps(product: Product): LabelCap[] {
  const perYear = product.label?.perYear;
  if (!perYear) return [];
  return [capOf(product.id, 'year', { kind: 'product', product: product.id, by: perYear.by }, perYear.value, product)];
}

/** The limits on the actives of some products. */
export function activeCaps(products: readonly Product[]): LabelCap[] {
  const actives = new Set(products.flatMap(({ actives }) => Object.keys(actives ?? {})));
  return [...actives].flatMap((active) => {
    const holding = products.filter((product) => Object.hasOwn(product.actives ?? {}, active));
    const counted: Counted = { kind: 'active', active };
    const caps = (['application', 'year'] as const).flatMap((per) =>
      holding.flatMap((product) => {
        const limit = activeLimit(product, active, per, holding.length > 1);
        return limit === null ? [] : [capOf(active, per, counted, limit, product)];
      }),
    );
    return (['application', 'year'] as const).flatMap((per) => {
      const own = caps.filter((cap) => cap.per === per);
      return own.length === 0 ? [] : [own.reduce((a, b) => (b.limit < a.limit ? b : a))];
    });
  });
}

/** The most of an active that a label allows [kg/m²]; null where it says nothing of it. */
function activeLimit(product: Product, active: string, per: Cap['per'], shared: boolean): number | null {
  const { label } = product;
  const stated = per === 'year' ? label?.activePerYear?.[active] : label?.activePerApplication?.[active];
  if (stated !== undefined) return stated;
  const whole = per === 'year' ? label?.perYear : undefined;
  return shared && whole ? activeOn(product, whole, active) : null;
}

function capOf(name: string, per: Cap['per'], counted: Counted, value: number, product: Product): LabelCap {
  const by = counted.kind === 'product' ? counted.by : 'mass';
  return {
    name: `${name}-${per === 'year' ? 'yearly' : 'single'}-label`,
    counted,
    per,
    limit: inLimitUnits(value, by),
    by: 'label',
    source: labelSource(product),
    because: { label: product.name ?? product.id },
    whole: true,
  };
}

export const labelSource = (product: Product): string => `label of ${product.name ?? product.id}`;

/** A limit that a label entry does not name, by its key; null where it is not of an active. */
export interface MissingLimit {
  readonly key: 'per-application' | 'per-year' | 'interval';
  readonly active: string | null;
}

/**
 * Limits that a label entry could name and does not: a limit on the product, or on each of its actives. Where some of the
 * actives are limited, those that are not are named.
 */
export function missingLimits({ label, actives }: Product): MissingLimit[] {
  if (!label) return [];
  const lacking = (
    whole: unknown,
    key: MissingLimit['key'],
    ofActives: Readonly<Record<string, unknown>> = {},
  ): MissingLimit[] => {
    const all = Object.keys(actives ?? {});
    const free = all.filter((active) => !Object.hasOwn(ofActives, active));
    if (whole !== undefined || (all.length > 0 && free.length === 0)) return [];
    return free.length === all.length ? [{ key, active: null }] : free.map((active) => ({ key, active }));
  };
  return [
    ...lacking(label.perApplication, 'per-application', label.activePerApplication),
    ...lacking(label.perYear, 'per-year', label.activePerYear),
    ...(label.interval === undefined ? [{ key: 'interval', active: null } as const] : []),
  ];
}
