/** The next setting of the dial: what it is after records, what it never is. */
import { describe, expect, test } from 'vitest';
import { adviseSetting, type DialOptions, type DialRecord } from '../../../src/amounts/dial/advise.ts';
import { firstSetting, marksAround } from '../../../src/amounts/dial/dial.ts';
import { civil } from '../../../src/base/day.ts';

const FIFTEEN = { from: 1, to: 15, step: 1 };
const FINE = { from: 0, to: 15, step: 0.25 };
const PLAIN: DialOptions = { rounding: 'nearest', most: null };
const POUND = 0.45359237;

/** Records on days one after the other. */
const records = (...pairs: readonly (readonly [setting: number, rate: number])[]): DialRecord[] =>
  pairs.map(([setting, rate], i) => ({ date: civil(2027, 4, 1) + i, setting, rate }));
/** A spreader whose rate is the square of its setting, in g/m². */
const square = (...settings: readonly number[]) => records(...settings.map((s) => [s, (s * s) / 1000] as const));

describe('the first setting', () => {
  test('a third of a fifteen-step dial is 5 (common practice)', () => {
    expect(firstSetting(FIFTEEN)).toBe(5);
    expect(firstSetting(FINE)).toBe(5);
    expect(adviseSetting([], FIFTEEN, 0.01, PLAIN)).toMatchObject({ setting: 5, basis: 'first', rate: null });
  });
  test('is rounded downward to a mark', () => expect(firstSetting({ from: 0, to: 10, step: 1 })).toBe(3));
  test('of a dial that begins high counts from there', () =>
    expect(firstSetting({ from: 10, to: 40, step: 1 })).toBe(20));
  test('is never below the lowest mark', () => expect(firstSetting({ from: 1, to: 2, step: 0.5 })).toBe(1));
  test('marks that floats miss by a hair are met', () => {
    expect(marksAround({ from: 0, to: 1, step: 0.1 }, 0.3)).toEqual([0.3, 0.3]);
    expect(marksAround(FINE, 5.1)).toEqual([5, 5.25]);
    expect(marksAround({ from: 0, to: 10, step: 3 }, 9.9)).toEqual([9, 9]);
  });
});

describe('within 5 % the setting stays', () => {
  const area = 464.5;
  const loaded = 16 * POUND;
  const advised = (left: number) =>
    adviseSetting(records([6, (loaded - left * POUND) / area]), FINE, loaded / area, PLAIN);
  test('an eighth of a pound left of sixteen keeps the setting (common practice)', () =>
    expect(advised(0.125)).toMatchObject({ setting: 6, basis: 'keep' }));
  test('so do 4.75 and 5.25 lb for 5.00 (UMass Extension, rotary spreader fact sheet)', () => {
    const against5 = (pounds: number) => adviseSetting(records([6, pounds]), FINE, 5, PLAIN).basis;
    expect([4.74, 4.75, 5.25, 5.26].map(against5)).toEqual(['records', 'keep', 'keep', 'records']);
  });
  test('two pounds left of sixteen open it further', () => {
    const { setting, basis } = advised(2);
    expect(basis).toBe('records');
    expect(setting).toBeGreaterThan(6);
  });
  test('not where the other records deny the last one', () => {
    const five = records([6, 0.7], [6, 0.71], [6, 0.69], [6, 0.7], [6, 1]);
    expect(adviseSetting(five, FINE, 1, PLAIN).basis).toBe('records');
  });
});

