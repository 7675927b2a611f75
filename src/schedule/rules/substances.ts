import { bringsNitrogen, type Dose } from '../../amounts/product.ts';
import { isHerbicide } from '../../model/product.ts';
import type { Step } from '../../model/program.ts';
import { substancesIn } from '../../model/substance.ts';

/**
 * What a step puts on the lawn, in the words of local rules: substances, then the product, its kind and its actives. A step
 * for a nutrient counts as fertilizer before its product is known.
 */
export function substancesOf(step: Step, dose: Dose | null): ReadonlySet<string> {
  const { apply } = step;
  const substances = dose?.product ? substancesIn(dose.product) : new Set<string>();
  const add = (...words: string[]) => {
    for (const word of words) substances.add(word);
  };
  if (apply?.kind === 'pesticide') add('pesticide', apply.pesticide, ...Object.keys(apply.actives ?? {}));
  if (apply?.kind === 'seed') add('seed');
  if (apply?.kind === 'nutrient') {
    add('fertilizer');
    if (apply.rates.N) add('nitrogen');
    if (apply.rates.P2O5) add('phosphorus');
    if (apply.rates.K2O) add('potassium');
  }
  return substances;
}

/** Whether a step feeds the turf. */
export const feeds = (step: Step, dose: Dose | null): boolean =>
  step.apply?.kind === 'nutrient' ? step.apply.rates.N !== undefined : dose !== null && bringsNitrogen(dose);

/** Whether a step kills plants or keeps their seed from growing. */
export const killsPlants = (step: Step, dose: Dose | null): boolean =>
  (step.apply?.kind === 'pesticide' && isHerbicide(step.apply.pesticide)) ||
  (dose?.product?.pesticide !== undefined && isHerbicide(dose.product.pesticide));

/** Whether a step puts seed down. */
export const seeds = (step: Step, dose: Dose | null): boolean =>
  step.work === 'seed' || step.apply?.kind === 'seed' || dose?.product?.form === 'seed';
