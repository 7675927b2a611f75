/** The season as `plan --json` prints it: references, statuses, rules of the place. */
import { describe, expect, test } from 'vitest';
import { inventedWeather } from '../invented-weather.ts';
import { lawnText } from '../kit.ts';
import { application, type Case, feed, PRODUCTS, plan } from './plan-kit.ts';

const FIRST =
  '  - { id: first, name: First, work: other, window: { opens: { date: 05-03 }, closes: { date: 05-03 } } }\n';
const second = (more = '') =>
  `  - { id: second, name: Second, work: other, window: { opens: { after: { step: first, wait: 10 d${more} } } } }\n`;

describe('after', () => {
  test('counts from the chosen day, one day for all traces', async () => {
    const season = await plan({ steps: FIRST + second() });
    expect(application(season, 'second').window.opens).toEqual({
      p10: '2027-05-13',
      p50: '2027-05-13',
      p90: '2027-05-13',
      usual: '2027-05-13',
    });
  });
  test('a step may stand before the one it waits for', async () => {
    expect(application(await plan({ steps: second() + FIRST }), 'second').window.opens.p50).toBe('2027-05-13');
  });
  test('counts from the done day once there is one', async () => {
    const season = await plan({
      steps: FIRST + second(),
      asOf: '2027-05-20',
      files: { 'lawn.journal.yaml': '- { date: 2027-05-08, step: first }\n' },
    });
    expect(application(season, 'first').status).toBe('done');
    expect(application(season, 'second').window.opens.p50).toBe('2027-05-18');
  });
  test("partly done, it is the last area's day", async () => {
    const lawn = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
    const journal =
      '- { date: 2027-05-04, step: first, areas: [front] }\n- { date: 2027-05-09, step: first, areas: [back] }\n';
    const season = await plan({
      steps: FIRST + second(),
      lawn,
      asOf: '2027-05-20',
      files: { 'lawn.journal.yaml': journal },
    });
    expect(application(season, 'second').window.opens.p50).toBe('2027-05-19');
  });
  test.each([
    ['skipped', 'steps: { first: skip }\n', ''],
    ['dropped', '', ', only-if: { lawn: { thin: true } }'],
  ])('a %s step gives none', async (status, lawn, condition) => {
    const first = FIRST.replace(' }\n', `${condition} }\n`);
    const season = await plan({ steps: first + second(), lawn });
    expect(application(season, 'first').status).toBe(status);
    expect(application(season, 'second')).toMatchObject({ chance: 0, date: null, window: { opens: { p50: null } } });
  });
  test('a missed step gives none', async () => {
    const season = await plan({ steps: FIRST + second(), asOf: '2027-05-20' });
    expect(application(season, 'first').status).toBe('missed');
    expect(application(season, 'second').chance).toBe(0);
  });
  test('`otherwise` stands in', async () => {
    const season = await plan({
      steps: FIRST + second(', otherwise: { date: 06-01 }'),
      lawn: 'steps: { first: skip }\n',
    });
    expect(application(season, 'second').window.opens.p50).toBe('2027-06-01');
  });
});

describe('only-if and unless', () => {
  const step = (condition: string) =>
    `  - { id: first, name: First, work: other, window: { opens: { date: 05-03 } }, ${condition} }\n`;
  const status = async (condition: string, lawn = '') =>
    application(await plan({ steps: step(condition), lawn }), 'first').status;
  test('a fact of the lawn', async () => {
    expect(await status('only-if: { lawn: { thin: true } }', 'facts: { thin: true }\n')).toBe('expected');
    expect(await status('only-if: { lawn: { thin: true } }')).toBe('dropped');
    expect(await status('unless: { lawn: { thin: true } }', 'facts: { thin: true }\n')).toBe('dropped');
  });
  test('all keys must hold', async () => {
    const lawn = 'facts: { thin: true }\nsoil: { tests: [{ date: 2026-03-01, pH: 6.4 }] }\n';
    expect(await status('only-if: { lawn: { thin: true }, soil-test: { pH: { below: 6.5 } } }', lawn)).toBe('expected');
    expect(await status('only-if: { lawn: { thin: true }, soil-test: { pH: { below: 6.0 } } }', lawn)).toBe('dropped');
  });
});

