/** Weather files in the formats of others, each by its publisher's documentation, and a real file by values read off by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { civil, type Day } from '../../src/base/day.ts';
import { at } from '../../src/base/series.ts';
import { signal, type WeatherSeries, weatherEnd } from '../../src/model/weather.ts';
import { kindOf } from '../../src/read/any.ts';
import { readWeather } from '../../src/read/weather.ts';
import { sharedFile } from '../kit.ts';

const on = (weather: WeatherSeries | undefined, day: Day) =>
  (['tmin', 'tmax', 'precip'] as const).map((name) => at(signal(weather!, name), day));
const problemsIn = (text: string, name: string, units?: 'metric' | 'us') =>
  readWeather(text, name, units).problems.map(({ code, line, column }) => [code, line, column]);

const real = sharedFile('data/weather/USC00305816-1945-1960.dly');

describe.skipIf(real === null)('a real GHCN-Daily file (skips where ../shared/data is absent)', () => {
  const { value, problems } = readWeather(real === null ? '' : readFileSync(real, 'utf8'), 'USC00305816.dly');
  test('is read without a problem, from its first day to its last', () => {
    expect(problems).toEqual([]);
    expect([value!.start, weatherEnd(value!)]).toEqual([civil(1945, 1, 1), civil(1961, 1, 1)]);
  });
  // Read off the file by eye: 5 columns of tenths, after 21 columns of head, 8 columns a day.
  test.each([
    ['the first day', civil(1945, 1, 1), [-1.1, 12.8, 7.9]],
    ['a trace of rain', civil(1945, 1, 8), [-5, 4.4, 0]],
    ['a day of August', civil(1952, 8, 13), [Number.NaN, 30, Number.NaN]],
    ['the last first of a month', civil(1960, 12, 1), [-3.9, 1.1, 0]],
  ])('%s', (_, day, expected) => {
    const found = on(value, day);
    for (const [i, figure] of expected.entries()) if (!Number.isNaN(figure)) expect(found[i]).toBeCloseTo(figure, 9);
  });
  test('rain with quality flag "L" is missing, the day after it is there', () => {
    const rain = [18, 19, 20].map((day) => on(value, civil(1948, 6, day))[2]);
    expect(rain).toEqual([Number.NaN, Number.NaN, 13]);
  });
  test('every one of 5844 days has both extremes', () => {
    expect(value!.tmin.filter((low, i) => !Number.isNaN(low + value!.tmax[i]!))).toHaveLength(5844);
  });
});

/** A `.dly` line by the readme: id 1-11, year 12-15, month 16-17, element 18-21, then value, three flags a day. */
const dly = (element: string, values: readonly (number | string)[], month = '02', id = 'USC00999999') =>
  `${id}2027${month}${element}${Array.from({ length: 31 }, (_, i) => {
    const value = values[i] ?? -9999;
    return typeof value === 'string' ? value : `${String(value).padStart(5)}   `;
  }).join('')}`;

/** A line of USCRN daily01 with the fields that are read. */
const line = (date: string, max: string, min: string, rain: string, station = '99999') =>
  `${station} ${date}  2.424  -98.08   36.12 ${max} ${min}     4.2     4.4 ${rain}    12.34 C    18.1    -4.9     5.1    88.2    21.0    50.1   0.291 -99.000   0.280   0.270   0.260     6.1     6.0     6.4     8.1 -9999.0`;

