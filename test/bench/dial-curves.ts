/** Simulated spreaders, and how the advice does on them. What the code may not know stands here alone. */
import { adviseSetting, type DialRecord, SHARE } from '../../src/amounts/dial/advise.ts';
import { secondPass } from '../../src/amounts/dial/second-pass.ts';
import { normal, type Random, seeded } from '../../src/base/random.ts';

/** Expected rate at a share of the dial, up to a factor. */
type Curve = (share: number) => number;

export const FAMILIES: Readonly<Record<string, (random: Random) => Curve>> = {
  /** k(s − s0)^p, p in 1 to 2, s0 in 0 to 10 % of the dial. */
  power: (random) => {
    const [power, begins] = [1 + random(), 0.1 * random()];
    return (share) => Math.max(1e-9, share - begins) ** power;
  },
  /** A round hole that a round hole slides over. */
  holes: (random) => {
    const begins = 0.1 * random();
    return (share) => {
      const apart = 1 - Math.max(0, Math.min(1, (share - begins) / (1 - begins)));
      return Math.max(1e-9, Math.acos(apart) - apart * Math.sqrt(1 - apart * apart));
    };
  },
  /** An opening that flattens out towards the end of the dial. */
  flattening: (random) => {
    const power = 1 + random();
    return (share) => 1 - Math.exp(-1.5 * share ** power);
  },
};

/** Dials of the bench: turned as good as freely, and with fifteen marks. */
export const FINE = { from: 0, to: 100, step: 0.1 };
export const FIFTEEN = { from: 0, to: 15, step: 1 };

const NOISE = 0.05;
export const PASSES = [1, 2, 3, 4, 5] as const;

/** What came of one pass over all curves. */
export interface PassResult {
  readonly pass: number;
  /** Shares of the curves whose expected rate is so near its target. */
  readonly within5: number;
  readonly within10: number;
  /** Share whose expected rate is more than 10 % above its target. */
  readonly over10: number;
  /** Share whose expected rate lies in the range that was stated; null where none was. */
  readonly held: number | null;
  readonly kept: number;
  readonly stated: number;
}

export interface Trial {
  readonly family: string;
  readonly dial: { readonly from: number; readonly to: number; readonly step: number };
  readonly curves: number;
  readonly seed: number;
  /** Whether every second pass makes up for the first, or aims at its own half. */
  readonly making: boolean;
}

interface One {
  readonly off: number;
  readonly held: boolean | null;
  readonly kept: boolean;
}

/** How near the target the nearest mark of a dial lies for one who knows the curve: shares within 5 and 10 %. */
export function nearestMarks({ family, dial, curves, seed }: Omit<Trial, 'making'>): readonly [number, number] {
  const random = seeded(seed);
  const make = FAMILIES[family] as (random: Random) => Curve;
  const offs = Array.from({ length: curves }, () => {
    const curve = make(random);
    const at = (0.3 + 0.45 * random()) * dial.to;
    const marks = [Math.floor(at / dial.step), Math.ceil(at / dial.step)].map((count) => count * dial.step);
    return Math.min(...marks.map((mark) => Math.abs(curve(mark / dial.to) / curve(at / dial.to) - 1)));
  });
  const share = (most: number) => offs.filter((off) => off <= most).length / curves;
  return [share(0.05), share(0.1)];
}

/** Five passes on each of many curves: counted is the expected rate at the setting advised, not the one drawn. */
export function passesOn({ family, dial, curves, seed, making }: Trial): PassResult[] {
  const random = seeded(seed);
  const make = FAMILIES[family] as (random: Random) => Curve;
  const runs = Array.from({ length: curves }, () => {
    const curve = make(random);
    const half = curve(0.3 + 0.45 * random());
    return fivePasses((setting) => curve(setting / dial.to), half, dial, making, random);
  });
  return PASSES.map((pass) => {
    const ones = runs.map((run) => run[pass - 1] as One);
    const share = (test: (one: One) => boolean) => ones.filter(test).length / curves;
    return {
      pass,
      within5: share(({ off }) => Math.abs(off) <= 0.05),
      within10: share(({ off }) => Math.abs(off) <= 0.1),
      over10: share(({ off }) => off > 0.1),
      held: ones[0]?.held === null ? null : share(({ held }) => held === true),
      kept: share(({ kept }) => kept),
      stated: SHARE,
    };
  });
}

function fivePasses(
  expected: (setting: number) => number,
  half: number,
  dial: Trial['dial'],
  making: boolean,
  random: Random,
): One[] {
  const records: DialRecord[] = [];
  return PASSES.map((pass) => {
    const first = records.at(-1)?.rate ?? 0;
    const second = making && pass % 2 === 0;
    const halfway = { whole: 2 * half, delivered: first, labelMost: null, pesticide: false };
    const target = second ? secondPass(halfway).target : half;
    const advice = adviseSetting(records, dial, target, { rounding: 'nearest', most: null });
    const setting = advice.setting as number;
    const rate = expected(setting);
    records.push({ date: pass, setting, rate: rate * Math.max(0.3, 1 + NOISE * normal(random)) });
    const { rate: range } = advice;
    const held = range === null ? null : rate >= range.low && rate <= range.high;
    return { off: target > 0 ? rate / target - 1 : 0, held, kept: advice.basis === 'keep' };
  });
}
