/** Young, dormant, frozen and wet turf, and the weather of the day: work waits, with the reason. */
import { describe, expect, test } from 'vitest';
import { type Day, formatDay, parseDay } from '../../src/base/day.ts';
import { application, feed, PRODUCTS, plan, work } from './plan-kit.ts';

const day = (text: string) => parseDay(text) as Day;
/** Seventeen years of the same weather every year: mild and with rain, but for what `on` says of a day. */
function weather(
  on: (monthDay: string, d: Day) => { tmin?: number; tmax?: number; rain?: number },
  through = '2027-04-01',
) {
  const lines = ['date,tmin_c,tmax_c,precip_mm'];
  for (let d = day('2010-01-01'); d <= day(through); d++) {
    const { tmin = 8, tmax = 18, rain = d % 3 === 0 ? 8 : 0 } = on(formatDay(d).slice(5), d);
    lines.push(`${formatDay(d)},${tmin},${tmax},${rain}`);
  }
  return `${lines.join('\n')}\n`;
}
const MILD = weather(() => ({}));
const season = (steps: string, lawn = '', csv = MILD, files: Record<string, string> = {}) =>
  plan({ steps, lawn: PRODUCTS + lawn, files: { 'weather.csv': csv, ...files } });
const dateAndWhy = async (...args: Parameters<typeof season>) => {
  const { date, why } = application(await season(...args), 'a');
  return { date, why: why.join(' ') };
};
const broadleaf = (opens: string, closes: string, more = '') =>
  work('a', 'spray', opens, closes, `, apply: { pesticide: broadleaf }${more}`);

describe('young turf', () => {
  test('a feed waits three weeks after seeding', async () => {
    const { date, why } = await dateAndWhy(feed('a', '04-03', '06-30'), 'turf: { seeded: 2027-03-25 }\n');
    expect(date).toBe('2027-04-15');
    expect(why).toContain('Mar 25');
  });
  test('a herbicide waits three months where nobody counts mowings', async () =>
    expect((await dateAndWhy(broadleaf('04-03', '09-30'), 'turf: { sodded: 2027-03-01 }\n')).date).toBe('2027-05-31'));
  test('or for three mowings, of the file and of the journal', async () => {
    const turf = 'turf: { seeded: 2027-03-01, mowings: 2 }\n';
    expect((await dateAndWhy(broadleaf('04-03', '09-30'), turf)).date).toBe('2027-05-31');
    const journal = { 'lawn.journal.yaml': '- { date: 2027-03-30, work: mow }\n' };
    expect((await dateAndWhy(broadleaf('04-03', '09-30'), turf, MILD, journal)).date).toBe('2027-04-03');
  });
  test('a herbicide waits five weeks for seedlings, unless its label says how long', async () => {
    const sow = work('sow', 'seed', '05-01', '05-01', ', apply: { seed: seed, rate: 6 lb/1000 sqft }');
    expect((await dateAndWhy(sow + broadleaf('05-10', '09-30'))).date).toBe('2027-06-05');
    const label = PRODUCTS.concat(
      '  - { id: spray, form: liquid, pesticide: broadleaf, label: { rate: 1 oz/1000 sqft, seed-safe: { before: 8 weeks } } }\n',
    );
    const season = await plan({
      steps: sow + broadleaf('05-10', '09-30'),
      lawn: label,
      files: { 'weather.csv': MILD },
    });
    expect(application(season, 'a').date).toBe('2027-06-26');
  });
  test('one young area holds the step back, on its own it does not hold the others', async () => {
    const lawn =
      'areas: { old: { rectangle: [50 ft, 20 ft] }, new: { rectangle: [50 ft, 20 ft], turf: { seeded: 2027-03-25 } } }\n';
    expect((await dateAndWhy(feed('a', '04-03', '06-30'), lawn)).date).toBe('2027-04-15');
    expect((await dateAndWhy(feed('a', '04-03', '06-30'), `${lawn}steps: { a: { areas: [old] } }\n`)).date).toBe(
      '2027-04-03',
    );
  });
});

