import type { Display, Rounding } from '../../base/display.ts';
import type { Amount } from '../../model/fields.ts';
import { isPesticide, type Product, packagesOf } from '../../model/product.ts';
import { inWords, roundingOf } from './in-words.ts';
import { stepsFor } from './steps.ts';

/** An amount as a person can measure it off. */
export interface Measurable {
  /** What is measured off; at most 1 % from what was asked for, and never more of it where that is rounded downward. */
  readonly amount: Amount;
  /** In words: "5.7 lb", "4 lb 15.5 oz", "23.7 mL (0.8 fl oz)". */
  readonly words: string;
  /** The same by a measure at hand: "half a package of 40 lb", "1.5 cups"; null where none fits. */
  readonly aid: string | null;
  readonly rounding: Rounding;
  /** What was asked for, in words, where rounding shows in them; else null. */
  readonly exact: string | null;
}

/** Rounding may change an amount by this share: a fifth of the ±5 % within which a spreader is taken to be right. */
const SHARE = 0.01;
const HAIR = 1e-9;
/** Up to so many packages a half one is told by eye. */
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
  const asked = inWords(amount, display, rounding);
  const base = { rounding, aid: null, exact: null };
  if (amount.value <= 0) return { ...base, amount, words: asked };
  const half = halfPackages(amount, product, rounding);
  const target = half === null ? amount : { ...amount, value: half.value };
  const kitchen = !isPesticide(product);
  const fitting = stepsFor(display.system, amount.by, product.form === 'amendment')
    .filter(({ from, aid }) => amount.value >= from && (kitchen || !aid))
    .map((step) => ({ step, value: toStep(target.value, step.size, rounding) }))
    .find(({ value }) => isNear(value, target.value));
  if (!fitting) return { ...base, amount, words: asked };
  const { step, value } = fitting;
  const words = step.words(value);
  const exact = inWords(amount, display);
  return {
    amount: { ...amount, value },
    words,
    aid: half === null ? (step.aid?.(value) ?? null) : packagesInWords(half, display),
    rounding,
    exact: Math.abs(value - amount.value) > amount.value * 1e-3 && exact !== words ? exact : null,
  };
}

const toStep = (value: number, step: number, rounding: Rounding): number =>
  Math[rounding === 'down' ? 'floor' : 'round'](value / step + HAIR) * step;

const isNear = (value: number, asked: number): boolean => value > 0 && Math.abs(value / asked - 1) <= SHARE + HAIR;

interface Halves {
  readonly value: number;
  readonly count: number;
  readonly size: Amount;
}

/** Whole and half packages that come near enough; null where none does. */
function halfPackages(amount: Amount, product: Product, rounding: Rounding): Halves | null {
  for (const { size } of packagesOf(product)) {
    if (size.by !== amount.by) continue;
    const value = toStep(amount.value, size.value / 2, rounding);
    if (isNear(value, amount.value) && value <= PACKAGES * size.value * (1 + HAIR))
      return { value, count: value / size.value, size };
  }
  return null;
}

function packagesInWords({ count, size }: Halves, display: Display): string {
  const of = inWords(size, display);
  const whole = Math.floor(count + HAIR);
  const half = count - whole > HAIR;
  if (whole === 0) return `half a package of ${of}`;
  return `${whole}${half ? '½' : ''} ${whole > 1 || half ? 'packages' : 'package'} of ${of}`;
}
