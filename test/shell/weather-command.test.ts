/** `soilclock weather` and a plan from a service, against a server on this machine that answers as the services do. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { civil, formatDay } from '../../src/base/day.ts';
import { weatherFetchCommand } from '../../src/shell/weather/fetch-command.ts';
import { type Network, realNetwork } from '../../src/shell/weather/network.ts';
import { demoCopy, folderWith, lawnText, programText, sharedFile, soilclock } from '../kit.ts';
import { localServer } from '../weather/server.ts';

const NOW = Date.UTC(2027, 3, 2, 12);
const api = sharedFile('data/api');

/** A plain year: coldest in the middle of January. */
const low = (day: number): number => Math.round((6 - 12 * Math.cos(((day - 14) / 365.25) * 2 * Math.PI)) * 10) / 10;
const days = (from: string, to: string): number[] => {
  const [a = 0, b = 0] = [from, to].map((text) => Date.parse(text) / 86_400_000);
  return Array.from({ length: b - a + 1 }, (_, i) => a + i);
};

/** What the local services do: fine, or one of the ways to fail. */
let mood: 'fine' | 'down' | 'nonsense' | 'nulls' = 'fine';
const { base, asked } = await localServer((request, response) => {
  const url = new URL(request.url ?? '', 'http://x');
  const send = (status: number, body: string) => void response.writeHead(status).end(body);
  if (mood === 'down') return send(500, '');
  if (mood === 'nonsense') return send(200, '<html>busy</html>');
  const query = url.searchParams;
  const span = (from: string, to: string) => {
    const all = days(from, to);
    const values = (add: number) => all.map((day) => (mood === 'nulls' ? null : low(day) + add));
    return {
      time: all.map(formatDay),
      temperature_2m_min: values(0),
      temperature_2m_max: values(11),
      precipitation_sum: all.map(() => 1),
    };
  };
  switch (url.pathname) {
    case '/v1/archive': {
      const daily = span(query.get('start_date') ?? '', query.get('end_date') ?? '');
      return send(200, JSON.stringify({ utc_offset_seconds: -14_400, daily }));
    }
    case '/v1/forecast': {
      const time = days('2027-03-23', '2027-04-17').flatMap((day) =>
        Array.from({ length: 24 }, (_, hour) => `${formatDay(day)}T${String(hour).padStart(2, '0')}:00`),
      );
      const soil = time.map(() => 9.5);
      return send(
        200,
        JSON.stringify({
          utc_offset_seconds: -14_400,
          daily: span('2027-03-23', '2027-04-17'),
          hourly: { time, soil_temperature_6cm: soil },
        }),
      );
    }
    case '/access/services/search/v1/data':
      return send(
        200,
        JSON.stringify({ results: [{ stations: [{ id: 'USC00999999' }], centroid: { point: [-84, 39] } }] }),
      );
    case '/access/services/data/v1': {
      const rows = days(query.get('startDate') ?? '', query.get('endDate') ?? '').map(
        (day) => `USC00999999,${formatDay(day)},${low(day) + 11},${low(day)}`,
      );
      return send(200, `STATION,DATE,TMAX,TMIN\n${rows.join('\n')}\n`);
    }
    case '/points/39.00,-84.00':
      return send(200, readFileSync(`${api}/nws-points.json`, 'utf8'));
    case '/gridpoints/TAE/58,65':
      return send(200, readFileSync(`${api}/nws-gridpoint-raw.json`, 'utf8'));
    default:
      return send(404, '');
  }
});
const network: Network = { ...realNetwork, baseOf: () => base, sleep: async () => {}, timeoutMs: 2000 };

const steps = `  - id: barrier
    name: Barrier
    work: other
    window:
      opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 50 F, holds: 3 d, from: 02-01, source: common-practice } }
      closes: { date: 05-15, source: common-practice }
`;
const lawnWith = (weather: string) =>
  folderWith({
    'lawn.yaml': lawnText().replace('weather: { files: [weather.csv] }', weather),
    'program.yaml': programText(steps),
  });
