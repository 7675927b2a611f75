import type { Display } from '../base/display.ts';

/** A limit of the year on an area. What a label limits by volume stands in mL, with null in grams. */
export interface Limit {
  readonly name: string;
  /** Who sets it: the program, the place, or a label. */
  readonly by: 'program' | 'place' | 'label';
  readonly of: { readonly nutrient: string | null; readonly active: string | null; readonly product: string | null };
  readonly area: string;
  readonly plannedGPerM2: number | null;
  readonly doneGPerM2: number | null;
  readonly limitGPerM2: number | null;
  /** What may still be planned; never below 0. */
  readonly leftGPerM2: number | null;
  readonly plannedMlPerM2: number | null;
  readonly doneMlPerM2: number | null;
  readonly limitMlPerM2: number | null;
  readonly leftMlPerM2: number | null;
  readonly source: string | null;
  readonly ok: boolean;
}

/** The figures of a limit in the reader's units. */
interface LimitInWords {
  readonly planned: string;
  readonly done: string;
  readonly limit: string;
  readonly left: string;
}

/** What is planned, done, allowed and left: feeds on 1000 sqft, actives on an acre, as labels print them. */
export function limitInWords(limit: Limit, display: Display): LimitInWords {
  const perArea = (grams: number | null, mL: number | null): string => {
    if (grams === null) return display.volumeRate((mL ?? 0) / 1e6);
    return limit.of.active === null ? display.massRate(grams / 1000) : display.activeRate(grams / 1000);
  };
  return {
    planned: perArea(limit.plannedGPerM2, limit.plannedMlPerM2),
    done: perArea(limit.doneGPerM2, limit.doneMlPerM2),
    limit: perArea(limit.limitGPerM2, limit.limitMlPerM2),
    left: perArea(limit.leftGPerM2, limit.leftMlPerM2),
  };
}
