import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { brief, type Case, inLawn, refuses, run, type Spoilt, weather, weatherLines } from './lawn-folder.ts';

const csv = (lines: readonly string[]): Spoilt => ({ 'weather.csv': `${lines.join('\n')}\n` });
const [header = '', ...days] = weatherLines;
/** Position of a day among the lines below the header. */
const at = (date: string): number => days.findIndex((line) => line.startsWith(date));
/** The line of a day in the whole file; where days before it are gone, the line of the first day after the gap. */
const lineOf = (day: string): number => at(day) + 2;
const without = (date: string, count: number) => csv([header, ...days.toSpliced(at(date), count)]);
const instead = (date: string, ...lines: string[]) => csv([header, ...days.toSpliced(at(date), 1, ...lines)]);
const aug = (n: number) => days[at(`2026-08-0${n}`)] ?? '';
// The file begins on 2010-01-01, so that 1 August 2026 stands on line 6058.
const LINE = 6058;

describe('weather that is refused', () => {
  test.each<Case>([
    ['an empty file', { 'weather.csv': '' }, 2, ['weather-header weather.csv:1:1']],
    ['an empty line', { 'weather.csv': '\n' }, 2, ['weather-header weather.csv:1:1']],
    ['a header only', csv([header]), 2, ['weather-none weather.csv:1:1']],
    ['one day', csv([header, '2027-04-01,3,9,0']), 1, ['weather-few-days weather.csv']],
    ['no header', csv(days), 2, ['weather-header weather.csv:1:1']],
    ['a missing column', csv(['date,tmin_c', '2027-01-01,3']), 2, ['weather-header weather.csv:1:1']],
    ['columns without a unit', csv([header.replaceAll('_c', ''), ...days]), 1, ['weather-units weather.csv:1:1']],
    [
      'something else altogether',
      { 'weather.csv': '\u0000\u0001'.repeat(1000) },
      2,
      ['weather-header weather.csv:1:1'],
    ],
    ['a million commas', { 'weather.csv': ','.repeat(1e6) }, 2, ['weather-header weather.csv:1:1']],
    [
      'two days the wrong way round',
      csv([header, ...days.toSpliced(at('2026-08-01'), 2, aug(2), aug(1))]),
      1,
      [`weather-order weather.csv:${LINE + 1}:1`],
    ],
    ['a day twice', instead('2026-08-01', aug(1), aug(1)), 1, [`weather-twice weather.csv:${LINE + 1}:1`]],
    [
      'a minimum above the maximum',
      instead('2026-08-01', '2026-08-01,30,20,0'),
      1,
      [`weather-crossed weather.csv:${LINE}:12`],
    ],
    ['a text for a number', instead('2026-08-01', '2026-08-01,20,warm,0'), 1, [`weather-value weather.csv:${LINE}:15`]],
    ['a decimal comma', csv(['date;tmin_c;tmax_c', '2027-01-01;3,5;4.5']), 1, ['weather-value weather.csv:2:12']],
    [
      'NaN, Infinity and 0x10',
      instead('2026-08-01', '2026-08-01,NaN,Infinity,0x10'),
      1,
      [
        `weather-value weather.csv:${LINE}:12`,
        `weather-value weather.csv:${LINE}:16`,
        `weather-value weather.csv:${LINE}:25`,
      ],
    ],
    ['-999 for missing', instead('2026-08-01', '2026-08-01,-999,20,0'), 1, [`weather-range weather.csv:${LINE}:12`]],
    ['rain below nothing', instead('2026-08-01', '2026-08-01,10,20,-1'), 1, [`weather-range weather.csv:${LINE}:18`]],
    ['too few cells', instead('2026-08-01', '2026-08-01,10'), 1, [`weather-cells weather.csv:${LINE}:1`]],
    ['too many cells', instead('2026-08-01', '2026-08-01,10,20,0,0'), 1, [`weather-cells weather.csv:${LINE}:1`]],
    ['a quote without an end', instead('2026-08-01', `"${aug(1)}`), 1, [`weather-cells weather.csv:${LINE}:1`]],
    ['a day that does not exist', instead('2026-08-01', '2026-06-31,10,20,0'), 1, [`not-a-date weather.csv:${LINE}:1`]],
    ['a day written another way', instead('2026-08-01', '8/1/2026,10,20,0'), 1, [`not-a-date weather.csv:${LINE}:1`]],
    [
      '°F under a heading of °C',
      csv([header, ...days.map((line) => line.replace(/^(\d{4}-07-\d\d).*/, '$1,75,85,0'))]),
      1,
      ['weather-unit-suspect weather.csv:1:6'],
    ],
    [
      '40 days missing in the last year',
      without('2026-08-01', 40),
      1,
      [`weather-hole weather.csv:${lineOf('2026-08-01')}:1`],
    ],
    [
      '40 days of empty cells in the last year',
      csv([
        header,
        ...days.toSpliced(
          at('2026-08-01'),
          40,
          ...days.slice(at('2026-08-01'), at('2026-08-01') + 40).map((line) => `${line.slice(0, 10)},,,`),
        ),
      ]),
      1,
      [`weather-hole weather.csv:${lineOf('2026-08-01') + 40}:1`],
    ],
    [
      '31 days missing that reach into the last year',
      without('2026-03-05', 31),
      1,
      [`weather-hole weather.csv:${lineOf('2026-03-05')}:1`],
    ],
  ])('%s', (...one) => refuses(one));

  test('the first ten of a kind are listed', async () => {
    const { problems } = await run(csv([header, ...days.map((line) => line.replace(/,.*/, ',x,y,z'))]));
    expect(problems.map(({ code }) => code)).toEqual(Array(10).fill('weather-value'));
  });
  test('check finds the same places', () =>
    refuses(
      ['', instead('2026-08-01', '2026-08-01,30,20,0'), 1, [`weather-crossed weather.csv:${LINE}:12`]],
      ['check', 'weather.csv'],
    ));
});