const fetchIn = async (cwd: string, options: { offline?: boolean; json?: boolean } = {}, now = NOW, over = network) => {
  const [out, err]: [string[], string[]] = [[], []];
  const io = {
    stdout: (text: string) => void out.push(text),
    stderr: (text: string) => void err.push(text),
    cwd,
    now: () => now,
    columns: 100,
  };
  const code = await weatherFetchCommand(['lawn.yaml'], options, io, over);
  return { code, stdout: out.join(''), stderr: err.join('') };
};
const OPEN_METEO = 'weather: { service: open-meteo, forecast: open-meteo }';
type Json = Record<string, unknown> & { problems: { code: string }[] };
const json = ({ stdout }: { stdout: string }) => JSON.parse(stdout) as Json;
const codes = (found: Json) => [...new Set(found.problems.map(({ code }) => code))];

describe('weather fetch', () => {
  test('brings 30 closed years, the days since, and the forecast, with a line of progress each', async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    const { code, stdout, stderr } = await fetchIn(cwd, { json: true });
    expect(code).toBe(0);
    expect((JSON.parse(stdout) as { parts: unknown[] }).parts).toMatchObject([
      { id: 'history', from: 'network', first: '1997-01-01', last: '2026-12-31', days: 10_957, missing: 0 },
      { id: 'recent', first: '2027-01-01', last: '2027-04-01', missing: 0 },
      { id: 'forecast', first: '2027-03-23', last: '2027-04-17' },
    ]);
    expect(stderr.split('\n').filter((line) => line.startsWith('['))).toHaveLength(4);
    expect(readdirSync(path.join(cwd, 'out/cache/weather'))).toHaveLength(3);
  });
  test('asks nothing twice', async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    await fetchIn(cwd);
    const before = asked.length;
    const { code, stdout } = await fetchIn(cwd);
    expect([code, asked.length]).toEqual([0, before]);
    expect(stdout).toContain('from the cache of 2027-04-02');
    await fetchIn(cwd, {}, NOW + 24 * 3_600_000);
    expect(asked.length - before).toBe(2);
  });
  test('NCEI: the nearest station, then its days', async () => {
    mood = 'fine';
    const { code, stdout } = await fetchIn(lawnWith('weather: { service: ncei }'), { json: true });
    expect([code, (JSON.parse(stdout) as { parts: unknown[] }).parts.length]).toEqual([0, 2]);
  });
  test.skipIf(api === null)('NWS: the square, then its forecast (skips where ../shared/data is absent)', async () => {
    mood = 'fine';
    const { code, stdout } = await fetchIn(lawnWith('weather: { forecast: nws }'), { json: true });
    expect(code).toBe(0);
    expect((JSON.parse(stdout) as { parts: unknown[] }).parts).toMatchObject([{ first: '2022-02-04', days: 7 }]);
  });
  test.each([
    ['down', 'service-status'],
    ['nonsense', 'service-nonsense'],
    ['nulls', 'service-empty'],
  ] as const)('a service that is %s: exit 1, each part says so', async (how, code) => {
    mood = how;
    const cwd = lawnWith(OPEN_METEO);
    const found = await fetchIn(cwd, { json: true });
    expect([found.code, codes(json(found))]).toEqual([1, [code]]);
    expect(existsSync(path.join(cwd, 'out/cache/weather'))).toBe(false);
  });
  test('old answers stand in while a service is down: a warning, exit 0', async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    await fetchIn(cwd);
    mood = 'down';
    const found = await fetchIn(cwd, { json: true }, NOW + 48 * 3_600_000);
    expect([found.code, codes(json(found))]).toEqual([0, ['service-stale']]);
  });
  test('--offline with nothing kept', async () => {
    const found = await fetchIn(lawnWith(OPEN_METEO), { offline: true, json: true });
    expect([found.code, codes(json(found))]).toEqual([1, ['service-offline']]);
  });
  test('no network', async () => {
    const dead = { ...network, fetch: (async () => Promise.reject(new TypeError('fetch failed'))) as typeof fetch };
    const found = await fetchIn(lawnWith(OPEN_METEO), { json: true }, NOW, dead);
    expect([found.code, codes(json(found))]).toEqual([1, ['service-no-network']]);
  });
  test('a lawn that names no service', async () => {
    const found = await fetchIn(lawnWith('weather: { files: [w.csv] }'), { json: true });
    expect([found.code, codes(json(found))]).toEqual([1, ['service-none']]);
  });
});

