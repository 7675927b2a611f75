import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { demoCopy, folderWith, soilclock } from '../kit.ts';

const AS_OF = ['--as-of', '2027-04-02'];

/** The keys that a season promises, as dotted paths; `[]` is the first of a list. */
const PROMISED =
  `kind version lawn program asOf timezone display.units display.language display.currency season.year season.start
  season.end weather.observedThrough weather.forecastThrough weather.traces weather.sources now applications[].id applications[].name
  applications[].work applications[].status applications[].window.opens.p10 applications[].window.opens.p50
  applications[].window.opens.p90 applications[].window.opens.usual applications[].window.best.p50 applications[].window.closes.p50
  applications[].chance applications[].date applications[].start applications[].end applications[].inWindow applications[].why
  applications[].notJudged applications[].areas[].id applications[].areas[].areaM2 applications[].areas[].product
  applications[].areas[].amountKg applications[].areas[].amountL applications[].areas[].amount applications[].areas[].passes
  applications[].totals[].product applications[].totals[].amountKg applications[].totals[].amountL applications[].nutrientsGPerM2.N
  applications[].nutrientsGPerM2.P2O5 applications[].nutrientsGPerM2.K2O shopping[].product shopping[].needKg shopping[].shelfKg
  shopping[].packages[].size shopping[].packages[].count shopping[].buyBy shopping[].cost shopping[].leftKg limits[].name limits[].area
  limits[].plannedGPerM2 limits[].doneGPerM2 limits[].limitGPerM2 limits[].source limits[].ok signals.start signals.soil5C
  signals.airMeanC signals.usual signals.forecast signals.thresholds signals.heat
  problems[].code problems[].severity problems[].message problems[].file problems[].line
  problems[].column`.split(/\s+/);

function has(value: unknown, path: string): boolean {
  const [head = '', ...rest] = path.split('.');
  const key = head.replace('[]', '');
  if (value === null || typeof value !== 'object' || !Object.hasOwn(value, key)) return false;
  const inner = (value as Record<string, unknown>)[key];
  return rest.length === 0 || has(head.endsWith('[]') ? (inner as unknown[])[0] : inner, rest.join('.'));
}

describe('plan --json', () => {
  test('prints every key that a season promises', async () => {
    const { cwd, lawn } = demoCopy();
    const season: unknown = JSON.parse((await soilclock(cwd, ['plan', lawn, ...AS_OF, '--json'])).stdout);
    expect(PROMISED.filter((key) => !has(season, key))).toEqual([]);
  });
  test('without a lawn plans the one in the folder', async () => {
    const { cwd, lawn } = demoCopy();
    writeFileSync(
      path.join(cwd, 'lawn.yaml'),
      readFileSync(path.join(cwd, lawn), 'utf8')
        .replace('../tall', 'programs/tall')
        .replace('../products', 'programs/products')
        .replace('my-products', 'programs/demo/my-products')
        .replace('weather.csv', 'programs/demo/weather.csv')
        .replace('id: saltwether-lawn', 'id: here'),
    );
    const { code, stdout } = await soilclock(cwd, ['plan', '--json', ...AS_OF]);
    expect(code).toBe(0);
    expect((JSON.parse(stdout) as Season).lawn).toBe('here');
  });
  test("without --as-of plans for today in the lawn's zone", async () => {
    const { cwd, lawn } = demoCopy();
    // 02:30 UTC on 2 April is the evening of 1 April in New York.
    const { stdout } = await soilclock(cwd, ['plan', lawn, '--json', '--dry-run'], Date.UTC(2027, 3, 2, 2, 30));
    expect((JSON.parse(stdout) as Season).asOf).toBe('2027-04-01');
  });
  test('prints one step alone where it is named', async () => {
    const { cwd, lawn } = demoCopy();
    const { stdout } = await soilclock(cwd, ['plan', lawn, 'overseed', '--json', ...AS_OF]);
    expect(JSON.parse(stdout)).toMatchObject({ id: 'overseed', work: 'seed' });
  });
});

