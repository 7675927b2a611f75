import { type Display, type Rounding, significant, type UnitSystem } from '../../base/display.ts';
import { factorOf } from '../../base/units.ts';
import type { Amount } from '../../model/fields.ts';
import { wordsOf } from '../../words/words.ts';

/** Rounding may change an amount by this share: a fifth of the ±5 % within which a spreader is taken to be right. */
const SHARE = 0.01;
const HAIR = 1e-9;

/** Whether a rounded amount is near enough to what was asked for. */
export const isNear = (value: number, asked: number): boolean =>
  value > 0 && Math.abs(value / asked - 1) <= SHARE + HAIR;

/** An amount that is a whole number of steps, and what it was rounded from [kg or m³]. */
interface Stepped {
  readonly value: number;
  readonly asked: number;
  readonly rounding: Rounding;
}

/** A step that some measure in a shed can tell apart: a scale, a marked jug, a cup. */
export interface Step {
  /** kg or m³. */
  readonly size: number;
  /** The step is for amounts from here on [kg or m³]; a cup of grains of sand is no measure. */
  readonly from: number;
  /** An amount that is a whole number of steps, in words. */
  readonly words: (stepped: Stepped, display: Display) => string;
  /** Any amount in the unit of the words, to three digits and no coarser than the step. */
  readonly exact: (value: number, display: Display, rounding?: Rounding) => string;
  /** A whole number of steps in kitchen measures, beside the words; never for a pesticide. */
  readonly aid?: (value: number, display: Display) => string;
}

/** A number without trailing zeros. */
const plain = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** A number to three digits; to hundredths where steps are that fine, so that it is no coarser than they are. */
function toThree(value: number, size: number, rounding?: Rounding): string {
  const digits = Math.max(3, decimalsOf(size) + 1 + Math.floor(Math.log10(Math.max(value, HAIR))));
  return significant(value, digits, rounding);
}

const decimalsOf = (size: number): number => (String(size).split('.')[1] ?? '').length;

/** The name of a unit for a reader. */
type Named = (display: Display) => string;

/** Steps of one unit, in words as a plain number of it. */
const stepsOf = (unit: string, name: Named, sizes: readonly number[], from = 0): Step[] =>
  sizes.map((size) => ({
    size: size * factorOf(unit),
    from: from * factorOf(unit),
    words: ({ value }, display) => `${display.number(plain(value / factorOf(unit), 3))} ${name(display)}`,
    exact: (value, display, rounding) =>
      `${display.number(toThree(value / factorOf(unit), size, rounding))} ${name(display)}`,
  }));

/** Steps of a small unit, in words of a large one and what is over. @param each Small ones in a large one. */
function mixedSteps(large: string, small: string, name: Named, each: number, sizes: readonly number[]): Step[] {
  const mixed = (count: number, display: Display) => {
    const whole = Math.floor(count / each);
    const rest = plain(count - whole * each, 3);
    return [whole > 0 ? `${whole} ${large}` : '', rest !== '0' ? `${display.number(rest)} ${name(display)}` : '']
      .filter(Boolean)
      .join(' ');
  };
  return sizes.map((size) => ({
    size: size * factorOf(small),
    from: 0,
    words: ({ value }, display) => mixed(Math.round((value / factorOf(small)) * 1000) / 1000, display),
    exact: (value, display, rounding) => mixed(Number(toThree(value / factorOf(small), 0.1, rounding)), display),
  }));
}

/** An amount with as few digits as come near enough to what was asked for, and where it is rounded downward no more than is measured. */
function fewDigits({ value, asked, rounding }: Stepped, unit: string): string {
  for (let digits = 1; digits < 6; digits++) {
    const shown = significant(value / factorOf(unit), digits, rounding);
    if (isNear(Number(shown) * factorOf(unit), asked)) return shown;
  }
  return significant(value / factorOf(unit), 6, rounding);
}

/** Steps in a metric unit, with the other one beside it: what only a fine scale or a syringe can tell. */
const fineSteps = (unit: string, sizes: readonly number[], beside: string, name: Named): Step[] =>
  sizes.map((size) => ({
    size: size * factorOf(unit),
    from: 0,
    words: (stepped, display) =>
      `${display.number(plain(stepped.value / factorOf(unit), 1))} ${unit} (${display.number(fewDigits(stepped, beside))} ${name(display)})`,
    exact: (value, display, rounding) => `${display.number(toThree(value / factorOf(unit), size, rounding))} ${unit}`,
  }));

const floz: Named = ({ unitNames }) => unitNames.floz;

const cup: Step = {
  size: factorOf('cup') / 4,
  from: factorOf('cup') / 4,
  words: ({ value }, display) => `${display.number(plain(value / factorOf('floz'), 2))} ${floz(display)}`,
  exact: (value, display) => `${display.number(toThree(value / factorOf('floz'), 1))} ${floz(display)}`,
  aid: (value, display) => {
    const cups = value / factorOf('cup');
    return wordsOf(display.language).work.cups(display.number(plain(cups, 2)), cups > 1);
  },
};

const CUBIC_FOOT = 0.3048 ** 3;
const cubicFeet: Step = {
  size: CUBIC_FOOT,
  from: 2 * CUBIC_FOOT,
  words: ({ value }, { unitNames }) => `${plain(value / CUBIC_FOOT, 0)} ${unitNames.cuft}`,
  exact: (value, { number, unitNames }) => `${number(toThree(value / CUBIC_FOOT, 1))} ${unitNames.cuft}`,
};

/** A unit that every language writes alike. */
const as =
  (name: string): Named =>
  () =>
    name;

/** Steps from coarse to fine, as usual scales, jugs and barrows have them: common practice. */
const steps: Record<UnitSystem, Record<Amount['by'] | 'heap', readonly Step[]>> = {
  us: {
    mass: [
      ...stepsOf('lb', as('lb'), [1, 0.5, 0.1], 1),
      ...mixedSteps('lb', 'oz', as('oz'), 16, [1, 0.5, 0.1]),
      ...fineSteps('g', [0.1], 'oz', as('oz')),
    ],
    volume: [
      ...stepsOf('gal', as('gal'), [1, 0.5, 0.25], 1),
      cup,
      ...mixedSteps('gal', 'floz', floz, 128, [1, 0.5]),
      ...fineSteps('mL', [1, 0.1], 'floz', floz),
    ],
    heap: [...stepsOf('cuyd', ({ unitNames }) => unitNames.cuyd, [0.5, 0.25], 0.25), cubicFeet],
  },
  metric: {
    mass: [...stepsOf('kg', as('kg'), [1, 0.5, 0.1, 0.01], 1), ...stepsOf('g', as('g'), [10, 5, 1, 0.1])],
    volume: [...stepsOf('L', as('L'), [1, 0.5, 0.1], 1), ...stepsOf('mL', as('mL'), [10, 5, 1, 0.1])],
    heap: [...stepsOf('m3', as('m³'), [0.5, 0.1, 0.05], 0.1)],
  },
};

/** The steps for an amount, coarse ones first. @param heap Whether it lies in a heap: compost, sand, soil by volume. */
export const stepsFor = (system: UnitSystem, by: Amount['by'], heap: boolean): readonly Step[] => [
  ...(heap && by === 'volume' ? steps[system].heap : []),
  ...steps[system][by],
];