describe('a plan', () => {
  const plan = (cwd: string, asOf = '2027-04-02') =>
    soilclock(cwd, ['plan', 'lawn.yaml', '--json', '--dry-run', '--as-of', asOf]);
  test('takes what the cache holds, observed and forecast', async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    await fetchIn(cwd);
    const { code, stdout } = await plan(cwd);
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      weather: { observedThrough: '2027-04-01', forecastThrough: '2027-04-17', traces: 30 },
    });
  });
  test('says that nothing was fetched, and goes on with its files', async () => {
    const demo = demoCopy();
    const file = path.join(demo.cwd, demo.lawn);
    const text = readFileSync(file, 'utf8').replace('service: none, forecast: none', 'service: ncei, forecast: nws');
    writeFileSync(file, text);
    const { code, stdout } = await soilclock(demo.cwd, ['plan', demo.lawn, '--json', '--as-of', '2027-04-02']);
    expect([code, codes(JSON.parse(stdout) as Json).includes('service-not-fetched')]).toEqual([0, true]);
  });
  test('without files and without a cache is made from the nearest reference climate, and says so', async () => {
    const { code, stdout } = await plan(lawnWith(OPEN_METEO));
    const season = JSON.parse(stdout) as Json;
    expect(code).toBe(0);
    expect(codes(season)).toContain('service-not-fetched');
    expect(codes(season).filter((one) => /^climate-(near|far)$/.test(one))).toHaveLength(1);
    expect(season.weather).toMatchObject({ observedThrough: null, traces: 30 });
  });
  test('leaves out a forecast made after the as-of day, and one that is old', async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    await fetchIn(cwd);
    const before = json(await plan(cwd, '2027-03-20'));
    const after = json(await plan(cwd, '2027-04-12'));
    expect([codes(before).includes('forecast-later'), codes(after).includes('forecast-old')]).toEqual([true, true]);
    expect([before, after].map(({ weather }) => (weather as { forecastThrough: unknown }).forecastThrough)).toEqual([
      null,
      null,
    ]);
  });
  test('says that a kept answer cannot be read, and goes on', async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    await fetchIn(cwd);
    const folder = path.join(cwd, 'out/cache/weather');
    for (const file of readdirSync(folder)) {
      const kept = JSON.parse(readFileSync(path.join(folder, file), 'utf8')) as { url: string; text: string };
      if (kept.url.includes('/forecast'))
        writeFileSync(path.join(folder, file), JSON.stringify({ ...kept, text: '?' }));
    }
    const { code, stdout } = await plan(cwd);
    expect([code, codes(JSON.parse(stdout) as Json).includes('service-cache')]).toEqual([0, true]);
  });
});

describe('weather show', () => {
  const show = ['weather', 'show', 'programs/demo/lawn.yaml', '--as-of', '2027-04-02'];
  test('tells soil, heat and 30 days beside the usual', async () => {
    const { cwd } = demoCopy();
    const found = json(await soilclock(cwd, [...show, '--json']));
    expect(found).toMatchObject({
      kind: 'weather',
      observedThrough: '2027-04-01',
      forecastThrough: null,
      pastYears: 30,
    });
    const { days: shown, today } = found as unknown as { days: { date: string }[]; today: Record<string, unknown> };
    expect([shown.length, shown.at(-1)?.date]).toEqual([30, '2027-04-01']);
    expect(today).toMatchObject({ date: '2027-04-01', degreeDaysFrom: '2027-01-01' });
  });
  test('agrees with the plan about today', async () => {
    const { cwd, lawn } = demoCopy();
    const { today } = json(await soilclock(cwd, [...show, '--json'])) as unknown as {
      today: Record<'soil5C' | 'soil10C' | 'degreeDays10C', { value: number; usual: number }>;
    };
    const season = json(await soilclock(cwd, ['plan', lawn, '--json', '--dry-run', '--as-of', '2027-04-02']));
    const planned = season.today as Record<string, number> & { usual: Record<string, number> };
    for (const key of ['soil5C', 'soil10C', 'degreeDays10C'] as const) {
      expect(today[key].value).toBeCloseTo(planned[key]!, 1);
      expect(today[key].usual).toBeCloseTo(planned.usual[key]!, 1);
    }
  });
  test('fits 100 columns', async () => {
    const { cwd } = demoCopy();
    const { code, stdout } = await soilclock(cwd, show);
    expect(code).toBe(0);
    expect(stdout.split('\n').filter((line) => [...line].length > 100)).toEqual([]);
  });
  test("sets the service's own soil beside", async () => {
    mood = 'fine';
    const cwd = lawnWith(OPEN_METEO);
    await fetchIn(cwd);
    const run = ['weather', 'show', 'lawn.yaml', '--as-of', '2027-04-02'];
    const found = json(await soilclock(cwd, [...run, '--json']));
    expect(found.serviceSoil).toMatchObject([{ depthCm: 6, serviceC: 9.5, date: '2027-04-01' }]);
    expect((await soilclock(cwd, run)).stdout).toContain('Cross-check');
  });
  test('without weather: its problem, exit 1', async () => {
    expect((await soilclock(lawnWith(OPEN_METEO), ['weather', 'show', 'lawn.yaml'])).code).toBe(1);
  });
});

