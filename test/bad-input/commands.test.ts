import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { soilclock } from '../kit.ts';
import {
  brief,
  type Case,
  expectRefused,
  FOLDER,
  inProgram,
  PLAN,
  products,
  refuses,
  run,
  spoiltFolder,
} from './lawn-folder.ts';

const LEDGER = 'lawn.ledger.json';

describe('a damaged ledger', () => {
  test.each<Case>([
    ['cut short', { [LEDGER]: '{"kind":"ledger","events":[' }, 1, [`ledger-damaged ${LEDGER}`]],
    ['empty', { [LEDGER]: '' }, 1, [`ledger-damaged ${LEDGER}`]],
    ['of another kind', { [LEDGER]: '{"kind":"season","version":1,"events":[]}' }, 1, [`ledger-damaged ${LEDGER}`]],
    [
      'with an event that lacks its revision',
      { [LEDGER]: '{"kind":"ledger","version":2,"readers":{},"events":[{"uid":"a"}]}' },
      1,
      [`ledger-damaged ${LEDGER}`],
    ],
    ['a folder', { [LEDGER]: FOLDER }, 1, [`ledger-damaged ${LEDGER}`]],
  ])('%s', (...one) => refuses(one));
});

describe('output that cannot be written', () => {
  const to = (out: string) => [...PLAN, '--out', out];

  test('--out at a file: the file, the ledger and the feed stay as they are', () =>
    refuses(['', { taken: 'kept' }, 1, ['write-failed']], to('taken')));
  test('--out below a file: nothing is written', () =>
    refuses(['', { taken: 'kept' }, 1, ['write-failed']], to('taken/below')));
  test.skipIf(!existsSync('/proc/self'))('--out where no folder can be made, as below /proc: nothing is written', () =>
    refuses(['', {}, 1, ['write-failed']], to('/proc/none')),
  );
  test('a folder in the place of the feed: the ledger stays as it is', () =>
    refuses(['', { 'site/test-lawn.ics': FOLDER }, 1, ['write-failed']], to('site')));
  test('a fine run replaces both', async () => {
    const { cwd, code } = await run({});
    expect(code).toBe(0);
    expect(readFileSync(path.join(cwd, 'out/site/test-lawn.ics'), 'utf8')).not.toContain('X-KEPT');
    expect(readFileSync(path.join(cwd, LEDGER), 'utf8')).toContain('lastModified');
  });
});

describe('bad usage', () => {
  test.each([
    ['an unknown option', [...PLAN, '--nope']],
    ['an unknown command', ['plann', 'lawn.yaml']],
    ['no command', []],
    ['check without a file', ['check']],
    ['a detail that is none', [...PLAN, '--detail', 'loud']],
    ['an option without its value', ['plan', 'lawn.yaml', '--as-of']],
    ['too many words', [...PLAN, 'autumn-feed', 'and', 'more']],
  ])('%s ends with 2', async (_, argv) => {
    const cwd = spoiltFolder();
    const { code, stdout, stderr } = await soilclock(cwd, argv);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).not.toBe('');
    expect(stderr).not.toMatch(/\n\s+at /);
  });

  test.each([
    ['a day that does not exist', '2027-02-29', 'as-of'],
    ['a day written another way', '4/2/2027', 'as-of'],
    ['a year out of reach', '9999-12-31', 'as-of'],
    ['a year before there were records', '1000-01-01', 'as-of'],
  ])('--as-of %s ends with 2', async (_, day, code) => {
    const result = await run({}, ['plan', 'lawn.yaml', '--as-of', day]);
    expect(result.problems.map(brief)).toEqual([code]);
    expect(result.code).toBe(2);
    expectRefused(result, {});
  });
  test('an as-of day before all weather says how little there is', () =>
    refuses(['', {}, 1, ['weather-few-days weather.csv']], ['plan', 'lawn.yaml', '--as-of', '1999-04-02']));

  test('an unknown step ends with 2 and names the nearest', async () => {
    const result = await run({}, ['plan', 'lawn.yaml', 'autum-feed', '--as-of', '2027-04-02']);
    expect(result.problems.map(brief)).toEqual(['plan-step']);
    expect(result.problems[0]?.message).toContain('"autumn-feed"');
    expectRefused(result, {});
  });
  test.each([
    ['missing', {}, 'file-missing'],
    ['not JSON', { 'old.json': '{' }, 'compare-file old.json'],
    ['not a season', { 'old.json': '{"kind":"ledger"}' }, 'compare-file old.json'],
  ])('--compare with a plan that is %s ends with 2', async (_, spoilt, told) => {
    const result = await run(spoilt, [...PLAN, '--compare', 'old.json']);
    expect(result.problems.map(brief)).toEqual([told]);
    expect(result.code).toBe(2);
    expectRefused(result, spoilt);
  });
});

