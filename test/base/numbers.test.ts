import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contentHash, nameHash } from '../../src/base/hash.ts';
import { normalQuantile } from '../../src/base/normal-quantile.ts';
import { quantile } from '../../src/base/quantile.ts';
import { normal, seeded } from '../../src/base/random.ts';
import { at, endOf, seriesOf, trailingMean } from '../../src/base/series.ts';

describe('quantile, type 7 of Hyndman & Fan (1996)', () => {
  // numpy.quantile's default method "linear" is type 7; R's quantile(1:10) prints 3.25, 5.5 and 7.75 for it.
  // Worked by hand: position (n - 1) × share, linear between the neighbours.
  test.each([
    [[1, 2, 3, 4], 0.5, 2.5],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.25, 3.25],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.5, 5.5],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.75, 7.75],
    // numpy's manual: a = [[10, 7, 4], [3, 2, 1]]; np.quantile(a, 0.5) is 3.5.
    [[10, 7, 4, 3, 2, 1], 0.5, 3.5],
    [[10, 20, 30], 0.1, 12],
    [[10, 20, 30], 0, 10],
    [[10, 20, 30], 1, 30],
    [[7], 0.9, 7],
    [[5, 5, 5, 5], 0.3, 5],
  ])('of %j at %d is %d', (values, share, expected) => {
    expect(quantile(values, values.length, share)).toBeCloseTo(expected, 12);
  });
  test('does not change the list it is given', () => {
    const values = [3, 1, 2];
    quantile(values, 3, 0.5);
    expect(values).toEqual([3, 1, 2]);
  });

  describe('where some members never happen', () => {
    test('is null for a quantile between the last that happened and one that did not', () => {
      // Positions 0..9, nine happened: 0.9 × 9 = 8.1 lies between the ninth and the tenth.
      expect(quantile([1, 2, 3, 4, 5, 6, 7, 8, 9], 10, 0.9)).toBeNull();
    });
    test('is the last that happened where it falls exactly on it', () => {
      expect(quantile([10, 20, 30], 5, 0.5)).toBe(30);
    });
    test('is null beyond it', () => expect(quantile([10, 20, 30], 5, 0.75)).toBeNull());
    test('ranks the others later than every day', () => {
      // Of 4, position 3 × 0.1 = 0.3 between 10 and 20.
      expect(quantile([20, 10], 4, 0.1)).toBeCloseTo(13, 12);
    });
    test('of nothing that happened is null', () => expect(quantile([], 30, 0.1)).toBeNull());
    test('of an empty sample is null', () => expect(quantile([], 0, 0.5)).toBeNull());
    test('is what it would be with days far in the future, or null', () => {
      const sample = fc.record({
        finite: fc.array(fc.integer({ min: 0, max: 366 }), { maxLength: 30 }),
        never: fc.integer({ min: 0, max: 30 }),
        share: fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100),
      });
      fc.assert(
        fc.property(sample, ({ finite, never, share }) => {
          const count = finite.length + never;
          const found = quantile(finite, count, share);
          const far = quantile([...finite, ...Array<number>(never).fill(1e12)], count, share);
          if (found === null) expect(far === null || far > 366).toBe(true);
          else expect(found).toBe(far);
        }),
      );
    });
  });
});

describe('trailingMean', () => {
  const series = (...values: number[]) => ({ start: 100, values: Float64Array.from(values) });
  const GAP = Number.NaN;

  test('is the mean of the days that end on the day', () => {
    expect(trailingMean(series(1, 2, 3, 4, 5), 104, 5)).toBe(3);
  });
  test('of one day is that day', () => expect(trailingMean(series(1, 2, 3), 101, 1)).toBe(2));
  test('needs the day itself', () => expect(trailingMean(series(1, 2, 3, GAP), 103, 4)).toBeNaN());
  test('bears a quarter of the window missing', () => {
    expect(trailingMean(series(1, GAP, 3, 5), 103, 4)).toBe(3);
  });
  test('does not bear more', () => expect(trailingMean(series(1, GAP, GAP, 5), 103, 4)).toBeNaN());
  test('bears one of five missing, not two', () => {
    expect(trailingMean(series(1, GAP, 3, 4, 4), 104, 5)).toBe(3);
    expect(trailingMean(series(1, GAP, GAP, 4, 4), 104, 5)).toBeNaN();
  });
  test('counts days before the start as missing', () => {
    expect(trailingMean(series(1, 2, 3), 102, 4)).toBe(2);
    expect(trailingMean(series(1, 2, 3), 101, 4)).toBeNaN();
  });
  test('after the end is not known', () => expect(trailingMean(series(1, 2, 3), 103, 4)).toBeNaN());
  test('does not depend on where the series starts', () => {
    const values = fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 8, maxLength: 40 });
    fc.assert(
      fc.property(values, (all) => {
        const whole = { start: 0, values: Float64Array.from(all) };
        const cut = { start: all.length - 7, values: Float64Array.from(all.slice(-7)) };
        expect(trailingMean(whole, all.length - 1, 7)).toBe(trailingMean(cut, all.length - 1, 7));
      }),
    );
  });
});