describe('learning', () => {
  test('finds the setting between two that were tried', () =>
    expect(adviseSetting(square(4, 8), FINE, 0.036, PLAIN).setting).toBeCloseTo(6, 0));
  test('is the same for records in any order', () => {
    const three = square(4, 8, 7);
    expect(adviseSetting([...three].reverse(), FINE, 0.036, PLAIN)).toEqual(adviseSetting(three, FINE, 0.036, PLAIN));
  });
  test('one bad record of six moves it by less than 5 %', () => {
    const good = square(5, 6, 6, 7, 6);
    const bad = [...good, ...records([6, 0.09])];
    const free = { ...FINE, step: 0 };
    const ratio =
      (adviseSetting(bad, free, 0.04, PLAIN).setting ?? 0) / (adviseSetting(good, free, 0.04, PLAIN).setting ?? 1);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.05);
  });
  test('a higher target never gets a lower setting', () => {
    const settings = [20, 25, 30, 36, 42, 49, 60].map(
      (grams) => adviseSetting(square(5, 7), { ...FINE, step: 0 }, grams / 1000, PLAIN).setting ?? 0,
    );
    expect(settings).toEqual([...settings].sort((a, b) => a - b));
    expect(new Set(settings).size).toBe(7);
  });
  test('more records make the range narrower', () => {
    const width = (some: DialRecord[]) => {
      const { rate } = adviseSetting(some, FINE, 0.049, PLAIN);
      return Math.log((rate?.high ?? 0) / (rate?.low ?? 1));
    };
    expect(width(square(5, 6, 6, 6))).toBeLessThan(width(square(5, 6)));
    expect(width(square(5, 6))).toBeLessThan(width(square(5)));
  });
  test('the rate printed is that of the mark, not of the setting wished for', () => {
    const coarse = adviseSetting(square(4, 6, 6, 6), FIFTEEN, 0.04, PLAIN);
    expect(coarse.setting).toBe(6);
    expect(coarse.rate?.middle).toBeCloseTo(0.036, 3);
    expect(coarse.notes).toEqual(['coarse']);
  });
  test('records that cannot be are left out', () =>
    expect(adviseSetting(records([0, 1], [5, 0]), FINE, 1, PLAIN).basis).toBe('first'));
});

describe('beyond what was tried', () => {
  test('the stride is kept short, and said to be', () => {
    const advice = adviseSetting(square(5), FINE, 0.1, PLAIN);
    expect(advice.setting).toBeLessThanOrEqual(10);
    expect(advice.notes).toEqual(['held-back']);
    expect(advice.rate?.middle).toBeLessThan(0.1);
  });
  test('never more than twice as open, nor less than half', () => {
    expect(adviseSetting(square(2), FINE, 10, PLAIN).setting).toBe(4);
    expect(adviseSetting(square(8), FINE, 1e-5, PLAIN).setting).toBe(4);
  });
  test('the end of the dial is told', () => {
    expect(adviseSetting(square(12, 14, 15), FINE, 0.5, PLAIN)).toMatchObject({
      setting: 15,
      notes: ['dial-ends-high'],
    });
    expect(adviseSetting(square(1, 2), FIFTEEN, 1e-4, PLAIN)).toMatchObject({ setting: 1, notes: ['dial-ends-low'] });
  });
});

describe('a label', () => {
  test('whose maximum is down stops everything', () =>
    expect(adviseSetting(square(5), FINE, 0.01, { rounding: 'down', most: 0 })).toMatchObject({
      setting: null,
      notes: ['label-reached'],
    }));
  test('that leaves less than the target is what is aimed at', () => {
    const to = (target: number, most: number | null) =>
      adviseSetting(square(4, 8), FINE, target, { rounding: 'down', most }).setting;
    expect(to(0.05, 0.036)).toBe(to(0.036, null));
  });
  test('that a pass may exceed is met by what is loaded', () =>
    expect(adviseSetting(square(6), FINE, 0.036, { rounding: 'down', most: 0.036 }).notes).toContain('load-no-more'));
  test('is never exceeded by keeping a setting', () =>
    expect(adviseSetting(records([6, 0.0375]), FINE, 0.036, { rounding: 'down', most: 0.036 })).toMatchObject({
      setting: 5.75,
      basis: 'records',
    }));
  test('a pesticide is rounded downward to a mark', () => {
    const { rate } = adviseSetting(square(5, 6, 6, 6), FIFTEEN, 0.048, { rounding: 'down', most: null });
    expect(rate?.middle).toBeLessThan(0.048);
    expect(adviseSetting(square(5, 6, 6, 6), FIFTEEN, 0.048, PLAIN).setting).toBe(7);
  });
});
