/** `soilclock did --export`: what was written down comes out again, through hand edits, corrections and a plan. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cleaned } from '../../src/base/text.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, LONG, lawnText, programText, runs, soilclock } from '../kit.ts';
import { csvRows, RECORD_LAWN, unguarded } from '../record-kit.ts';

const STEPS = `  - { id: feed, name: Feed, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { nutrient: { N: 0.46 lb/1000 sqft } } }
  - { id: barrier, name: Barrier, work: spread, window: { opens: { date: 03-20 }, closes: { date: 05-20 } }, apply: { pesticide: pre-emergent } }
`;
const WEATHER = inventedWeather('2021-01-01');
const folder = (journal?: string) =>
  folderWith({
    'lawn.yaml': lawnText(`${RECORD_LAWN}shelf: { counted: 2027-01-01, urea: 1000 lb }\n`),
    'program.yaml': programText(STEPS, 'nitrogen: { yearly: { to: 30 lb/1000 sqft } }\n'),
    'weather.csv': WEATHER,
    ...(journal !== undefined && { 'lawn.journal.yaml': journal }),
  });
const did = (cwd: string, ...argv: string[]) => soilclock(cwd, ['did', 'lawn.yaml', ...argv]);
const codes = (stderr: string) => [...stderr.matchAll(/\[([a-z-]+)\]$/gm)].map(([, code]) => code);
const csvOf = (cwd: string, year = 2027) =>
  csvRows(readFileSync(path.join(cwd, `out/record/test-lawn-${year}.csv`), 'utf8'));
async function exported(cwd: string) {
  const result = await did(cwd, '--export');
  expect(result.code).toBe(0);
  return csvOf(cwd);
}

/** A flag, the column that it comes out in, and what may be typed. */
const text = fc
  .string({
    minLength: 1,
    maxLength: 40,
    unit: fc.oneof(
      fc.constantFrom('"', "'", ',', '\n', '=', '-', '{', '#', 'é'),
      fc.string({ minLength: 1, maxLength: 1, unit: 'grapheme' }),
    ),
  })
  // A word that begins with a hyphen is a flag to every command.
  .filter((one) => cleaned(one) === one && !one.startsWith('-'));
const figure = fc.integer({ min: 1, max: 9999 }).map((n) => n / 100);
const FLAGS = {
  used: ['used_lb', figure, (n: unknown) => `${n} lb`],
  wind: ['wind_mph', figure, (n: unknown) => `${n} mph`],
  air: ['air_f', fc.integer({ min: -20, max: 110 }), (n: unknown) => `${n} F`],
  pass: ['pass', fc.integer({ min: 1, max: 20 }), String],
  setting: ['setting', figure, String],
  start: ['start', fc.constantFrom('00:00', '08:10', '12:59'), String],
  end: ['end', fc.constantFrom('13:00', '23:59'), String],
  'wind-from': ['wind_from', fc.constantFrom('n', 'ese', 'variable'), String],
  spreader: ['spreader', fc.constantFrom('drop-24', 'broadcast'), String],
  registration: ['registration', text, String],
  target: ['target', text, String],
  by: ['by', text, String],
  licence: ['licence', text, String],
  're-entry': ['re_entry', text, String],
  notices: ['notices', text, String],
  note: ['note', text, String],
} as const satisfies Record<string, readonly [string, fc.Arbitrary<unknown>, (value: unknown) => string]>;

const entry = fc.record(
  Object.fromEntries(Object.entries(FLAGS).map(([flag, [, values]]) => [flag, values as fc.Arbitrary<unknown>])),
  { requiredKeys: [] },
);
const argvOf = (values: Readonly<Record<string, unknown>>) =>
  Object.entries(values).flatMap(([flag, value]) => [`--${flag}`, FLAGS[flag as keyof typeof FLAGS][2](value)]);
