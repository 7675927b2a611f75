/** Between the first pass and the second: what `did`, `spreader` and the feed say of the one that is left. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { SpreaderReport } from '../../src/model/spreader-report.ts';
import { partsOf, planned, valueIn } from '../feed/feed.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const LB = 0.45359237;
const LAWN = `areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }
equipment: { spreader: { kind: rotary, swath: 4 ft, dial: { from: 1, to: 15, step: 0.25 } } }
products:
  - { id: feeder, form: granular, analysis: 20-0-0 }
  - { id: barrier, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }, label: { rate: 4 lb/1000 sqft } }
`;
/** Ten pounds of feed on both areas, five a pass; eight of the barrier, four a pass. */
const STEPS = `  - { id: feed, name: Feed, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { nutrient: { N: 1 lb/1000 sqft } } }
  - { id: barrier, name: Barrier, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { pesticide: pre-emergent } }
`;
const folder = () =>
  folderWith({
    'lawn.yaml': lawnText(LAWN),
    'program.yaml': programText(STEPS),
    'weather.csv': inventedWeather('2018-01-01'),
  });
const did = async (cwd: string, ...argv: string[]) => (await soilclock(cwd, ['did', 'lawn.yaml', ...argv])).stdout;
const means = async (cwd: string, ...argv: string[]) =>
  JSON.parse(await did(cwd, ...argv, '--json')).means as {
    readonly areasOpen: string[];
    readonly areasHalfDone: string[];
    readonly against: { readonly plannedKg: number; readonly ratio: number }[];
  };
const spreader = async (cwd: string, step: string) =>
  JSON.parse((await soilclock(cwd, ['spreader', 'lawn.yaml', step, '--json'])).stdout) as SpreaderReport;

describe('did', () => {
  test('leaves the step open after the first pass', async () => {
    const cwd = folder();
    expect(await means(cwd, 'feed', '--pass', '1', '--used', '5 lb', '--dry-run')).toMatchObject({
      areasOpen: ['front', 'back'],
      areasHalfDone: ['front', 'back'],
    });
    expect(await did(cwd, 'feed', '--pass', '1', '--used', '5 lb')).not.toContain('is done');
  });
  test('compares the first pass with its half', async () => {
    const { against } = await means(folder(), 'feed', '--pass', '1', '--used', '5 lb');
    expect(against.map(({ plannedKg }) => plannedKg / LB)).toEqual([expect.closeTo(2.5, 6), expect.closeTo(2.5, 6)]);
    expect(against[0]?.ratio).toBeCloseTo(1, 6);
  });
  test('compares the second pass with what the first has left', async () => {
    const cwd = folder();
    await did(cwd, 'feed', '--pass', '1', '--used', '4 lb');
    const second = await means(cwd, 'feed', '--pass', '2', '--used', '6 lb');
    expect(second.against[0]?.ratio).toBeCloseTo(1, 6);
    expect(second).toMatchObject({ areasOpen: [], areasHalfDone: [] });
  });
  test('compares work in one entry with the whole', async () =>
    expect((await means(folder(), 'feed', '--used', '10 lb')).against[0]?.ratio).toBeCloseTo(1, 6));
});

describe('spreader', () => {
  test('tells the one pass that is left, at the setting that the first has shown', async () => {
    const cwd = folder();
    await did(cwd, 'feed', '--pass', '1', '--used', '5 lb', '--setting', '6.5');
    const { settings, areas, amountKg } = await spreader(cwd, 'feed');
    expect((amountKg ?? 0) / LB).toBeCloseTo(5, 6);
    expect(areas.map(({ left, passes }) => [left, passes.map(({ direction }) => direction)])).toEqual([
      ['second-pass', ['crosswise']],
      ['second-pass', ['crosswise']],
    ]);
    expect(settings).toMatchObject([{ left: 'second-pass', setting: 6.5, basis: 'keep' }]);
    expect((settings[0]?.passGPerM2 ?? 0) / 4.8824).toBeCloseTo(2.5, 3);
  });
  test('tells both passes where only the other area has had the first', async () => {
    const cwd = folder();
    await did(cwd, 'feed', '--pass', '1', '--areas', 'front', '--used', '2.5 lb');
    const { areas, settings } = await spreader(cwd, 'feed');
    expect(areas.map(({ left, passes }) => [left, passes.length])).toEqual([
      ['second-pass', 1],
      ['both-passes', 2],
    ]);
    expect(settings.map((one) => one.areas)).toEqual([['front'], ['back']]);
  });
  test('of a pesticide tells what the label leaves', async () => {
    const cwd = folder();
    await did(cwd, 'barrier', '--pass', '1', '--used', '4.1 lb', '--setting', '6');
    expect(((await spreader(cwd, 'barrier')).amountKg ?? 0) / LB).toBeCloseTo(3.9, 6);
  });
  test('draws the ways, the first as done', async () => {
    const cwd = folder();
    await did(cwd, 'feed', '--pass', '1', '--used', '5 lb');
    await soilclock(cwd, ['spreader', 'lawn.yaml', 'feed']);
    const svg = readFileSync(path.join(cwd, 'out/spreader/test-lawn-feed.svg'), 'utf8');
    expect([...svg.matchAll(/lengthwise: done/g)]).toHaveLength(2);
    expect(svg).toMatch(/crosswise: 2\.5 lb/);
  });
});

test('the job in the feed says the same, as a revision', async () => {
  const cwd = folder();
  const job = async () => {
    const { text } = await planned(cwd, 'lawn.yaml', '2027-04-02');
    return partsOf(text).parts.find((event) => valueIn(event, 'UID')?.includes('2027-feed-job'))!;
  };
  const before = await job();
  await did(cwd, 'feed', '--pass', '1', '--used', '5 lb', '--setting', '6.5');
  const after = await job();
  expect(valueIn(before, 'DESCRIPTION')).not.toContain('second pass');
  expect(valueIn(after, 'DESCRIPTION')).toMatch(/2\.5 lb\\, the second pass.*keep the dial at 6\.5/);
  expect(valueIn(after, 'SUMMARY')).toBe('Feed: 5 lb');
  expect(Number(valueIn(after, 'SEQUENCE'))).toBe(Number(valueIn(before, 'SEQUENCE')) + 1);
});