describe('statuses', () => {
  const step = (opens: string, closes: string) =>
    `  - { id: first, name: First, work: other, window: { opens: { date: ${opens} }, closes: { date: ${closes} } } }\n`;
  test.each([
    ['expected', '04-10', '04-20'],
    ['due', '04-01', '04-20'],
    ['missed', '03-01', '03-20'],
  ])('%s', async (status, opens, closes) => {
    expect(application(await plan({ steps: step(opens, closes) }), 'first').status).toBe(status);
  });
  test('open, with its day still to come', async () => {
    const season = await plan({ steps: step('04-01', '04-20'), lawn: 'working: { days: [tue] }\n' });
    expect(application(season, 'first')).toMatchObject({ status: 'open', date: '2027-04-06' });
  });
  test('a step that is unlikely is given no day, and the reason names the share', async () => {
    const rare =
      '  - { id: first, name: First, work: other, window: { opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 45 C } } } }\n';
    const first = application(await plan({ steps: rare }), 'first');
    expect(first).toMatchObject({ status: 'expected', date: null, chance: 0 });
    expect(first.why.some((line) => line.includes('0 %'))).toBe(true);
  });
});

describe('rules of the place and of the person', () => {
  const feed = (id: string, opens: string, closes: string) =>
    `  - { id: ${id}, name: Feed, work: spread, window: { opens: { date: ${opens} }, closes: { date: ${closes} } }, apply: { nutrient: { N: 0.5 lb/1000 sqft } } }\n`;
  const products = 'products: [{ id: urea, form: granular, analysis: 46-0-0 }]\n';
  test('working days and days away', async () => {
    const season = await plan({
      steps: feed('a', '05-01', '05-31'),
      lawn: `${products}working: { days: [sat], away: [[2027-05-01, 2027-05-08]] }\n`,
    });
    expect(application(season, 'a').date).toBe('2027-05-15');
  });
  test('one job a day', async () => {
    const season = await plan({
      steps: feed('a', '05-01', '05-09') + feed('b', '05-01', '05-31'),
      lawn: `${products}working: { days: [sat, sun], jobs-per-day: 1 }\n`,
    });
    expect(application(season, 'a').date).not.toBe(application(season, 'b').date);
  });
  test('nitrogen keeps its spacing', async () => {
    const season = await plan({
      steps: feed('a', '05-01', '05-02') + feed('b', '05-01', '07-31'),
      lawn: products,
      program: 'nitrogen: { spacing: 4 weeks }\n',
    });
    expect([application(season, 'a').date, application(season, 'b').date]).toEqual(['2027-05-01', '2027-05-29']);
  });
  test('nothing is put down on a forbidden day', async () => {
    const rule = 'local-rules: [{ forbid: [fertilizer], between: [04-15, 06-01] }]\n';
    const season = await plan({ steps: feed('a', '04-20', '06-30'), lawn: products + rule });
    expect(application(season, 'a').date).toBe('2027-06-02');
  });
  test('a pinned day is kept and judged', async () => {
    const season = await plan({
      steps: feed('a', '05-01', '05-31'),
      lawn: `${products}steps: { a: { date: 2027-06-05 } }\n`,
    });
    expect(application(season, 'a')).toMatchObject({ date: '2027-06-05', inWindow: 0 });
  });
  test('a pinned day that a rule is against is kept, and that is said', async () => {
    const season = await plan({
      steps: feed('a', '05-01', '05-31'),
      lawn: `${products}working: { days: [sun] }\nsteps: { a: { date: 2027-05-08 } }\n`,
    });
    expect(application(season, 'a').date).toBe('2027-05-08');
    expect(application(season, 'a').why.join(' ')).toContain('working days');
    expect(season.problems.map(({ code }) => code)).toContain('pinned-against');
  });
  test("a southern lawn's own local rules never move", async () => {
    const lawn = lawnText(`${products}local-rules: [{ forbid: [fertilizer], between: [11-01, 11-10] }]\n`)
      .replace('latitude: 39', 'latitude: -39')
      .replace('longitude: -84', 'longitude: 175')
      .replace('America/New_York', 'Pacific/Auckland');
    const season = await plan({ steps: feed('a', '05-01', '05-31'), files: { 'lawn.yaml': lawn } });
    expect(application(season, 'a').window.opens.p50).toBe('2026-11-01');
    expect(season.season).toEqual({ year: 2026, start: '2026-07-01', end: '2027-06-30' });
  });
  test('weather that ends early: nothing is chosen within five days', async () => {
    const season = await plan({
      steps: feed('a', '04-01', '05-31'),
      lawn: products,
      files: { 'weather.csv': inventedWeather('2010-01-01', '2027-03-20') },
    });
    expect(application(season, 'a').date).toBe('2027-04-07');
    expect(season.problems.map(({ code }) => code)).toContain('weather-ends-early');
  });
  test('weather that ended years ago: the season is planned on past years', async () => {
    const season = await plan({
      steps: feed('a', '04-01', '05-31'),
      lawn: products,
      files: { 'weather.csv': inventedWeather('2010-01-01', '2024-03-20') },
    });
    expect(application(season, 'a').window.opens.p50).toBe('2027-04-01');
    expect(season.problems.map(({ code }) => code)).toContain('weather-ends-early');
  });
});