describe('GHCN-Daily (readme of NCEI, section III)', () => {
  test('tenths, -9999, a quality flag, other elements', () => {
    const text = [
      dly('TMAX', [100, 110, '  120 X ']),
      dly('TMIN', [-5, -9999, 20]),
      dly('SNWD', [3]),
      dly('PRCP', [3]),
    ];
    const { value, problems } = readWeather(text.join('\n'), 'a.dly');
    expect(problems).toEqual([]);
    expect([1, 2, 3].map((day) => on(value, civil(2027, 2, day)))).toEqual([
      [-0.5, 10, 0.3],
      [Number.NaN, 11, Number.NaN],
      [2, Number.NaN, Number.NaN],
    ]);
    expect(value!.tmin).toHaveLength(28);
  });
  test('extremes that cross are both missing', () => {
    const { value } = readWeather([dly('TMAX', [10]), dly('TMIN', [20])].join('\n'), 'a.dly');
    expect(on(value, civil(2027, 2, 1)).slice(0, 2)).toEqual([Number.NaN, Number.NaN]);
  });
  test.each([
    ['another station', [dly('TMAX', []), dly('TMIN', [], '02', 'USC00111111')], ['weather-stations', 2, 1]],
    ['a line cut off', [dly('TMAX', []).slice(0, 100)], ['weather-line', 1, 102]],
    ['a line of something else', [dly('TMAX', []), 'TMAX 3 4'], ['weather-line', 2, 1]],
    ['letters for a value', [dly('TMAX', ['  1a2   '])], ['weather-line', 1, 22]],
    ['a month 13', [dly('TMAX', [], '13')], ['not-a-date', 1, 12]],
    ['a month twice', [dly('TMAX', []), dly('TMAX', [])], ['weather-twice', 2, 12]],
    ['heat never measured', [dly('TMAX', [10, 2000])], ['weather-range', 1, 30]],
  ])('%s is a problem at its place', (_, lines, expected) => {
    expect(problemsIn(lines.join('\n'), 'a.dly')).toEqual([expected]);
  });
});

describe('daily-summaries CSV (NCEI, Daily Summaries documentation)', () => {
  const metric = `"STATION","DATE","NAME","PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN"
"USW00099999","2027-02-01","SOMEWHERE, XX","1.3",",,W,2400","10.6",",,W","-0.5"
"USW00099999","2027-02-03","SOMEWHERE, XX","","","11.1",",I,W","2.2"
`;
  test('metric, with a name that holds a comma, a hole and a quality flag', () => {
    const { value, problems } = readWeather(metric, 'a.csv', 'metric');
    expect(problems).toEqual([]);
    expect([1, 2, 3].map((day) => on(value, civil(2027, 2, day)))).toEqual([
      [-0.5, 10.6, 1.3],
      [Number.NaN, Number.NaN, Number.NaN],
      [2.2, Number.NaN, Number.NaN],
    ]);
  });
  test('standard units are °F and inches', () => {
    const { value } = readWeather('STATION,DATE,PRCP,TMAX,TMIN\nX,2027-02-01,0.5,50,32\n', 'a.csv', 'us');
    expect(on(value, civil(2027, 2, 1))).toEqual([0, 10, 12.7]);
  });
  test('whole numbers beyond 134 are tenths, whatever the lawn says', () => {
    const { value } = readWeather('STATION,DATE,PRCP,TMAX,TMIN\nX,2027-07-01,5,311,194\n', 'a.csv', undefined);
    expect(on(value, civil(2027, 7, 1))).toEqual([19.4, 31.1, 0.5]);
  });
  test('°F read as °C is found out', () => {
    const rows = Array.from({ length: 20 }, (_, i) => `X,2027-07-${String(i + 1).padStart(2, '0')},88,70`);
    expect(problemsIn(`STATION,DATE,TMAX,TMIN\n${rows.join('\n')}`, 'a.csv', 'metric')).toEqual([
      ['weather-unit-suspect', 1, 1],
    ]);
  });
  test.each([
    ['without units', 'STATION,DATE,TMAX,TMIN\nX,2027-02-01,50,32', undefined, ['weather-units', 1, 1]],
    ['without TMIN', 'STATION,DATE,TMAX\nX,2027-02-01,5', 'metric', ['weather-header', 1, 1]],
    [
      'two stations',
      'STATION,DATE,TMAX,TMIN\nX,2027-02-01,5,3\nY,2027-02-01,5,3',
      'metric',
      ['weather-stations', 3, 1],
    ],
    ['a day that is none', 'STATION,DATE,TMAX,TMIN\nX,2027-02-30,5,3', 'metric', ['not-a-date', 2, 3]],
    ['a day twice', 'STATION,DATE,TMAX,TMIN\nX,2027-02-01,5,3\nX,2027-02-01,5,3', 'metric', ['weather-twice', 3, 3]],
    [
      'a word after a name with a comma',
      'STATION,NAME,DATE,TMAX,TMIN\nX,"A, B",2027-02-01,warm,3',
      'metric',
      ['weather-value', 2, 21],
    ],
    ['a word', 'STATION,DATE,TMAX,TMIN\nX,2027-02-01,warm,3', 'metric', ['weather-value', 2, 14]],
    ['a cell too few', 'STATION,DATE,TMAX,TMIN\nX,2027-02-01,1', 'metric', ['weather-cells', 2, 1]],
    ['no row', 'STATION,DATE,TMAX,TMIN\n', 'metric', ['weather-none', 1, 1]],
  ] as const)('%s is a problem at its place', (_, text, units, expected) => {
    expect(problemsIn(text, 'a.csv', units)).toEqual([expected]);
  });
});

