/** What pans say of a spreader, and where its dial begins. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { courseLength, deliveredRate, passesAcross } from '../../../src/amounts/spreader/calibration.ts';
import { firstSetting } from '../../../src/amounts/spreader/first-setting.ts';
import { swathOf } from '../../../src/amounts/spreader/spreader.ts';
import { effectiveSwath } from '../../../src/amounts/spreader/swath-test.ts';

describe('pans', () => {
  test('of an even number have their middle between two', () => {
    // Level to 1.5 spacings on either side, then half a spacing down to half: the reach is 2 of 1 m.
    expect(effectiveSwath({ spacing: 1, catches: [0, 4, 4, 4, 4, 0] }).swath).toBeCloseTo(4, 9);
  });
  test('give each side its own reach', () => {
    expect(effectiveSwath({ spacing: 1, catches: [0, 0, 4, 4, 0] })).toMatchObject({ swath: 0.5 + 1.5 });
  });
  test.each([
    [[1, 0, 1], 'centre'],
    [[3, 4, 3], 'short'],
    [[0, 4, 1, 3, 0], 'humps'],
    [[0, 7, 4, 2, 0], 'humps'],
  ])('%j are %s', (catches, fault) => {
    expect(effectiveSwath({ spacing: 1, catches })).toMatchObject({ swath: null, fault });
  });
  test('lean to the right by its share', () => {
    expect(effectiveSwath({ spacing: 1, catches: [0, 1, 4, 3, 0] }).skew).toBeCloseTo(2 / 12, 9);
  });
  test.each([[[1, 2]], [[1, -1, 1]]])('%j are no test', (catches) => {
    expect(() => effectiveSwath({ spacing: 1, catches })).toThrow(RangeError);
  });
  test('in another unit of catch give the same swath, in another spacing as much more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (spacing, unit) => {
          const pans = [0, 1, 3, 5, 6, 5, 3, 1, 0];
          const swath = effectiveSwath({ spacing: 1, catches: pans }).swath ?? Number.NaN;
          const other = effectiveSwath({ spacing, catches: pans.map((one) => unit * one) }).swath ?? Number.NaN;
          expect(other / spacing).toBeCloseTo(swath, 9);
        },
      ),
    );
  });
});

describe('a swath', () => {
  test('that is written wins; pans come next; then what is usual of the kind', () => {
    const pans = { spacing: 1, catches: [0, 4, 0] };
    expect(swathOf({ swath: 3 })).toMatchObject({ swath: 3, basis: 'file' });
    expect(swathOf({ pans })).toMatchObject({ swath: 1, basis: 'pans' });
    expect(swathOf({ kind: 'drop' })).toMatchObject({ swath: 0.6096, basis: 'usual' });
    expect(swathOf(undefined)).toMatchObject({ swath: 3.048, basis: 'usual' });
  });
});

describe('calibration', () => {
  test.each([
    ['no swath', () => courseLength(10, 0)],
    ['no area', () => courseLength(0, 3)],
    ['a negative delivery', () => deliveredRate(-1, 10, 3)],
    ['no course', () => deliveredRate(1, 0, 3)],
    ['no swath across', () => passesAcross(10, 0)],
  ])('of %s is none', (_, run) => {
    expect(run).toThrow(RangeError);
  });
  test('a width that is met exactly takes no pass more', () => {
    expect([passesAcross(9.144, 3.048), passesAcross(9.2, 3.048), passesAcross(0.5, 3)]).toEqual([3, 4, 1]);
  });
});

describe('the first setting', () => {
  test.each([
    [{ from: 1, to: 15, step: 1 }, 5],
    [{ from: 1, to: 15, step: 0.25 }, 5],
    [{ from: 0, to: 10, step: 0.5 }, 3],
    [{ from: 0, to: 10, step: 0 }, 10 / 3],
    [{ from: 10, to: 40, step: 1 }, 20],
  ])('of %j is %f', (dial, setting) => expect(firstSetting(dial)).toBeCloseTo(setting, 9));
  test('is one that the dial has, and no more than a third open', () => {
    const dials = fc
      .tuple(fc.integer({ min: 0, max: 1 }), fc.integer({ min: 3, max: 60 }), fc.constantFrom(0.25, 0.5, 1, 2))
      .map(([from, to, step]) => ({ from, to, step }));
    fc.assert(
      fc.property(dials, (dial) => {
        const setting = firstSetting(dial);
        expect((setting - dial.from) / dial.step).toBeCloseTo(Math.round((setting - dial.from) / dial.step), 6);
        expect(setting).toBeGreaterThanOrEqual(dial.from);
        expect(setting).toBeLessThanOrEqual(dial.to / 3 + 1e-9);
      }),
    );
  });
});
