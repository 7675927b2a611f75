import { type Measure, NUMBER, PER, ratios } from './quantity.ts';
import { type Dimension, factorOf, said, units } from './units.ts';

/** Which numbers a quantity may have. */
export type Sign = 'any' | 'not negative' | 'above 0';

/** Looks ahead at the number: a minus before a digit other than 0, a digit other than 0 without one. */
const SIGNS: Record<Sign, string> = {
  any: '',
  'not negative': String.raw`(?!-[\d.]*[1-9])`,
  'above 0': String.raw`(?=\+?[\d.]*[1-9])`,
};

/** The number of a sum bears no sign, so it is above 0 where any digit is. */
const SUM_SIGNS: Record<Sign, string> = { any: '', 'not negative': '', 'above 0': String.raw`(?=[\s\S]*[1-9])` };

/** Every name of a dimension's units, or of one of them, the longer ones first; those that are written in two words may be. */
function namesOf(dimension: Dimension, factor?: number): string {
  const names = [...units].flatMap(([name, unit]) =>
    unit.dimension === dimension && (factor === undefined || unit.factor === factor) ? [name] : [],
  );
  const patterns = names
    .sort((a, b) => b.length - a.length)
    .map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`))
    .map((name) => name.replace(/^(sq|cu)(ft|yd|m)$/, String.raw`$1\s*$2`).replace(/^floz$/, String.raw`fl\s*oz`));
  return `(?:${patterns.join('|')})`;
}

/** Sums of two units that are said together. */
const sumsOf = (measure: Measure): string[] =>
  said
    .filter(([large]) => units.get(large)?.dimension === measure)
    .map(([large, small]) => {
      const named = (name: string) => namesOf(measure as Dimension, factorOf(name));
      return String.raw`${named(large)}\s*${PER}\s*(?:${small.map(named).join('|')})`;
    });

const unitOf = (measure: Measure): string => {
  if (!(measure in ratios)) return namesOf(measure as Dimension);
  const [of, per] = ratios[measure as keyof typeof ratios];
  return String.raw`${namesOf(of)}\s*/\s*(?:(?=[\d.]*[1-9])${PER})?\s*${namesOf(per)}`;
};

/**
 * A regular expression for the texts that `parseQuantity` reads as one of some measures.
 *
 * @param sign Which numbers are taken; of no use for temperatures, whose scales begin at different points.
 * @returns Its source, for a JSON Schema. Numbers too large for a machine match as well.
 * @example new RegExp(quantityPattern(['length'])).test('2 in') //=> true
 */
export function quantityPattern(measures: readonly Measure[], sign: Sign = 'any'): string {
  const one = String.raw`${SIGNS[sign]}${NUMBER}\s*(?:${measures.map(unitOf).join('|')})`;
  const sums = measures.flatMap(sumsOf);
  if (sums.length === 0) return String.raw`^\s*${one}\s*$`;
  return String.raw`^\s*(?:${one}|${SUM_SIGNS[sign]}${PER}\s*(?:${sums.join('|')}))\s*$`;
}
