import { type Dose, nutrientsOf, quickNitrogen } from '../amounts/product.ts';
import type { Day, MonthDay } from '../base/day.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Limited } from '../model/local-rule.ts';
import type { Program } from '../model/program.ts';
import { inPeriod } from './rules/local.ts';

/** A limit on a nutrient: of the program (agronomy) or of the place (law). */
export interface Cap {
  readonly name: string;
  readonly nutrient: Limited;
  readonly per: 'application' | 'year';
  readonly limitGPerM2: number;
  /** The days of the year that count; all of them where it is left out. */
  readonly between: readonly [MonthDay, MonthDay] | undefined;
  readonly source: string | null;
}

/** The limits that hold for a program's steps on a lawn. */
export function capsOf(program: Program, lawn: Lawn): readonly Cap[] {
  const { yearly, single } = program.nitrogen ?? {};
  const cap = (name: string, nutrient: Limited, per: Cap['per'], limit: number | undefined, more?: Partial<Cap>) =>
    limit === undefined
      ? []
      : [{ name, nutrient, per, limitGPerM2: 1000 * limit, between: undefined, source: null, ...more }];
  const legal = (lawn.localRules ?? []).flatMap((rule) => {
    if (!('limit' in rule)) return [];
    const more = { between: rule.between, source: rule.because ?? null };
    const name = NAMES[rule.limit];
    return [
      ...cap(`${name}-yearly-local`, rule.limit, 'year', rule.yearly, more),
      ...cap(`${name}-single-local`, rule.limit, 'application', rule.single, more),
    ];
  });
  return [
    ...cap('nitrogen-yearly', 'N', 'year', yearly?.to, { source: yearly?.source ?? null }),
    ...cap('nitrogen-single', 'N', 'application', single?.total, { source: single?.source ?? null }),
    ...cap('quick-nitrogen-single', 'quick-N', 'application', single?.quick, { source: single?.source ?? null }),
    ...legal,
  ];
}

const NAMES: Readonly<Record<Limited, string>> = {
  N: 'nitrogen',
  'quick-N': 'quick-nitrogen',
  P2O5: 'phosphate',
  K2O: 'potash',
};

/** What a dose brings of what a cap limits [g/m²]. */
export const broughtBy = (dose: Dose, nutrient: Limited): number =>
  nutrient === 'quick-N' ? quickNitrogen(dose) : nutrientsOf(dose)[nutrient];

/** One application on one area, on its day. */
export interface Use {
  readonly day: Day;
  readonly dose: Dose;
}

/** What is put down of a dose, and the cap that held it below the whole. */
export interface Share {
  /** 0 to 1. */
  readonly share: number;
  readonly cap: Cap | null;
}

const HAIR = 1e-9;

/**
 * How much of each planned use stays inside every cap, in the order of their days.
 *
 * @param done What the journal has put down already.
 */
export function cappedShares(planned: readonly Use[], done: readonly Use[], caps: readonly Cap[]): readonly Share[] {
  const sums = new Map(
    caps.map((cap) => [
      cap,
      sum(
        done.filter(({ day }) => inPeriod(day, cap.between)),
        cap.nutrient,
      ),
    ]),
  );
  const shares = new Map<Use, Share>();
  for (const use of [...planned].sort((a, b) => a.day - b.day)) {
    let held: Share = { share: 1, cap: null };
    for (const cap of caps.filter(({ between }) => inPeriod(use.day, between))) {
      const brought = broughtBy(use.dose, cap.nutrient);
      const room = cap.per === 'year' ? cap.limitGPerM2 - (sums.get(cap) ?? 0) : cap.limitGPerM2;
      const share = brought <= room + HAIR ? 1 : Math.max(0, room / brought);
      if (share < held.share) held = { share, cap };
    }
    for (const cap of caps) {
      if (!inPeriod(use.day, cap.between)) continue;
      sums.set(cap, (sums.get(cap) ?? 0) + held.share * broughtBy(use.dose, cap.nutrient));
    }
    shares.set(use, held);
  }
  return planned.map((use) => shares.get(use) as Share);
}

const sum = (uses: readonly Use[], nutrient: Limited): number =>
  uses.reduce((total, { dose }) => total + broughtBy(dose, nutrient), 0);