describe('USCRN daily01 (NCEI, readme of the daily01 product: 28 fields)', () => {
  test('air extremes and rain, -9999.0 is missing', () => {
    const text = [
      line('20270201', '    12.5', '    -4.1', '     0.0'),
      line('20270202', '-9999.0', ' -2.0', '-9999.0'),
    ];
    const { value, problems } = readWeather(`${text.join('\n')}\n`, 'CRND0103.txt');
    expect(problems).toEqual([]);
    expect([1, 2].map((day) => on(value, civil(2027, 2, day)))).toEqual([
      [-4.1, 12.5, 0],
      [-2, Number.NaN, Number.NaN],
    ]);
  });
  const good = line('20270201', '12.5', '-4.1', '0.0');
  test.each([
    ['another station', `${good}\n${line('20270202', '1', '0', '0', '88888')}`, ['weather-stations', 2, 1]],
    ['a column too few', `${good}\n${good.slice(0, -8)}`, ['weather-cells', 2, 1]],
    ['no day', good.replace('20270201', '20270230'), ['not-a-date', 1, 7]],
    ['the same day', `${good}\n${good}`, ['weather-twice', 2, 7]],
    ['an earlier day', `${good}\n${line('20270101', '1', '0', '0')}`, ['weather-order', 2, 7]],
    ['a word', good.replace('12.5', 'warm'), ['weather-value', 1, 39]],
  ])('%s is a problem at its place', (_, text, expected) => {
    expect(problemsIn(text, 'a.txt')).toEqual([expected]);
  });
});

describe('extremes that cross in a station record, by two times of observation', () => {
  test.each([
    ['a.csv', 'STATION,DATE,TMAX,TMIN\nX,2027-02-01,1,3\nX,2027-02-02,4,1\n'],
    ['a.txt', `${line('20270201', '1.0', '2.0', '0')}\n${line('20270202', '4.0', '1.0', '0')}\n`],
  ])('are missing in %s', (name, text) => {
    const { value, problems } = readWeather(text, name, 'metric');
    expect(problems).toEqual([]);
    expect([...(value?.tmin ?? [])]).toEqual([Number.NaN, 1]);
  });
});

describe('which file is weather', () => {
  test.each([['a.csv'], ['a.dly'], ['CRND0103-2027.txt'], ['A.DLY']])('%s is, by its ending', (name) => {
    expect(kindOf('', name)).toBe('weather');
  });
  test('the format is told by the content, not by the name', () => {
    expect(readWeather(dly('TMAX', [100]), 'a.csv').value?.tmax[0]).toBe(10);
  });
});
