/** A lawn that plans well, in a folder that has published before; each test spoils one thing in it. */
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'vitest';
import type { Problem } from '../../src/base/problem.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

export const weather = inventedWeather();
/** Header and one line a day. */
export const weatherLines = weather.trimEnd().split('\n');

export const lawn = lawnText('products: [products.yaml]\n');
export const program = programText(`  - id: autumn-feed
    name: Autumn feed
    work: spread
    window: { opens: { date: 09-01 }, closes: { date: 10-01 } }
    apply: { nutrient: { N: 0.9 lb/1000 sqft }, source: common-practice }
`);
export const products = `kind: products
version: 1
products:
  feed-16-4-8: { name: Feed, form: granular, analysis: 16-4-8, package: { size: 40 lb } }
`;
const FINE = { 'lawn.yaml': lawn, 'program.yaml': program, 'products.yaml': products, 'weather.csv': weather };

/** What an earlier run has written, in bytes that no run would write again. */
const PUBLISHED = {
  'out/site/test-lawn.ics': 'BEGIN:VCALENDAR\r\nX-KEPT:yes\r\nEND:VCALENDAR\r\n',
  'lawn.ledger.json': '{"kind":"ledger","version":2,"events":[],"readers":{}}',
};

/** Marks a file that is to be missing, or a folder in its place. */
export const MISSING = Symbol('missing');
export const FOLDER = Symbol('folder');
export type Spoilt = Readonly<Record<string, string | typeof MISSING | typeof FOLDER>>;

export const PLAN = ['plan', 'lawn.yaml', '--as-of', '2027-04-02'];

/** The lawn's folder with some files spoilt. */
export function spoiltFolder(spoilt: Spoilt = {}): string {
  const all = Object.entries<Spoilt[string]>({ ...FINE, ...PUBLISHED, ...spoilt });
  const texts = all.filter((entry): entry is [string, string] => typeof entry[1] === 'string');
  const cwd = folderWith(Object.fromEntries(texts));
  for (const [name, text] of all) if (text === FOLDER) mkdirSync(path.join(cwd, name), { recursive: true });
  return cwd;
}

/** A problem as tests compare it. */
export const brief = ({ code, file, line, column }: Problem): string =>
  `${code}${file === null ? '' : ` ${file}`}${line === null ? '' : `:${line}:${column}`}`;

/** Runs a command in a folder with spoilt files. CPU time, since a busy machine says nothing about an input. */
export async function run(spoilt: Spoilt, argv: readonly string[] = PLAN) {
  const cwd = spoiltFolder(spoilt);
  const before = process.cpuUsage();
  // With JSON a plan writes only into a named folder.
  const out = argv[0] === 'plan' && !argv.includes('--out') ? ['--out', 'out/site'] : [];
  const { code, stdout, stderr } = await soilclock(cwd, [...argv, ...out, '--json']);
  const { user, system } = process.cpuUsage(before);
  const printed = stdout === '' ? {} : (JSON.parse(stdout) as { problems?: Problem[] });
  return { cwd, code, stdout, stderr, seconds: (user + system) / 1e6, problems: printed.problems ?? [] };
}

/** What holds of every refusal: soon, in words, with nothing written before touched and nothing half-written left. */
export function expectRefused({ cwd, code, stderr, seconds }: Awaited<ReturnType<typeof run>>, spoilt: Spoilt): void {
  expect([1, 2]).toContain(code);
  expect(seconds).toBeLessThan(1);
  expect(stderr).toMatch(/error: (?:.|\n {2})+\[[a-z-]+\]\n/);
  expect(stderr).not.toMatch(/\n {4,}at /);
  for (const [name, text] of Object.entries({ ...PUBLISHED, ...spoilt }))
    if (typeof text === 'string') expect(readFileSync(path.join(cwd, name), 'utf8') === text, name).toBe(true);
  const left = readdirSync(cwd, { recursive: true }).filter((name) => String(name).endsWith('.part'));
  expect(left).toEqual([]);
}

/** One bad input: what is spoilt, the exit code, the errors in order. */
export type Case = readonly [name: string, spoilt: Spoilt, code: 1 | 2, errors: readonly string[]];

/** Plans with a bad input and asserts all of it. */
export async function refuses([, spoilt, code, errors]: Case, argv: readonly string[] = PLAN): Promise<void> {
  const result = await run(spoilt, argv);
  expect(result.problems.filter(({ severity }) => severity === 'error').map(brief)).toEqual(errors);
  expect(result.code).toBe(code);
  expectRefused(result, spoilt);
}

/** The lawn's, the program's or the products' text with one thing replaced that has to be there. */
export function replaced(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`nothing to replace: ${from}`);
  return text.replace(from, () => to);
}
export const inLawn = (from: string, to: string): Spoilt => ({ 'lawn.yaml': replaced(lawn, from, to) });
export const inProgram = (from: string, to: string): Spoilt => ({ 'program.yaml': replaced(program, from, to) });
