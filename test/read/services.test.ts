/** Answers of weather services: real ones from ../shared/data/api by values worked out apart, and what can be wrong with them. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { civil, type Day } from '../../src/base/day.ts';
import { at } from '../../src/base/series.ts';
import { signal, weatherEnd } from '../../src/model/weather.ts';
import { nceiDaily } from '../../src/read/services/ncei.ts';
import { nwsForecast } from '../../src/read/services/nws.ts';
import { openMeteoArchive, openMeteoForecast } from '../../src/read/services/open-meteo.ts';
import { type Answer, type Service, talk } from '../../src/read/services/service.ts';
import { sharedFile } from '../kit.ts';

const range = { from: civil(1997, 1, 1), to: civil(2026, 12, 31) };
const site = (zone: string) => ({ latitude: 39.2, longitude: -84.02, zone });
const read = (service: Service, text: string, zone = 'America/New_York') =>
  service.parse(text, site(zone), range, 'https://x.test');
const day = (answer: Answer, on: Day) => {
  if (!('weather' in answer)) throw new Error(JSON.stringify(answer));
  const figures = (['tmin', 'tmax', 'precip'] as const).map((name) => at(signal(answer.weather, name), on));
  return figures.map((figure) => Math.round(figure * 1000) / 1000);
};
const codeOf = (answer: Answer) => ('problem' in answer ? answer.problem.code : null);

const folder = sharedFile('data/api');
const real = (name: string) => readFileSync(`${folder}/${name}`, 'utf8');

describe.skipIf(folder === null)('real answers (skip where ../shared/data is absent)', () => {
  test('hours 9:30 h ahead become days of that zone', () => {
    const answer = read(openMeteoArchive, real('open-meteo-archive-hourly.json'), 'Australia/Adelaide');
    // Least and greatest of each 24 hours of the file.
    expect([10, 11, 12].map((date) => day(answer, civil(2025, 1, date)))).toEqual([
      [16.7, 33.5, 0],
      [19, 35.1, 0],
      [19.1, 34.9, 0],
    ]);
  });
  test('the same hours read for another zone: days cut in two are left out', () => {
    const answer = read(openMeteoArchive, real('open-meteo-archive-hourly.json'), 'UTC');
    const known = [9, 10, 11, 12].map((date) => !Number.isNaN(day(answer, civil(2025, 1, date))[0]!));
    expect(known).toEqual([false, true, true, false]);
  });
  test('a forecast by the hour', () => {
    const answer = read(openMeteoForecast, real('open-meteo-forecast-hourly.json'), 'Australia/Adelaide');
    expect(day(answer, civil(2026, 7, 17))).toEqual([4.8, 16.4, 0]);
  });
  test('unix time: days and soil of a zone 11 h ahead', () => {
    const answer = read(openMeteoForecast, real('open-meteo-forecast-soil-unixtime.json'), 'Australia/Melbourne');
    expect(day(answer, civil(2024, 1, 16))).toEqual([19.7, 32.1, 0.4]);
    expect(day(answer, civil(2024, 1, 31))).toEqual([20, 43.3, 16.5]);
    if (!('weather' in answer)) throw new Error();
    expect(answer.soil?.map(({ depthCm }) => depthCm)).toEqual([0, 6, 18, 54]);
    const six = answer.soil![1]!.daily;
    // Four hours of 16 January are no day; the twenty of the 17th are.
    expect([at(six, civil(2024, 1, 16)), at(six, civil(2024, 1, 17)) > 20]).toEqual([Number.NaN, true]);
  });
  test('a day of nulls is no weather', () => {
    expect(codeOf(read(openMeteoArchive, real('open-meteo-archive-daily-nulls.json')))).toBe('service-empty');
  });
  test('a point leads to its grid square on the same host', () => {
    expect(read(nwsForecast, real('nws-points.json'))).toEqual({ next: 'https://x.test/gridpoints/TAE/58,65' });
  });
  test('a raw gridpoint: intervals become days of the zone', () => {
    const answer = read(nwsForecast, real('nws-gridpoint-raw.json'));
    // Least and greatest of the hours that the intervals cover in UTC-5, and their share of rain, worked out apart.
    expect(day(answer, civil(2022, 2, 5))).toEqual([3.889, 12.778, 2.794]);
    expect(day(answer, civil(2022, 2, 4))).toEqual([9.444, 22.222, 14.224]);
    expect(day(answer, civil(2022, 2, 9))).toEqual([3.889, 16.667, 1.312]);
  });
  test('days of a gridpoint that are told in part are left out', () => {
    const answer = read(nwsForecast, real('nws-gridpoint-raw.json'));
    if (!('weather' in answer)) throw new Error();
    expect([answer.weather.start, weatherEnd(answer.weather)]).toEqual([civil(2022, 2, 4), civil(2022, 2, 11)]);
  });
});

describe('Open-Meteo', () => {
  const daily = (extra: object) =>
    JSON.stringify({
      utc_offset_seconds: -18_000,
      daily: {
        time: ['2027-04-01', '2027-04-02'],
        temperature_2m_min: [1, null],
        temperature_2m_max: [9, 10],
        ...extra,
      },
    });
  test('asks for days of the zone, to three decimals', () => {
    expect(openMeteoArchive.url(site('America/New_York'), range, 'https://x.test')).toBe(
      'https://x.test/v1/archive?latitude=39.20&longitude=-84.02&timezone=America/New_York&daily=temperature_2m_max,temperature_2m_min,precipitation_sum&start_date=1997-01-01&end_date=2026-12-31',
    );
  });
  test('a null is missing on its day alone', () => {
    const answer = read(openMeteoArchive, daily({ precipitation_sum: [0.2, 3] }));
    expect([day(answer, civil(2027, 4, 1)), day(answer, civil(2027, 4, 2))]).toEqual([
      [1, 9, 0.2],
      [Number.NaN, Number.NaN, 3],
    ]);
  });
  test('a hole between days stays a hole', () => {
    const answer = read(openMeteoArchive, daily({ time: ['2027-04-01', '2027-04-04'], temperature_2m_min: [1, 2] }));
    expect(day(answer, civil(2027, 4, 2))[0]).toBeNaN();
    expect(day(answer, civil(2027, 4, 4))).toEqual([2, 10, Number.NaN]);
  });
  test('°F is turned into °C', () => {
    const text = daily({}).replace(
      '"daily"',
      '"daily_units":{"temperature_2m_min":"°F","temperature_2m_max":"°F"},"daily"',
    );
    expect(day(read(openMeteoArchive, text), civil(2027, 4, 1))[1]).toBeCloseTo(-12.778, 3);
  });
  test('hours stamped in UTC become days of the zone, also with a change of clocks', () => {
    // 2027-03-14 has 23 hours in New York, from 05:00Z to 04:00Z.
    const start = Date.UTC(2027, 2, 14, 5);
    const time = Array.from({ length: 47 }, (_, i) => new Date(start + i * 3_600_000).toISOString().slice(0, 16));
    const answer = read(openMeteoForecast, JSON.stringify({ hourly: { time, temperature_2m: time.map((_, i) => i) } }));
    expect(
      [day(answer, civil(2027, 3, 14)), day(answer, civil(2027, 3, 15))].map(([low, high]) => [low, high]),
    ).toEqual([
      [0, 22],
      [23, 46],
    ]);
  });
  test.each([
    ['not JSON', '<html>busy</html>', 'service-nonsense'],
    ['nothing', '', 'service-nonsense'],
    ['broken off', daily({}).slice(0, 60), 'service-nonsense'],
    ['a list', '[]', 'service-nonsense'],
    ['no block', '{}', 'service-nonsense'],
    ['columns of two lengths', daily({ precipitation_sum: [1] }), 'service-nonsense'],
    ['text for numbers', daily({ temperature_2m_max: ['a', 'b'] }), 'service-nonsense'],
    ['no such day', daily({ time: ['2027-02-30', 'x'] }), 'service-nonsense'],
    ['a time out of this world', daily({ time: [1e15, 2e15] }), 'service-nonsense'],
    [
      'a unit not known',
      daily({}).replace('"daily"', '"daily_units":{"temperature_2m_min":"K"},"daily"'),
      'service-nonsense',
    ],
    ['only crossed days', daily({ temperature_2m_max: [0, 0] }), 'service-empty'],
    ['only heat never measured', daily({ temperature_2m_max: [999, 999] }), 'service-empty'],
  ])('%s: %#', (_, text, code) => {
    expect(codeOf(read(openMeteoArchive, text))).toBe(code);
  });
});

describe('NCEI', () => {
  const csv = 'STATION,DATE,PRCP,TMAX,TMIN\nUSW00099999,2027-02-01,  1.3, 10.6, -0.5\n';
  test('days as CSV', () => {
    expect(day(read(nceiDaily, csv), civil(2027, 2, 1))).toEqual([-0.5, 10.6, 1.3]);
  });
  test('days as JSON, whose values are text', () => {
    const rows = [
      { STATION: 'USW00099999', DATE: '2027-02-01', TMAX: '   10.6', TMIN: '   -0.5', PRCP: '    1.3' },
      { STATION: 'USW00099999', DATE: '2027-02-02', TMAX: '    7.0', TMIN: '    1.0' },
    ];
    const answer = read(nceiDaily, JSON.stringify(rows));
    expect([day(answer, civil(2027, 2, 1)), day(answer, civil(2027, 2, 2))]).toEqual([
      [-0.5, 10.6, 1.3],
      [1, 7, Number.NaN],
    ]);
  });
  const station = (
    id: string,
    point: readonly number[],
    startDate = '1950-01-01',
    endDate = '2026-12-30T00:00:00',
  ) => ({
    stations: [{ id: `GHCND:${id}`, name: id }],
    centroid: { point },
    startDate,
    endDate,
  });
  const search = (...results: object[]) => JSON.stringify({ results });
  test('asks for stations around, or at once for the one that is named', () => {
    const url = (named?: string) =>
      nceiDaily.url({ ...site('America/New_York'), station: named }, range, 'https://x.test');
    expect(url()).toContain('bbox=39.70,-84.52,38.70,-83.52');
    expect(url('USW00093815')).toContain('stations=USW00093815&');
  });
  test('goes on to the nearest station that has both ends of the range', () => {
    const answer = read(
      nceiDaily,
      search(
        station('USC00000001', [-84.02, 39.21], '2020-01-01'),
        station('USC00000002', [-84.02, 39.22], '1950-01-01', '2001-01-01'),
        station('USC00000003', [-84.2, 39.4]),
        station('USC00000004', [-84.02, 39.3]),
      ),
    );
    expect(answer).toEqual({
      next: 'https://x.test/access/services/data/v1?dataset=daily-summaries&stations=USC00000004&dataTypes=TMAX,TMIN,PRCP&units=metric&format=csv&includeAttributes=true&startDate=1997-01-01&endDate=2026-12-31',
    });
  });
  test('takes one station for history and this year: the nearest that holds both', () => {
    const whole = { from: civil(1997, 1, 1), to: civil(2027, 4, 1) };
    const text = search(
      station('USC00000001', [-84.02, 39.21], '2024-01-01', '2027-03-30'),
      station('USC00000002', [-84.3, 39.5], '1950-01-01', '2027-03-30'),
    );
    const asked = (from: number, to: number) =>
      JSON.stringify(nceiDaily.parse(text, site('America/New_York'), { from, to, whole }, 'https://x.test'));
    expect(asked(civil(1997, 1, 1), civil(2026, 12, 31))).toContain('stations=USC00000002&');
    expect(asked(civil(2027, 1, 1), civil(2027, 4, 1))).toContain('stations=USC00000002&');
  });
  test('names the station as the source', () => {
    const answer = read(nceiDaily, csv);
    expect('weather' in answer && answer.weather.source).toBe('NOAA NCEI daily summaries, station USW00099999');
  });
  test.each([
    ['no station', search(), 'service-no-station'],
    ['a station that leads astray', search(station('X&stations=../', [-84, 39.2])), 'service-nonsense'],
    ['an empty list', '[]', 'service-empty'],
    ['a first line alone', 'STATION,DATE,TMAX,TMIN\n', 'service-empty'],
    ['an empty text', '', 'service-empty'],
    ['a page', '<html>', 'service-nonsense'],
    ['rows cut off', `${csv}USW00099999,2027-0`, 'service-nonsense'],
  ])('%s: %#', (_, text, code) => {
    expect(codeOf(read(nceiDaily, text))).toBe(code);
  });
});

describe('NWS', () => {
  const grid = (properties: object) => JSON.stringify({ properties });
  const hours = (value: number | null, validTime = '2027-04-02T04:00:00+00:00/P1D', uom = 'wmoUnit:degC') => ({
    temperature: { uom, values: [{ validTime, value }] },
  });
  test('an interval of a day, its own extremes and a null of rain', () => {
    const layers = {
      ...hours(10),
      maxTemperature: { values: [{ validTime: '2027-04-02T12:00:00+00:00/PT13H', value: 15 }] },
      minTemperature: { values: [{ validTime: '2027-04-02T00:00:00+00:00/PT14H', value: 4 }] },
      quantitativePrecipitation: { values: [{ validTime: '2027-04-02T04:00:00+00:00/P1D', value: null }] },
    };
    expect(day(read(nwsForecast, grid(layers)), civil(2027, 4, 2))).toEqual([4, 15, Number.NaN]);
  });
  test.each([
    ['neither square nor forecast', grid({}), 'service-nonsense'],
    ['a square that leads astray', grid({ gridId: '../x', gridX: 1, gridY: 2 }), 'service-nonsense'],
    ['a unit not known', grid(hours(10, undefined, 'wmoUnit:K')), 'service-nonsense'],
    ['a duration not known', grid(hours(10, '2027-04-02T04:00:00+00:00/P1M')), 'service-nonsense'],
    ['a duration without end', grid(hours(10, '2027-04-02T04:00:00+00:00/P9999D')), 'service-nonsense'],
    ['no time', grid(hours(10, 'soon/PT1H')), 'service-nonsense'],
    ['nothing known', grid(hours(null)), 'service-empty'],
    ['a problem in JSON', '{"title":"Not Found","status":404}', 'service-nonsense'],
  ])('%s: %#', (_, text, code) => {
    expect(codeOf(read(nwsForecast, text))).toBe(code);
  });
});

test('a service that only ever leads on is left', () => {
  const circle: Service = {
    title: 'circle',
    base: '',
    url: () => 'a',
    parse: () => ({ next: 'b' }),
  };
  const conversation = talk(circle, site('UTC'), range, '');
  let asked = 0;
  for (let step = conversation.next(); !step.done; step = conversation.next('')) asked++;
  expect(asked).toBe(4);
});
