/** The pattern of a quantity against the reader of quantities, which knows nothing of it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Measure, parseQuantity } from '../../src/base/quantity.ts';
import { quantityPattern, type Sign } from '../../src/base/quantity-pattern.ts';
import { units } from '../../src/base/units.ts';
import { runs } from '../kit.ts';

const MEASURES: Measure[] = [
  ...new Set([...units.values()].map(({ dimension }) => dimension)),
  'mass per area',
  'volume per area',
  'density',
];
const patterns = new Map(MEASURES.map((measure) => [measure, new RegExp(quantityPattern([measure]), 'u')]));
const matches = (measure: Measure, text: string): boolean => (patterns.get(measure) as RegExp).test(text);

const space = fc.constantFrom('', ' ', '  ', '\t', '\n');
const name = fc.oneof(
  fc.constantFrom(...units.keys()),
  fc.constantFrom(
    'sq ft',
    'sq  yd',
    'sq m',
    'cu ft',
    'cu  yd',
    'cu m',
    'fl oz',
    'fl  oz',
    'sq',
    'oz fl',
    'bananas',
    'LB',
    'lb.',
    'm/h',
    '',
  ),
);
const digits = fc.constantFrom('0', '00', '0.0', '.0', '1', '12.', '.5', '3.25', '1000', '0.75', '1e3', '', '.', '1,5');
const sign = fc.constantFrom('', '', '-', '+', '--');
/** Sums, right and wrong. */
const summed = fc
  .tuple(space, sign, digits, space, name, space, sign, digits, space, name, space)
  .map((parts) => parts.join(''));
const together = fc
  .tuple(
    digits,
    fc.constantFrom('lb', 'pounds', 'ft', 'gal', 'h', 'kg'),
    space,
    digits,
    fc.constantFrom('oz', 'in', 'fl oz', 'min', 'g'),
  )
  .map((parts) => parts.join(''));
/** Texts like quantities, right and wrong. */
const single = fc
  .tuple(
    space,
    sign,
    digits,
    space,
    name,
    fc.option(fc.tuple(space, fc.constantFrom('/', '//', ' per '), space, digits, space, name)),
    space,
  )
  .map(([a, minus, number, b, unit, per, c]) => [a, minus, number, b, unit, ...(per ?? []), c].join(''));

const written = fc.oneof(single, single, summed, together);

describe.each(MEASURES)('the pattern of %s', (measure) => {
  test('takes what the reader takes, and nothing else', () => {
    fc.assert(
      fc.property(written, (text) => {
        expect(matches(measure, text), text).toBe('value' in parseQuantity(text, measure));
      }),
      { numRuns: runs(3000) },
    );
  });
  test('knows every name of a unit as the reader does', () => {
    const names = [...units.keys()];
    const known = names.filter((unit) => matches(measure, `2 ${unit}`));
    expect(known).toEqual(names.filter((unit) => 'value' in parseQuantity(`2 ${unit}`, measure)));
  });
});

test.each<[Sign, (value: number) => boolean]>([
  ['not negative', (value) => value >= 0],
  ['above 0', (value) => value > 0],
])('%s is what the number says', (which, takes) => {
  const pattern = new RegExp(quantityPattern(['length'], which), 'u');
  fc.assert(
    fc.property(sign, digits, (minus, number) => {
      for (const text of [`${minus}${number} cm`, `${minus}${number} ft ${number} in`, `0 ft ${number} in`]) {
        const read = parseQuantity(text, 'length');
        expect(pattern.test(text), text).toBe('value' in read && takes(read.value));
      }
    }),
  );
});

test('of two measures either will do', () => {
  const pattern = new RegExp(quantityPattern(['mass', 'volume']), 'u');
  expect(['2 lb', '2 gal', '2 ft'].map((text) => pattern.test(text))).toEqual([true, true, false]);
});
