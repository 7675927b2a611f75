/** Every shipped file reads, and every figure of a shipped program says where it comes from. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { readProducts } from '../../src/read/lawn.ts';
import { readProgram } from '../../src/read/program.ts';
import { root, soilclock } from '../kit.ts';

const folder = path.join(root, 'programs');
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
const text = (name: string) => readFileSync(path.join(folder, name), 'utf8');
const programs = files.filter((name) => /^kind: program$/m.test(text(name)));

test('there is at least one program and one products file', () => {
  expect(programs).toContain('tall-fescue-transition.yaml');
  expect(files).toContain('products.yaml');
});

describe.each(programs)('%s', (name) => {
  const { value: program, problems } = readProgram(text(name), name);

  test('reads without a problem', () => expect(problems).toEqual([]));

  test('every trigger, rate, limit and weather rule has a source', () => {
    const without: string[] = [];
    const visit = (value: unknown, trail: readonly string[], cited: boolean): void => {
      if (value === null || typeof value !== 'object') {
        if (!cited && isFigure(trail, value)) without.push(`${trail.join('.')}: ${value}`);
        return;
      }
      const here = cited || 'source' in value;
      for (const [key, inner] of Object.entries(value)) if (key !== 'source') visit(inner, [...trail, key], here);
    };
    const data = parseDocument(text(name)).toJS() as { nitrogen: unknown; steps: { id: string }[] };
    visit(data.nitrogen, ['nitrogen'], false);
    for (const step of data.steps) visit(step, [step.id], false);
    expect(without).toEqual([]);
  });

  test('every source is used, and every one that is used is told', () => {
    const used = new Set([...text(name).matchAll(/source: ([a-z0-9-]+)/g)].map(([, key]) => key));
    expect(Object.keys(program?.sources ?? {}).filter((key) => !used.has(key))).toEqual([]);
  });
});

/** A figure that somebody has to answer for: a quantity, a month-day or a sum of degree days. */
function isFigure(trail: readonly string[], value: unknown): boolean {
  const key = trail.at(-1) ?? '';
  if (['id', 'name', 'note', 'work', 'lean', 'source', 'step'].includes(key) || trail.includes('cautions'))
    return false;
  if (typeof value === 'number') return true;
  return typeof value === 'string' && /^(\d\d-\d\d|-?\d+(\.\d+)?\s*\D+)$/.test(value);
}

test('the products file reads without a problem and carries no pesticide label', () => {
  const { value, problems } = readProducts(text('products.yaml'), 'products.yaml');
  expect(problems).toEqual([]);
  expect(Object.values(value?.products ?? {}).filter(({ label, actives }) => label ?? actives)).toEqual([]);
});

test('check finds nothing wrong with the demo lawn and all it names', async () => {
  const { code, stdout } = await soilclock(root, [
    'check',
    '--strict',
    'programs/demo/lawn.yaml',
    'programs/tall-fescue-transition.yaml',
  ]);
  expect(stdout).toContain('nothing wrong');
  expect(code).toBe(0);
});