describe('two seasons at the turn of the year', () => {
  test('from 60 days before the end, the next one stands beside it', async () => {
    const season = await plan({ steps: FIRST, asOf: '2027-11-15' });
    expect(season.applications.map((one) => [one.season, one.status, one.date])).toEqual([
      [2027, 'missed', null],
      [2028, 'expected', '2028-05-03'],
    ]);
  });
});

describe('round the work', () => {
  const spread = (more = '') => feed('a', '05-03', '05-03', more);
  const watered = spread(', water-in: { depth: 0.5 in, within: 2 d }');
  const journal = (date: string) => ({ 'lawn.journal.yaml': `- { date: ${date}, step: a }\n` });
  const one = async (steps: string, more: Partial<Case> = {}) =>
    application(await plan({ steps, lawn: PRODUCTS, ...more }), 'a');
  test('null and none where nothing is asked', async () =>
    expect(await one(spread())).toMatchObject({ waterIn: null, reEntry: null, soilChecks: [] }));
  test('watering in counts from the day of the work', async () =>
    expect((await one(watered)).waterIn).toEqual({
      depthMm: 12.7,
      withinDays: 2,
      by: '2027-05-05',
      fallenMm: null,
      irrigated: false,
    }));
  test.each([
    ['on the days after it', '2027-05-11', 8],
    ['not on the day itself', '2027-05-12', 4],
    ['not after the last day', '2027-05-04', 0],
  ])('rain as observed, %s', async (_, day, fallen) => {
    // The invented weather has 4 mm each on 7, 12 and 13 May, and no other from 1 to 19 May.
    const { waterIn } = await one(watered, { asOf: '2027-05-20', files: journal(day) });
    expect(waterIn?.fallenMm).toBe(fallen);
  });
  test('no rain is known on the day of the work', async () =>
    expect((await one(watered, { asOf: '2027-05-03', files: journal('2027-05-03') })).waterIn?.fallenMm).toBeNull());
  test('an irrigated lawn', async () =>
    expect((await one(watered, { lawn: `${PRODUCTS}facts: { irrigated: true }\n` })).waterIn?.irrigated).toBe(true));
  test('the soil that opens a window', async () => {
    const steps = `  - { id: a, name: A, work: other, window: { opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 10 C } } } }\n`;
    expect((await one(steps)).soilChecks.map(({ depthM }) => depthM)).toEqual([0.05]);
  });
  test('the day of the first work that the shelf does not cover', async () => {
    const { shopping } = await plan({ steps: spread(), lawn: PRODUCTS });
    expect(shopping.map(({ product, neededOn }) => [product, neededOn])).toEqual([['urea', '2027-05-03']]);
  });
});
