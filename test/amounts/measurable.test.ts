/** Amounts as a person can measure them: within 1 %, and never above what was asked for where that is rounded downward. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { measurable } from '../../src/amounts/measured/measurable.ts';
import { displayOf } from '../../src/base/display.ts';
import { factorOf } from '../../src/base/units.ts';
import type { Product } from '../../src/model/product.ts';

const us = displayOf('us', 'en-US');
const metric = displayOf('metric', 'en-GB');
const feed: Product = { id: 'feed', form: 'granular' };
const bagged: Product = { ...feed, package: { size: { by: 'mass', value: 40 * factorOf('lb') } } };
const odd: Product = { ...feed, package: { size: { by: 'mass', value: 50.6 * factorOf('lb') } } };
const granule: Product = { ...feed, pesticide: 'pre-emergent' };
const liquid: Product = { id: 'liquid', form: 'liquid' };
const spray: Product = { ...liquid, pesticide: 'broadleaf' };
const compost: Product = { id: 'compost', form: 'amendment' };
const of = (value: number, unit: string, product: Product, display = us, held = false) =>
  measurable(
    { by: product.form === 'granular' ? 'mass' : 'volume', value: value * factorOf(unit) },
    product,
    display,
    held,
  );

describe('in Spanish', () => {
  const [spain, latin] = [displayOf('metric', 'es-ES'), displayOf('us', 'es-US')];
  test.each([
    ['a decimal sign of its own', of(2.573, 'kg', feed, spain).words, '2,57 kg'],
    ['the same in what was rounded', of(94.3, 'kg', feed, spain).exact, '94,3 kg'],
    ['ounces of fluid', of(12, 'floz', liquid, latin).words, '12 oz líq'],
    ['cups', of(12, 'floz', liquid, latin).aid, '1.5 tazas'],
    ['two units that are fine', of(0.36, 'oz', feed, displayOf('us', 'es-ES')).words, '10,2 g (0,36 oz)'],
    ['half packages', of(20, 'lb', bagged, latin).aid, 'medio envase de 40 lb'],
    ['whole packages', of(80, 'lb', bagged, latin).aid, '2 envases de 40 lb'],
  ])('%s', (_, shown, expected) => expect(shown).toBe(expected));
});

describe('by weight', () => {
  test.each([
    ['an amount that is measured as it stands', 4, 'lb', '4 lb'],
    ['tenths of a pound', 5.666, 'lb', '5.7 lb'],
    ['whole pounds of a load', 94.3, 'lb', '94 lb'],
    ['pounds and ounces', 1.9, 'lb', '1.9 lb'],
    ['ounces', 9.3, 'oz', '9.3 oz'],
    ['a fine scale, for less', 0.36, 'oz', '10.2 g (0.36 oz)'],
  ])('%s', (_, value, unit, words) => expect(of(value, unit, feed).words).toBe(words));
  test('metric: ten grams, then grams', () => {
    expect(of(2.573, 'kg', feed, metric).words).toBe('2.57 kg');
    expect(of(83.4, 'g', feed, metric).words).toBe('83 g');
  });
});

describe('by volume', () => {
  test('gallons and fluid ounces', () => expect(of(1.3, 'gal', spray).words).toBe('1 gal 38 fl oz'));
  test('a little by the syringe: 0.8 oz is 23.7 mL (read: extension slides on the 1/128-acre method, printed about 24)', () =>
    expect(of(0.8, 'floz', liquid).words).toBe('23.7 mL (0.8 fl oz)'));
  test('cups beside it', () => expect(of(12, 'floz', liquid)).toMatchObject({ words: '12 fl oz', aid: '1.5 cups' }));
  test('no cup of the kitchen for a pesticide', () =>
    expect(of(12, 'floz', spray)).toMatchObject({ words: '12 fl oz', aid: null }));
  test('a heap in cubic yards and feet', () => {
    expect(of(1.5, 'cuyd', compost).words).toBe('1.5 cu yd');
    expect(of(0.37, 'cuyd', compost).words).toBe('10 cu ft');
  });
});

describe('packages', () => {
  test('half a one', () =>
    expect(of(20.1, 'lb', bagged)).toMatchObject({ words: '20 lb', aid: 'half a package of 40 lb', exact: '20.1 lb' }));
  test('one and a half', () => expect(of(60, 'lb', bagged).aid).toBe('1½ packages of 40 lb'));
  test('none that is not near', () => expect(of(21, 'lb', bagged)).toMatchObject({ words: '21 lb', aid: null }));
});

describe('packages of what is rounded downward', () => {
  const boxed: Product = { ...granule, package: { size: { by: 'mass', value: 18 * factorOf('lb') } } };
  test('no half one: an eye may take too much', () =>
    expect(of(9.05, 'lb', boxed)).toMatchObject({ words: '9 lb', aid: null }));
  test('nor where a limit holds', () => expect(of(20.1, 'lb', bagged, us, true).aid).toBeNull());
  test('whole ones', () => expect(of(36.2, 'lb', boxed)).toMatchObject({ words: '36 lb', aid: '2 packages of 18 lb' }));
});

describe('the second unit', () => {
  test.each([
    ['of a pesticide is rounded downward too', 0.109, spray, '3.2 mL (0.108 fl oz)'],
    ['has no more digits than it needs', 2.82, spray, '83 mL (2.8 fl oz)'],
    ['is rounded to the nearest otherwise', 0.8, liquid, '23.7 mL (0.8 fl oz)'],
  ])('%s', (_, floz, product, words) => expect(of(floz, 'floz', product).words).toBe(words));
  test('keeps within 1 %, never above where it is downward', () =>
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 4, noNaN: true }), fc.constantFrom(spray, liquid), (floz, product) => {
        const { words } = of(floz, 'floz', product);
        const beside = Number(/([0-9.]+) fl oz/.exec(words)?.[1]);
        expect(Math.abs(beside / floz - 1)).toBeLessThanOrEqual(0.01 + 1e-6);
        if (product === spray) expect(beside).toBeLessThanOrEqual(floz * (1 + 1e-6));
      }),
      { seed: 27 },
    ));
});

describe('the rounding', () => {
  test('is counted from what was asked for, not from a package near it', () => {
    expect(of(50.12, 'lb', odd)).toMatchObject({ words: '50.5 lb', aid: '1 package of 50.6 lb' });
  });
  test('is shown in the unit of the words, no coarser than they are', () => {
    expect(of(2.82, 'floz', spray).exact).toBe('83.4 mL');
    expect(of(1.3, 'gal', spray).exact).toBe('1 gal 38.4 fl oz');
    expect(of(12.35, 'gal', spray)).toMatchObject({ words: '12.25 gal', exact: '12.35 gal' });
    expect(of(0.374, 'cuyd', compost)).toMatchObject({ words: '10 cu ft', exact: '10.1 cu ft' });
  });
  test('of less than a syringe can tell is to three digits', () =>
    expect(of(0.97, 'mL', spray)).toMatchObject({ words: '0.97 mL', exact: null }));
  test('is downward for a pesticide', () =>
    expect(of(4.999, 'lb', granule)).toMatchObject({ words: '4 lb 15.5 oz', rounding: 'down' }));
  test('is downward where a limit holds', () => {
    expect(of(5.66, 'lb', feed).words).toBe('5.7 lb');
    expect(of(5.66, 'lb', feed, us, true).words).toBe('5 lb 10 oz');
  });
  test('never takes half a package that is more than the limit', () =>
    expect(of(19.95, 'lb', bagged, us, true)).toMatchObject({ words: '19.9 lb', aid: null }));
  test('is shown where it can be seen, and only there', () => {
    expect(of(8.42, 'lb', feed).exact).toBe('8.42 lb');
    expect(of(10.84, 'lb', feed).exact).toBeNull();
    expect(of(4, 'lb', feed).exact).toBeNull();
  });
  test('of nothing is nothing', () => expect(of(0, 'lb', feed)).toMatchObject({ words: '0 oz', exact: null }));
  test('keeps within 1 %, never above where it is downward', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.constantFrom(feed, granule, bagged, odd, spray, liquid, compost),
        fc.boolean(),
        fc.constantFrom(us, metric),
        (kg, product, held, display) => {
          const value = product.form === 'granular' ? kg : kg / 1000;
          const { amount, rounding } = measurable(
            { by: product.form === 'granular' ? 'mass' : 'volume', value },
            product,
            display,
            held,
          );
          expect(Math.abs(amount.value / value - 1)).toBeLessThanOrEqual(0.01 + 1e-6);
          if (rounding === 'down') expect(amount.value).toBeLessThanOrEqual(value * (1 + 1e-6));
          expect(rounding).toBe(held || product.pesticide !== undefined ? 'down' : 'nearest');
        },
      ),
      { seed: 27 },
    ));
});
