/** After work that says its setting, `did` tells what to set the dial to next. */
import { describe, expect, test } from 'vitest';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const LAWN = `areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }
equipment: { spreader: { kind: rotary, dial: { from: 1, to: 15, step: 0.25 } } }
products:
  - { id: feeder, form: granular, analysis: 20-0-0 }
  - { id: barrier, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }, label: { rate: 4 lb/1000 sqft } }
`;
/** Ten pounds of feed on both areas, five a pass; eight of the barrier, four a pass. */
const STEPS = `  - { id: feed, name: Feed, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { nutrient: { N: 1 lb/1000 sqft } } }
  - { id: barrier, name: Barrier, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { pesticide: pre-emergent } }
`;
const folder = (lawn = LAWN) =>
  folderWith({
    'lawn.yaml': lawnText(lawn),
    'program.yaml': programText(STEPS, 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n'),
    'weather.csv': inventedWeather('2018-01-01'),
  });
const next = async (cwd: string, ...argv: string[]) =>
  JSON.parse((await soilclock(cwd, ['did', 'lawn.yaml', ...argv, '--json'])).stdout).means.next;
const words = async (cwd: string, ...argv: string[]) => (await soilclock(cwd, ['did', 'lawn.yaml', ...argv])).stdout;

describe('the next setting', () => {
  test('is kept where an eighth of a pound is left of sixteen', async () => {
    const answer = await next(
      folder(),
      'feed',
      '--pass',
      '1',
      '--loaded',
      '5 lb',
      '--left',
      '0.04 lb',
      '--setting',
      '6',
    );
    expect(answer).toMatchObject({ pass: 'second', third: true, advice: { setting: 6, basis: 'keep' } });
    expect(answer.loadKg).toBeCloseTo(5 * 0.45359237, 6);
  });
  test('of the second pass takes up what the first has left', async () => {
    const answer = await next(folder(), 'feed', '--pass', '1', '--loaded', '5 lb', '--left', '1 lb', '--setting', '6');
    expect(answer.loadKg).toBeCloseTo(6 * 0.45359237, 6);
    expect(answer.advice.basis).toBe('records');
    expect(answer.advice.setting).toBeGreaterThan(6);
  });
  test('of the next time learns from both passes in the journal', async () => {
    const cwd = folder();
    await words(cwd, 'feed', '--pass', '1', '--used', '3 lb', '--setting', '5');
    const answer = await next(cwd, 'feed', '--pass', '2', '--used', '7 lb', '--setting', '8');
    expect(answer).toMatchObject({ pass: 'next', advice: { basis: 'records' } });
    expect(answer.advice.setting).toBeGreaterThan(6);
    expect(answer.advice.setting).toBeLessThan(7.25);
  });
  test('is the same with --dry-run', async () => {
    const cwd = folder();
    const line = ['feed', '--used', '12 lb', '--setting', '6'];
    expect(await next(cwd, ...line, '--dry-run')).toEqual(await next(cwd, ...line));
  });
  test('is told in words', async () => {
    expect(await words(folder(), 'feed', '--used', '10 lb', '--setting', '6')).toContain('keep the dial at 6');
    expect(await words(folder(), 'feed', '--used', '13 lb', '--setting', '6')).toMatch(/Next time: set the dial to \d/);
  });
});

describe('a single spreader under a name', () => {
  const named = LAWN.replace('spreader: {', 'spreaders: { main: {').replace('0.25 } } }', '0.25 } } } }');
  test('is meant by an entry that names none', async () =>
    expect(await next(folder(named), 'feed', '--used', '10 lb', '--setting', '6')).toMatchObject({
      advice: { setting: 6, basis: 'keep' },
    }));
  test('is told what the journal knows of it', async () => {
    const cwd = folder(named);
    await words(cwd, 'feed', '--pass', '1', '--areas', 'front', '--used', '2.5 lb', '--setting', '6.5');
    const { stdout } = await soilclock(cwd, ['spreader', 'lawn.yaml', 'feed']);
    expect(stdout).toContain('keep the dial at 6.5');
  });
  test('of two says nothing where the entry does not name it', async () => {
    const two = named.replace('main: {', 'other: { kind: drop }, main: {');
    expect(await next(folder(two), 'feed', '--used', '10 lb', '--setting', '6')).toBeNull();
    expect(await next(folder(two), 'feed', '--used', '10 lb', '--setting', '6', '--spreader', 'main')).not.toBeNull();
  });
});

describe('a pesticide', () => {
  test('whose label rate the first pass has put down has no second', async () => {
    const cwd = folder();
    const line = ['barrier', '--pass', '1', '--loaded', '9 lb', '--left', '0.5 lb', '--setting', '6'];
    expect(await next(cwd, ...line, '--dry-run')).toMatchObject({
      targetGPerM2: 0,
      third: false,
      advice: { setting: null, notes: ['label-reached'] },
    });
    expect(await words(cwd, ...line)).not.toContain('set the dial');
  });
  test('has no third pass to use up what is left', async () => {
    const line = ['--pass', '2', '--loaded', '4 lb', '--left', '1 lb', '--setting', '6'];
    expect(await words(folder(), 'barrier', ...line)).toContain('No further pass');
    expect(await words(folder(), 'feed', ...line)).not.toContain('No further pass');
  });
});

describe('nothing is said', () => {
  test('without a setting, without a weight, or of work outside the program', async () => {
    const cwd = folder();
    expect(await next(cwd, 'feed', '--used', '5 lb')).toBeNull();
    expect(await next(cwd, 'feed', '--setting', '5')).toBeNull();
    expect(await next(cwd, '--work', 'spread', '--product', 'feeder', '--used', '5 lb', '--setting', '5')).toBeNull();
  });
  test('of a dial that the lawn file does not know', async () =>
    expect(
      await next(folder(LAWN.replace(/^equipment.*\n/m, '')), 'feed', '--used', '5 lb', '--setting', '5'),
    ).toBeNull());
});

describe('the spreader command', () => {
  const settings = async (cwd: string, step: string) =>
    JSON.parse((await soilclock(cwd, ['spreader', 'lawn.yaml', step, '--json'])).stdout).settings;
  const spread = (work: string) => `- { date: 2027-03-01, work: spread, ${work} }\n`;
  const withJournal = (text: string) =>
    folderWith({
      'lawn.yaml': lawnText(LAWN),
      'program.yaml': programText(STEPS, 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n'),
      'weather.csv': inventedWeather('2018-01-01'),
      'lawn.journal.yaml': text,
    });
  test('begins at a third of the dial where the journal knows nothing', async () =>
    expect(await settings(folder(), 'feed')).toMatchObject([{ setting: 5, basis: 'first', learned: [] }]));
  test('takes the setting that the journal knows', async () => {
    const cwd = withJournal(spread('product: feeder, setting: 6.5, used: 5 lb, pass: 1'));
    expect(await settings(cwd, 'feed')).toMatchObject([{ setting: 6.5, basis: 'keep' }]);
    expect((await soilclock(cwd, ['spreader', 'lawn.yaml', 'feed'])).stdout).toContain('keep the dial at 6.5');
  });
  test('takes no product for it that another season has for the step', async () => {
    const old = '- { date: 2026-04-10, step: feed, setting: 12, used: 10 lb }\n';
    expect(await settings(withJournal(old), 'feed')).toMatchObject([{ setting: 5, basis: 'first' }]);
  });
  test('does not know what is written for a day to come', async () => {
    const later = '- { date: 2027-09-25, work: spread, product: feeder, setting: 6.5, used: 5 lb, pass: 1 }\n';
    expect(await settings(withJournal(later), 'feed')).toMatchObject([{ setting: 5, basis: 'first' }]);
  });
  test('takes no other product for it', async () => {
    const cwd = withJournal(spread('product: barrier, setting: 6.5, used: 5 lb, pass: 1'));
    expect(await settings(cwd, 'feed')).toMatchObject([{ setting: 5, basis: 'first' }]);
  });
});