/** What of an entry stands in the file, under its flags. */
const cellsOf = (values: Readonly<Record<string, unknown>>, row: Readonly<Record<string, string>> = {}) =>
  Object.fromEntries(
    Object.entries(values).map(([flag, value]) => {
      const cell = row[FLAGS[flag as keyof typeof FLAGS][0]];
      return [flag, typeof value === 'number' ? Number(cell) : unguarded(cell)];
    }),
  );

describe('nothing is lost', LONG, () => {
  test('from the flags of did to the CSV, whatever is typed', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(entry, { minLength: 1, maxLength: 3 }), async (entries) => {
        const cwd = folder();
        for (const [i, values] of entries.entries())
          expect((await did(cwd, 'feed', '--date', `2027-03-0${i + 1}`, ...argvOf(values))).code).toBe(0);
        const rows = await exported(cwd);
        expect(rows.map((row, i) => cellsOf(entries[i] ?? {}, row))).toEqual(entries);
      }),
      { numRuns: runs(12) },
    );
  });

  test('of what was put down, between journal, CSV and plan', async () => {
    const pounds = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(pounds, async (amounts) => {
        const line = (lb: number, i: number) => `- { date: 2027-02-0${i + 1}, product: urea, used: ${lb / 100} lb }\n`;
        const cwd = folder(amounts.map(line).join(''));
        const rows = await exported(cwd);
        const usedKg = rows.reduce((sum, row) => sum + Number(row.used_kg), 0);
        const { stdout } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-04-02', '--json']);
        const { shelf, limits } = JSON.parse(stdout);
        expect(1000 * 0.45359237 - shelf[0].kg).toBeCloseTo(usedKg, 9);
        // 46 % nitrogen on 1500 sq ft.
        expect(limits[0].doneGPerM2).toBeCloseTo((460 * usedKg) / (1500 * 0.3048 ** 2), 6);
      }),
      { numRuns: runs(6) },
    );
  });

  test('by hand edits, a correction and an undo: every entry is still there, and the plan counts those in force', async () => {
    const cwd = folder();
    const file = path.join(cwd, 'lawn.journal.yaml');
    await did(cwd, 'feed', '--date', '2027-03-21', '--used', '1.5 lb', '--areas', 'front,back', '--by', '=A');
    const byHand = `# by hand
- date: 2027-03-22 # a day later
  product: barrier
  used: 6 lb
  wind: 5 km/h
  note: |
    one
    - two
`;
    writeFileSync(file, byHand + readFileSync(file, 'utf8').replace('1.5 lb', '700 g'));
    await did(cwd, '--undo', '--entry', '2027-03-22');
    const before = readFileSync(file, 'utf8');
    const rows = await exported(cwd);
    expect(readFileSync(file, 'utf8')).toBe(before);
    expect(before.startsWith(byHand)).toBe(true);
    expect(rows.map(({ date, state, by, used_kg, note }) => [date, state, by, used_kg, note])).toEqual([
      ['2027-03-21', 'in-force', "'=A", '0.7', ''],
      ['2027-03-22', 'taken-back', '', '2.72155422', 'one\n- two\n'],
      ['2027-04-02', 'undo', '', '', ''],
    ]);
    const { stdout } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-04-02', '--json']);
    const { applications } = JSON.parse(stdout);
    const status = (step: string) => applications.find(({ id }: { id: string }) => id === step).status;
    expect([status('feed'), status('barrier') === 'done']).toEqual(['done', false]);
  });

  test('of an entry that does not read: the page names its line', async () => {
    const cwd = folder('- { date: 2027-04-01, work: mow }\n- { date: 2027-04-01, work: mow, pass: many }\n');
    const { stderr } = await did(cwd, '--export');
    expect(codes(stderr)).toEqual(['journal-entry']);
    expect(readFileSync(path.join(cwd, 'out/record/test-lawn-2027.html'), 'utf8')).toContain('line 2');
  });
});

