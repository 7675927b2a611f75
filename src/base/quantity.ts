import { closest, distance } from 'fastest-levenshtein';
import { type Dimension, said, type Unit, unitNames, units } from './units.ts';

/** Measures that are one dimension on another. */
export const ratios = {
  'mass per area': ['mass', 'area'],
  'volume per area': ['volume', 'area'],
  density: ['mass', 'volume'],
} as const satisfies Record<string, readonly [of: Dimension, per: Dimension]>;

/** What a quantity measures: a plain dimension, or an amount on an area. */
export type Measure = Dimension | keyof typeof ratios;

/** Why a text is not the quantity that was asked for. */
export type QuantityFault =
  | { readonly fault: 'form' }
  | { readonly fault: 'comma'; readonly instead: string }
  | { readonly fault: 'unit'; readonly unit: string; readonly nearest: string | null }
  | { readonly fault: 'measure'; readonly found: Measure };

/** A quantity in SI with the unit it was written in, or what is wrong with the text. */
export type QuantityResult = { readonly value: number; readonly unit: string } | QuantityFault;

/** The forms of the number of a quantity, and of the one after its stroke. */
export const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)`;
export const PER = String.raw`\d+(?:\.\d+)?`;

const FORM = new RegExp(
  String.raw`^(${NUMBER})\s*([^\s\d/][^\s/]*(?:/(?:h|s))?)(?:\s*/\s*(${PER})?\s*([^\s\d/][^\s/]*))?$`,
);

/** Two numbers with their units, the larger unit first. */
const SUM = new RegExp(String.raw`^(${PER})\s*([^\s\d/]+)\s*(${PER})\s*([^\s\d/]+)$`);
/** Units that are said together, by their factors. */
const together = new Set(
  said.flatMap(([large, small]) => small.map((name) => `${units.get(large)?.factor} ${units.get(name)?.factor}`)),
);

/**
 * Reads a quantity with its unit, such as `50 F`, `2 in`, `6 weeks` or `0.75 lb/1000 sqft`, into SI; a sum such as
 * `5 lb 10 oz` too.
 *
 * @param text As it stands in a file. Spaces between number and unit are free; `sq ft`, `cu ft` and `fl oz` may have one.
 * @param measure What it has to measure.
 * @returns The SI value and the unit's name as written, or the fault: form, a comma, unknown unit, or a unit of something else.
 * @example parseQuantity('1 lb/1000 sqft', 'mass per area') //=> { value: 0.00488243…, unit: 'lb/sqft' }
 */
export function parseQuantity(text: string, measure: Measure): QuantityResult {
  const tidy = text
    .trim()
    .replace(/(?<![a-z])sq\s+(ft|yd|m)\b/g, 'sq$1')
    .replace(/(?<![a-z])cu\s+(ft|yd)\b/g, 'cu$1')
    .replace(/(?<![a-z])fl\s+oz\b/g, 'floz');
  const sum = sumOf(tidy, measure);
  if (sum) return sum;
  const match = FORM.exec(tidy);
  if (!match) return commaIn(tidy, measure) ?? { fault: 'form' };
  const [, number = '', name = '', per, perName] = match;
  const unit = units.get(name);
  if (!unit) return { fault: 'unit', unit: name, nearest: nearestWord(name, [...units.keys()]) };
  if (perName === undefined) {
    if (unit.dimension !== measure) return { fault: 'measure', found: unit.dimension };
    return finite(Number(number) * unit.factor + (unit.offset ?? 0), name);
  }
  const perUnit = units.get(perName);
  if (!perUnit) return { fault: 'unit', unit: perName, nearest: nearestWord(perName, unitNames('area')) };
  const found = ratio(unit, perUnit);
  if (found === null) return { fault: 'form' };
  if (found !== measure) return { fault: 'measure', found };
  return finite((Number(number) * unit.factor) / (Number(per ?? 1) * perUnit.factor), `${name}/${perName}`);
}

/** A sum of two units that are said together; null where the text is none. */
function sumOf(tidy: string, measure: Measure): QuantityResult | null {
  const [, number = '', name = '', more, moreName = ''] = SUM.exec(tidy) ?? [];
  const [large, small] = [units.get(name), units.get(moreName)];
  if (!large || large.dimension !== small?.dimension || !together.has(`${large.factor} ${small.factor}`)) return null;
  if (large.dimension !== measure) return { fault: 'measure', found: large.dimension };
  return finite(Number(number) * large.factor + Number(more) * small.factor, name);
}

/** What a number with a comma most likely means: thousands, or a share; null where it is not the comma alone. */
function commaIn(tidy: string, measure: Measure): QuantityFault | null {
  if (!/^[+-]?\d+,\d/.test(tidy)) return null;
  const thousands = /^[+-]?[1-9]\d{0,2}(,\d{3})+(?![\d,])/.test(tidy);
  const instead = thousands ? tidy.replaceAll(',', '') : tidy.replace(',', '.');
  return !instead.includes(',') && 'value' in parseQuantity(instead, measure) ? { fault: 'comma', instead } : null;
}

/** A number too long to hold, or an amount on no area, is no quantity. */
const finite = (value: number, unit: string): QuantityResult =>
  Number.isFinite(value) ? { value, unit } : { fault: 'form' };

function ratio(unit: Unit, per: Unit): Measure | null {
  const names = Object.keys(ratios) as (keyof typeof ratios)[];
  return names.find((name) => ratios[name][0] === unit.dimension && ratios[name][1] === per.dimension) ?? null;
}

const examples: Record<Measure, string> = {
  length: 'a length such as 5 cm or 2 in',
  area: 'an area such as 5000 sqft or 450 m2',
  volume: 'a volume such as 2 gal or 5 L',
  mass: 'a weight such as 40 lb or 18 kg',
  temperature: 'a temperature such as 50 F or 10 C',
  speed: 'a speed such as 5 mph or 8 km/h',
  duration: 'a duration such as 5 d or 6 weeks',
  share: 'a percentage such as 25%',
  'mass per area': 'a rate such as 0.75 lb/1000 sqft or 3.7 g/m2',
  'volume per area': 'a rate such as 1 gal/1000 sqft or 40 L/ha',
  density: 'a density such as 10 lb/gal or 1.2 kg/L',
};

/** The measure in words, with an example, for a message. */
export const expectedOf = (measure: Measure): string => examples[measure];

/** The candidate that a misspelt word most likely means; null where none is near. @example nearestWord('relase', ['release']) //=> 'release' */
export function nearestWord(word: string, candidates: readonly string[]): string | null {
  if (candidates.length === 0) return null;
  const caseless = candidates.find((candidate) => candidate.toLowerCase() === word.toLowerCase());
  if (caseless) return caseless;
  const best = closest(word, candidates as string[]);
  return distance(word, best) <= Math.max(1, Math.floor(Math.max(word.length, best.length) / 3)) ? best : null;
}