describe('plan --json that fails', () => {
  test('prints an object of kind problems, the same places on stderr', async () => {
    const { stdout, stderr } = await run(inProgram('work:', 'werk:'));
    expect(JSON.parse(stdout)).toEqual({
      kind: 'problems',
      version: 1,
      problems: [
        {
          code: 'missing-key',
          severity: 'error',
          message: expect.any(String),
          file: 'program.yaml',
          line: 7,
          column: 5,
          length: expect.any(Number),
        },
        {
          code: 'unknown-key',
          severity: 'error',
          message: expect.any(String),
          file: 'program.yaml',
          line: 9,
          column: 5,
          length: 4,
        },
      ],
    });
    expect(stderr).toMatch(
      /^program\.yaml:9:5: error: (?:.|\n {2})*\[unknown-key\]\n {2}9 \| {5}werk: spread\n {10}\^\^\^\^\n/m,
    );
  });
});

describe('a pesticide', () => {
  const barrier = `${products}  barrier: { name: B, form: granular, actives: { prodiamine: 0.38% }, pesticide: pre-emergent, package: { size: 40 lb } }\n`;
  const apply = (what: string) => inProgram('nutrient: { N: 0.9 lb/1000 sqft }, source', `${what}, source`);
  const plan = async (what: string, productsText: string) => {
    const { code, stdout, problems, cwd } = await run({ ...apply(what), 'products.yaml': productsText });
    const season = JSON.parse(stdout) as Season;
    return { code, problems, cwd, area: season.applications[0]?.areas[0], date: season.applications[0]?.date };
  };

  test.each([
    ['no product at all', 'pesticide: pre-emergent', products],
    ['a product without a label', 'pesticide: pre-emergent', barrier],
    ['a product named by the program, without a label', 'product: barrier, rate: 3 lb/1000 sqft', barrier],
    ['a product named as an amendment, without a label', 'amendment: barrier, rate: 3 lb/1000 sqft', barrier],
    ['a product named as a seed, without a label', 'seed: barrier, rate: 3 lb/1000 sqft', barrier],
    [
      'a bag rate of it, without a label',
      'bag-rate: barrier',
      barrier.replace('pesticide:', 'covers: 4000 sqft, pesticide:'),
    ],
  ])("%s: dates are planned, the amount is the label's", async (_, what, text) => {
    const { code, problems, area, date, cwd } = await plan(what, text);
    expect(code).toBe(0);
    expect(problems.map(({ code: told }) => told)).toContain('no-label');
    expect(date).toMatch(/^2027-0[9]|^2027-10-01/);
    expect(area).toMatchObject({ amountKg: null, amountL: null, amount: 'from your label' });
    expect(existsSync(path.join(cwd, 'out/site/test-lawn.ics'))).toBe(true);
  });
  test("with a label takes the label's rate, never the program's", async () => {
    const label = barrier.replace('actives:', 'label: { rate: 2 lb/1000 sqft }, actives:');
    const { area } = await plan('product: barrier, rate: 3 lb/1000 sqft', label);
    // 50 ft × 20 ft = 1000 sqft at the label's 2 lb/1000 sqft: 2 lb = 0.907 kg; the program's 3 lb would be 1.361 kg.
    expect(area?.amountKg).toBeCloseTo(0.907, 2);
  });
});
