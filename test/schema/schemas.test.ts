/** The committed JSON Schemas: fresh, with a word on every key, and every shipped file valid. */

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { about, schemas } from '../../programs/schema/schemas.ts';
import type { LedgerEntry } from '../../src/model/ledger.ts';
import { demoCopy, LONG, soilclock } from '../kit.ts';
import { ajv, committed, KINDS, shipped, validators } from './kit.ts';

type Json = Readonly<Record<string, unknown>>;
const made = schemas();

/** Every key of a schema with what is said of it; parts with a name once. */
function* keysIn(part: unknown, trail: string): Generator<{ at: string; says: Json }> {
  if (part === null || typeof part !== 'object') return;
  for (const [key, inner] of Object.entries(part)) {
    const says = key === 'properties' && !Array.isArray(part) ? Object.entries(inner as Json) : [];
    for (const [name, one] of says) if (one !== true) yield { at: `${trail}.${name}`, says: one as Json };
    yield* keysIn(inner, ['properties', 'items', 'anyOf'].includes(key) ? trail : `${trail}.${key}`);
  }
}

test('there is one of every kind', () => expect(Object.keys(made).sort()).toEqual([...KINDS].sort()));

describe.each(KINDS)('%s.json', (kind) => {
  const schema = committed(kind);
  const keys = [...keysIn(schema, kind)];

  test('is what the schemas say now; else run "npm run schema"', () =>
    expect(schema).toEqual(JSON.parse(JSON.stringify(made[kind].schema))));
  test('says something of every key', () => {
    expect(keys.length).toBeGreaterThan(10);
    expect(made[kind].untold).toEqual([]);
    expect(keys.filter(({ says }) => typeof says.description !== 'string').map(({ at }) => at)).toEqual([]);
  });
  test('gives an example of every text and number that is not one of some words', () => {
    const open = keys.filter(({ says }) => ['string', 'number', 'integer'].includes(says.type as string));
    expect(open.filter(({ says }) => !Array.isArray(says.examples)).map(({ at }) => at)).toEqual([]);
  });
  test('gives only examples that are valid', LONG, () => {
    const wrong = keys.flatMap(({ at, says: { examples = [], ...says } }) => {
      const valid = ajv.compile({ ...says, $defs: schema.$defs ?? {} });
      return (examples as unknown[]).filter((example) => !valid(example)).map((example) => [at, example]);
    });
    expect(wrong).toEqual([]);
  });
});

test('nothing is said of keys that are gone', () => {
  const told = new Set(Object.values(made).flatMap((one) => one.told));
  expect(Object.keys(about).filter((name) => !told.has(name))).toEqual([]);
});

test.each(shipped)('$name is valid', ({ kind, data }) => {
  validators[kind](data);
  expect(validators[kind].errors ?? []).toEqual([]);
});

test.each(shipped)('$name names its schema for editors', ({ name, kind, text }) => {
  const [first] = text.split('\n');
  const above = path.dirname(name) === '.' ? '.' : '..';
  expect(first).toBe(`# yaml-language-server: $schema=${above}/schema/${kind}.json`);
});

test('the ledger of the demo lawn is valid', async () => {
  const { cwd, lawn } = demoCopy();
  await soilclock(cwd, ['plan', lawn, '--as-of', '2027-04-02', '--out', 'out/site']);
  const ledger = JSON.parse(readFileSync(path.join(cwd, 'programs/demo/lawn.ledger.json'), 'utf8'));
  expect((ledger.events as LedgerEntry[]).length).toBeGreaterThan(0);
  validators.ledger(ledger);
  expect(validators.ledger.errors ?? []).toEqual([]);
});
