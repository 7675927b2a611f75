import type { Ask, Choice } from '../amounts/choose-product.ts';
import { type Dose, doseOf } from '../amounts/product.ts';
import type { Day } from '../base/day.ts';
import type { KilogramsPerSquareMetre } from '../base/units.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Program } from '../model/program.ts';
import { type Assigned, sizesOf } from './assign.ts';
import { soilTestOf } from './condition.ts';
import type { Ground } from './ground.ts';
import type { PlacedStep } from './placed.ts';
import { suits } from './rules/local.ts';
import { shelfFor } from './shelf-left.ts';

/**
 * What the step puts down, of the products that the lawn has and the place lets it use.
 *
 * @param day The day that it was done, or is expected to be.
 * @param before Steps that are placed.
 */
export function doseFor(ground: Ground, assigned: Assigned, day: Day, before: readonly PlacedStep[]): Dose | null {
  const { lawn, products } = ground;
  const { step, program, areas } = assigned;
  if (!step.apply) return null;
  const allowed = new Map([...products].filter(([, product]) => suits(product, lawn, areas, day)));
  const sizes = sizesOf(lawn);
  const limits = [program.nitrogen?.single?.quick, ...(lawn.localRules ?? []).map(quickOf)].flatMap((one) => one ?? []);
  return doseOf(step.apply, {
    products: allowed,
    shelf: shelfFor(ground, assigned, before),
    quickLimit: limits.length === 0 ? null : Math.min(...limits),
    asks: asksOf(lawn, areas, nitrogenOf(program)),
    area: areas.reduce((sum, area) => sum + (sizes.get(area) ?? 0), 0),
  });
}

const quickOf = (rule: NonNullable<Lawn['localRules']>[number]): number | undefined =>
  'limit' in rule && rule.limit === 'quick-N' ? rule.single : undefined;

/** Nitrogen of a program's year [kg/m²], beside which a report's amounts for a year are seen. */
const nitrogenOf = ({ steps }: Program): KilogramsPerSquareMetre =>
  steps.reduce((sum, { apply }) => sum + (apply?.kind === 'nutrient' ? (apply.rates.N ?? 0) : 0), 0);

/** What one soil test asks: the report's own amount in the share of the year's nitrogen, else by its word. */
function askOf(lawn: Lawn, area: string, nutrient: 'P2O5' | 'K2O', nitrogen: KilogramsPerSquareMetre): Ask | undefined {
  const word = nutrient === 'P2O5' ? 'phosphorus' : 'potassium';
  const test = soilTestOf(lawn, area, word);
  const amount = test?.[nutrient];
  if (amount === 0) return 'none';
  if (amount !== undefined && nitrogen > 0) return { perNitrogen: amount / nitrogen };
  const level = test?.[word];
  return level === 'low' ? 'some' : level === 'high' ? 'none' : undefined;
}

/** What the soil tests ask for, where those of all the areas say the same: a product is chosen for all of them. */
function asksOf(lawn: Lawn, areas: readonly string[], nitrogen: KilogramsPerSquareMetre): Choice['asks'] {
  const ask = (nutrient: 'P2O5' | 'K2O'): Ask | undefined => {
    const asked = new Map(
      areas.map((area) => {
        const one = askOf(lawn, area, nutrient, nitrogen);
        return [JSON.stringify(one), one];
      }),
    );
    return asked.size === 1 ? [...asked.values()][0] : undefined;
  };
  const [P2O5, K2O] = [ask('P2O5'), ask('K2O')];
  return { ...(P2O5 && { P2O5 }), ...(K2O && { K2O }) };
}
