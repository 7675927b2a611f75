import type { Dose } from '../amounts/product.ts';

import type { Day } from '../base/day.ts';
import { factorOf } from '../base/units.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Limit } from '../model/limit.ts';
import type { Limited } from '../model/local-rule.ts';
import type { Program } from '../model/program.ts';
import { broughtBy, type Counted } from './counted.ts';
import type { SeasonYear } from './season-year.ts';
import { isWithin, occurrencesOf, type Span, spanOf } from './spans.ts';

/** A limit: of the program (agronomy), of the place (law) or of a label. */
export interface Cap {
  readonly name: string;
  readonly counted: Counted;
  readonly per: 'application' | 'year';
  /** g/m², or mL/m² of a product that is counted by volume. */
  readonly limit: number;
  /** What counts together. */
  readonly span: Span;
  readonly by: Limit['by'];
  readonly source: string | null;
  /** Where the source is nothing that somebody wrote down: the product of the label, or the reason. */
  readonly because?: { readonly label: string } | 'lime-at-once';
  /** Whether what does not fit whole is left out: less of a pesticide than its label's rate may do nothing. */
  readonly whole: boolean;
  /** Whether it gives way to a step that goes by a soil test: the rate of that is the most at a time by itself. */
  readonly unlessTested?: boolean;
}

type Made = Omit<Cap, 'span'>;

function made(
  name: string,
  nutrient: Limited,
  per: Cap['per'],
  limit: number | undefined,
  more?: Partial<Made>,
): Made[] {
  if (limit === undefined) return [];
  const counted = { kind: 'nutrient', nutrient } as const;
  return [{ name, counted, per, limit: 1000 * limit, by: 'program', source: null, whole: false, ...more }];
}

/**
 * The limits of the place: those of a season for each season, those of a period for each time it comes round.
 *
 * @param days Days on which something is to be put down: work of a season may come after its last day.
 */
export function legalCaps({ localRules = [] }: Lawn, seasons: readonly SeasonYear[], days: readonly Day[]): Cap[] {
  return localRules.flatMap((rule) => {
    if (!('limit' in rule)) return [];
    const more = { by: 'place', source: rule.because ?? null } as const;
    const name = NAMES[rule.limit];
    const caps = [
      ...made(`${name}-yearly-local`, rule.limit, 'year', rule.yearly, more),
      ...made(`${name}-single-local`, rule.limit, 'application', rule.single, more),
    ];
    const spans = rule.between ? occurrencesOf(rule.between, seasons, days) : seasons.map(spanOf);
    return spans.flatMap((span) => caps.map((cap) => ({ ...cap, span })));
  });
}

/** The limits of a program in a season, on a lawn. */
export function programCaps(program: Program, lawn: Lawn, season: SeasonYear): Cap[] {
  const { yearly, single } = program.nitrogen ?? {};
  const ownLime = (lawn.localRules ?? []).some((rule) => 'limit' in rule && rule.limit === 'lime' && rule.single);
  const lime = { because: 'lime-at-once', unlessTested: true } as const;
  const source = single?.source ?? null;
  return [
    ...made('lime-single', 'lime', 'application', ownLime ? undefined : LIME_AT_ONCE, lime),
    ...made('nitrogen-yearly', 'N', 'year', yearly?.to, { source: yearly?.source ?? null }),
    ...made('nitrogen-single', 'N', 'application', single?.total, { source }),
    ...made('quick-nitrogen-single', 'quick-N', 'application', single?.quick, { source }),
  ].map((cap) => ({ ...cap, span: spanOf(season) }));
}

/**
 * The most lime on the surface of standing turf at once: 50 lb/1000 ft². Univ. of Maryland Extension, "Liming your lawn";
 * Purdue AY-18 has 100 on turf that is cut high, which a lawn may set in its place.
 */
const LIME_AT_ONCE = (50 * factorOf('lb')) / (1000 * factorOf('sqft'));

const NAMES: Readonly<Record<Limited, string>> = {
  N: 'nitrogen',
  'quick-N': 'quick-nitrogen',
  P2O5: 'phosphate',
  K2O: 'potash',
  lime: 'lime',
};

/** One application on one area, on its day. */
export interface Use {
  readonly day: Day;
  /** The season that it belongs to; null for work of the journal outside those of the plan. */
  readonly season: SeasonYear | null;
  readonly dose: Dose;
  /** Whether its step goes by a soil test. */
  readonly tested?: boolean;
  /** The share that is put down in the end where so much is held: of work that is half done, what is down and the rest. */
  readonly inAll?: (held: Share) => number;
}

/** What is put down of a dose, and the cap that held it below the whole. */
export interface Share {
  /** 0 to 1. */
  readonly share: number;
  readonly cap: Cap | null;
  /** Whether less than rounding would add is left of some cap. */
  readonly tight: boolean;
}

/** A dose that nothing holds back. */
export const WHOLE: Share = { share: 1, cap: null, tight: false };

const HAIR = 1e-9;
/** More than rounding an amount to a measure may add to it. */
const ROUNDING = 1.02;

/**
 * How much of each planned use stays inside every cap, in the order of their days.
 *
 * @param done What the journal has put down already.
 */
export function cappedShares(planned: readonly Use[], done: readonly Use[], caps: readonly Cap[]): readonly Share[] {
  const sums = new Map(caps.map((cap) => [cap, sumOf(done, cap)]));
  const shares = new Map<Use, Share>();
  for (const use of [...planned].sort((a, b) => a.day - b.day)) {
    let held: Share = { share: 1, cap: null, tight: false };
    let most = Number.POSITIVE_INFINITY;
    const holding = caps.filter((cap) => isWithin(use, cap.span) && !(cap.unlessTested && use.tested));
    for (const cap of holding) {
      const brought = broughtBy(use.dose, cap.counted);
      // A limit that is over already has less than no room, which what brings nothing of it does not ask for.
      if (brought <= 0) continue;
      const room = cap.per === 'year' ? cap.limit - (sums.get(cap) ?? 0) : cap.limit;
      const share = brought <= room + HAIR ? 1 : cap.whole ? 0 : Math.max(0, room / brought);
      most = Math.min(most, room / brought);
      if (share < held.share) held = { share, cap, tight: true };
    }
    const share: Share = { ...held, tight: held.tight || most < held.share * ROUNDING };
    const inAll = use.inAll?.(share) ?? share.share;
    for (const cap of caps) {
      if (!isWithin(use, cap.span)) continue;
      sums.set(cap, (sums.get(cap) ?? 0) + inAll * broughtBy(use.dose, cap.counted));
    }
    shares.set(use, share);
  }
  return planned.map((use) => shares.get(use) as Share);
}

/** What uses bring of what a cap counts, on the days that it counts. */
export const sumOf = (uses: readonly Use[], { counted, span }: Cap): number =>
  uses.reduce((total, use) => total + (isWithin(use, span) ? broughtBy(use.dose, counted) : 0), 0);