describe('weather degree-days', () => {
  const run = (cwd: string, ...more: string[]) =>
    soilclock(cwd, ['weather', 'degree-days', 'lawn.yaml', '--json', '--as-of', '2027-04-02', ...more]);
  // Ten days of 40 and 70 °F after a cold winter: 5 °F·d each above 50 °F by the simple average (mean 55); a usual
  // year gathers nothing before 1 May, and then 10 a day.
  const rows = days('2020-01-01', '2027-04-01')
    .map((day) => [formatDay(day), day > civil(2027, 3, 22) ? '40,70' : '10,30'] as const)
    .map(([date, cold]) => `${date},${/-(05|06|07|08|09|10)-/.test(date) ? '50,70' : cold}`)
    .join('\n');
  const cwd = folderWith({
    'lawn.yaml': lawnText(),
    'program.yaml': programText(steps),
    'weather.csv': `date,tmin_f,tmax_f\n${rows}\n`,
  });
  test('sums in the scale of the base', async () => {
    const found = json(await run(cwd, '--base', '50F', '--method', 'average'));
    expect(found).toMatchObject({
      unit: 'F',
      base: 50,
      from: '2027-01-01',
      through: '2027-04-01',
      sum: { value: 50, usual: 0 },
    });
    const metric = json(await run(cwd, '--base', '10C', '--method', 'average'));
    expect(metric).toMatchObject({ unit: 'C', base: 10, sum: { value: 27.8 } });
  });
  test('begins on the day asked for', async () => {
    const found = json(await run(cwd, '--method', 'average', '--from', '03-28'));
    expect(found).toMatchObject({ from: '2027-03-28', sum: { value: 25 } });
  });
  test('says when a sum was reached', async () => {
    const found = json(await run(cwd, '--method', 'average', '--reaches', '20'));
    expect(found.reaches).toMatchObject({ date: '2027-03-26', usual: '2027-05-02' });
    const text = await soilclock(cwd, [
      'weather',
      'degree-days',
      'lawn.yaml',
      '--as-of',
      '2027-04-02',
      '--reaches',
      '20',
    ]);
    expect(text.stdout).toContain('reached on');
  });
  test('says when a sum is expected, or that it is not', async () => {
    const demo = demoCopy();
    const ask = async (sum: string) => {
      const words = ['weather', 'degree-days', demo.lawn, '--as-of', '2027-04-02', '--reaches', sum];
      return [
        json(await soilclock(demo.cwd, [...words, '--json'])),
        (await soilclock(demo.cwd, words)).stdout,
      ] as const;
    };
    const [near, text] = await ask('200');
    const { p10, p50, p90, date } = near.reaches as Record<string, string | null>;
    expect([date, p10! < p50!, p50! < p90!, text.includes('expected on')]).toEqual([null, true, true, true]);
    const [far, never] = await ask('99999');
    expect(far.reaches).toMatchObject({ p50: null, usual: null });
    expect(never).toContain('not reached');
  });
  test.each([
    [['--base', '50'], 'wrong-type'],
    [['--upper', '40F'], 'degree-days-upper'],
    [['--method', 'sine'], 'unknown-word'],
    [['--from', '13-01'], 'not-a-date'],
    [['--reaches', '-3'], 'out-of-range'],
  ])('%j is bad usage', async (words, code) => {
    const found = await run(cwd, ...words);
    expect([found.code, codes(json(found))]).toEqual([2, [code]]);
  });
});

describe('usage', () => {
  test.each([['show'], ['fetch'], ['degree-days']])('weather %s --help gives an example', async (command) => {
    expect((await soilclock(folderWith(), ['weather', command, '--help'])).stdout).toContain('Example:');
  });
});