describe('a daily series', () => {
  const doubled = seriesOf(10, 13, (day) => 2 * day);

  test('has the value of each day', () => expect([...doubled.values]).toEqual([20, 22, 24]));
  test('ends on the day after its last', () => expect(endOf(doubled)).toBe(13));
  test.each([9, 13])('is not known on day %i, outside', (day) => expect(at(doubled, day)).toBeNaN());
  test('that ends before it starts is empty', () => expect(seriesOf(10, 5, () => 1).values).toHaveLength(0));
});

describe('random numbers', () => {
  const stream = (seed: number, n: number) => {
    const random = seeded(seed);
    return Array.from({ length: n }, random);
  };
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = (values: readonly number[]): number => {
    const middle = mean(values);
    return mean(values.map((value) => (value - middle) ** 2));
  };

  test('are the same for the same seed', () => expect(stream(42, 100)).toEqual(stream(42, 100)));
  test('are others for another', () => expect(stream(42, 10)).not.toEqual(stream(43, 10)));
  test('begin as mulberry32 of seed 1 begins', () => {
    // From memory of the published 32-bit algorithm, worked again with BigInt below.
    const mask = 0xffff_ffffn;
    const state = 1n + 0x6d2b_79f5n;
    let t = ((state ^ (state >> 15n)) * (state | 1n)) & mask;
    t = (t ^ ((t + (((t ^ (t >> 7n)) * (t | 61n)) & mask)) & mask)) & mask;
    expect(seeded(1)()).toBe(Number((t ^ (t >> 14n)) & mask) / 2 ** 32);
  });
  test('lie in [0, 1)', () => {
    const values = stream(7, 100_000);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThan(1);
  });
  test('have a mean of 1/2 within four standard errors', () => {
    expect(Math.abs(mean(stream(7, 100_000)) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / 100_000));
  });
  test('have a variance of 1/12', () => expect(variance(stream(7, 100_000))).toBeCloseTo(1 / 12, 3));
  test('normal ones have mean 0 and variance 1', () => {
    const random = seeded(11);
    const values = Array.from({ length: 100_000 }, () => normal(random));
    expect(Math.abs(mean(values))).toBeLessThan(4 / Math.sqrt(100_000));
    expect(variance(values)).toBeCloseTo(1, 1);
    expect(values.every(Number.isFinite)).toBe(true);
  });
});

describe('contentHash', () => {
  // FIPS 180-4, SHA-256, examples of NIST: the empty message and "abc".
  test('of nothing begins e3b0c442', () => expect(contentHash('', 8)).toBe('e3b0c442'));
  test('in letters of nothing begins odla', () => expect(nameHash('', 4)).toBe('odla'));
  test('of abc begins ba7816bf', () => expect(contentHash('abc', 8)).toBe('ba7816bf'));
  test('has 16 digits where none are asked for', () => expect(contentHash('')).toBe('e3b0c44298fc1c14'));
  test('is of the text as UTF-8', () => expect(contentHash('ü')).not.toBe(contentHash('u')));
});

describe('normalQuantile', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, table of the normal distribution.
  test.each([
    [0.5, 0],
    [0.75, 0.6745],
    [0.9, 1.2816],
    [0.975, 1.96],
    [0.99, 2.3263],
    [0.025, -1.96],
  ])('%f of it lies below %f', (share, value) => expect(normalQuantile(share)).toBeCloseTo(value, 4));
});
