/** `soilclock did`: what was done is written down once and whole, told what it means, and can be taken back. */
import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readJournal } from '../../src/read/journal.ts';
import { addEntry } from '../../src/shell/journal-file.ts';
import { withLock } from '../../src/shell/lock.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, root, soilclock } from '../kit.ts';

const AREAS = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
const PRODUCTS = `products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - { id: barrier, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }, label: { rate: 4 lb/1000 sqft } }
shelf: { counted: 2027-02-01, urea: 10 lb }
`;
const STEPS = `  - { id: feed, name: Feed, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { nutrient: { N: 0.46 lb/1000 sqft } } }
  - { id: barrier, name: Barrier, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { pesticide: pre-emergent } }
`;
const folder = (files: Record<string, string> = {}) =>
  folderWith({
    'lawn.yaml': lawnText(AREAS + PRODUCTS),
    'program.yaml': programText(STEPS, 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n'),
    'weather.csv': inventedWeather('2018-01-01'),
    ...files,
  });
const JOURNAL = 'lawn.journal.yaml';
const journalOf = (cwd: string) => readFileSync(path.join(cwd, JOURNAL), 'utf8');
const entriesOf = (cwd: string) => readJournal(journalOf(cwd), JOURNAL).value ?? [];
const did = (cwd: string, ...argv: string[]) => soilclock(cwd, ['did', 'lawn.yaml', ...argv]);
const codes = (stderr: string) => [...stderr.matchAll(/\[([a-z-]+)\]$/gm)].map(([, code]) => code);

describe('an entry', () => {
  test('of a step, done today in the zone of the lawn', async () => {
    const cwd = folder();
    const { code, stdout } = await did(cwd, 'feed', '--used', '2 lb', '--setting', '5.5');
    expect(code).toBe(0);
    expect(journalOf(cwd)).toMatch(
      /^- \{ id: [a-z]\w{3}, date: 2027-04-02, step: feed, product: urea, used: 2 lb, setting: 5\.5 \}\n$/,
    );
    expect(stdout).toContain('as planned');
    expect(stdout).toContain('Left on the shelf: 8 lb of urea');
  });
  test('of some areas: the others are still to do', async () => {
    const cwd = folder();
    const { stdout } = await did(cwd, 'feed', '--areas', 'front', '--loaded', '2 lb', '--left', '14 oz');
    expect(stdout).toContain('13 % more than the 1 lb planned');
    expect(stdout).toContain('Still to do: back.');
    expect(stdout).toMatch(/front: 0\.52 lb\/1000 sq ft of 3 lb\/1000 sq ft done/);
  });
  describe('of a step bears the product that the plan has for it', () => {
    const rows = (cwd: string) => parse(journalOf(cwd));
    test('so that a product that the plan takes later rewrites nothing', async () => {
      const cwd = folder();
      await did(cwd, 'feed', '--areas', 'front', '--date', '2027-04-01', '--used', '1 lb');
      const other = PRODUCTS.replace(
        '{ id: urea, form: granular, analysis: 46-0-0 }',
        '{ id: feed-15, form: granular, analysis: 15-0-15 }\n  - { id: urea, form: granular, analysis: 46-0-0 }',
      );
      const shelf = other.replace('urea: 10 lb', 'feed-15: 40 lb');
      writeFileSync(path.join(cwd, 'lawn.yaml'), lawnText(AREAS + shelf));
      const { stdout } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-04-02', '--json']);
      const plan = JSON.parse(stdout);
      expect(plan.applications.find(({ id }: { id: string }) => id === 'feed').areas[0].product).toBe('feed-15');
      // 46 % of 1 lb on 1000 sq ft.
      const front = plan.limits.find(({ area }: { area: string }) => area === 'front');
      expect(front.doneGPerM2).toBeCloseTo((0.46 * 453.59237) / 92.90304, 3);
    });
    test('but for one that the command names', async () => {
      const cwd = folder();
      await did(cwd, 'feed', '--product', 'barrier');
      expect(rows(cwd)[0].product).toBe('barrier');
    });
    test('but for a day before the season that is planned', async () => {
      const cwd = folder();
      await did(cwd, 'feed', '--date', '2026-04-01');
      expect(rows(cwd)[0].product).toBeUndefined();
    });
    test('a correction of an entry without one stays without', async () => {
      const cwd = folder({ [JOURNAL]: '- { id: abcd, date: 2027-04-01, step: feed, used: 5 lb }\n' });
      await did(cwd, '--corrects', 'abcd', '--used', '2 lb');
      expect(rows(cwd)[1].product).toBeUndefined();
    });
  });
  test('of work outside the program', async () => {
    const cwd = folder();
    expect((await did(cwd, '--work', 'mow', '--date', '2027-04-01', '--note', 'first: "cut" # ok')).code).toBe(0);
    expect(entriesOf(cwd)).toMatchObject([{ work: 'mow', note: 'first: "cut" # ok' }]);
  });
  test('takes what the plan prints, and 0 for nothing left', async () => {
    const cwd = folder();
    const { code, stdout } = await did(cwd, 'feed', '--loaded', '1 lb 12 oz', '--left', '0');
    expect([code, parse(journalOf(cwd))[0].left]).toEqual([0, 0]);
    expect(stdout).toContain('1.75 lb used, 12 % less than the 2 lb planned');
  });
  test('with nothing left of a volume counts that volume', async () => {
    const cwd = folder();
    await did(cwd, '--product', 'barrier', '--loaded', '1 gal 20 fl oz', '--left', '0');
    expect(entriesOf(cwd)[0]).toMatchObject({ used: { by: 'volume' }, left: { by: 'volume', value: 0 } });
  });
  test('over the label is written and told', async () => {
    const cwd = folder();
    const { code, stderr } = await did(cwd, 'barrier', '--used', '9 lb');
    expect([code, codes(stderr)]).toEqual([0, ['did-over-label']]);
    expect(entriesOf(cwd)).toHaveLength(1);
    expect((await did(folder(), 'barrier', '--used', '8 lb')).stderr).toBe('');
  });
  test('--dry-run and --json show it', async () => {
    const cwd = folder();
    const { stdout } = await did(cwd, 'feed', '--used', '2 lb', '--dry-run', '--json');
    expect(JSON.parse(stdout)).toMatchObject({ kind: 'did', entry: { step: 'feed', used: '2 lb' } });
    expect(existsSync(path.join(cwd, JOURNAL))).toBe(false);
  });
});

describe('a label', () => {
  const withLabel = (label: string, more = '') =>
    folder({
      'lawn.yaml': lawnText(AREAS + PRODUCTS.replace('label: { rate: 4 lb/1000 sqft }', `label: { ${label} }${more}`)),
    });
  test('in a year is added up over the entries in force', async () => {
    const cwd = withLabel('rate: 4 lb/1000 sqft, per-year: 6 lb/1000 sqft');
    const front = ['--work', 'spread', '--product', 'barrier', '--used', '3 lb', '--areas', 'front'];
    expect(codes((await did(cwd, 'barrier', '--used', '8 lb', '--date', '2027-03-01')).stderr)).toEqual([]);
    expect(codes((await did(cwd, ...front)).stderr)).toEqual(['did-over-label-year']);
    await did(cwd, '--undo');
    expect(codes((await did(cwd, ...front, '--dry-run')).stderr)).toEqual(['did-over-label-year']);
    await did(cwd, '--undo');
    expect(codes((await did(cwd, ...front)).stderr)).toEqual([]);
  });
  describe('holds over the passes of one application', () => {
    const label = 'rate: 4 lb/1000 sqft, per-application: 4.5 lb/1000 sqft';
    const pass = async (cwd: string, number: number, used: string, ...more: string[]) =>
      codes((await did(cwd, 'barrier', '--pass', `${number}`, '--used', used, ...more)).stderr);
    test('the second is told that goes over it with the first', async () => {
      const cwd = withLabel(label);
      expect(await pass(cwd, 1, '8 lb')).toEqual([]);
      expect(await pass(cwd, 2, '2 lb', '--areas', 'back')).toEqual(['did-over-label']);
    });
    test('a third is told whatever it brings', async () => {
      const cwd = withLabel(label);
      expect(await pass(cwd, 1, '4 lb')).toEqual([]);
      expect(await pass(cwd, 2, '4 lb')).toEqual([]);
      expect(await pass(cwd, 3, '1 lb', '--dry-run')).toEqual(['did-further-pass']);
      expect(await pass(cwd, 3, '4 lb')).toEqual(['did-further-pass', 'did-over-label']);
    });
    test('a pass of the season before is another application', async () => {
      const cwd = withLabel(label);
      expect(await pass(cwd, 1, '8 lb', '--date', '2026-04-01')).toEqual([]);
      expect(await pass(cwd, 1, '4 lb')).toEqual([]);
    });
  });
  describe('of an active holds every product that has it', () => {
    const second = (label: string) =>
      folder({
        'lawn.yaml': lawnText(
          AREAS +
            PRODUCTS.replace(
              'shelf:',
              `  - { id: second, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }, label: { rate: 4 lb/1000 sqft, ${label} } }\nshelf:`,
            ),
        ),
      });
    // 4 lb/1000 sq ft of 0.4 % are 0.697 lb/acre.
    test('in a year', async () => {
      const cwd = second('active-per-year: { prodiamine: 0.7 lb/acre }');
      expect(codes((await did(cwd, 'barrier', '--used', '7.9 lb')).stderr)).toEqual([]);
      const work = ['--work', 'spread', '--product', 'second', '--used', '2 lb', '--areas', 'front'];
      expect(codes((await did(cwd, ...work)).stderr)).toEqual(['did-over-label-year']);
    });
    test('at once', async () => {
      const cwd = second('active-per-application: { prodiamine: 0.6 lb/acre }');
      const work = ['--work', 'spread', '--product', 'second', '--used'];
      expect(codes((await did(cwd, ...work, '6.8 lb', '--dry-run')).stderr)).toEqual([]);
      expect(codes((await did(cwd, ...work, '8 lb')).stderr)).toEqual(['did-over-label']);
    });
  });
  test('in another measure is compared by the density, and that it cannot be is told', async () => {
    expect(codes((await did(withLabel('rate: 40 floz/1000 sqft'), 'barrier', '--used', '9 lb')).stderr)).toEqual([
      'did-label-measure',
    ]);
    // 40 fl oz at 8 lb/gal are 2.5 lb, on 2000 sq ft 5 lb.
    const dense = withLabel('rate: 40 floz/1000 sqft', ', density: 8 lb/gal');
    expect(codes((await did(dense, 'barrier', '--used', '4.9 lb')).stderr)).toEqual([]);
    expect(codes((await did(dense, 'barrier', '--used', '5.1 lb', '--dry-run')).stderr)).toEqual(['did-over-label']);
  });
});

describe('--json', () => {
  const json = async (cwd: string, ...argv: string[]) => JSON.parse((await did(cwd, ...argv, '--json')).stdout);
  test('says what an entry means, with its id', async () => {
    const cwd = folder();
    const told = await json(cwd, 'feed', '--areas', 'front', '--used', '1.5 lb');
    expect(told).toMatchObject({ written: true, means: { product: 'urea', areas: ['front'], areasOpen: ['back'] } });
    expect(told.entry.id).toBe(entriesOf(cwd)[0]?.id);
    // 0.46 lb of nitrogen on 1000 sq ft are 1 lb of 46-0-0.
    expect(told.means.against[0].ratio).toBeCloseTo(1.5, 6);
    expect(told.means.shelf.kg).toBeCloseTo(8.5 * 0.45359237, 6);
  });
  test('lists the entries in force, a unit in each key', async () => {
    const cwd = folder({
      [JOURNAL]:
        '- { date: 2027-04-01, step: feed, used: 2 kg, wind: 3 m/s }\n- { id: a, date: 2027-03-01, work: mow }\n',
    });
    expect((await json(cwd, '--list')).entries).toMatchObject([
      { name: 'a', id: 'a', work: 'mow', usedKg: null },
      { name: '2027-04-01 feed', id: null, step: 'feed', usedKg: 2, usedL: null, windMPerS: 3 },
    ]);
  });
});

describe('work is written down', () => {
  test.each([
    ['with a damaged weather file', { 'weather.csv': 'date,tmin\n' }],
    ['with too little weather', { 'weather.csv': 'date,tmin,tmax\n2027-04-01,1,2\n' }],
  ])('%s', async (_, files) => {
    const cwd = folder(files);
    const { code, stdout } = await did(cwd, 'feed', '--used', '2 lb');
    expect([code, entriesOf(cwd).length]).toEqual([0, 1]);
    expect(stdout).toContain('as planned');
  });
  test('of the day of counting, which is not taken off the shelf: a note', async () => {
    const cwd = folder();
    expect(codes((await did(cwd, 'feed', '--used', '2 lb', '--date', '2027-02-01')).stderr)).toEqual(['did-counted']);
  });
});

describe('--corrects', () => {
  const one = '- { id: abcd, date: 2027-04-01, step: feed, used: 5 lb }\n';
  test('stands in place of an entry, which stays in the file', async () => {
    const cwd = folder({ [JOURNAL]: one });
    const { stdout } = await did(cwd, 'feed', '--corrects', 'abcd', '--used', '2 lb');
    expect(stdout).toContain('Left on the shelf: 8 lb of urea');
    expect(journalOf(cwd).startsWith(one)).toBe(true);
  });
  describe('takes over what it does not name', () => {
    const whole =
      '- { id: abcd, date: 2027-04-01, start: "08:10", end: "09:00", step: barrier, areas: [ front ], product: barrier, registration: R-1, used: 3 lb, spreader: drop, setting: 5.5, by: A, licence: L-1, wind: 4 mph, target: crabgrass }\n';
    const spreader = 'equipment: { spreaders: { drop: { kind: drop, swath: 22 in } } }\n';
    const corrected = async (journal: string, ...argv: string[]) => {
      const cwd = folder({ [JOURNAL]: journal, 'lawn.yaml': lawnText(AREAS + PRODUCTS + spreader) });
      expect((await did(cwd, ...argv, '--corrects', 'abcd')).code).toBe(0);
      const { id: _, ...entry } = parse(journalOf(cwd)).at(-1);
      return entry;
    };
    const { id: _, ...written } = parse(whole)[0];
    test.each([[['barrier']], [[]]])('with the step or without: %j', async (step) => {
      expect(await corrected(whole, ...step, '--used', '2 lb')).toEqual({
        ...written,
        used: '2 lb',
        corrects: 'abcd',
      });
    });
    test('but not what was worked out of another amount', async () => {
      const weighed = '- { id: abcd, date: 2027-04-01, step: feed, loaded: 3 lb, left: 1 lb }\n';
      const base = { date: '2027-04-01', step: 'feed', corrects: 'abcd' };
      expect(await corrected(weighed, '--used', '1.5 lb')).toEqual({ ...base, used: '1.5 lb' });
      expect(await corrected(weighed, '--left', '2 lb')).toEqual({ ...base, loaded: '3 lb', left: '2 lb' });
      const three = weighed.replace('left', 'used: 2 lb, left');
      expect(await corrected(three, '--left', '2 lb')).toEqual({ ...base, loaded: '3 lb', left: '2 lb' });
    });
    test('nor the spreader of what was sprayed', async () => {
      const { spreader: _spreader, setting: _setting, ...rest } = written;
      expect(await corrected(whole, '--sprayer')).toEqual({ ...rest, sprayer: true, corrects: 'abcd' });
    });
    test('nor what belonged to another product', async () => {
      const { registration: _registration, ...rest } = written;
      expect(await corrected(whole, '--product', 'urea')).toEqual({ ...rest, product: 'urea', corrects: 'abcd' });
    });
    test('nor the product of another step', async () => {
      expect(await corrected(whole, 'feed')).toMatchObject({ step: 'feed', product: 'urea' });
      expect(await corrected(whole, 'feed')).not.toHaveProperty('registration');
    });
    test('of an entry whose step the program has no more', async () => {
      const gone = '- { id: abcd, date: 2027-04-01, step: gone, product: urea }\n';
      expect(await corrected(gone, '--used', '1 lb')).toMatchObject({ step: 'gone', product: 'urea', used: '1 lb' });
    });
  });
  test('an entry that is not there is refused', async () => {
    const cwd = folder({ [JOURNAL]: one });
    expect(codes((await did(cwd, 'feed', '--corrects', 'abce')).stderr)).toEqual(['did-entry']);
    expect(journalOf(cwd)).toBe(one);
  });
});

describe('what is refused, with nothing written', () => {
  test.each([
    ['an unknown step', ['fead'], 'unknown-step'],
    ['nothing at all', [], 'did-what'],
    ['an unknown area', ['feed', '--areas', 'frunt'], 'unknown-area'],
    ['an unknown spreader', ['feed', '--spreader', 'drop'], 'unknown-spreader'],
    ['an unknown product', ['--product', 'urae'], 'unknown-product'],
    ['a weight that is none', ['feed', '--used', 'much'], 'wrong-type'],
    ['a day that does not exist', ['feed', '--date', '2027-02-30'], 'not-a-date'],
    ['a day to come', ['feed', '--date', '2027-04-03'], 'did-future'],
    ['two things at once', ['--undo', '--list'], 'did-option'],
    ['an undo of a step', ['feed', '--undo'], 'did-option'],
    ['an entry without undo', ['feed', '--entry', 'abcd'], 'did-needs'],
    ['an undo of nothing', ['--undo'], 'did-nothing'],
  ])('%s', async (_, argv, code) => {
    const cwd = folder();
    const result = await did(cwd, ...argv);
    expect([result.code, codes(result.stderr)[0]]).toEqual([1, code]);
    expect(existsSync(path.join(cwd, JOURNAL))).toBe(false);
  });
  test.each([
    ['more left than loaded', ['--loaded', '8 lb', '--left', '9 lb'], '--left', 'journal-weights'],
    ['more used than loaded', ['--loaded', '8 lb', '--used', '9 lb'], '--used', 'journal-weights'],
    ['a sum that is wrong', ['--loaded', '5 lb', '--used', '2 lb', '--left', '1 lb'], '--used', 'journal-weights'],
    ['two measures', ['--loaded', '5 lb', '--left', '1 floz'], '--left', 'journal-weights'],
    ['an end before the start', ['--start', '10:00', '--end', '09:00'], '--end', 'journal-times'],
    ['a spreader and a sprayer', ['--setting', '3', '--sprayer'], '--sprayer', 'journal-equipment'],
    ['a setting and an output', ['--setting', '3', '--output', '1 gal/1000 sqft'], '--output', 'journal-equipment'],
  ])('%s, told at its flag', async (_, argv, flag, code) => {
    const { stderr } = await did(folder(), 'feed', ...argv);
    expect([stderr.split(':')[0], codes(stderr)]).toEqual([flag, [code]]);
  });
  test('the demo lawn', async () =>
    expect((await soilclock(folderWith(), ['did', 'feed'])).stderr).toContain('[did-demo]'));
});

describe('taking back', () => {
  const two =
    '- { date: 2027-04-01, step: feed, used: 2 lb }\n- { id: abcd, date: 2027-04-02, step: feed, used: 3 lb }\n';
  test('the last entry', async () => {
    const cwd = folder({ [JOURNAL]: two });
    expect((await did(cwd, '--undo')).stdout).toContain('3 lb');
    expect(journalOf(cwd).startsWith(two)).toBe(true);
    expect((await did(cwd, '--list')).stdout).toBe('2027-04-01  feed; 2 lb\n');
  });
  test('a named one', async () => {
    const cwd = folder({ [JOURNAL]: two });
    await did(cwd, '--undo', '--entry', '2027-04-01 feed');
    expect((await did(cwd, '--list')).stdout).toBe('2027-04-02  feed; 3 lb  [abcd]\n');
  });
  test('one that is not there is told', async () => {
    const cwd = folder({ [JOURNAL]: two });
    expect(codes((await did(cwd, '--undo', '--entry', 'zzzz')).stderr)).toEqual(['did-entry']);
  });
});

describe('the file', () => {
  test.each([
    ['comments and hand edits', '# mine\n- date: 2027-04-01 # ok\n  step: feed\n'],
    ['no line end at the end', '- { date: 2027-04-01, step: feed }'],
    ['line ends of another system', '- { date: 2027-04-01, step: feed }\r\n'],
    ['indentation', '  - { date: 2027-04-01, step: feed }\n'],
    ['a damaged entry', '- { date: 2027-04-01, stepp: feed }\n'],
    ['nothing but a comment', '# nothing yet\n'],
    ['a document mark before its entries', '---\n- { date: 2027-04-01, step: feed }\n'],
    ['a byte order mark', '\uFEFF- { date: 2027-04-01, step: feed }\n'],
    ['a text of several lines at its end', '- date: 2027-04-01\n  step: feed\n  note: |\n    one\n    two\n'],
  ])('with %s stays as it is before the new entry', async (_, text) => {
    const cwd = folder({ [JOURNAL]: text });
    const before = readJournal(text, JOURNAL).value?.length ?? 0;
    expect((await did(cwd, 'feed', '--used', '2 lb')).code).toBe(0);
    expect(journalOf(cwd).startsWith(text)).toBe(true);
    expect(entriesOf(cwd)).toHaveLength(before + 1);
  });
  test('with an empty list in brackets becomes a list', async () => {
    const cwd = folder({ [JOURNAL]: '# mine\n[]\n' });
    expect((await did(cwd, 'feed')).code).toBe(0);
    expect([entriesOf(cwd).length, journalOf(cwd).startsWith('# mine\n')]).toEqual([1, true]);
  });
  test.each([
    ['a list in brackets', '[{ date: 2027-04-01, step: feed }]\n'],
    ['a document mark at its end', '- { date: 2027-04-01, step: feed }\n...\n'],
  ])('with %s is refused and left alone', async (_, text) => {
    const cwd = folder({ [JOURNAL]: text });
    expect(codes((await did(cwd, 'feed')).stderr)).toEqual(['journal-append']);
    expect(journalOf(cwd)).toBe(text);
  });
});

describe('the file itself', () => {
  const OLD = '- { date: 2027-04-01, work: mow }\n';
  test('in another encoding is refused, byte for byte as it was', async () => {
    const cwd = folder();
    const bytes = Buffer.from('- { date: 2027-04-01, work: mow, note: "caf\xe9" }\n', 'latin1');
    writeFileSync(path.join(cwd, JOURNAL), bytes);
    const { code, stderr } = await did(cwd, 'feed');
    expect([code, codes(stderr)]).toEqual([2, ['file-unreadable']]);
    expect(readFileSync(path.join(cwd, JOURNAL)).equals(bytes)).toBe(true);
  });
  test('behind a link is the one that grows, and the link stays', async () => {
    const cwd = folder({ 'synced/journal.yaml': OLD });
    symlinkSync(path.join(cwd, 'synced/journal.yaml'), path.join(cwd, JOURNAL));
    expect((await did(cwd, 'feed')).code).toBe(0);
    expect(lstatSync(path.join(cwd, JOURNAL)).isSymbolicLink()).toBe(true);
    expect(readFileSync(path.join(cwd, 'synced/journal.yaml'), 'utf8')).toContain('step: feed');
  });
  test.skipIf(process.platform === 'win32')('that only its owner may read stays so', async () => {
    const cwd = folder({ [JOURNAL]: OLD });
    chmodSync(path.join(cwd, JOURNAL), 0o600);
    await did(cwd, 'feed');
    expect(statSync(path.join(cwd, JOURNAL)).mode & 0o777).toBe(0o600);
  });
});

const WRITER = `
const { addEntry } = await import(${JSON.stringify(path.join(root, 'src/shell/journal-file.ts'))});
const [file, from, count] = process.argv.slice(1);
for (let i = 0; i < Number(count); i++) {
  const written = addEntry(file, { date: '2027-04-01', work: 'mow', note: from + ' ' + i }, '.');
  if (written.problems) { console.error(JSON.stringify(written.problems)); process.exitCode = 1; }
  if (i === 0) console.log('begun');
}`;
const writer = (file: string, from: string, count: number) =>
  spawn(process.execPath, ['--input-type=module', '-e', WRITER, file, from, String(count)], { stdio: 'pipe' });
const ended = (child: ReturnType<typeof writer>) => new Promise<number | null>((resolve) => child.on('exit', resolve));

describe('many at once', () => {
  test('eight runs write three entries each: all stand there, each once', { timeout: 60_000 }, async () => {
    const file = path.join(folderWith(), JOURNAL);
    const exits = await Promise.all(Array.from({ length: 8 }, (_, i) => ended(writer(file, `run ${i}`, 3))));
    expect(exits).toEqual(exits.map(() => 0));
    const entries = readJournal(readFileSync(file, 'utf8'), JOURNAL).value ?? [];
    expect(new Set(entries.map(({ note }) => note)).size).toBe(24);
    expect(new Set(entries.map(({ id }) => id)).size).toBe(24);
    expect(readdirSync(path.dirname(file))).toEqual([JOURNAL]);
  });
  test('killed at any point, the journal is whole, and the next run goes on', { timeout: 60_000 }, async () => {
    const file = path.join(folderWith({ [JOURNAL]: '- { date: 2027-04-01, work: mow }\n' }), JOURNAL);
    let before = 1;
    for (let run = 0; run < 6; run++) {
      const child = writer(file, `run ${run}`, 400);
      const gone = ended(child);
      child.stdout?.once('data', () => setTimeout(() => child.kill('SIGKILL'), 3 * run));
      await gone;
      const text = readFileSync(file, 'utf8');
      expect(text.endsWith('}\n')).toBe(true);
      const { problems, value = [] } = readJournal(text, JOURNAL);
      expect(problems).toEqual([]);
      expect(value.length).toBeGreaterThan(before);
      before = value.length;
    }
    expect('id' in addEntry(file, { date: '2027-04-01', work: 'mow' }, '.')).toBe(true);
    expect(readdirSync(path.dirname(file))).toEqual([JOURNAL]);
  });
  const lockedBy = (holder: string) => folder({ [`${JOURNAL}.lock`]: holder });
  test('a lock of another machine is taken over once it is stale', async () => {
    const cwd = lockedBy('1 elsewhere x');
    utimesSync(path.join(cwd, `${JOURNAL}.lock`), 0, 0);
    expect((await did(cwd, 'feed', '--used', '2 lb')).code).toBe(0);
  });
  test('a lock of a run that has ended is taken over at once', async () => {
    const child = spawn(process.execPath, ['-e', '']);
    await new Promise((resolve) => child.on('exit', resolve));
    const cwd = lockedBy(`${child.pid} ${hostname()} x`);
    const begun = Date.now();
    expect((await did(cwd, 'feed', '--used', '2 lb')).code).toBe(0);
    expect(Date.now() - begun).toBeLessThan(10_000);
  });
  test('a run whose lock was taken over begins anew, and leaves the lock of the other alone', () => {
    const file = path.join(folderWith(), JOURNAL);
    let runs = 0;
    const result = withLock(file, (stillHeld) => {
      runs++;
      if (runs === 1) {
        // As a sleeper finds it: another run has come and is about to end.
        writeFileSync(`${file}.lock`, '1 elsewhere x');
        utimesSync(`${file}.lock`, 0, 0);
      }
      stillHeld();
      return 'written';
    });
    expect([result, runs]).toEqual(['written', 2]);
  });
  // The device of Linux to which every write fails as on a full disk.
  test.skipIf(!existsSync('/dev/full'))('a disk that is full leaves the old journal, and says so', () => {
    const file = path.join(folderWith({ [JOURNAL]: '- { date: 2027-04-01, work: mow }\n' }), JOURNAL);
    symlinkSync('/dev/full', `${file}.${process.pid}.part`);
    const written = addEntry(file, { date: '2027-04-02', work: 'mow' }, '.');
    expect('problems' in written && written.problems.map(({ code }) => code)).toEqual(['write-failed']);
    expect(readFileSync(file, 'utf8')).toBe('- { date: 2027-04-01, work: mow }\n');
    expect(readdirSync(path.dirname(file))).toEqual([JOURNAL]);
  });
  test.skipIf(!existsSync('/dev/full'))('and the command ends with 2', async () => {
    const cwd = folder({ [JOURNAL]: '- { date: 2027-04-01, work: mow }\n' });
    symlinkSync('/dev/full', path.join(cwd, `${JOURNAL}.${process.pid}.part`));
    const { code, stderr } = await did(cwd, 'feed');
    expect([code, codes(stderr)]).toEqual([2, ['write-failed']]);
  });
});

describe('--close-season', () => {
  const lawn = `# my lawn\n${lawnText(AREAS + PRODUCTS)}steps: { feed: { date: 2027-03-25 }, barrier: skip } # choices\n`;
  const journal = '- { date: 2027-03-25, step: feed, used: 3 lb }\n';
  test('carries shelf and choices on, keeps comments and the old text', async () => {
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal });
    const { code, stdout } = await did(cwd, '--close-season');
    expect(code).toBe(0);
    const text = readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8');
    expect(text).toMatch(/shelf: \{ counted: 2027-04-02, urea: 7 lb \}/);
    expect(text).toContain('# my lawn');
    expect(text).toMatch(/steps: \{ barrier: skip \}/);
    expect(stdout).toContain('urea: 10 lb → 7 lb');
    expect(readFileSync(path.join(cwd, 'lawn.yaml.2027-04-02.bak'), 'utf8')).toBe(lawn);
    expect((await soilclock(cwd, ['check', 'lawn.yaml'])).code).toBe(0);
  });
  test('touches no other line of the file, whoever wrote it', async () => {
    const hand = `\uFEFF${lawn}`.replace('areas: { front:', 'areas: {front:   ').replaceAll('\n', '\r\n');
    const cwd = folder({ 'lawn.yaml': hand, [JOURNAL]: journal });
    expect((await did(cwd, '--close-season')).code).toBe(0);
    expect(readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8')).toBe(
      hand.replace('2027-02-01, urea: 10 lb', '2027-04-02, urea: 7 lb').replace('feed: { date: 2027-03-25 }, ', ''),
    );
  });
  test('what is used up goes from the shelf', async () => {
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal.replace('3 lb', '11 lb') });
    await did(cwd, '--close-season');
    expect(readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8')).toContain('shelf: { counted: 2027-04-02 }');
    expect((await soilclock(cwd, ['check', 'lawn.yaml'])).code).toBe(0);
  });
  test('keeps every old text, also of two on one day', async () => {
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal });
    await did(cwd, '--close-season');
    writeFileSync(path.join(cwd, 'lawn.yaml'), lawn.replace('# my lawn', '# again'));
    await did(cwd, '--close-season');
    expect(readFileSync(path.join(cwd, 'lawn.yaml.2027-04-02.bak'), 'utf8')).toBe(lawn);
    expect(readFileSync(path.join(cwd, 'lawn.yaml.2027-04-02.2.bak'), 'utf8')).toContain('# again');
  });
  test('--json tells it as data, settings and skips too', async () => {
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal.replace('3 lb', '3 lb, setting: 5.5') });
    expect(JSON.parse((await did(cwd, '--close-season', '--dry-run', '--json')).stdout)).toMatchObject({
      changed: false,
      shelf: [{ product: 'urea', from: '10 lb', to: '7 lb' }],
      pinsDropped: ['feed'],
      skipsKept: ['barrier'],
      settings: [{ product: 'urea', setting: 5.5, date: '2027-03-25' }],
    });
    expect(readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8')).toBe(lawn);
  });
  test('--to takes the ledger along, and only into the same folder', async () => {
    const ledger = '{"kind":"ledger","version":1,"events":[]}';
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal, 'lawn.ledger.json': ledger });
    expect(codes((await did(cwd, '--close-season', '--to', 'sub/next.yaml')).stderr)).toEqual(['did-to']);
    expect((await did(cwd, '--close-season', '--to', 'next.yaml')).code).toBe(0);
    expect(readFileSync(path.join(cwd, 'next.ledger.json'), 'utf8')).toBe(ledger);
  });
  test('a second time changes nothing', async () => {
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal });
    await did(cwd, '--close-season');
    const text = readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8');
    expect((await did(cwd, '--close-season')).stdout).toContain('Nothing to carry over');
    expect(readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8')).toBe(text);
  });
  test('--to makes a new lawn with the journal, and never overwrites one', async () => {
    const cwd = folder({ 'lawn.yaml': lawn, [JOURNAL]: journal });
    expect((await did(cwd, '--close-season', '--to', 'next.yaml')).code).toBe(0);
    expect(readFileSync(path.join(cwd, 'next.journal.yaml'), 'utf8')).toBe(journal);
    expect(readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8')).toBe(lawn);
    writeFileSync(path.join(cwd, 'other.yaml'), 'mine');
    expect(codes((await did(cwd, '--close-season', '--to', 'other.yaml')).stderr)).toEqual(['did-to']);
    expect(readFileSync(path.join(cwd, 'other.yaml'), 'utf8')).toBe('mine');
  });
});
