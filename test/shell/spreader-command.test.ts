/** `soilclock spreader`: what it tells of a step, what it draws, what it refuses. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { SpreaderReport } from '../../src/model/spreader-report.ts';
import { inventedWeather } from '../invented-weather.ts';
import { demoCopy, folderWith, lawnText, programText, soilclock } from '../kit.ts';

const PRODUCTS = `products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - { id: crystals, form: soluble, analysis: 20-20-20 }
  - { id: barrier, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }, label: { rate: 4 lb/1000 sqft } }
`;
const AREAS = `areas:
  front: { rectangle: [50 ft, 40 ft] }
  back: { measured: 900 sqft }
  island: { circle: { radius: 20 ft }, less: [{ circle: { radius: 3 ft } }] }
`;
const window = 'window: { opens: { date: 04-20 }, closes: { date: 05-20 } }';
const STEPS = `  - { id: feed, name: Feed, work: spread, ${window}, apply: { nutrient: { N: 0.46 lb/1000 sqft } } }
  - { id: barrier, name: Barrier, work: spread, ${window}, apply: { pesticide: pre-emergent } }
  - { id: grubs, name: Grubs, work: spread, ${window}, apply: { pesticide: grub-preventer } }
  - { id: dissolved, name: Dissolved, work: spray, ${window}, apply: { product: crystals, rate: 1 lb/1000 sqft } }
  - { id: mow, name: Mow, work: mow, ${window}, apply: { mow: { height: 3 in } } }
`;
const EQUIPMENT = 'equipment: { spreader: { kind: rotary, swath: 10 ft, dial: { from: 1, to: 15, step: 0.25 } } }\n';
const weather = inventedWeather('2018-01-01', '2027-04-01');
const folder = (lawn = EQUIPMENT + AREAS, files: Record<string, string> = {}) =>
  folderWith({
    'lawn.yaml': lawnText(lawn + PRODUCTS),
    'program.yaml': programText(STEPS),
    'weather.csv': weather,
    ...files,
  });
const spreader = (cwd: string, ...argv: string[]) => soilclock(cwd, ['spreader', 'lawn.yaml', ...argv]);
const report = async (cwd: string, ...argv: string[]) =>
  JSON.parse((await spreader(cwd, ...argv, '--json')).stdout) as SpreaderReport;
const codes = (stderr: string) => [...stderr.matchAll(/\[([a-z-]+)\]$/gm)].map(([, code]) => code);

describe('a step', () => {
  test('is told with a first setting, loads, ways and turns', async () => {
    const { step, settings, areas } = await report(folder(), 'feed');
    expect(step).toMatchObject({ id: 'feed', status: 'expected' });
    expect(settings).toMatchObject([{ areas: ['front', 'back', 'island'], setting: 5, basis: 'first' }]);
    expect(areas.map(({ id, passes }) => [id, passes.map(({ direction }) => direction)])).toEqual([
      ['front', ['lengthwise', 'crosswise']],
      ['back', ['lengthwise', 'crosswise']],
      ['island', ['lengthwise', 'crosswise']],
    ]);
  });
  test('left out is the next one that waits for a spreader', async () => {
    expect((await report(folder())).step?.id).toBe('feed');
  });
  test('lists the areas that the journal has not done', async () => {
    const cwd = folder(undefined, { 'lawn.journal.yaml': '- { date: 2027-04-01, step: feed, areas: [front] }\n' });
    expect((await report(cwd, 'feed')).areas.map(({ id }) => id)).toEqual(['back', 'island']);
  });
  test('that is done has no loads any more', async () => {
    const cwd = folder(undefined, { 'lawn.journal.yaml': '- { date: 2027-04-01, step: feed }\n' });
    const { code, stderr } = await spreader(cwd, 'feed');
    expect([code, codes(stderr)]).toEqual([1, ['step-over']]);
  });
  test('without a label has ways and no amount', async () => {
    const { amountKg, areas, settings } = await report(folder(), 'grubs');
    expect([amountKg, settings[0]?.course.deliversKg]).toEqual([null, null]);
    expect(areas[0]?.passes.map((pass) => [pass.amountKg, pass.lines])).toEqual([
      [null, 2],
      [null, 3],
    ]);
  });
  test('none at all leaves the ways alone', async () => {
    const cwd = folder(undefined, { 'program.yaml': programText(STEPS.split('\n').slice(4).join('\n')) });
    const { step, product, areas } = await report(cwd);
    expect([step, product, areas.length]).toEqual([null, null, 3]);
  });
  test('of two rates has a setting for each', async () => {
    const lawn = `${EQUIPMENT}${AREAS}local-rules: [{ limit: N, yearly: 0.6 lb/1000 sqft, because: "a rule" }]\n`;
    const journal = '- { date: 2027-03-20, work: spread, areas: [front], product: urea, used: 1.2 lb }\n';
    const { settings } = await report(folder(lawn, { 'lawn.journal.yaml': journal }), 'feed');
    expect(settings.map(({ areas }) => areas)).toEqual([['front'], ['back', 'island']]);
    expect(settings[0]?.passGPerM2 ?? 0).toBeLessThan(settings[1]?.passGPerM2 ?? 0);
  });
  test('held by a limit is rounded downward in all', async () => {
    // 0.4 lb of nitrogen is 0.8696 lb of urea on 1000 ft², 3.5899 lb on the 4128.4 ft² of the three areas.
    const lawn = `${EQUIPMENT}${AREAS}local-rules: [{ limit: N, single: 0.4 lb/1000 sqft, because: "a rule" }]\n`;
    expect((await report(folder(lawn), 'feed')).amount).toBe('3.58 lb');
  });
  test('that is a pesticide with a limit is told to load no more, be its setting the first one', async () => {
    const { settings } = await report(folder(), 'barrier');
    expect(settings).toMatchObject([{ setting: 5, basis: 'first' }]);
    expect(settings[0]?.learned.join()).toMatch(/load no more/);
    expect((await report(folder(), 'feed')).settings[0]?.learned).toEqual([]);
  });
  test('half done is set to what the first pass has left of the rate', async () => {
    const lawn = `${EQUIPMENT}${AREAS}`;
    const journal = '- { date: 2027-04-01, step: barrier, pass: 1, areas: [front], used: 6 lb }\n';
    const [front, rest] = (await report(folder(lawn, { 'lawn.journal.yaml': journal }), 'barrier')).settings;
    // 6 of 8 lb are down on 2000 sq ft: 1 lb/1000 sq ft is left.
    expect([front?.areas, rest?.areas]).toEqual([['front'], ['back', 'island']]);
    expect((front?.passGPerM2 ?? 0) / 4.8824).toBeCloseTo(1, 3);
  });
  test('that is a pesticide is never tried above its rate', async () => {
    const { course } = (await report(folder(), 'barrier')).settings[0]!;
    expect(course.mostKg).toBe(course.deliversKg);
  });
});

describe('what the outline does not tell', () => {
  test('a square stands in for an area by its size, and the text says so', async () => {
    expect((await report(folder(), 'feed')).areas.map(({ square }) => square)).toEqual([false, true, false]);
    expect((await spreader(folder(), 'feed')).stdout).toMatch(/back: known by size alone/);
  });
  test('an area too large for its swath has no way', async () => {
    const { areas, problems } = await report(folder(`${EQUIPMENT}areas: { prairie: { measured: 5000 ha } }\n`), 'feed');
    expect(areas[0]?.passes).toEqual([]);
    expect(problems.map(({ code }) => code)).toContain('walk-lines');
  });
  test('the width of a pass, where the lawn has no spreader', async () => {
    const { spreader: told, settings } = await report(folder(AREAS), 'feed');
    expect(told).toMatchObject({ kind: 'rotary', swathFrom: 'usual', dial: null });
    expect(settings[0]?.setting).toBeNull();
  });
});

describe('several spreaders', () => {
  const TWO = `equipment:
  spreader: { kind: rotary, swath: 10 ft }
  spreaders: { drop-22: { kind: drop, swath: 22 in, passes: parallel } }
${AREAS}`;
  test('the single one is taken, another by its id', async () => {
    const cwd = folder(TWO);
    expect((await report(cwd, 'feed')).spreader).toMatchObject({ id: null, kind: 'rotary' });
    expect((await report(cwd, 'feed', '--spreader', 'drop-22')).spreader).toMatchObject({
      id: 'drop-22',
      kind: 'drop',
    });
  });
  test('without a single one the first is taken', async () => {
    const cwd = folder(TWO.replace(/ {2}spreader: .*\n/, ''));
    expect((await report(cwd, 'feed')).spreader.id).toBe('drop-22');
  });
  test('that the journal names are known, or it is said', async () => {
    const told = async (id: string) => {
      const journal = `- { date: 2027-03-20, work: spread, product: urea, spreader: ${id}, setting: 4 }\n`;
      return (await report(folder(TWO, { 'lawn.journal.yaml': journal }), 'feed')).problems.map(({ code }) => code);
    };
    expect(await told('drop-22')).not.toContain('journal-spreader');
    expect(await told('drop-24')).toContain('journal-spreader');
  });
  test('an unknown one is refused', async () => {
    const { code, stderr } = await spreader(folder(TWO), 'feed', '--spreader', 'drop');
    expect([code, codes(stderr)]).toEqual([1, ['unknown-spreader']]);
  });
});

test('feet and metres of one lawn give the same loads and ways', async () => {
  const us = await report(
    folder(
      'equipment: { spreader: { pans: { spacing: 1 ft, catches: [0, 1, 4, 6, 6, 6, 4, 1, 0] }, speed: 3 mph } }\nareas: { a: { rectangle: [50 ft, 40 ft] } }\n',
    ),
    'feed',
  );
  const metric = await report(
    folder(
      'equipment: { spreader: { pans: { spacing: 30.48 cm, catches: [0, 1, 4, 6, 6, 6, 4, 1, 0] }, speed: 1.34112 m/s } }\nareas: { a: { rectangle: [15.24 m, 12.192 m] } }\n',
    ),
    'feed',
  );
  const figures = ({ areas, amountKg, walkingMin }: SpreaderReport) =>
    [amountKg, walkingMin, ...areas.flatMap(({ passes }) => passes.flatMap((pass) => Object.values(pass)))].filter(
      (value) => typeof value === 'number',
    );
  expect(figures(us).length).toBeGreaterThan(14);
  for (const [i, value] of figures(us).entries())
    expect(Math.abs(value - figures(metric)[i]!)).toBeLessThanOrEqual(1e-9 * Math.max(1, value));
});

describe('a pan test', () => {
  const withPans = (pans: string, more = '') => `equipment: { spreader: { pans: ${pans}${more} } }\n${AREAS}`;
  test.each([
    ['{ spacing: 1 ft, catches: [1, 4, 3] }', 'spreader-pans', 1],
    ['{ spacing: 1 ft, catches: [2, 0, 2] }', 'spreader-pans', 1],
    ['{ spacing: 1 ft, catches: [1, 9, 4, 1, 1] }', 'spreader-pans', 1],
    ['{ spacing: 1 ft, catches: [1, 2] }', 'wrong-type', 1],
  ])('%s is %s', async (pans, expected, exit) => {
    const { code, stderr } = await spreader(folder(withPans(pans)), 'feed');
    expect([code, codes(stderr)]).toEqual([exit, [expected]]);
  });
  test('that leans to a side is warned of and used', async () => {
    const { problems, spreader: told } = await report(
      folder(withPans('{ spacing: 1 ft, catches: [0, 1, 4, 8, 7, 6, 3] }')),
      'feed',
    );
    expect(problems.map(({ code }) => code)).toContain('spreader-skew');
    expect(told.skew).toBeGreaterThan(0.1);
  });
  test('beside a swath is one too many', async () => {
    const lawn = withPans('{ spacing: 1 ft, catches: [1, 4, 1] }', ', swath: 10 ft');
    expect(codes((await spreader(folder(lawn), 'feed')).stderr)).toEqual(['spreader-swath']);
  });
  test('of a second spreader is judged as well', async () => {
    const lawn = `equipment: { spreaders: { old: { pans: { spacing: 1 ft, catches: [2, 0, 2] } } } }\n${AREAS}`;
    expect(codes((await spreader(folder(lawn), 'feed')).stderr)).toEqual(['spreader-pans']);
  });
});

describe('refused', () => {
  test.each([
    ['nothing', 'plan-step', 2],
    ['mow', 'spreader-step', 1],
    ['dissolved', 'spreader-step', 1],
  ])('the step %s', async (step, expected, exit) => {
    const { code, stderr } = await spreader(folder(), step);
    expect([code, codes(stderr)]).toEqual([exit, [expected]]);
  });
  test('a folder that cannot be written', async () => {
    const cwd = folder();
    writeFileSync(path.join(cwd, 'taken'), '');
    const { code, stderr } = await spreader(cwd, 'feed', '--out', 'taken');
    expect([code, codes(stderr)]).toEqual([1, ['write-failed']]);
  });
});

describe('the text', () => {
  test('fits into 80 columns', async () => {
    const out: string[] = [];
    const { main } = await import('../../src/cli.ts');
    const io = { stdout: (text: string) => void out.push(text), stderr: () => {}, cwd: folder(), columns: 80 };
    await main(['spreader', 'lawn.yaml', 'barrier', '--dry-run'], { ...io, now: () => Date.UTC(2027, 3, 2) });
    const lines = out.join('').split('\n');
    expect(lines.length).toBeGreaterThan(20);
    expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
  });
  test('carries the cautions of a pesticide, and no third pass', async () => {
    const { stdout } = await spreader(folder(), 'barrier', '--dry-run');
    expect(stdout).toContain('no third pass');
    expect(stdout).toContain('The label is the law');
    expect(stdout).toContain('The label in hand');
  });
  test('is in metres for who wants them', async () => {
    const { stdout } = await spreader(folder(`${EQUIPMENT}${AREAS}display: { units: metric }\n`), 'feed', '--dry-run');
    expect(stdout).toContain('100 m²');
    expect(stdout).not.toMatch(/\d ft\b/);
  });
});

describe('the drawing', () => {
  const drawn = async (lawn = EQUIPMENT + AREAS) => {
    const cwd = folder(lawn);
    const { stdout } = await spreader(cwd, 'feed');
    expect(stdout).toContain('out/spreader/test-lawn-feed.svg');
    return readFileSync(path.join(cwd, 'out/spreader/test-lawn-feed.svg'), 'utf8');
  };
  /** Tags that are opened and not closed, or closed and not opened. */
  const unbalanced = (svg: string): string[] => {
    const open: string[] = [];
    const wrong: string[] = [];
    for (const [, shut, name, own] of svg.matchAll(/<(\/?)([a-zA-Z]+)[^<>]*?(\/?)>/g)) {
      if (own) continue;
      if (!shut) open.push(name!);
      else if (open.pop() !== name) wrong.push(name!);
    }
    return [...open, ...wrong];
  };
  test('shows both ways over each area', async () => {
    const svg = await drawn();
    expect(svg.match(/<clipPath /g)).toHaveLength(6);
    expect(unbalanced(svg)).toEqual([]);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });
  test('draws every line of the table once', async () => {
    const svg = await drawn();
    const { areas } = await report(folder(), 'feed');
    const lines = areas.flatMap(({ passes }) => passes).reduce((sum, pass) => sum + pass.lines, 0);
    expect(svg.match(/marker-end/g)).toHaveLength(lines);
    expect(svg.match(/text-anchor="middle">\d+</g)).toHaveLength(lines);
  });
  test('takes a name for what it is, not for markup', async () => {
    const svg = await drawn(`${EQUIPMENT}${AREAS}name: 'A <script>alert("&")</script> lawn'\n`);
    expect(svg).not.toContain('<script');
    expect(unbalanced(svg)).toEqual([]);
  });
  test('is the same bytes for the same lawn', async () => {
    expect(await drawn()).toBe(await drawn());
  });
  test.each([[['--dry-run']], [['--json']]])('is not written with %j', async (flags) => {
    const cwd = folder();
    await spreader(cwd, 'feed', ...flags);
    expect(readdirSync(cwd)).not.toContain('out');
  });
  test('of the demo goes only into a named folder', async () => {
    const { cwd } = demoCopy();
    expect((await soilclock(cwd, ['spreader'])).code).toBe(0);
    expect(existsSync(path.join(cwd, 'out'))).toBe(false);
    await soilclock(cwd, ['spreader', '--out', 'mine']);
    expect(readdirSync(path.join(cwd, 'mine'))).toHaveLength(1);
  });
});
