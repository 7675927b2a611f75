/** Rules of agronomy on a lawn: its own weather, working days, labels and rules of the place. */
import { describe, expect, test } from 'vitest';
import type { Problem } from '../../src/base/problem.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const weather = inventedWeather('2010-01-01');
const scout = (window: string) => `  - { id: a, name: A, work: scout, source: common-practice, window: ${window} }\n`;

/** What `check lawn.yaml` finds, as code and file. */
async function found(steps: string, lawn = '', asOf = '2027-04-02'): Promise<string[]> {
  const cwd = folderWith({ 'program.yaml': programText(steps), 'lawn.yaml': lawnText(lawn), 'weather.csv': weather });
  const { stdout } = await soilclock(cwd, ['check', 'lawn.yaml', '--json', '--as-of', asOf]);
  return (JSON.parse(stdout) as { problems: Problem[] }).problems.map(
    ({ code, file, line }) => `${code} ${file}:${line}`,
  );
}

describe('in more than a tenth of the past years', () => {
  test('window-idle: no working day in the window', async () => {
    const days = scout('{ opens: { date: 05-03 }, closes: { date: 05-06 } }');
    expect(await found(days, 'working: { days: [sat] }\n')).toEqual(['window-idle program.yaml:7']);
    expect(await found(days, 'working: { days: [sat, mon, wed, fri] }\n')).toEqual([]);
    // Six days without a Saturday come in every seventh year or so, whatever weekdays this year has.
    const six = scout('{ opens: { date: 05-03 }, closes: { date: 05-08 } }');
    expect(await found(six, 'working: { days: [sat] }\n')).toEqual(['window-idle program.yaml:7']);
    const week = scout('{ opens: { date: 05-03 }, closes: { date: 05-09 } }');
    expect(await found(week, 'working: { days: [sat] }\n')).toEqual([]);
  });
  test('window-empty: no window at all', async () => {
    const warm = (limit: number) => scout(`{ opens: { air: { mean: 5 d, rises-to: ${limit} C } } }`);
    expect(await found(warm(27))).toContain('window-empty program.yaml:7');
    expect(await found(warm(20))).toEqual([]);
  });
});

describe('labels', () => {
  const product = (label: string) =>
    `products:\n  - { id: barrier, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }${label} }\n`;
  const barrier =
    '  - { id: a, name: A, work: spread, source: common-practice, window: { opens: { date: 05-01 } }, apply: { pesticide: pre-emergent } }\n';
  test('label-old: not compared this year, or never', async () => {
    const checked = (day: string) => product(`, label: { rate: 4 lb/1000 sqft, checked: ${day} }`);
    expect(await found(barrier, checked('2026-12-31'))).toEqual(['label-old lawn.yaml:11']);
    expect(await found(barrier, checked('2027-01-01'))).toEqual([]);
    expect(await found(barrier, product(', label: { rate: 4 lb/1000 sqft }'))).toEqual(['label-old lawn.yaml:11']);
  });
  test('label-none: a step for a pesticide, and no label for it', async () => {
    expect(await found(barrier, product(''))).toEqual(['label-none program.yaml:7']);
    expect(await found(barrier)).toEqual(['label-none program.yaml:7']);
  });
});

describe('phosphorus-no-test: a rule that only a low test lifts', () => {
  const rule = 'local-rules: [{ forbid: [phosphorus], unless: soil-test-low }]\n';
  const plain = scout('{ opens: { date: 05-03 } }');
  test('fires without a test', async () =>
    expect(await found(plain, rule)).toEqual(['phosphorus-no-test lawn.yaml:10']));
  test('is silent with one', async () =>
    expect(await found(plain, `${rule}soil: { tests: [{ date: 2027-02-01, phosphorus: high }] }\n`)).toEqual([]));
});

test('what a program does wrong on this weather is told in its file', async () => {
  const feed =
    '  - { id: a, name: A, work: spread, source: common-practice, window: { opens: { date: 01-10 }, closes: { date: 01-20 } }, apply: { nutrient: { N: 0.5 lb/1000 sqft } } }\n';
  expect(await found(feed)).toContain('nitrogen-dormant program.yaml:7');
});
