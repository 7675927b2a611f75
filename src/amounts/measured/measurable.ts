import type { Display, Rounding } from '../../base/display.ts';
import type { Amount } from '../../model/fields.ts';
import { isPesticide, type Product, packagesOf } from '../../model/product.ts';
import { wordsOf } from '../../words/words.ts';
import { inWords, roundingOf } from './in-words.ts';
import { isNear, type Step, stepsFor } from './steps.ts';

/** An amount as a person can measure it off. */
export interface Measurable {
  /** What is measured off; at most 1 % from what was asked for, and never more of it where that is rounded downward. */
  readonly amount: Amount;
  /** In words: "5.7 lb", "4 lb 15.5 oz", "23.7 mL (0.8 fl oz)". */
  readonly words: string;
  /** The same by a measure at hand: "half a package of 40 lb", "1.5 cups"; null where none fits. */
  readonly aid: string | null;
  readonly rounding: Rounding;
  /** What was asked for, in the unit of the words, where rounding shows in them; else null. */
  readonly exact: string | null;
}

const HAIR = 1e-9;
/** Up to so many packages a half one is told by eye; whole ones alone where the amount is rounded downward. */
const PACKAGES = 12;

/**
 * An amount of a product in the coarsest measure that is near enough: half a package, a scale, a jug, a cup. A pesticide is
 * rounded downward, and so is what a limit holds.
 *
 * @param held Whether a limit leaves no room above.
 * @example measurable({ by: 'mass', value: 2.57 }, feed, displayOf('us', 'en-US')).words //=> '5.7 lb'
 */
export function measurable(amount: Amount, product: Product, display: Display, held = false): Measurable {
  const rounding = held ? 'down' : roundingOf(product);
  const asked = amount.value;
  const base = { rounding, aid: null, exact: null };
  if (asked <= 0) return { ...base, amount, words: inWords(amount, display, rounding) };
  const steps = stepsFor(display.system, amount.by, product.form === 'amendment').filter(
    ({ from, aid }) => asked >= from && (!isPesticide(product) || !aid),
  );
  const half = halfPackages(amount, product, rounding);
  const ofHalf = half && inSteps(half.value, asked, rounding, steps);
  const found = ofHalf ?? inSteps(asked, asked, rounding, steps);
  // Less than the finest scale or syringe can tell: three digits, and whoever measures it sees to it.
  if (!found) return { ...base, amount, words: steps.at(-1)?.exact(asked, display, rounding) ?? '' };
  const { step, value } = found;
  const exact = step.exact(asked, display);
  return {
    amount: { ...amount, value },
    words: step.words({ value, asked, rounding }, display),
    aid: half && ofHalf ? packagesInWords(half, display) : (step.aid?.(value, display) ?? null),
    rounding,
    exact: Math.abs(value - asked) > asked * 1e-3 && exact !== step.exact(value, display) ? exact : null,
  };
}

/** The coarsest step in which an amount is near enough to what was asked for. @returns Null where none is fine enough. */
function inSteps(
  target: number,
  asked: number,
  rounding: Rounding,
  steps: readonly Step[],
): { readonly step: Step; readonly value: number } | null {
  const each = steps.map((step) => ({ step, value: toStep(target, step.size, rounding) }));
  return each.find(({ value }) => isNear(value, asked)) ?? null;
}

const toStep = (value: number, step: number, rounding: Rounding): number =>
  Math[rounding === 'down' ? 'floor' : 'round'](value / step + HAIR) * step;

interface Halves {
  readonly value: number;
  readonly count: number;
  readonly size: Amount;
}

/** Packages that come near enough; null where none do. An eye may take too much for a half, so downward they are whole. */
function halfPackages(amount: Amount, product: Product, rounding: Rounding): Halves | null {
  for (const { size } of packagesOf(product)) {
    if (size.by !== amount.by) continue;
    const value = toStep(amount.value, rounding === 'down' ? size.value : size.value / 2, rounding);
    if (isNear(value, amount.value) && value <= PACKAGES * size.value * (1 + HAIR))
      return { value, count: value / size.value, size };
  }
  return null;
}

function packagesInWords({ count, size }: Halves, display: Display): string {
  const { work } = wordsOf(display.language);
  const of = inWords(size, display);
  const whole = Math.floor(count + HAIR);
  const half = count - whole > HAIR;
  return whole === 0 ? work.halfPackage(of) : work.packages(`${whole}${half ? '½' : ''}`, whole === 1 && !half, of);
}
