import { describe, expect, test } from 'vitest';
import { readWeather } from '../../src/read/weather.ts';

const read = (text: string, units?: 'metric' | 'us') => {
  const { value, problems } = readWeather(text, 'w.csv', units);
  expect(problems).toEqual([]);
  return {
    start: value?.start,
    tmin: [...(value?.tmin ?? [])],
    tmax: [...(value?.tmax ?? [])],
    precip: [...(value?.precip ?? [])],
  };
};
const places = (text: string, units?: 'metric' | 'us') =>
  readWeather(text, 'w.csv', units).problems.map(({ code, line, column, length }) => [code, line, column, length]);

/** Days since 1970 of 2027-01-01. */
const NEW_YEAR = 20_819;

describe('readWeather', () => {
  test('reads the columns by their names, in any order', () => {
    expect(read('precip_mm,tmax_c,date,tmin_c\n1.5,4,2027-01-01,-3\n')).toEqual({
      start: NEW_YEAR,
      tmin: [-3],
      tmax: [4],
      precip: [1.5],
    });
  });
  test('passes over columns that it does not know', () => {
    expect(read('station,date,tmin_c,snow,tmax_c\nX1,2027-01-01,-3,much,4\n').tmax).toEqual([4]);
  });
  test('without precip has none known', () => {
    expect(read('date,tmin_c,tmax_c\n2027-01-01,-3,4\n').precip).toEqual([Number.NaN]);
  });
  test('reads names in capitals and with spaces around', () => {
    expect(read(' Date , TMIN_C, TMAX_C \n2027-01-01, -3 , 4 \n').tmin).toEqual([-3]);
  });
  test('32 °F and 50 °F are 0 °C and 10 °C', () => {
    expect(read('date,tmin_f,tmax_f\n2027-01-01,32,50\n')).toMatchObject({ tmin: [0], tmax: [10] });
  });
  test('an inch of rain is 25.4 mm', () => {
    expect(read('date,tmin_c,tmax_c,precip_in\n2027-01-01,1,2,1\n').precip).toEqual([25.4]);
  });
  test('each column has its own unit', () => {
    expect(read('date,tmin_c,tmax_f\n2027-01-01,0,50\n')).toMatchObject({ tmin: [0], tmax: [10] });
  });
  test("columns without a suffix are in the lawn's units, us", () => {
    expect(read('date,tmin,tmax,precip\n2027-01-01,32,50,1\n', 'us')).toMatchObject({ tmax: [10], precip: [25.4] });
  });
  test("columns without a suffix are in the lawn's units, metric", () => {
    expect(read('date,tmin,tmax,precip\n2027-01-01,3,5,1\n', 'metric')).toMatchObject({ tmax: [5], precip: [1] });
  });
  test("a suffix wins over the lawn's units", () => {
    expect(read('date,tmin_c,tmax_c\n2027-01-01,3,5\n', 'us').tmax).toEqual([5]);
  });
  test('without suffix and units is refused', () => {
    expect(places('date,tmin,tmax\n2027-01-01,3,5\n')).toEqual([['weather-units', 1, 1, 14]]);
  });
  test.each([
    ['a byte order mark', '\uFEFFdate,tmin_c,tmax_c\n2027-01-01,-3,4\n'],
    ['CRLF', 'date,tmin_c,tmax_c\r\n2027-01-01,-3,4\r\n'],
    ['CR alone', 'date,tmin_c,tmax_c\r2027-01-01,-3,4\r'],
    ['no line end at the end', 'date,tmin_c,tmax_c\n2027-01-01,-3,4'],
    ['empty lines at the end', 'date,tmin_c,tmax_c\n2027-01-01,-3,4\n\n\n'],
    ['semicolons', 'date;tmin_c;tmax_c\n2027-01-01;-3;4\n'],
    ['tabs', 'date\ttmin_c\ttmax_c\n2027-01-01\t-3\t4\n'],
    ['quotes', '"date","tmin_c","tmax_c"\n"2027-01-01","-3","4"\n'],
    ['exponents and plus signs', 'date,tmin_c,tmax_c\n2027-01-01,-3e0,+4.\n'],
  ])('reads %s', (_, text) => {
    expect(read(text)).toMatchObject({ start: NEW_YEAR, tmin: [-3], tmax: [4] });
  });
  test('reads line ends that change within the file, as an editor leaves them', () => {
    expect(read('date,tmin_c,tmax_c\r\n2027-01-01,1,2\r\n2027-01-02,3,4\n').tmax).toEqual([2, 4]);
  });
  test('leaves days out that are not in the file', () => {
    expect(read('date,tmin_c,tmax_c\n2027-01-01,1,2\n2027-01-03,3,4\n').tmin).toEqual([1, Number.NaN, 3]);
  });
  test('leaves an empty cell out and keeps its neighbour', () => {
    expect(read('date,tmin_c,tmax_c\n2027-01-01,,2\n')).toMatchObject({ tmin: [Number.NaN], tmax: [2] });
  });
  test('steps over 29 February of a leap year as over any day', () => {
    expect(read('date,tmin_c,tmax_c\n2028-02-28,1,2\n2028-02-29,3,4\n2028-03-01,5,6\n').tmin).toEqual([1, 3, 5]);
  });
  test('a minimum equal to the maximum is fine', () => {
    expect(read('date,tmin_c,tmax_c\n2027-01-01,2,2\n').tmin).toEqual([2]);
  });
  test('a hot day that has been measured is fine', () => {
    // 56.7 °C: Furnace Creek, 10 July 1913 (WMO archive of extremes).
    expect(read('date,tmin_c,tmax_c\n1913-07-10,35,56.7\n').tmax).toEqual([56.7]);
  });
  test('finds faults of several kinds in one go, each in its place', () => {
    expect(places('date,tmin_c,tmax_c\n2027-01-01,9,4\n2027-01-01,1,x\n2026-12-31,1,2\nx,1,2\n2027-01-05,1\n')).toEqual(
      [
        ['weather-crossed', 2, 12, 1],
        ['weather-twice', 3, 1, 10],
        ['weather-value', 3, 14, 1],
        ['weather-order', 4, 1, 10],
        ['not-a-date', 5, 1, 1],
        ['weather-cells', 6, 1, 10],
      ],
    );
  });
  test('finds the column of a quoted cell as it is written', () => {
    expect(places('"date","tmin_c","tmax_c"\n"2027-01-01","9","4"\n')).toEqual([['weather-crossed', 2, 14, 3]]);
  });
  test('finds the line after CR line ends', () => {
    expect(places('date,tmin_c,tmax_c\r2027-01-01,1,2\r2027-01-02,9,4\r')).toEqual([['weather-crossed', 3, 12, 1]]);
  });
  test('a fine series of one day has no problem of length: that is for the plan to judge', () => {
    expect(read('date,tmin_c,tmax_c\n2027-01-01,1,2\n').tmin).toHaveLength(1);
  });
});
