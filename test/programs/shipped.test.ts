/** Every shipped file reads, and every figure of a shipped program says where it comes from. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readProducts } from '../../src/read/lawn.ts';
import { readProgram } from '../../src/read/program.ts';
import { LONG, root, soilclock } from '../kit.ts';
import { figuresOf } from './cited.ts';
import { fromPrograms } from './plan-program.ts';

const folder = path.join(root, 'programs');
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
const text = (name: string) => readFileSync(path.join(folder, name), 'utf8');
const programs = files.filter((name) => /^kind: program$/m.test(text(name)));

test('there is at least one program and one products file', () => {
  expect(programs).toContain('tall-fescue-transition.yaml');
  expect(files).toContain('products.yaml');
});

describe.each(programs)('%s', (name) => {
  const { problems } = readProgram(text(name), name, fromPrograms);
  const own = parse(text(name)) as { sources?: Record<string, string> };

  test('reads without a problem', () => expect(problems).toEqual([]));

  test('every trigger, rate, limit and weather rule has a source', () => {
    const figures = figuresOf(own);
    expect(figures.length).toBeGreaterThan(0);
    expect(figures.filter(({ source }) => source === null)).toEqual([]);
  });

  test('every source is used, and every one that is used is told', () => {
    const used = new Set([...text(name).matchAll(/source: ([a-z0-9-]+)/g)].map(([, key]) => key));
    expect(Object.keys(own.sources ?? {}).filter((key) => !used.has(key))).toEqual([]);
  });
});

test('the products file reads without a problem and carries no pesticide label', () => {
  const { value, problems } = readProducts(text('products.yaml'), 'products.yaml');
  expect(problems).toEqual([]);
  expect(Object.values(value?.products ?? {}).filter(({ label, actives }) => label ?? actives)).toEqual([]);
});

test('check --strict takes the demo lawn and every program', LONG, async () => {
  const every = files.map((name) => `programs/${name}`);
  const argv = ['check', '--strict', '--as-of', '2027-04-02', 'programs/demo/lawn.yaml', ...every];
  const { code, stderr } = await soilclock(root, argv);
  expect(stderr).not.toContain('warning:');
  expect(code).toBe(0);
});
