/** The tidy CSV of a lawn's own weather: what each fault is called, and where it is said to stand. */
import { expect, test } from 'vitest';
import { readWeather } from '../../src/read/weather.ts';

const HEAD = 'date,tmin_c,tmax_c,precip_mm\n';
const found = (text: string, units?: 'metric' | 'us') =>
  readWeather(text, 'w.csv', units).problems.map(({ code, line, column }) => [code, line, column]);

test.each([
  [
    'semicolons, a byte order mark, capitals and a column of notes',
    '\uFEFFDate;TMIN_C;TMAX_C;note\n2027-01-01;-3;4;x\n',
    [-3, 4],
  ],
  ['columns in another order, in °F', 'tmax_f,date,tmin_f\n50,2027-01-01,32\n', [0, 10]],
  ['lines that end in CR LF', 'date,tmin_c,tmax_c\r\n2027-01-01,-3,4\r\n', [-3, 4]],
])('%s', (_, text, [tmin, tmax]) => {
  const { value, problems } = readWeather(text, 'w.csv');
  expect([problems, value?.tmin[0], value?.tmax[0]]).toEqual([[], tmin, tmax]);
});
test('columns without a unit take the one of the lawn', () => {
  expect(readWeather('date,tmin,tmax,precip\n2027-01-01,32,50,1\n', 'w.csv', 'us').value).toMatchObject({
    tmin: Float64Array.of(0),
    tmax: Float64Array.of(10),
    precip: Float64Array.of(25.4),
  });
});
test('a day that is not there is missing', () => {
  const { value } = readWeather(`${HEAD}2027-01-01,1,2,\n2027-01-03,3,4,0\n`, 'w.csv');
  expect([...value!.tmin]).toEqual([1, Number.NaN, 3]);
});

test.each([
  ['a quoted cell', '"date","tmin_c","tmax_c"\n"2027-01-01","9","4"', ['weather-crossed', 2, 14]],
  ['no unit', 'date,tmin,tmax\n2027-01-01,1,2', ['weather-units', 1, 1]],
  ['no tmax', 'date,tmin_c\n2027-01-01,1', ['weather-header', 1, 1]],
  ['nothing', '', ['weather-header', 1, 1]],
  ['no row', HEAD, ['weather-none', 1, 1]],
  ['a cell too few', `${HEAD}2027-01-01,1,2`, ['weather-cells', 2, 1]],
  ['no day', `${HEAD}1 Jan,1,2,0`, ['not-a-date', 2, 1]],
  ['a day twice', `${HEAD}2027-01-01,1,2,0\n2027-01-01,1,2,0`, ['weather-twice', 3, 1]],
  ['an earlier day', `${HEAD}2027-01-02,1,2,0\n2027-01-01,1,2,0`, ['weather-order', 3, 1]],
  ['a word', `${HEAD}2027-01-01,1,warm,0`, ['weather-value', 2, 14]],
  ['rain below zero', `${HEAD}2027-01-01,1,2,-1`, ['weather-range', 2, 16]],
  ['a minimum above the maximum', `${HEAD}2027-01-01,3,2,0`, ['weather-crossed', 2, 12]],
])('%s is a problem at its place', (_, text, expected) => {
  expect(found(text)).toEqual([expected]);
});
test('of each kind ten are told', () => {
  const rows = Array.from({ length: 31 }, (_, i) => `2027-01-${String(i + 1).padStart(2, '0')},x,2,0`);
  expect(found(HEAD + rows.join('\n'))).toHaveLength(10);
});
test('°C named °F is found out over a whole year', () => {
  const rows = Array.from(
    { length: 360 },
    (_, i) => `${new Date(Date.UTC(2026, 0, 1 + i)).toISOString().slice(0, 10)},10,20,0`,
  );
  expect(found(`date,tmin_f,tmax_f,precip_mm\n${rows.join('\n')}`)).toEqual([['weather-unit-suspect', 1, 6]]);
});
test('°F named °C is found out', () => {
  const rows = Array.from({ length: 31 }, (_, i) => `2027-07-${String(i + 1).padStart(2, '0')},70,90,0`);
  expect(found(HEAD + rows.join('\n'))).toEqual([['weather-unit-suspect', 1, 6]]);
});
