/** One change at each place of every shipped file: the JSON Schema takes and refuses what the reader's schema does. */
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { CalendarSchema } from '../../src/model/calendar.ts';
import { EntrySchema } from '../../src/model/journal.ts';
import { LawnSchema } from '../../src/model/lawn.ts';
import { ProductsSchema } from '../../src/model/product.ts';
import { ExtendingSchema, ProgramSchema } from '../../src/model/program.ts';
import { PublicationSchema } from '../../src/model/publication.ts';
import { type Kind, shipped, validators } from './kit.ts';

const readers: Readonly<Record<string, v.GenericSchema>> = {
  program: v.lazy((input) => (isMap(input) && 'extends' in input ? ExtendingSchema : ProgramSchema)),
  products: ProductsSchema,
  lawn: LawnSchema,
  journal: v.array(EntrySchema),
  calendar: CalendarSchema,
  publication: PublicationSchema,
};

type Change = readonly [at: string, changed: unknown];
const isMap = (value: unknown): value is Record<string, unknown> =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

/** What may stand in place of a value: other kinds of values, a unit that is none, a number turned round. */
function* instead(value: unknown): Generator<unknown> {
  if (typeof value === 'string') yield* [7, '', '7 bananas', `${value}x`, `-${value}`, ['a'], {}, null, true];
  else yield* ['a word', `${JSON.stringify(value)}x`, null, -99_999, [], {}];
}

/** A value with one thing changed at each of its places: a key dropped or misspelt, a value replaced. */
function* changes(data: unknown): Generator<Change> {
  if (Array.isArray(data)) {
    for (const [i, item] of data.entries()) {
      for (const other of instead(item)) yield [`${i} = ${JSON.stringify(other)}`, data.with(i, other)];
      for (const [at, changed] of changes(item)) yield [`${i}.${at}`, data.with(i, changed)];
    }
  } else if (isMap(data)) {
    for (const [key, value] of Object.entries(data)) {
      const { [key]: _, ...without } = data;
      yield [`${key} dropped`, without];
      yield [`${key} misspelt`, { ...without, [`${key}x`]: value }];
      for (const other of instead(value)) yield [`${key} = ${JSON.stringify(other)}`, { ...data, [key]: other }];
      for (const [at, changed] of changes(value)) yield [`${key}.${at}`, { ...data, [key]: changed }];
    }
  }
}

/** A long file in files of one step, product or entry each: what stands beside it changes nothing. */
function parts(data: unknown): unknown[] {
  if (Array.isArray(data)) return data.map((entry) => [entry]);
  const { steps, products } = data as { steps?: unknown; products?: unknown };
  if (Array.isArray(steps)) return steps.map((step) => ({ ...(data as object), steps: [step] }));
  if (!isMap(products)) return [data];
  return Object.entries(products).map(([id, product]) => ({ ...(data as object), products: { [id]: product } }));
}

/** Each change once, however often the head of a file comes with its parts. */
function* distinct(data: unknown): Generator<Change> {
  const seen = new Set<string>();
  for (const part of parts(data))
    for (const [at, changed] of changes(part)) {
      const head = /^(?!steps|products|0)/.test(at);
      if (head && seen.has(at)) continue;
      if (head) seen.add(at);
      yield [at, changed];
    }
}

/** What the reader refuses and JSON Schema takes, with the reason. */
const BEYOND: readonly (readonly [at: RegExp, why: string])[] = [[/polygon\.\d\.\d = -99999$/, 'the edges cross']];

/** Of the changes of programs, which are alike inside, every third one is enough each time; `SOILCLOCK_EVERY=1` takes all. */
const EVERY = Number(process.env.SOILCLOCK_EVERY ?? 3);

/** The changes of a file on which the two differ, and how many there were. */
function apart(kind: Kind, data: unknown) {
  const found: string[] = [];
  let count = 0;
  let refused = 0;
  let turn = 0;
  for (const [at, changed] of distinct(data)) {
    if (kind === 'program' && turn++ % EVERY !== 0) continue;
    count++;
    const ours = v.safeParse(readers[kind] as v.GenericSchema, changed).success;
    if (!ours) refused++;
    if (ours === validators[kind](changed)) continue;
    if (!ours && BEYOND.some(([pattern]) => pattern.test(at))) continue;
    found.push(`${at}: ${ours ? 'the reader takes it' : 'the schema takes it'}`);
  }
  return { found, count, refused };
}

describe.each(shipped)('each change of $name', ({ kind, data }) => {
  test('is taken by both or by none', () => {
    const { found, count, refused } = apart(kind, data);
    expect(found).toEqual([]);
    expect(count).toBeGreaterThan(100);
    expect(refused).toBeGreaterThan(count / 2);
    expect(refused).toBeLessThan(count);
  });
});
