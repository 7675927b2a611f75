import type { Display } from '../base/display.ts';

/** A limit of the year on an area. What a label limits by volume stands in mL, with null in grams. */
export interface Limit {
  readonly name: string;
  /** Who sets it: the program, the place, or a label. */
  readonly by: 'program' | 'place' | 'label';
  readonly of: { readonly nutrient: string | null; readonly active: string | null; readonly product: string | null };
  readonly area: string;
  /** The first and the last day that count; null where a season counts. */
  readonly from: string | null;
  readonly to: string | null;
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

/** A rate that a limit counts, in the reader's units: feeds on 1000 sqft, actives on an acre, as labels print them. @param value g/m², of a volume mL/m². */
export function limitRate(value: number, of: 'whole' | 'active' | 'volume', display: Display): string {
  if (of === 'volume') return display.volumeRate(value / 1e6);
  return of === 'active' ? display.activeRate(value / 1000) : display.massRate(value / 1000);
}

/** What is planned, done, allowed and left. */
export function limitInWords(limit: Limit, display: Display): LimitInWords {
  const of = limit.of.active === null ? 'whole' : 'active';
  const perArea = (grams: number | null, mL: number | null): string =>
    limitRate(grams ?? mL ?? 0, grams === null ? 'volume' : of, display);
  return {
    planned: perArea(limit.plannedGPerM2, limit.plannedMlPerM2),
    done: perArea(limit.doneGPerM2, limit.doneMlPerM2),
    limit: perArea(limit.limitGPerM2, limit.limitMlPerM2),
    left: perArea(limit.leftGPerM2, limit.leftMlPerM2),
  };
}
