/** Labels of drawings: no two over each other, none wider than its room. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { widthOf } from '../../src/emit/sheet/chart/plot.ts';
import { spreadApart } from '../../src/emit/sheet/chart/spread-apart.ts';
import { lined } from '../../src/emit/sheet/chart/text-lines.ts';

describe('spreadApart', () => {
  test('leaves what is apart where it is', () => expect(spreadApart([10, 30], 5, [0, 50])).toEqual([10, 30]));
  test('moves what is too near', () => expect(spreadApart([10, 11, 40], 5, [0, 50])).toEqual([10, 15, 40]));
  test('answers in the order of what was asked', () =>
    expect(spreadApart([40, 11, 10], 5, [0, 50])).toEqual([40, 15, 10]));
  test('goes back from the end', () => expect(spreadApart([48, 49], 5, [0, 50])).toEqual([45, 50]));
  test('keeps any labels apart, inside and in their order', () =>
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -20, max: 220 }), { maxLength: 12 }), (wanted) => {
        const places = spreadApart(wanted, 16, [0, 200]);
        const sorted = wanted.map((want, i) => ({ want, place: places[i]! })).sort((a, b) => a.place - b.place);
        for (const [i, { want, place }] of sorted.entries()) {
          expect(place).toBeGreaterThanOrEqual(0);
          expect(place).toBeLessThanOrEqual(200);
          if (i > 0) expect(place - sorted[i - 1]!.place).toBeGreaterThanOrEqual(16);
          if (i > 0) expect(want).toBeGreaterThanOrEqual(sorted[i - 1]!.want);
        }
      }),
    ));
});

describe('lined', () => {
  test('leaves a short text as it is', () => expect(lined('Pull cores', 12, 200, 2)).toEqual(['Pull cores']));
  test('breaks a long one between words', () =>
    expect(lined('Pre-emergent for summer annual grasses', 13, 200, 2)).toEqual([
      'Pre-emergent for summer',
      'annual grasses',
    ]));
  test('ends in an ellipsis where there is no more room', () =>
    expect(lined('one two three four', 10, 50, 1)).toEqual(['one two…']));
  test('keeps any text inside its room', () =>
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), fc.integer({ min: 1, max: 3 }), (text, most) => {
        const lines = lined(text, 12, 120, most);
        expect(lines.length).toBeLessThanOrEqual(most);
        for (const line of lines) expect(widthOf(line, 12)).toBeLessThanOrEqual(120);
      }),
    ));
});
