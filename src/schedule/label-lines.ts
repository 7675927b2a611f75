import { isPesticide } from '../model/product.ts';
import { activeOn } from './counted.ts';
import { missingLimits } from './label-caps.ts';
import type { Writing } from './reasons.ts';
import type { DosedStep } from './within-caps.ts';

/** What a pesticide brings of its actives, beside the published rate that the program compares, and what its label entry leaves out. */
export function labelLines({ step, dose }: DosedStep, { display, words }: Writing): string[] {
  const product = dose?.product;
  const rate = dose?.rate;
  if (!product || !rate || !isPesticide(product)) return [];
  const named = step.apply?.kind === 'pesticide' ? (step.apply.actives ?? {}) : {};
  const actives = Object.keys(product.actives ?? {}).flatMap((active) => {
    const brought = activeOn(product, rate, active);
    const compare = named[active]?.compare;
    if (brought === null) return [];
    return [
      words.work.activeRate(
        active,
        display.activeRate(brought),
        compare === undefined ? null : display.activeRate(compare),
      ),
    ];
  });
  const { labelKeys, labelKeyOf, labelSilent } = words.work;
  const missing = missingLimits(product).map(({ key, active }) =>
    active === null ? labelKeys[key] : labelKeyOf(labelKeys[key], active),
  );
  return [...actives, ...(missing.length > 0 ? [labelSilent(missing)] : [])];
}
