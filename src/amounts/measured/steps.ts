import type { UnitSystem } from '../../base/display.ts';
import { factorOf } from '../../base/units.ts';
import type { Amount } from '../../model/fields.ts';

/** A step that some measure in a shed can tell apart: a scale, a marked jug, a cup. */
export interface Step {
  /** kg or m³. */
  readonly size: number;
  /** The step is for amounts from here on [kg or m³]; a cup of grains of sand is no measure. */
  readonly from: number;
  /** An amount that is a whole number of steps, in words. */
  readonly words: (value: number) => string;
  /** The same in kitchen measures, beside the words; never for a pesticide. */
  readonly aid?: (value: number) => string;
}

/** A number without trailing zeros. */
const plain = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** Steps of one unit, in words as a plain number of it. */
const stepsOf = (unit: string, name: string, sizes: readonly number[], from = 0): Step[] =>
  sizes.map((size) => ({
    size: size * factorOf(unit),
    from: from * factorOf(unit),
    words: (value) => `${plain(value / factorOf(unit), 3)} ${name}`,
  }));

/** Steps of a small unit, in words of a large one and what is over. @param each Small ones in a large one. */
const mixedSteps = (large: string, small: string, name: string, each: number, sizes: readonly number[]): Step[] =>
  sizes.map((size) => ({
    size: size * factorOf(small),
    from: 0,
    words: (value) => {
      const count = Math.round((value / factorOf(small)) * 1000) / 1000;
      const whole = Math.floor(count / each);
      const rest = plain(count - whole * each, 3);
      return [whole > 0 ? `${whole} ${large}` : '', rest !== '0' ? `${rest} ${name}` : ''].filter(Boolean).join(' ');
    },
  }));

/** Steps in a metric unit, with the other one beside it: what only a fine scale or a syringe can tell. */
const fineSteps = (unit: string, sizes: readonly number[], beside: string, name: string): Step[] =>
  sizes.map((size) => ({
    size: size * factorOf(unit),
    from: 0,
    words: (value) =>
      `${plain(value / factorOf(unit), 1)} ${unit} (${plain(value / factorOf(beside), value < 0.1 * factorOf(beside) ? 3 : 2)} ${name})`,
  }));

const cup: Step = {
  size: factorOf('cup') / 4,
  from: factorOf('cup') / 4,
  words: (value) => `${plain(value / factorOf('floz'), 2)} fl oz`,
  aid: (value) => {
    const cups = value / factorOf('cup');
    return `${plain(cups, 2)} ${cups > 1 ? 'cups' : 'cup'}`;
  },
};

const CUBIC_FOOT = 0.3048 ** 3;
const cubicFeet: Step = {
  size: CUBIC_FOOT,
  from: 2 * CUBIC_FOOT,
  words: (value) => `${plain(value / CUBIC_FOOT, 0)} cu ft`,
};

/** Steps from coarse to fine, as usual scales, jugs and barrows have them: common practice. */
const steps: Record<UnitSystem, Record<Amount['by'] | 'heap', readonly Step[]>> = {
  us: {
    mass: [
      ...stepsOf('lb', 'lb', [1, 0.5, 0.1], 1),
      ...mixedSteps('lb', 'oz', 'oz', 16, [1, 0.5, 0.1]),
      ...fineSteps('g', [0.1], 'oz', 'oz'),
    ],
    volume: [
      ...stepsOf('gal', 'gal', [1, 0.5, 0.25], 1),
      cup,
      ...mixedSteps('gal', 'floz', 'fl oz', 128, [1, 0.5]),
      ...fineSteps('mL', [1, 0.1], 'floz', 'fl oz'),
    ],
    heap: [...stepsOf('cuyd', 'cu yd', [0.5, 0.25], 0.25), cubicFeet],
  },
  metric: {
    mass: [...stepsOf('kg', 'kg', [1, 0.5, 0.1, 0.01], 1), ...stepsOf('g', 'g', [10, 5, 1, 0.1])],
    volume: [...stepsOf('L', 'L', [1, 0.5, 0.1], 1), ...stepsOf('mL', 'mL', [10, 5, 1, 0.1])],
    heap: [...stepsOf('m3', 'm³', [0.5, 0.1, 0.05], 0.1)],
  },
};

/** The steps for an amount, coarse ones first. @param heap Whether it lies in a heap: compost, sand, soil by volume. */
export const stepsFor = (system: UnitSystem, by: Amount['by'], heap: boolean): readonly Step[] => [
  ...(heap && by === 'volume' ? steps[system].heap : []),
  ...steps[system][by],
];