describe('weather with gaps that a plan can bear', () => {
  test.each([
    [
      '40 days, long ago',
      without('2015-08-01', 40),
      [`weather-gap weather.csv:${lineOf('2015-08-01')}:1`, 'weather-few-years weather.csv'],
    ],
    [
      '30 days in the last year',
      without('2026-08-01', 30),
      [`weather-gap weather.csv:${lineOf('2026-08-01')}:1`, 'weather-few-years weather.csv'],
    ],
    [
      '4 days in the last year',
      without('2026-08-01', 4),
      [`weather-gap weather.csv:${lineOf('2026-08-01')}:1`, 'weather-few-years weather.csv'],
    ],
    [
      '3 days in the last year',
      without('2026-08-01', 3),
      [`weather-gap-short weather.csv:${lineOf('2026-08-01')}:1`, 'weather-few-years weather.csv'],
    ],
  ])('%s are told, and the plan goes on', async (_, spoilt, told) => {
    const { code, problems } = await run(spoilt);
    expect(problems.map(brief)).toEqual(told);
    expect(code).toBe(0);
  });
  test('a filled gap leaves the date of a dated step as it is', async () => {
    const dateOf = ({ stdout }: { stdout: string }) => (JSON.parse(stdout) as Season).applications[0]?.date;
    expect(dateOf(await run(without('2026-08-01', 30)))).toBe(dateOf(await run({})));
  });
  test('gaps are no error to check of one file', async () => {
    expect((await run(without('2026-08-01', 40), ['check', 'weather.csv'])).code).toBe(0);
  });
  test('--strict makes a warning an error, and writes nothing', async () => {
    const { code, cwd } = await run(without('2026-08-01', 4), [
      'plan',
      'lawn.yaml',
      '--as-of',
      '2027-04-02',
      '--strict',
    ]);
    expect(code).toBe(1);
    expect(readFileSync(path.join(cwd, 'out/site/test-lawn.ics'), 'utf8')).toContain('X-KEPT');
  });
});

describe('long weather', () => {
  test('four hundred years of one temperature are read', async () => {
    const lines = ['date,tmin_c,tmax_c'];
    for (let day = Date.UTC(1600, 0, 1); day < Date.UTC(2027, 3, 2); day += 86_400_000)
      lines.push(`${new Date(day).toISOString().slice(0, 10)},10,20`);
    expect((await run(csv(lines), ['check', 'weather.csv'])).code).toBe(0);
  });
  test('an endless line of text is refused', () =>
    refuses(['', { 'weather.csv': `${weather}${'x'.repeat(5e6)}` }, 1, ['weather-cells weather.csv:6302:1']]));
  test('units may come from the lawn', async () => {
    const spoilt = {
      ...csv([header.replaceAll('_c', '').replace('_mm', ''), ...days]),
      ...inLawn('[weather.csv]', '[weather.csv], units: metric'),
    };
    expect((await run(spoilt)).code).toBe(0);
  });
});
