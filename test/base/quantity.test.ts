import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectedOf, type Measure, nearestWord, parseQuantity } from '../../src/base/quantity.ts';
import { type Dimension, factorOf, unitNames, units } from '../../src/base/units.ts';

const inSi = (text: string, measure: Measure): number => {
  const result = parseQuantity(text, measure);
  if ('fault' in result) throw new Error(`${text}: ${JSON.stringify(result)}`);
  return result.value;
};

describe('factors', () => {
  // NIST SP 811 (2008), appendix B; the yard and the pound are exact by the agreement of 1959: 0.9144 m, 0.45359237 kg.
  test.each<[string, Measure, number]>([
    ['1 ft', 'length', 0.3048],
    ['1 in', 'length', 0.0254],
    ['1 yd', 'length', 0.9144],
    ['1 mi', 'length', 1609.344],
    ['1 sqft', 'area', 0.09290304],
    ['1 sqyd', 'area', 0.83612736],
    // The acre of 43,560 sqft in international feet; SP 811 prints 4046.873 for U.S. survey feet, 2 parts in a million more.
    ['1 acre', 'area', 4046.8564224],
    ['1 ha', 'area', 10_000],
    ['1 gal', 'volume', 0.003785411784],
    ['1 cuft', 'volume', 0.028316846592],
    ['1 qt', 'volume', 0.000946352946],
    ['1 pt', 'volume', 0.000473176473],
    ['1 fl oz', 'volume', 0.0000295735295625],
    ['1 L', 'volume', 0.001],
    ['1 lb', 'mass', 0.45359237],
    ['1 oz', 'mass', 0.028349523125],
    ['1 ton', 'mass', 907.18474],
    ['1 t', 'mass', 1000],
    ['1 mph', 'speed', 0.44704],
    ['1 km/h', 'speed', 1 / 3.6],
    ['1 kn', 'speed', 1852 / 3600],
    ['1 week', 'duration', 7],
    ['12 h', 'duration', 0.5],
    ['25%', 'share', 0.25],
    ['1 lb/1000 sqft', 'mass per area', 0.45359237 / 92.90304],
    ['1 lb/acre', 'mass per area', 0.45359237 / 4046.8564224],
    ['1 kg/ha', 'mass per area', 0.0001],
    ['1 g/m2', 'mass per area', 0.001],
    ['1 gal/1000 sqft', 'volume per area', 0.003785411784 / 92.90304],
    ['40 L/ha', 'volume per area', 0.000004],
    ['10 lb/gal', 'density', 4.5359237 / 0.003785411784],
    ['1.2 kg/L', 'density', 1200],
  ])('%s (%s) is %d in SI', (text, measure, value) => {
    expect(inSi(text, measure) / value).toBeCloseTo(1, 12);
  });
  test.each([
    ['32 F', 0],
    ['212 F', 100],
    ['-40 F', -40],
    ['50 °F', 10],
    ['10 C', 10],
    ['-3.5 °C', -3.5],
  ])('%s in °C is %d', (text, celsius) => expect(inSi(text, 'temperature')).toBeCloseTo(celsius, 12));
  test('an acre is 43,560 sqft', () => expect(factorOf('acre') / factorOf('sqft')).toBeCloseTo(43_560, 8));
  test('a gallon is 128 fl oz', () => expect(factorOf('gal') / factorOf('floz')).toBe(128));
});

