import * as v from 'valibot';
import { map, maybe, parsed, positive } from './fields.ts';
import { atMostOneOf, standing } from './standing.ts';

/** Nutrients as shares of the product's weight: nitrogen, phosphate (P2O5), potash (K2O). */
export interface Analysis {
  readonly N: number;
  readonly P2O5: number;
  readonly K2O: number;
}

export type Nutrient = keyof Analysis;

/** P2O5 to P, K2O to K, by the atomic masses of IUPAC 2021: P 30.974, K 39.098, O 15.999. */
export const ELEMENT_SHARE = {
  P2O5: (2 * 30.974) / (2 * 30.974 + 5 * 15.999),
  K2O: (2 * 39.098) / (2 * 39.098 + 15.999),
} as const;

const FORM = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)( elements)?$/;

/**
 * Reads the guaranteed analysis in percent by weight, at most 100 together: `16-4-8` is nitrogen, phosphate and potash, as in
 * North America and Europe; `16-1.7-6.6 elements` nitrogen, phosphorus and potassium, as in Australia and South Africa.
 *
 * @returns Null for anything else.
 */
export function parseAnalysis(written: string): Analysis | null {
  const match = FORM.exec(written);
  if (!match) return null;
  const [N = 0, P = 0, K = 0] = match.slice(1, 4).map((percent) => Number(percent) / 100);
  if (N + P + K > 1) return null;
  return match[4] === undefined
    ? { N, P2O5: P, K2O: K }
    : { N, P2O5: P / ELEMENT_SHARE.P2O5, K2O: K / ELEMENT_SHARE.K2O };
}

export const analysis = parsed<Analysis>(
  'out-of-range',
  'an analysis such as 16-4-8, in percent, at most 100 together',
  '^\\d+(\\.\\d+)?-\\d+(\\.\\d+)?-\\d+(\\.\\d+)?( elements)?$',
  parseAnalysis,
);

const massRate = positive('mass per area');

/** Rates of nutrients, phosphorus and potassium as oxides or as elements; the model has oxides. */
export const nutrientRates = v.pipe(
  map({ N: maybe(massRate), P2O5: maybe(massRate), P: maybe(massRate), K2O: maybe(massRate), K: maybe(massRate) }),
  standing('nutrient-twice', atMostOneOf('P2O5', 'P'), atMostOneOf('K2O', 'K')),
  v.transform(({ N, P2O5, P, K2O, K }): Readonly<Partial<Record<Nutrient, number>>> => {
    const [phosphate, potash] = [P2O5 ?? asOxide(P, 'P2O5'), K2O ?? asOxide(K, 'K2O')];
    return {
      ...(N !== undefined && { N }),
      ...(phosphate !== undefined && { P2O5: phosphate }),
      ...(potash !== undefined && { K2O: potash }),
    };
  }),
);

/** The oxide that an element is counted as. */
const asOxide = (rate: number | undefined, oxide: keyof typeof ELEMENT_SHARE): number | undefined =>
  rate === undefined ? undefined : rate / ELEMENT_SHARE[oxide];
