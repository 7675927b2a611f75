/** Where the runs of weather know no more than the past years, the plan says that the date is the usual one. */
import { describe, expect, test } from 'vitest';
import { usualDate } from '../../src/schedule/usual-date.ts';

const windows = (opens: readonly number[]) =>
  opens.map((day) => ({ opens: day, best: day, closes: day + 10, late: null }));
const spread = (middle: number, half: number) =>
  windows(Array.from({ length: 21 }, (_, i) => middle + (half * (i - 10)) / 10));
const past = spread(100, 20);

describe('the usual date', () => {
  test('is said where middle and spread are the past years’', () => {
    expect(usualDate({ ofTraces: spread(101, 19), ofPastYears: past })).toBe(true);
  });
  test('is not said where the middle day is another one', () => {
    expect(usualDate({ ofTraces: spread(103, 20), ofPastYears: past })).toBe(false);
  });
  test('is not said where the spread is narrower by more than a tenth', () => {
    expect(usualDate({ ofTraces: spread(100, 17), ofPastYears: past })).toBe(false);
  });
  test('is not said of a day that is the same in every year', () => {
    expect(usualDate({ ofTraces: spread(100, 0), ofPastYears: spread(100, 0) })).toBe(false);
  });
});
