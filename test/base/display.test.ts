import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { displayOf, significant } from '../../src/base/display.ts';
import { parseQuantity } from '../../src/base/quantity.ts';
import { factorOf } from '../../src/base/units.ts';
import { runs } from '../kit.ts';

const us = displayOf('us', 'en-US');
const metric = displayOf('metric', 'en-GB');
const LB = factorOf('lb');

describe('significant', () => {
  test.each([
    [12.345, 3, '12.3'],
    [12.35, 2, '12'],
    [1234.5, 3, '1235'],
    [0.0012345, 2, '0.0012'],
    [5, 3, '5'],
    [0, 3, '0'],
    [999.96, 4, '1000'],
    [-3.25, 2, '-3.3'],
  ])('%d to %i digits is %s', (value, digits, text) => expect(significant(value, digits)).toBe(text));
  test.each([
    [5.79, 2, '5.7'],
    [5.699999999999, 2, '5.7'],
    [9.99, 2, '9.9'],
    [0.3, 2, '0.3'],
    [1234.9, 3, '1234'],
    [0.1 + 0.2, 3, '0.3'],
  ])('%d to %i digits, down, is %s', (value, digits, text) => {
    expect(significant(value, digits, 'down')).toBe(text);
  });
  test('down is never above the value by more than the hair for rounding errors', () => {
    const value = fc.double({ min: 1e-4, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(value, fc.integer({ min: 1, max: 4 }), (any, digits) => {
        const shown = Number(significant(any, digits, 'down'));
        expect(shown).toBeLessThanOrEqual(any + 1e-8 * Math.max(1, any));
        expect(shown).toBeGreaterThan(any * (1 - 10 ** (1 - digits)));
      }),
    );
  });
  test('nearest is within half a unit of the last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (any) => {
        expect(Math.abs(Number(significant(any, 3)) - any)).toBeLessThanOrEqual(any * 0.0051);
      }),
    );
  });
});

describe('US customary', () => {
  test.each([
    [us.temperature(10), '50 °F'],
    [us.temperature(-17.8), '0 °F'],
    [us.soilDepth(0.05), '2 in'],
    [us.soilDepth(0.1), '4 in'],
    [us.depth(0.0127), '0.5 in'],
    [us.distance(3.048), '10 ft'],
    [us.area(175.3), '1,887 sq ft'],
    [us.mass(LB), '1 lb'],
    [us.mass(2.57), '5.67 lb'],
    [us.mass(LB / 2), '8 oz'],
    [us.volume(0.003785411784), '1 gal'],
    [us.volume(0.0000295735295625 * 3), '3 fl oz'],
    [us.massRate(LB / 92.90304), '1 lb/1000 sq ft'],
    [us.volumeRate(0.0000295735295625 / 92.90304), '1 fl oz/1000 sq ft'],
    [us.speed(0.44704 * 5), '5 mph'],
    [us.heat(100), '180 °F·d'],
    [us.day(civil(2027, 4, 3)), 'Sat, Apr 3'],
    [us.shortDay(civil(2027, 4, 3)), 'Apr 3'],
  ])('%s', (shown, expected) => expect(shown).toBe(expected));
});

describe('metric', () => {
  test.each([
    [metric.temperature(10), '10 °C'],
    [metric.temperature(-3.14), '-3.1 °C'],
    [metric.soilDepth(0.05), '5 cm'],
    [metric.depth(0.006), '6 mm'],
    [metric.depth(0.06), '6 cm'],
    [metric.distance(3.048), '3.05 m'],
    [metric.area(92.90304), '92.9 m²'],
    [metric.area(175.34), '175.3 m²'],
    [metric.mass(1.2345), '1.23 kg'],
    [metric.mass(0.4567), '457 g'],
    [metric.volume(0.0025), '2.5 L'],
    [metric.volume(0.00025), '250 mL'],
    [metric.massRate(0.0049), '4.9 g/m²'],
    [metric.volumeRate(0.00004), '40 mL/m²'],
    [metric.speed(5 / 3.6), '5 km/h'],
    [metric.heat(77.7), '78 °C·d'],
    [metric.day(civil(2027, 4, 3)), 'Sat 3 Apr'],
  ])('%s', (shown, expected) => expect(shown).toBe(expected));
});

describe('languages', () => {
  const [spain, mexico] = [displayOf('metric', 'es-ES'), displayOf('metric', 'es-MX')];
  const latin = displayOf('us', 'es-US');
  test.each([
    [spain.mass(1.5), '1,5 kg'],
    [mexico.mass(1.5), '1.5 kg'],
    [spain.temperature(-3.14), '-3,1 °C'],
    [spain.number('12.25'), '12,25'],
    [displayOf('us', 'es-ES').area(1175.3), '12.651 pies²'],
    [latin.area(175.3), '1,887 pies²'],
    [latin.depth(0.0127), '0.5 pulg'],
    [latin.volumeRate(0.0000295735295625 / 92.90304), '1 oz líq/1000 pies²'],
    [latin.shortDay(civil(2027, 4, 3)), '3 abr'],
    [displayOf('us', 'en-GB').fullDay(civil(2027, 4, 3)), 'Sat, 3 Apr 2027'],
    [us.fullDay(civil(2027, 4, 3)), 'Sat, Apr 3, 2027'],
    [us.money(1234.5, 'USD'), '$1,234.50'],
    // A space that does not break.
    [spain.money(27, 'EUR').replace('\u00a0', ' '), '27,00 €'],
    [displayOf('us', 'fr').distance(3.048), '10 ft'],
  ])('%s', (shown, expected) => expect(shown).toBe(expected));
});

describe('an amount of pesticide', () => {
  const amount = fc.double({ min: 1e-3, max: 500, noNaN: true });
  const read = (text: string, measure: 'mass' | 'volume') => {
    const result = parseQuantity(text, measure);
    return 'value' in result ? result.value : Number.NaN;
  };

  test.each([
    ['us', us],
    ['metric', metric],
  ] as const)('by weight, %s, rounded down, is never above the rate', (_, display) => {
    fc.assert(
      fc.property(amount, (kg) => read(display.mass(kg, 'down'), 'mass') <= kg * (1 + 1e-8)),
      { numRuns: runs(500) },
    );
  });
  test.each([
    ['us', us],
    ['metric', metric],
  ] as const)('by volume, %s, rounded down, is never above the rate', (_, display) => {
    fc.assert(
      fc.property(
        amount,
        (litres) => read(display.volume(litres / 1000, 'down'), 'volume') <= (litres / 1000) * (1 + 1e-8),
      ),
      { numRuns: runs(500) },
    );
  });
  test('5.79 lb, rounded down to three digits, is 5.79 lb and not less', () => {
    expect(us.mass(5.79 * LB, 'down')).toBe('5.79 lb');
  });
  test('a hair under a pound is 15 oz, not 16', () => expect(us.mass(0.9999 * LB, 'down')).toBe('15 oz'));
});

test('what is shown by weight can be read back, within half a percent', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 500, noNaN: true }), (kg) => {
      for (const display of [us, metric]) {
        const read = parseQuantity(display.mass(kg), 'mass');
        expect('value' in read && Math.abs(read.value - kg) / kg).toBeLessThan(0.051);
      }
    }),
  );
});
