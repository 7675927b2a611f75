import type { Ask, Choice } from '../amounts/choose-product.ts';
import { type Dose, doseOf } from '../amounts/product.ts';
import type { Lawn } from '../model/lawn.ts';
import { type Assigned, sizesOf } from './assign.ts';
import { soilTestOf } from './condition.ts';
import type { Ground } from './ground.ts';
import { suits } from './rules/local.ts';

/** What the step puts down, of the products that the lawn has and the place lets it use. */
export function doseFor({ lawn, products, asOf }: Ground, { step, program, areas }: Assigned): Dose | null {
  if (!step.apply) return null;
  const allowed = new Map([...products].filter(([, product]) => suits(product, lawn, areas, asOf)));
  const sizes = sizesOf(lawn);
  const limits = [program.nitrogen?.single?.quick, ...(lawn.localRules ?? []).map(quickOf)].flatMap((one) => one ?? []);
  return doseOf(step.apply, {
    products: allowed,
    shelf: new Map(Object.entries(lawn.shelf?.stock ?? {})),
    quickLimit: limits.length === 0 ? null : Math.min(...limits),
    asks: asksOf(lawn, areas),
    area: areas.reduce((sum, area) => sum + (sizes.get(area) ?? 0), 0),
  });
}

const quickOf = (rule: NonNullable<Lawn['localRules']>[number]): number | undefined =>
  'limit' in rule && rule.limit === 'quick-N' ? rule.single : undefined;

/** What the soil tests ask for, where those of all the areas say the same: a product is chosen for all of them. */
function asksOf(lawn: Lawn, areas: readonly string[]): Choice['asks'] {
  const ask = (key: 'phosphorus' | 'potassium'): Ask | undefined => {
    const levels = new Set(areas.map((area) => soilTestOf(lawn, area)?.[key]));
    const [level] = levels;
    if (levels.size !== 1) return undefined;
    return level === 'low' ? 'some' : level === 'high' ? 'none' : undefined;
  };
  const [P2O5, K2O] = [ask('phosphorus'), ask('potassium')];
  return { ...(P2O5 && { P2O5 }), ...(K2O && { K2O }) };
}