describe('plan', () => {
  const SHEET = 'out/site/saltwether-lawn.html';
  const files = ['out/site/saltwether-lawn.ics', SHEET, 'programs/demo/lawn.ledger.json'];

  test('writes the season sheet beside the feed, and says where', async () => {
    const { cwd, lawn } = demoCopy();
    const { stdout } = await soilclock(cwd, ['plan', lawn, ...AS_OF]);
    expect(readFileSync(path.join(cwd, SHEET), 'utf8')).toMatch(/^<!doctype html>/);
    expect(stdout).toContain(SHEET);
  });

  test('prints and writes the same bytes again on the same inputs', async () => {
    const { cwd, lawn } = demoCopy();
    const runs = [];
    for (const hour of [6, 12, 18]) {
      const { stdout } = await soilclock(cwd, ['plan', lawn, ...AS_OF], Date.UTC(2027, 3, 2, hour));
      runs.push({ stdout, files: files.map((file) => readFileSync(path.join(cwd, file), 'utf8')) });
    }
    expect(runs[1]?.files).toEqual(runs[0]?.files);
    // The ledger, which says what subscribers have seen, is the same from the second run on.
    expect(runs[2]).toEqual(runs[1]);
  });
  test('--dry-run writes nothing, nor does one step', async () => {
    const { cwd, lawn } = demoCopy();
    await soilclock(cwd, ['plan', lawn, ...AS_OF, '--dry-run']);
    await soilclock(cwd, ['plan', lawn, 'overseed', ...AS_OF]);
    expect(files.filter((file) => existsSync(path.join(cwd, file)))).toEqual([]);
  });
  test('a failed run overwrites nothing', async () => {
    const { cwd, lawn } = demoCopy();
    await soilclock(cwd, ['plan', lawn, ...AS_OF]);
    const before = files.map((file) => readFileSync(path.join(cwd, file), 'utf8'));
    const weather = path.join(cwd, 'programs/demo/weather.csv');
    writeFileSync(weather, `${readFileSync(weather, 'utf8')}2027-04-02,20,10,0\n`);
    expect((await soilclock(cwd, ['plan', lawn, '--as-of', '2027-04-03'])).code).toBe(1);
    expect(files.map((file) => readFileSync(path.join(cwd, file), 'utf8'))).toEqual(before);
  });
  test('one step tells its whole why', async () => {
    const { cwd, lawn } = demoCopy();
    const { code, stdout } = await soilclock(cwd, ['plan', lawn, 'summer-annual-barrier', ...AS_OF]);
    expect(code).toBe(0);
    for (const title of ['Window', 'Why', 'What to do', 'Take care', 'Sources'])
      expect(stdout).toContain(`\n${title}\n`);
  });
  test('a misspelt step names the nearest, with exit 2', async () => {
    const { cwd, lawn } = demoCopy();
    const { code, stderr } = await soilclock(cwd, ['plan', lawn, 'overseeed', ...AS_OF]);
    expect(code).toBe(2);
    expect(stderr).toContain('Did you mean "overseed"?');
  });
  test('the table fits 100 columns', async () => {
    const { cwd, lawn } = demoCopy();
    const { stdout } = await soilclock(cwd, ['plan', lawn, ...AS_OF, '--dry-run']);
    expect(stdout.split('\n').filter((line) => [...line].length > 100)).toEqual([]);
  });
  test('--strict lets a warning count', async () => {
    const { cwd, lawn } = demoCopy();
    expect((await soilclock(cwd, ['plan', lawn, ...AS_OF, '--strict', '--dry-run'])).code).toBe(1);
  });
});

describe('plan --compare', () => {
  const earlier = async (asOf: string) => {
    const { cwd, lawn } = demoCopy();
    const { stdout } = await soilclock(cwd, ['plan', lawn, '--as-of', asOf, '--json', '--dry-run']);
    writeFileSync(path.join(cwd, 'earlier.json'), stdout);
    return { cwd, lawn };
  };
  test('says what moved and by how much', async () => {
    const { cwd, lawn } = await earlier('2027-02-20');
    const { stdout } = await soilclock(cwd, [
      'plan',
      lawn,
      ...AS_OF,
      '--compare',
      'earlier.json',
      '--json',
      '--dry-run',
    ]);
    const moves = (JSON.parse(stdout) as { moves: { id: string; what: string; days: number }[] }).moves;
    expect(moves.find(({ id, what }) => id === 'summer-annual-barrier' && what === 'opens')?.days).toBeGreaterThan(3);
  });
  test('says so where nothing did', async () => {
    const { cwd, lawn } = await earlier('2027-04-02');
    const { stdout } = await soilclock(cwd, ['plan', lawn, ...AS_OF, '--compare', 'earlier.json', '--dry-run']);
    expect(stdout).toContain('Nothing has moved since the plan of 2027-04-02.');
  });
  test('refuses what is not a plan', async () => {
    const { cwd, lawn } = demoCopy();
    writeFileSync(path.join(cwd, 'other.json'), '{}');
    const { code, stderr } = await soilclock(cwd, ['plan', lawn, ...AS_OF, '--compare', 'other.json']);
    expect([code, stderr.includes('[compare-file]')]).toEqual([2, true]);
  });
});

describe('usage', () => {
  const cwd = folderWith();
  test.each([[[]], [['--help']], [['plan', '--help']], [['check', '--help']]])('%j explains itself', async (argv) => {
    const { code, stdout, stderr } = await soilclock(cwd, argv);
    expect(stdout + stderr).toContain('Usage: soilclock');
    expect(code).toBe(argv.length === 0 ? 2 : 0);
  });
  test.each([['plan'], ['check']])('%s --help gives an example', async (command) => {
    expect((await soilclock(cwd, [command, '--help'])).stdout).toContain('Example:');
  });
  test.each([
    [['plant']],
    [['plan', '--nonsense']],
    [['check']],
    [['plan', 'absent.yaml']],
    [['plan', '--as-of', 'tomorrow']],
  ])('%j is bad usage', async (argv) => {
    expect((await soilclock(cwd, argv)).code).toBe(2);
  });
});
