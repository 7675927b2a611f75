import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../../src/base/day.ts';
import { balancedRuns, covariance, errorPath, errorSd } from '../../src/climate/soil-error.ts';
import { soilTemperature } from '../../src/climate/soil-temperature.ts';
import { siteOffset } from '../../src/climate/thermometer.ts';
import type { Season } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const day = (text: string): Day => parseDay(text) as Day;
const model = () => 10;
/** Variance of the offset before readings, and of one reading about the model [°C²]. */
const PRIOR = 0.5 ** 2;
const TOTAL = PRIOR + 1 + 0.75 ** 2 + 0.5 ** 2;
const reading = (date: string, value: number) => ({ day: day(date), depth: 0.05, value });

describe("the lawn's thermometer", () => {
  test('without readings nothing is known beyond the prior', () => {
    const { offset, sd, used } = siteOffset([], model);
    expect([offset, used]).toEqual([0, 0]);
    expect(sd).toBeCloseTo(0.5, 12);
  });
  test('one reading moves the offset by its share: 0.25 / (0.25 + 1 + 0.5625 + 0.25)', () => {
    const { offset, sd } = siteOffset([reading('2027-03-14', 12)], model);
    expect(offset).toBeCloseTo((2 * PRIOR) / TOTAL, 10);
    expect(sd).toBeCloseTo(Math.sqrt(PRIOR * (1 - PRIOR / TOTAL)), 10);
  });
  test('readings of one week say less than the same number over three months', () => {
    const week = [1, 2, 3, 4, 5, 6].map((d) => reading(`2027-03-0${d}`, 12));
    const spread = ['2027-02-20', '2027-03-10', '2027-03-28', '2027-04-15', '2027-05-03', '2027-05-21'].map((d) =>
      reading(d, 12),
    );
    expect(siteOffset(week, model).offset).toBeLessThan(siteOffset(spread, model).offset);
    expect(siteOffset(week, model).sd).toBeGreaterThan(siteOffset(spread, model).sd);
  });
  test('a reading more than 4 standard deviations off is reported and not used', () => {
    const { offset, doubted, used } = siteOffset([reading('2027-03-14', 10), reading('2027-03-30', 17)], model);
    expect([doubted.map(({ reading: one }) => one.value), used]).toEqual([[17], 1]);
    expect(offset).toBeCloseTo(0, 10);
  });
  test('frozen ground tells nothing', () => expect(siteOffset([reading('2027-02-14', 0)], model).used).toBe(0));
});

describe("the model's stated error", () => {
  test('a path is the same whatever part of it is asked for', () => {
    const run = { seed: 7, sign: 1 } as const;
    expect([...errorPath(run, 1.1, 0, 50)].slice(0, 20)).toEqual([...errorPath(run, 1.1, 0, 20)]);
  });
  test('the thirty of a plan have no bias, and offsets as wide as stated', () => {
    const runs = balancedRuns(30);
    const paths = runs.map((run) => errorPath(run, 0.9, 0, 300));
    for (const day of [0, 100, 299])
      expect(paths.reduce((sum, path) => sum + (path[day] as number), 0) / 30).toBeCloseTo(0, 9);
    const offsets = runs.map(({ offset }) => offset as number);
    expect(new Set(offsets.map((offset) => offset.toFixed(6))).size).toBe(30);
    expect(Math.sqrt(offsets.reduce((sum, offset) => sum + offset ** 2, 0) / 30)).toBeCloseTo(1, 1);
  });
  test('an odd number of them is a run more', () => expect(balancedRuns(7)).toHaveLength(7));
  test('many paths have the stated spread and covariance', () => {
    const paths = Array.from({ length: 4000 }, (_, seed) => errorPath({ seed, sign: 1 }, 1, 0, 31));
    const mean = (of: (path: Float64Array) => number) => paths.reduce((sum, path) => sum + of(path), 0) / paths.length;
    const at = (i: number) => (path: Float64Array) => path[i] as number;
    const product = (lag: number) => mean((path) => at(0)(path) * at(lag)(path));
    // Sampling error of a variance of 2.8 from 4000 paths: 0.06.
    expect(Math.abs(product(0) - errorSd(1) ** 2)).toBeLessThan(0.25);
    for (const lag of [1, 7, 30]) expect(Math.abs(product(lag) - 1 - covariance(lag))).toBeLessThan(0.25);
  });
});

describe('a plan', () => {
  const program = programText(
    '  - { id: a, name: A, work: other, window: { opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 12 C, holds: 3 d, from: 02-01 } } } }\n',
  );
  const plan = async (thermometer: string) => {
    const cwd = folderWith({
      'program.yaml': program,
      'lawn.yaml': lawnText(thermometer),
      'weather.csv': inventedWeather(),
    });
    return JSON.parse(
      (await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-04-02', '--json'])).stdout,
    ) as Season;
  };
  const opens = (season: Season) => parseDay(season.applications[0]?.window.opens.p50 ?? '') as Day;
  const reads = (early: number, late: number) =>
    plan(
      `thermometer: [{ date: 2027-03-03, depth: 10 cm, reads: ${early} C }, { date: 2027-03-12, depth: 10 cm, reads: ${early} C }, { date: 2027-03-29, depth: 10 cm, reads: ${late} C }]\n`,
    );
  test('opens later on a lawn whose thermometer reads colder, earlier where it reads warmer', async () => {
    // Without a thermometer the model has 3.8, 3.4 and 9.3 °C on those days.
    const [cold, plain, warm] = [await reads(1, 6), await plan(''), await reads(7, 12)];
    expect(opens(cold)).toBeGreaterThan(opens(plain));
    expect(opens(warm)).toBeLessThan(opens(plain));
  });
  test('says which reading it doubts, and goes on', async () => {
    const season = await plan('thermometer: [{ date: 2027-03-20, depth: 5 cm, reads: 40 C }]\n');
    expect(season.problems.map(({ code }) => code)).toContain('reading-doubted');
  });
  test('readings after the as-of day change nothing', async () => {
    const later = await plan('thermometer: [{ date: 2027-04-20, depth: 5 cm, reads: 2 C }]\n');
    expect(later).toEqual(await plan(''));
  });
});

test('soilTemperature takes readings, and is surer with them', () => {
  const tmin = Array.from({ length: 730 }, (_, i) => 5 - 10 * Math.cos((2 * Math.PI * i) / 365));
  const weather = { start: '2025-01-01', tmin, tmax: tmin.map((t) => t + 10) };
  const site = { latitude: 40, elevationM: 200 };
  const plain = soilTemperature(weather, site, 5);
  const at = (date: string) => day(date) - day('2025-01-01');
  const dates = ['2026-04-01', '2026-05-01', '2026-06-01'];
  const readings = dates.map((date) => ({ date, depthCm: 5, valueC: (plain.values[at(date)] ?? 0) + 2 }));
  const told = soilTemperature(weather, { ...site, readings }, 5);
  const moved = (told.values[at('2026-07-01')] ?? 0) - (plain.values[at('2026-07-01')] ?? 0);
  expect([moved > 0.3, moved < 1, (told.sd[0] ?? 0) < (plain.sd[0] ?? 0)]).toEqual([true, true, true]);
});