describe('parseQuantity', () => {
  const all = [...units].map(([alias, { dimension }]) => [alias, dimension] as const);

  test('knows at least 60 names of units', () => expect(all.length).toBeGreaterThan(60));
  test.each(all)('reads "3 %s" and without the space', (alias, dimension) => {
    expect(inSi(`3 ${alias}`, dimension)).toBe(inSi(`3${alias}`, dimension));
  });
  test.each(all.filter(([, dimension]) => dimension === 'area'))('reads 1 kg/%s', (alias) => {
    expect(inSi(`1 kg/${alias}`, 'mass per area')).toBeCloseTo(1 / factorOf(alias), 12);
  });
  test.each([
    ['sq ft with a space', '5 sq ft', 'area', '5 sqft'],
    ['fl oz with a space', '5 fl oz', 'volume', '5 floz'],
    ['cu yd with a space', '5 cu yd', 'volume', '5 cuyd'],
    ['cu ft with a space', '5 cu ft', 'volume', '5 cuft'],
    ['sq ft with its only space inside', '4200sq ft', 'area', '4200 sqft'],
    ['fl oz with its only space inside', '5fl oz', 'volume', '5 floz'],
    ['fl oz on an area', '5 fl oz/1000 sq ft', 'volume per area', '5 floz/1000 sqft'],
    ['spaces around the stroke', '5 lb / 1000 sqft', 'mass per area', '5 lb/1000sqft'],
    ['spaces around it all', '  5 lb  ', 'mass', '5 lb'],
    ['a plus sign', '+5 lb', 'mass', '5 lb'],
    ['a point first', '.5 lb', 'mass', '0.5 lb'],
    ['a point last', '5. lb', 'mass', '5 lb'],
  ] as const)('reads %s', (_, text, measure, same) => {
    expect(inSi(text, measure)).toBe(inSi(same, measure));
  });
  test.each([
    '5',
    'lb',
    '',
    '1e3 lb',
    '1,5 feet',
    '1,5,2 lb',
    '5 lb 10',
    '5 lb -10 oz',
    '-5 lb 10 oz',
    '10 oz 5 lb',
    '5 lb 10 floz',
    '5 lb 10 oz 3 g',
    '1/2 lb',
    '5 lb/1000',
    '5 lb/m2/m2',
    '5 lb/-1 sqft',
    '--5 lb',
    '5 ft/1000 sqft',
    `${'9'.repeat(400)} lb`,
    'Infinity lb',
    'NaN lb',
    '5 lb or so',
  ])('"%s" has not the form of a quantity', (text) => {
    expect(parseQuantity(text.slice(0, 420), 'mass')).toEqual({ fault: 'form' });
  });
  test.each([
    ['5 lb 10 oz', 'mass', 5 * 0.45359237 + 10 * 0.028349523125],
    ['5lb10oz', 'mass', 5 * 0.45359237 + 10 * 0.028349523125],
    ['0 pounds 2.5 ounces', 'mass', 2.5 * 0.028349523125],
    ['2 kg 350 g', 'mass', 2.35],
    ['12 ft 6 in', 'length', 12.5 * 0.3048],
    ['1 gal 20 fl oz', 'volume', (148 / 128) * 0.003785411784],
    ['1 h 30 min', 'duration', 1.5 / 24],
  ] as const)('"%s" is a sum', (text, measure, value) => expect(inSi(text, measure)).toBeCloseTo(value, 12));
  test('a sum of another measure is told as such', () => {
    expect(parseQuantity('5 lb 10 oz', 'volume')).toEqual({ fault: 'measure', found: 'mass' });
  });
  test.each([
    ['1,5 lb', '1.5 lb'],
    ['1,500 lb', '1500 lb'],
    ['12,345,678 lb', '12345678 lb'],
    ['0,750 lb', '0.750 lb'],
  ])('the comma in "%s" is told, with what to write', (text, instead) => {
    expect(parseQuantity(text, 'mass')).toEqual({ fault: 'comma', instead });
  });
  test('a rate on no area has not the form of a quantity', () => {
    expect(parseQuantity('5 lb/0 sqft', 'mass per area')).toEqual({ fault: 'form' });
  });
  test.each([
    ['5 lbz', 'mass', 'lbz', 'lb'],
    ['5 LB', 'mass', 'LB', 'lb'],
    ['50 f', 'temperature', 'f', 'F'],
    ['5 galon', 'volume', 'galon', 'gallon'],
    ['5 lb/1000 sqfr', 'mass per area', 'sqfr', 'sqft'],
    ['5 furlongs', 'length', 'furlongs', null],
    ['5 __proto__', 'length', '__proto__', null],
    ['5 constructor', 'length', 'constructor', null],
  ] as const)('"%s" has an unknown unit and the nearest is named', (text, measure, unit, nearest) => {
    expect(parseQuantity(text, measure)).toEqual({ fault: 'unit', unit, nearest });
  });
  test.each([
    ['0.9 lb', 'mass per area', 'mass'],
    ['5 cm', 'temperature', 'length'],
    ['5 oz', 'volume', 'mass'],
    ['5 gal/1000 sqft', 'mass per area', 'volume per area'],
    ['5 lb/1000 sqft', 'mass', 'mass per area'],
    ['5 lb/gal', 'mass per area', 'density'],
  ] as const)('"%s" is not a %s but a %s', (text, measure, found) => {
    expect(parseQuantity(text, measure)).toEqual({ fault: 'measure', found });
  });
  test('what is written in any unit is read back', () => {
    const plain = all.filter(([, dimension]) => dimension !== 'temperature');
    const number = fc.integer({ min: -1e6, max: 1e6 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(fc.constantFrom(...plain), number, ([alias, dimension], n) => {
        expect(inSi(`${n} ${alias}`, dimension) / factorOf(alias)).toBeCloseTo(n, 8);
      }),
    );
  });
  test('any text at all is read or refused, never thrown at', () => {
    const word = fc.constantFrom(...all.map(([alias]) => alias), '/', ' ', '1000', '-', '.', '°', 'sq', 'e5');
    const text = fc.oneof(
      fc.string(),
      fc.array(word, { maxLength: 6 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (any) => {
        const result = parseQuantity(any, 'mass per area');
        expect('fault' in result || Number.isFinite(result.value)).toBe(true);
      }),
    );
  });
  test('100,000 digits or spaces are refused soon', () => {
    const before = process.cpuUsage();
    for (const one of ['9', ' ', '9 ', '/', '9/', '. ']) parseQuantity(`1 ${one.repeat(100_000)}x`, 'mass');
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(1);
  });
});

describe('names', () => {
  const dimensions: Dimension[] = ['length', 'area', 'volume', 'mass', 'temperature', 'speed', 'duration', 'share'];

  test.each(dimensions)('the units of %s are named once each', (dimension) => {
    expect(new Set(unitNames(dimension)).size).toBe(unitNames(dimension).length);
  });
  test.each(dimensions)('the example of %s is a quantity of it', (dimension) => {
    const example = /such as (\S+ ?\S*)( or|$)/.exec(expectedOf(dimension))?.[1] ?? '';
    expect(parseQuantity(example, dimension)).toHaveProperty('value');
  });
  test('factorOf a name that is none is our own bug', () => expect(() => factorOf('furlong')).toThrow());
});

describe('nearestWord', () => {
  test.each([
    ['relase', ['release', 'rate'], 'release'],
    ['Release', ['relase', 'release'], 'release'],
    ['timezon', ['timezone', 'time'], 'timezone'],
    ['xyzzy', ['timezone'], null],
    ['a', [], null],
    ['', ['ab'], null],
  ])('of %s in %j', (word, candidates, nearest) => expect(nearestWord(word, candidates)).toBe(nearest));
});
