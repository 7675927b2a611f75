/** The JSON Schemas of the file kinds: fresh, told, and of one mind with the reader on every shipped file and on broken ones. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { about, schemas } from '../../programs/schema/schemas.ts';
import { EntrySchema } from '../../src/model/journal.ts';
import { LawnSchema } from '../../src/model/lawn.ts';
import { ProductsSchema } from '../../src/model/product.ts';
import { ExtendingSchema, ProgramSchema } from '../../src/model/program.ts';
import { readYaml } from '../../src/read/yaml.ts';
import { root } from '../kit.ts';

const folder = path.join(root, 'programs');
type Kind = 'program' | 'products' | 'lawn' | 'journal';
const made = schemas();
const committed = (kind: Kind) => JSON.parse(readFileSync(path.join(folder, 'schema', `${kind}.json`), 'utf8'));
const ajv = new Ajv2020({
  strict: true,
  strictTypes: false,
  strictTuples: false,
  strictRequired: false,
  allErrors: false,
});
const validators = Object.fromEntries(
  (Object.keys(made) as Kind[]).map((kind) => [kind, ajv.compile(committed(kind))]),
) as Record<Kind, ValidateFunction>;
const readers: Record<Kind, v.GenericSchema> = {
  program: v.union([ProgramSchema, ExtendingSchema]),
  products: ProductsSchema,
  lawn: LawnSchema,
  journal: v.array(EntrySchema),
};

interface Shipped {
  readonly name: string;
  readonly kind: Kind;
  readonly data: unknown;
}
const shipped: Shipped[] = [folder, path.join(folder, 'demo')].flatMap((here) =>
  readdirSync(here)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => {
      const { data } = readYaml(readFileSync(path.join(here, name), 'utf8'), name);
      const kind = Array.isArray(data) ? 'journal' : ((data as { kind: Kind }).kind as Kind);
      return { name, kind, data };
    }),
);

describe.each(Object.keys(made) as Kind[])('%s.json', (kind) => {
  test('is what the schemas say now; else run "npm run schema"', () =>
    expect(committed(kind)).toEqual(JSON.parse(JSON.stringify(made[kind].schema))));
  test('says something of every key', () => expect(made[kind].untold).toEqual([]));
});

test('nothing is said of keys that are gone', () => {
  const told = new Set(Object.values(made).flatMap((one) => one.told));
  expect(Object.keys(about).filter((name) => !told.has(name))).toEqual([]);
});

test.each(shipped)('$name is valid', ({ kind, data }) => {
  validators[kind](data);
  expect(validators[kind].errors ?? []).toEqual([]);
});

test.each(shipped)('$name names its schema for editors', ({ name, kind }) => {
  const file = [folder, path.join(folder, 'demo')]
    .map((here) => path.join(here, name))
    .find((one) => readdirSync(path.dirname(one)).includes(name));
  const [first] = readFileSync(file as string, 'utf8').split('\n');
  expect(first).toMatch(new RegExp(`^# yaml-language-server: \\$schema=\\.\\.?/schema/${kind}\\.json$`));
});

/** A value with one thing changed at each of its places, and where. */
function* changes(
  data: unknown,
  trail: readonly (string | number)[] = [],
): Generator<{ at: string; changed: unknown }> {
  if (data === null || typeof data !== 'object') return;
  for (const [key, value] of Object.entries(data)) {
    const step = Array.isArray(data) ? Number(key) : key;
    const here = [...trail, step];
    const at = here.join('.');
    const copy = (): Record<string | number, unknown> => structuredClone(data) as never;
    if (!Array.isArray(data)) {
      const { [key]: _, ...without } = copy();
      yield { at: `${at} dropped`, changed: without };
      yield { at: `${at} misspelt`, changed: { ...without, [`${key}x`]: value } };
    }
    const other = typeof value === 'string' ? [7, '7 bananas', ['a'], {}] : [`${JSON.stringify(value)}x`, null];
    for (const [i, instead] of other.entries()) {
      const replaced = copy();
      replaced[step] = instead;
      yield { at: `${at} replaced (${i})`, changed: replaced };
    }
    for (const inner of changes(value, here)) {
      const nested = copy();
      nested[step] = inner.changed;
      yield { at: inner.at, changed: nested };
    }
  }
}

/** What the reader refuses and JSON Schema cannot: each with the reason. */
const BEYOND: readonly (readonly [pattern: RegExp, why: string])[] = [
  [/(opening|step|wait) (dropped)$/, '"after" needs one of two pairs of keys'],
  [/(rises-to|falls-to|first|last) dropped$/, 'exactly one direction, one of first and last'],
  [/(yearly|single) dropped$/, 'a limit needs one of the two'],
  [/(radius|diameter) dropped$/, 'a circle has one of the two'],
  [/(step|work|product) dropped$/, 'an entry says what was done'],
];

describe.each(shipped)('one change in $name', ({ kind, data, name }) => {
  const apart: string[] = [];
  let count = 0;
  // Long programs are alike inside: every fifth change of them is enough.
  let turn = 0;
  for (const { at, changed } of changes(data)) {
    if (kind === 'program' && turn++ % 5 !== 0) continue;
    count++;
    const ours = v.safeParse(readers[kind], changed).success;
    const theirs = validators[kind](changed);
    if (ours === theirs) continue;
    if (!ours && BEYOND.some(([pattern]) => pattern.test(at))) continue;
    apart.push(
      `${at}: ${ours ? 'taken by the reader, refused by the schema' : 'refused by the reader, taken by the schema'}`,
    );
  }
  test('is taken or refused by both', () => {
    expect(count, name).toBeGreaterThan(20);
    expect(apart).toEqual([]);
  });
});

test('a program that extends may leave out what it takes over, and nothing else', () => {
  const child = { kind: 'program', version: 1, id: 'child', extends: 'base.yaml', steps: [{ id: 'a', drop: true }] };
  expect(validators.program(child)).toBe(true);
  expect(validators.program({ ...child, steps: [{ drop: true }] })).toBe(false);
  expect(validators.program({ ...child, extends: undefined, stepz: [] })).toBe(false);
});
