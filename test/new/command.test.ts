/** `soilclock new`: asked with canned answers, answered by flags, and refused. */
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { QUESTIONS } from '../../src/read/answers/questions.ts';
import { refFrom, worldFor } from '../../src/shell/new/world.ts';
import { folderWith, programText, root, soilclock } from '../kit.ts';

const FLAGS = ['--zip', '43004', '--grass', 'tall-fescue', '--area', 'front: rectangle 50 x 40 ft'];
const written = (cwd: string, name = 'lawn.yaml') => parse(readFileSync(path.join(cwd, name), 'utf8'));
const typed = (cwd: string, answers: readonly string[], argv: readonly string[] = []) =>
  soilclock(cwd, ['new', ...argv], undefined, answers);
/** Name, place, elevation, units, language, grass, program. */
const UNTIL_AREA = ['', '43004', '', '', '', 'tall-fescue', ''];
/** Spreader, swath, dial, days, hours, reminders, weather, forecast. */
const AFTER_AREA = ['', '', '', '', '', '', '', ''];
const AREA = ['front: rectangle 50 x 40 ft', '', ''];
const strict = async (cwd: string, name = 'lawn.yaml') => (await soilclock(cwd, ['check', '--strict', name])).code;

describe('asked at a terminal', () => {
  test('with Enter for all but place, grass and area it writes a lawn that checks', async () => {
    const cwd = folderWith();
    const { code, stdout } = await typed(cwd, [...UNTIL_AREA, ...AREA, ...AFTER_AREA]);
    expect([code, stdout.includes('soilclock plan lawn.yaml')]).toEqual([0, true]);
    expect(written(cwd)).toMatchObject({
      kind: 'lawn',
      id: 'my-lawn',
      location: { zip: '43004' },
      areas: { front: { rectangle: ['50 ft', '40 ft'] } },
      working: { days: ['sat', 'sun'], between: ['08:00', '18:00'], remind: ['1 d'] },
      weather: { service: 'none', forecast: 'none' },
    });
    expect(await strict(cwd)).toBe(0);
  });
  test('what it wrote can be planned', async () => {
    const cwd = folderWith();
    await typed(cwd, [...UNTIL_AREA, ...AREA, ...AFTER_AREA]);
    const { code, stdout } = await soilclock(cwd, ['plan', 'lawn.yaml', '--json']);
    expect([code, JSON.parse(stdout).kind]).toEqual([0, 'season']);
  });
  test('the key of the feed is another one each time', async () => {
    const keys = new Set<string>();
    for (let i = 0; i < 3; i++) {
      const cwd = folderWith();
      await soilclock(cwd, ['new', ...FLAGS, '--yes']);
      keys.add(written(cwd).feed.key);
    }
    expect(keys.size).toBe(3);
    for (const key of keys) expect(key).toMatch(/^[a-z0-9]{8}$/);
  });
  test('a wrong answer is asked again', async () => {
    const cwd = folderWith();
    const answers = ['', '00000', 'home', '43004', '900', '900 ft', 'both', 'us', '', 'moss', 'tall', 'x.yaml', ''];
    const { code } = await typed(cwd, [...answers, 'front: blob 3', ...AREA, 'wheel', ...AFTER_AREA]);
    expect(code).toBe(0);
    expect(written(cwd)).toMatchObject({ location: { zip: '43004', elevation: '900 ft' }, grass: 'tall-fescue' });
  });
  test('? explains and asks again', async () => {
    const cwd = folderWith();
    const { code, stderr } = await typed(cwd, ['?', ...UNTIL_AREA, ...AREA, ...AFTER_AREA]);
    expect(code).toBe(0);
    expect(stderr.match(/^Name of the lawn/gm)).toHaveLength(2);
  });
  test('< goes back, and the later answer holds', async () => {
    const cwd = folderWith();
    const { code } = await typed(cwd, ['One', '<', 'Two', ...UNTIL_AREA.slice(1), ...AREA, ...AFTER_AREA]);
    expect([code, written(cwd).name, written(cwd).id]).toEqual([0, 'Two', 'two']);
  });
  test('< at the first question stays there', async () => {
    const cwd = folderWith();
    expect((await typed(cwd, ['<', ...UNTIL_AREA, ...AREA, ...AFTER_AREA])).code).toBe(0);
  });
  test('areas come one after the other, with what is taken off, and the sum is shown', async () => {
    const cwd = folderWith();
    const areas = ['front: rectangle 50 x 40 ft', '20 x', 'rectangle 10 x 5 ft', '', 'back: 4200 sqft', '', ''];
    const { code, stderr } = await typed(cwd, [...UNTIL_AREA, ...areas, ...AFTER_AREA]);
    expect(code).toBe(0);
    expect(written(cwd).areas).toEqual({
      front: { rectangle: ['50 ft', '40 ft'], less: [{ rectangle: ['10 ft', '5 ft'] }] },
      back: { measured: '4200 sqft' },
    });
    // 50 × 40 − 10 × 5 = 1,950, and 4,200 more.
    expect(stderr).toMatch(/1,950[\s\S]*6,150/);
  });
  test('an area of many lengths is asked for one by one, and grows', async () => {
    const cwd = folderWith();
    const side = ['side: offsets every 10 ft', '12', 'x', '14', '13', '<', '9', '', ''];
    const { code, stderr } = await typed(cwd, [...UNTIL_AREA, ...side, '', ...AFTER_AREA]);
    expect(code).toBe(0);
    expect(written(cwd).areas).toEqual({ side: { offsets: { every: 10, widths: [12, 14, 9] }, in: 'ft' } });
    expect(stderr.match(/side: [\d,]+ sq ft/g)).toEqual(
      [120, 260, 390, 260, 350, 350].map((sqft) => `side: ${sqft} sq ft`),
    );
  });
  test('corners may cross on the way, and not in the end', async () => {
    const cwd = folderWith();
    const back = ['back: polygon in m', '0, 0', '2 2', '2, 0', '0, 2', '', '<', '<', '4, 0', '', ''];
    expect((await typed(cwd, [...UNTIL_AREA, ...back, '', ...AFTER_AREA])).code).toBe(0);
    const corners = [
      [0, 0],
      [2, 2],
      [4, 0],
    ];
    expect(written(cwd).areas).toEqual({ back: { polygon: corners, in: 'm' } });
  });
  test('an outline that names no unit is asked for in the one that is read, which may be typed', async () => {
    const cwd = folderWith();
    const back = ['back: polygon', '0, 0', '62, 0 ft', '62 48ft', '5, 5 m', '', ''];
    expect((await typed(cwd, [...UNTIL_AREA, ...back, '', ...AFTER_AREA])).code).toBe(0);
    const corners = [
      [0, 0],
      [62, 0],
      [62, 48],
    ];
    expect(written(cwd).areas).toEqual({ back: { polygon: corners, in: 'ft' } });
  });
  test('whoever ends too soon hears how many are still needed', async () => {
    const island = ['island: radii ft', '7', '8', '9', '', '10', '', ''];
    const { stderr } = await typed(folderWith(), [...UNTIL_AREA, ...island, '', ...AFTER_AREA]);
    expect(stderr).toContain('1 more at least');
  });
  test('a name that is there already is refused before any length is asked for', async () => {
    const cwd = folderWith();
    const areas = ['a: 4200 sqft', '', 'a: radii in ft', 'b: radii in ft', '7', '8', '9', '10', '', ''];
    expect((await typed(cwd, [...UNTIL_AREA, ...areas, '', ...AFTER_AREA])).code).toBe(0);
    expect(written(cwd).areas).toMatchObject({ b: { radii: [7, 8, 9, 10] } });
  });
  test('< among the areas takes the last one away', async () => {
    const cwd = folderWith();
    const areas = ['front: 20 sqft', '', 'bakc: 30 sqft', '<', 'back: 30 sqft', '', 'x: 1 sqft', '', '<', ''];
    expect((await typed(cwd, [...UNTIL_AREA, ...areas, ...AFTER_AREA])).code).toBe(0);
    expect(Object.keys(written(cwd).areas)).toEqual(['front', 'back']);
  });
  test('what flags answer is not asked', async () => {
    const cwd = folderWith();
    const { code, stderr } = await typed(cwd, Array(13).fill(''), FLAGS);
    expect([code, /^(Place|Grass|Area)/m.test(stderr)]).toEqual([0, false]);
  });
  test('a flag that does not go with an answer is asked for', async () => {
    const cwd = folderWith({ 'own.yaml': ownProgram('bermudagrass') });
    const answers = ['', '43004', '', '', '', 'tall-fescue', '', ...AREA, ...AFTER_AREA];
    const { code } = await typed(cwd, answers, ['--program', 'own.yaml']);
    expect([code, written(cwd).program.includes('own.yaml')]).toEqual([0, false]);
  });
  test('a wrong flag is told before anything is asked', async () => {
    const { code, stderr } = await typed(folderWith(), [], ['--grass', 'moss']);
    expect([code, stderr.includes('[unknown-word]'), stderr.includes('Name of')]).toEqual([2, true, false]);
  });
  const all = [...UNTIL_AREA, ...AREA, ...AFTER_AREA];
  test.each(all.map((_, i) => [i]))('when nobody answers after %i answers, nothing is written', async (i) => {
    const cwd = folderWith();
    const { code, stderr } = await typed(cwd, all.slice(0, i));
    expect([code, readdirSync(cwd), stderr.endsWith('Nothing was written.\n')]).toEqual([2, [], true]);
  });
  test('no line that is shown is wider than 80 columns', async () => {
    const help = (answers: readonly string[]) => answers.flatMap((one) => ['?', one]);
    const { code, stderr } = await typed(folderWith(), help([...UNTIL_AREA, ...AREA, ...AFTER_AREA]));
    expect(code).toBe(0);
    expect(stderr.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });
});

const ownProgram = (grass: string) =>
  programText('  - { id: mow, name: Mow, work: mow, window: { opens: { date: 05-01 } } }\n').replace(
    'tall-fescue',
    grass,
  );

describe('answered by flags', () => {
  test('every question has its flag in the help and in the read-me', async () => {
    const { stdout } = await soilclock(folderWith(), ['new', '--help']);
    const readMe = readFileSync(path.join(root, 'README.md'), 'utf8');
    const flags = QUESTIONS.flatMap(({ flags }) => flags.map((flag) => flag.split(' ')[0]!));
    expect(flags.filter((flag) => !stdout.includes(`${flag} `))).toEqual([]);
    expect(flags.filter((flag) => !readMe.includes(`\`${flag}`))).toEqual([]);
  });
  test("the read-me's own example writes a file that checks", async () => {
    const [, line = ''] = /^npx soilclock (new lawn\.yaml .*)$/m.exec(
      readFileSync(path.join(root, 'README.md'), 'utf8'),
    )!;
    const argv = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
    const cwd = folderWith();
    expect((await soilclock(cwd, argv)).code).toBe(0);
    expect(await strict(cwd)).toBe(0);
  });
  test('defaults fill the rest, with or without --yes', async () => {
    const [bare, yes] = [folderWith(), folderWith()];
    expect((await soilclock(bare, ['new', ...FLAGS])).code).toBe(0);
    expect((await typed(yes, [], [...FLAGS, '--yes'])).code).toBe(0);
    const { feed: _, ...lawn } = written(bare);
    expect(written(yes)).toMatchObject({ ...lawn, program: expect.any(String), products: expect.any(Array) });
  });
  test('every flag reaches the file', async () => {
    const cwd = folderWith({ 'own.yaml': ownProgram('bermudagrass'), 'w.csv': 'date,tmin,tmax\n2026-01-01,1,5\n' });
    const argv = ['new', 'a/my.yml', '--name', 'N: #1', '--place', '33.5, -84.4', '--elevation', '300 m'];
    argv.push('--units', 'us', '--language', 'en', '--grass', 'bermuda', '--program', 'own.yaml');
    argv.push('--area', 'a: 1 acre', '--area', 'b: square 9 m less circle radius 1 m', '--spreader', 'drop');
    argv.push('--swath', '22 in', '--dial', '1-10', '--days', 'weekdays', '--hours', '7am-11am', '--remind', 'none');
    argv.push('--weather', 'w.csv', '--file-units', 'metric', '--forecast', 'nws');
    const { code, stderr } = await soilclock(cwd, argv);
    expect([code, stderr]).toEqual([0, '']);
    const { feed, products, ...lawn } = written(cwd, 'a/my.yml');
    expect(lawn).toEqual({
      kind: 'lawn',
      version: 1,
      id: 'n-1',
      name: 'N: #1',
      location: { latitude: 33.5, longitude: -84.4, elevation: '300 m' },
      grass: 'bermudagrass',
      program: '../own.yaml',
      weather: { files: ['../w.csv'], service: 'none', units: 'metric', forecast: 'nws' },
      display: { units: 'us', language: 'en' },
      areas: { a: { measured: '1 acre' }, b: { rectangle: ['9 m', '9 m'], less: [{ circle: { radius: '1 m' } }] } },
      equipment: { spreader: { kind: 'drop', swath: '22 in', dial: { from: 1, to: 10, step: 1 } } },
      working: { days: ['mon', 'tue', 'wed', 'thu', 'fri'], between: ['07:00', '11:00'], remind: [] },
    });
  });
  test('--json prints what was written', async () => {
    const cwd = folderWith();
    const { code, stdout } = await soilclock(cwd, ['new', ...FLAGS, '--json']);
    expect([code, JSON.parse(stdout)]).toEqual([
      0,
      { kind: 'new-lawn', version: 1, file: 'lawn.yaml', lawn: written(cwd) },
    ]);
  });

  const warned = async (zip: string) => {
    const argv = ['--zip', zip, '--grass', 'tall-fescue', '--area', 'front: 4200 sqft'];
    return (await soilclock(folderWith(), ['new', ...argv, '--yes'])).stderr.includes('[new-other-climate]');
  };
  test('a program for another climate is said to be one', async () => expect(await warned('53202')).toBe(true));
  test('and one for the climate of the place is not', async () => expect(await warned('27601')).toBe(false));

  const problems = async (argv: readonly string[]) => {
    const cwd = folderWith();
    const { code, stdout } = await soilclock(cwd, ['new', ...argv, '--json']);
    expect([code, readdirSync(cwd)]).toEqual([2, []]);
    return JSON.parse(stdout).problems.map((one: { code: string; file: string | null }) => [one.code, one.file]);
  };
  test('with the area that is wrong, where there are several', async () => {
    const areas = ['--area', 'front: 4200 sqft', '--area', 'back: rectangle 50 x 40'];
    const { stderr } = await soilclock(folderWith(), ['new', '--yes', '--zip', '43004', ...areas]);
    expect(stderr).toContain('--area "back: rectangle 50 x 40": error');
  });
  test('missing ones without a default are named by their flags', async () =>
    expect(await problems(['--yes'])).toEqual([
      ['new-missing', '--place'],
      ['new-missing', '--grass'],
      ['new-missing', '--area'],
    ]));
  test.each([
    [['--zip', '00000'], 'zip-unknown', '--zip'],
    [['--place', '43004'], 'new-flag-twice', '--zip'],
    [['--area', 'front: 20 sqft'], 'new-area-twice', '--area "front: 20 sqft"'],
    [['--days', 'someday'], 'unknown-word', '--days'],
    [['--hours', '18:00-08:00'], 'out-of-range', '--hours'],
    [['--spreader', 'none', '--swath', '9 ft'], 'new-flag-idle', '--swath'],
    [['--weather', 'no.csv'], 'file-unreadable', '--weather'],
    [['--file-units', 'us'], 'new-flag-idle', '--file-units'],
    [['--program', 'no.yaml'], 'file-unreadable', '--program'],
  ])('%j is refused and nothing is written', async (argv, code, flag) => {
    const others = argv[0] === '--zip' ? FLAGS.slice(2) : FLAGS;
    expect(await problems([...others, ...argv])).toEqual([[code, flag]]);
  });
});

describe('the file', () => {
  const there = { 'lawn.yaml': 'kept' };
  const text = (cwd: string) => readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8');
  test('that is there stays, and nothing is asked', async () => {
    const cwd = folderWith(there);
    const { code, stderr } = await typed(cwd, [...UNTIL_AREA, ...AREA, ...AFTER_AREA]);
    expect([code, text(cwd), stderr.includes('[new-exists]')]).toEqual([2, 'kept', true]);
    expect(stderr).not.toContain('Name of the lawn');
  });
  test('that comes while one answers stays too', async () => {
    const cwd = folderWith();
    const answers = [...UNTIL_AREA, ...AREA, ...AFTER_AREA];
    const late = new Proxy(answers, {
      get(target, key) {
        if (key === Symbol.iterator) writeFileSync(path.join(cwd, 'lawn.yaml'), 'kept');
        return Reflect.get(target, key);
      },
    });
    expect([(await typed(cwd, late)).code, text(cwd)]).toEqual([2, 'kept']);
  });
  test('is written over with --force', async () => {
    const cwd = folderWith(there);
    expect((await soilclock(cwd, ['new', ...FLAGS, '--force'])).code).toBe(0);
    expect(written(cwd).kind).toBe('lawn');
  });
  test('a link that leads nowhere counts as one that is there', async () => {
    const cwd = folderWith();
    symlinkSync('nowhere', path.join(cwd, 'lawn.yaml'));
    expect((await soilclock(cwd, ['new', ...FLAGS])).code).toBe(2);
  });
  test.each([['lawn'], ['lawn.txt']])('called %s is refused', async (name) => {
    const cwd = folderWith();
    expect([(await soilclock(cwd, ['new', name, ...FLAGS])).code, readdirSync(cwd)]).toEqual([2, []]);
  });
  test('that cannot be written is named, and nothing is left', async () => {
    const cwd = folderWith({ folder: 'no folder' });
    const { code, stderr } = await soilclock(cwd, ['new', 'folder/lawn.yaml', ...FLAGS]);
    expect([code, stderr.includes('[write-failed]'), readdirSync(cwd)]).toEqual([2, true, ['folder']]);
  });
  test('beside a journal that does not fit is not written', async () => {
    const cwd = folderWith({ 'lawn.journal.yaml': 'date: 2027-03-14\n' });
    const { code, stderr } = await soilclock(cwd, ['new', ...FLAGS]);
    expect([code, stderr.includes('[new-unusable]'), existsSync(path.join(cwd, 'lawn.yaml'))]).toEqual([
      2,
      true,
      false,
    ]);
  });
  test('in a folder below names the programs by a way that leads there', async () => {
    const cwd = folderWith();
    mkdirSync(path.join(cwd, 'deep/er'), { recursive: true });
    expect((await soilclock(cwd, ['new', 'deep/er/my.yaml', ...FLAGS])).code).toBe(0);
    expect(await strict(cwd, 'deep/er/my.yaml')).toBe(0);
    expect(await strict(path.join(cwd, 'deep'), 'er/my.yaml')).toBe(0);
  });
  test.each([
    ['/a/lawn.yaml', '/a/programs/p.yaml', 'programs/p.yaml'],
    ['/a/lawns/my.yaml', '/a/programs/p.yaml', '../programs/p.yaml'],
    ['/a/b/c/d/e/my.yaml', '/a/programs/p.yaml', '/a/programs/p.yaml'],
  ])('%s names %s by %s', (file, target, ref) => expect(refFrom(file, target)).toBe(ref));
});

// Milwaukee, Louisville and Miami, of the classes that test/climate/climate-class.test.ts holds them to; open sea.
test.each([
  [43.0, -87.9, 'cool-humid'],
  [38.2, -85.7, 'transition'],
  [25.8, -80.2, 'tropical'],
  [-60, 0, undefined],
])('the climate at %d, %d has %s among its kinds', (latitude, longitude, kind) => {
  const kinds = worldFor('/lawn.yaml', root).climatesAt({ latitude, longitude });
  if (kind === undefined) expect(kinds).toEqual([]);
  else expect(kinds).toContain(kind);
});