describe('--export', () => {
  const two = '- { date: 2026-04-01, step: feed }\n- { date: 2027-04-01, step: barrier, used: 6 lb }\n';
  test('writes a CSV and a page of this year', async () => {
    const cwd = folder(two);
    await did(cwd, '--export');
    expect(existsSync(path.join(cwd, 'out/record/test-lawn-2027.html'))).toBe(true);
    expect(csvOf(cwd).map(({ date }) => date)).toEqual(['2027-04-01']);
  });
  test('of another year and into another folder', async () => {
    const cwd = folder(two);
    await did(cwd, '--export', '--year', '2026', '--out', 'kept');
    expect(existsSync(path.join(cwd, 'kept/test-lawn-2026.csv'))).toBe(true);
    expect(existsSync(path.join(cwd, 'out'))).toBe(false);
  });
  test('says what the record of a pesticide lacks', async () =>
    expect(codes((await did(folder(two), '--export')).stderr)).toEqual(['did-record']));
  test("takes the plan's product where an entry names none, and marks it", async () => {
    const [row] = await exported(folder(two));
    expect([row?.product, row?.product_from]).toEqual(['barrier', 'plan']);
  });
  test('--json prints the record, --dry-run writes none', async () => {
    const cwd = folder(two);
    const { record, written } = JSON.parse((await did(cwd, '--export', '--json', '--dry-run')).stdout);
    expect([record.kind, record.entries.length, written]).toEqual(['record', 1, false]);
    expect(existsSync(path.join(cwd, 'out'))).toBe(false);
  });
  test.each([
    ['a year with nothing', ['--export', '--year', '2025'], 'did-year'],
    ['a year that is none', ['--export', '--year', 'last'], 'did-year'],
    ['a step beside it', ['feed', '--export'], 'did-option'],
    ['an undo beside it', ['--undo', '--export'], 'did-option'],
    ['a year without it', ['feed', '--year', '2027'], 'did-needs'],
    ['a folder without it', ['feed', '--out', 'a'], 'did-needs'],
  ])('%s is refused', async (_, argv, code) => {
    const cwd = folder(two);
    const result = await did(cwd, ...argv);
    expect([result.code, codes(result.stderr), existsSync(path.join(cwd, 'out'))]).toEqual([1, [code], false]);
  });
});

describe('what the record of a new entry lacks', () => {
  test('is told at once where a record is kept', async () =>
    expect(codes((await did(folder(), 'barrier', '--used', '6 lb')).stderr)).toEqual(['did-record']));
  test('is not told where none is kept', async () => {
    const cwd = folder();
    const lawn = path.join(cwd, 'lawn.yaml');
    writeFileSync(lawn, readFileSync(lawn, 'utf8').replace(/^record: .*\n/m, ''));
    expect((await did(cwd, 'barrier', '--used', '6 lb')).stderr).toBe('');
  });
});

describe('an entry names', () => {
  test.each([
    ['a spreader and a sprayer', ['--spreader', 'drop-24', '--sprayer'], 'journal-equipment'],
    ['a setting and an output', ['--setting', '5', '--output', '1 gal/1000 sqft'], 'journal-equipment'],
    ['an end before its start', ['--start', '09:00', '--end', '08:00'], 'journal-times'],
    ['a wind from nowhere', ['--wind-from', 'up'], 'unknown-word'],
  ])('%s: refused', async (_, argv, code) => {
    const cwd = folder();
    expect(codes((await did(cwd, 'feed', ...argv)).stderr)).toEqual([code]);
    expect(existsSync(path.join(cwd, 'lawn.journal.yaml'))).toBe(false);
  });
  test('the sprayer and its output', async () => {
    const cwd = folder();
    await did(cwd, '--product', 'barrier', '--sprayer', '--output', '2 gal/1000 sqft', '--wind-from', 'NW');
    const [row] = await exported(cwd);
    expect([row?.sprayer, row?.output_gal_per_1000_sqft, row?.wind_from]).toEqual(['yes', '2', 'nw']);
  });
});