describe('dormant turf', () => {
  test('as the lawn file says, for two weeks and then looked at again', async () => {
    const { date, why } = await dateAndWhy(feed('a', '04-03', '06-30'), 'turf: { dormant: drought }\n');
    expect(date).toBe('2027-04-16');
    expect(why).toContain('the lawn file says');
  });
  const DRY = weather((md) => (md >= '05-01' && md <= '06-30' ? { tmin: 15, tmax: 28, rain: 0 } : {}));
  test('as the weather says: no rain for a month, and nobody waters', async () => {
    const { date, why } = await dateAndWhy(feed('a', '06-10', '07-31'), '', DRY);
    expect(date !== null && date > '2027-06-30' && date < '2027-07-15').toBe(true);
    expect(why).toContain('by the weather');
  });
  test('where somebody waters it does not wait', async () =>
    expect((await dateAndWhy(feed('a', '06-10', '07-31'), 'facts: { irrigated: true }\n', DRY)).date).toBe(
      '2027-06-10',
    ));
  test('cool-season grass waits while the highs are in the 90s', async () => {
    const hot = weather((md) => (md >= '06-01' && md <= '06-30' ? { tmin: 20, tmax: 34 } : {}));
    const watered = 'facts: { irrigated: true }\n';
    const { date, why } = await dateAndWhy(feed('a', '06-10', '07-31'), watered, hot);
    expect(date !== null && date > '2027-06-30' && date < '2027-07-10').toBe(true);
    expect(why).toContain('too hot');
  });
});

describe('the ground', () => {
  test('nothing is spread on frozen ground', async () => {
    const frost = weather((md) => (md >= '03-01' && md <= '04-20' ? { tmin: -15, tmax: -9, rain: 0 } : {}));
    const { date, why } = await dateAndWhy(feed('a', '04-03', '06-30'), 'facts: { irrigated: true }\n', frost);
    expect(date !== null && date > '2027-04-10').toBe(true);
    expect(why).toContain('frozen');
  });
  test('nor on ground full of water, after 25 mm in two days', async () => {
    const wet = weather((md) => (md === '05-02' || md === '05-03' ? { rain: 13 } : { rain: 1 }));
    expect((await dateAndWhy(feed('a', '05-04', '06-30'), '', wet)).date).toBe('2027-05-05');
  });
  test('nor before half an inch of rain', async () => {
    const wet = weather((md) => (md === '05-05' ? { rain: 13 } : { rain: 1 }));
    expect((await dateAndWhy(feed('a', '05-04', '06-30'), '', wet)).date).toBe('2027-05-06');
  });
});

describe('the limits of a step', () => {
  const forecast = (on: (monthDay: string) => { tmin?: number; tmax?: number; rain?: number }) =>
    weather((md, d) => (d <= day('2027-04-01') ? {} : { rain: 0, ...on(md) }), '2027-04-12');
  const lawn = 'weather: { files: [weather.csv], forecast: ahead.csv }\n';
  const ahead = async (limit: string, on: Parameters<typeof forecast>[0]) => {
    const steps = feed('a', '04-03', '06-30', `, weather: { ${limit} }`);
    const { lawnText } = await import('../kit.ts');
    const text = lawnText(PRODUCTS).replace('weather: { files: [weather.csv] }\n', lawn);
    const planned = await plan({ steps, files: { 'lawn.yaml': text, 'weather.csv': MILD, 'ahead.csv': forecast(on) } });
    return application(planned, 'a');
  };
  test('rain that is forecast, on the day or the next', async () => {
    const wet = await ahead('rain-below: { depth: 0.1 in, in: 24 h }', (md) => (md === '04-04' ? { rain: 3 } : {}));
    expect(wet.date).toBe('2027-04-05');
    expect(wet.why.join(' ')).toContain('forecast');
  });
  test('cold: not even the warmest hour reaches the limit', async () => {
    const cold = await ahead('air: { from: 50 F }', (md) => (md <= '04-05' ? { tmin: 1, tmax: 9 } : {}));
    expect(cold.date).toBe('2027-04-06');
  });
  test('hot: most of the day is above it', async () => {
    const hot = await ahead('air: { to: 85 F }', (md) => (md <= '04-05' ? { tmin: 26, tmax: 36 } : {}));
    expect(hot.date).toBe('2027-04-06');
  });
  test('what a forecast judges is not left to the eye; wind always is', async () => {
    const judged = await ahead(
      'wind-below: 5 mph, air: { to: 85 F }, rain-below: { depth: 0.1 in, in: 24 h }',
      () => ({}),
    );
    expect(judged.notJudged).toHaveLength(1);
    expect(judged.notJudged[0]).toContain('wind');
  });
  test('beyond the forecast each run of weather judges, and the eye has to', async () => {
    const steps = feed('a', '06-03', '06-30', ', weather: { wind-below: 5 mph, air: { to: 85 F } }');
    const hot = weather((md) => (md >= '06-01' && md <= '06-10' ? { tmin: 26, tmax: 36 } : {}));
    const one = application(await season(steps, 'facts: { irrigated: true }\n', hot), 'a');
    expect(one.date !== null && one.date > '2027-06-10').toBe(true);
    expect(one.notJudged).toHaveLength(2);
  });
});
