/** What the windows of a season wait for, as a sheet draws it. */
import { describe, expect, test } from 'vitest';
import { demoOn } from '../emit/sheet-kit.ts';

const season = demoOn(4, 2);
const { signals, today, applications } = season;

describe('thresholds', () => {
  test('are those of the program, in °C', () =>
    expect(signals.thresholds).toContainEqual({
      step: 'summer-annual-barrier',
      edge: 'opens',
      of: 'soil',
      depthM: 0.05,
      stat: 'mean',
      meanDays: 5,
      valueC: 10,
      direction: 'rises',
    }));
  test('are of no step that is over or left out', () => {
    const over = applications.filter(({ status }) => !['expected', 'open', 'due'].includes(status)).map(({ id }) => id);
    expect(over.length).toBeGreaterThan(1);
    expect(signals.thresholds.filter(({ step }) => over.includes(step))).toEqual([]);
  });
});

describe('heat', () => {
  const sine = signals.heat.find(({ method, baseC }) => method === 'single-sine' && baseC === 10)!;
  test('of the last observed day is what the season tells of today', () =>
    expect(sine.sums.at(-1)).toBe(Math.round(today.degreeDays10C!)));
  test('that is usual for that day is so too', () =>
    expect(Math.abs(sine.usual[sine.sums.length - 1]! - today.usual.degreeDays10C!)).toBeLessThan(10));
  test('goes through the whole season', () => expect(sine.usual).toHaveLength(365));
  test('never falls', () => expect(sine.usual.filter((value, i) => value! < (sine.usual[i - 1] ?? 0))).toEqual([]));
  test('names the sum that closes a window: 155 °F·d, Ohio State University Extension, bygl.osu.edu/node/1235', () =>
    expect(sine.reaches).toEqual([{ step: 'summer-annual-barrier', edge: 'closes', sumC: 155 / 1.8 }]));
  test('has a curve for each way of counting', () =>
    expect(signals.heat.map(({ method }) => method).sort()).toEqual(['average', 'single-sine']));
});

describe('soil', () => {
  test('lies in 8 of 10 years between its percentiles, with the mean between them', () =>
    expect(
      signals.usual.soil5C.filter(
        (value, i) => value! < signals.usual.soil5CP10[i]! || value! > signals.usual.soil5CP90[i]!,
      ),
    ).toEqual([]));
  test('has no forecast where none is given', () => expect(signals.forecast).toEqual({ soil5C: [], airMeanC: [] }));
});
