import { parseQuantity } from '../base/quantity.ts';
import type { Kilograms } from '../base/units.ts';
import { type Analysis, ELEMENT_SHARE, type Nutrient, parseAnalysis } from '../model/nutrient.ts';

/**
 * Product that brings a rate of a nutrient to an area.
 *
 * @param want The nutrient and its rate as text, such as `1 lb/1000 sqft`; phosphorus and potassium as oxide or as element.
 * @param analysis The guaranteed analysis, such as `16-4-8`, or `16-1.7-6.6 elements`.
 * @param area As text, such as `5000 sqft`.
 * @returns Product for the whole area [kg] and on each square metre [g].
 * @throws RangeError for a text that is not what it should be, or a product without the nutrient.
 * @example productAmount({ nutrient: 'N', rate: '1 lb/1000 sqft' }, '16-4-8', '1000 sqft').kg //=> 2.835 (6.25 lb)
 */
export function productAmount(
  want: { readonly nutrient: Nutrient | 'P' | 'K'; readonly rate: string },
  analysis: string,
  area: string,
): { kg: Kilograms; gPerM2: number } {
  const shares = parseAnalysis(analysis);
  if (!shares) throw new RangeError(`"${analysis}" is not an analysis such as 16-4-8`);
  const share = shareOf[want.nutrient](shares);
  if (share === 0) throw new RangeError(`${analysis} contains no ${want.nutrient}`);
  const kgPerM2 = siOf(want.rate, 'mass per area') / share;
  return { kg: kgPerM2 * siOf(area, 'area'), gPerM2: kgPerM2 * 1000 };
}

const shareOf: Readonly<Record<Nutrient | 'P' | 'K', (shares: Analysis) => number>> = {
  N: ({ N }) => N,
  P2O5: ({ P2O5 }) => P2O5,
  P: ({ P2O5 }) => P2O5 * ELEMENT_SHARE.P2O5,
  K2O: ({ K2O }) => K2O,
  K: ({ K2O }) => K2O * ELEMENT_SHARE.K2O,
};

function siOf(text: string, measure: 'mass per area' | 'area'): number {
  const result = parseQuantity(text, measure);
  if ('fault' in result) throw new RangeError(`"${text}" is not of the measure ${measure}`);
  return result.value;
}
