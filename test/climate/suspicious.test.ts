import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../../src/base/day.ts';
import { climatologyOf } from '../../src/climate/climatology.ts';
import { suspicious } from '../../src/climate/suspicious.ts';
import { readWeather } from '../../src/read/weather.ts';
import { sharedFile } from '../kit.ts';

const start = parseDay('2026-07-01') as Day;
const usual = () => 24;

/** A July and August around 24 °C, with some days changed. */
function weather(change: (i: number) => number | null) {
  const middle = Array.from({ length: 62 }, (_, i) => change(i) ?? 24 + 3 * Math.sin(i));
  const lines = Int32Array.from(middle, (_, i) => i + 2);
  return {
    source: 'w.csv',
    start,
    tmin: Float64Array.from(middle, (t) => t - 5),
    tmax: Float64Array.from(middle, (t) => t + 5),
    precip: new Float64Array(62),
    lines,
  };
}
const found = (change: (i: number) => number | null) =>
  suspicious(weather(change), usual, (day) => ({ file: 'w.csv', line: day - start + 2, column: 1, length: 10 })).map(
    ({ code, line }) => [code, line],
  );

describe('observed weather', () => {
  test('that is sound has nothing suspicious', () => expect(found(() => null)).toEqual([]));
  test('a week of the same extremes is stuck, six days are not', () => {
    expect(found((i) => (i >= 10 && i < 17 ? 22.2 : null))).toEqual([['weather-stuck', 12]]);
    expect(found((i) => (i >= 10 && i < 16 ? 22.2 : null))).toEqual([]);
  });
  test('a jump of more than 30 °C in a day is told on its line, there and back', () => {
    expect(found((i) => (i === 20 ? -12 : null))).toEqual([
      ['weather-jump', 22],
      ['weather-jump', 23],
    ]);
  });
  test('ten days at 75 °F in a file of °C are told where they begin', () => {
    const codes = found((i) => (i >= 30 && i < 40 ? 75 + (i % 3) : null));
    expect(codes).toContainEqual(['weather-unit-mix', 32]);
  });
});

const file = sharedFile('data/weather/milwaukee-wi.csv');
test.skipIf(file === null)(
  `65 years of Milwaukee (NOAA GHCN-Daily) have next to nothing suspicious${file === null ? ' (skipped: not beside the project)' : ''}`,
  () => {
    const { value } = readWeather(readFileSync(file as string, 'utf8'), 'm.csv');
    if (!value) throw new Error('not read');
    const { usual: of } = climatologyOf(
      value,
      { latitude: 43, elevationM: 205, irrigated: false },
      parseDay('2026-08-01') as Day,
    );
    const problems = suspicious(
      value,
      (day) => (of(day).tmin + of(day).tmax) / 2,
      () => ({ file: 'm.csv' }),
    );
    expect(problems.length).toBeLessThanOrEqual(1);
  },
);
