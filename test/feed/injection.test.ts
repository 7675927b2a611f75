/** No text of a person adds, removes or renames a property or a component of a feed, whatever file it stands in. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { Season } from '../../src/model/season.ts';
import { demoCopy, soilclock } from '../kit.ts';
import { AS_OF, feedOf, planned } from './feed.ts';
import { HOSTILE } from './hostile.ts';

type Plain = Record<string, unknown>;
/** The maps to write a text into, and its key there. */
type Where = (content: Plain) => readonly (readonly [Plain, string])[];
const each = (maps: unknown, key: string) =>
  Object.values(maps as Record<string, Plain>).map((map) => [map, key] as const);

const FILES = {
  program: 'tall-fescue-transition.yaml',
  products: 'products.yaml',
  'own products': 'demo/my-products.yaml',
  lawn: 'demo/lawn.yaml',
  journal: 'demo/lawn.journal.yaml',
} as const;

/** Every text of the four kinds of file that a person words freely; `reaches` where a feed is meant to say it. */
const FIELDS: readonly { file: keyof typeof FILES; name: string; reaches: boolean; where: Where }[] = [
  { file: 'program', name: 'name', reaches: true, where: (program) => [[program, 'name']] },
  { file: 'program', name: 'about', reaches: false, where: (program) => [[program, 'about']] },
  { file: 'program', name: 'author', reaches: false, where: (program) => [[program, 'author']] },
  { file: 'program', name: 'license', reaches: false, where: (program) => [[program, 'license']] },
  {
    file: 'program',
    name: 'sources',
    reaches: false,
    where: ({ sources }) => Object.keys(sources as Plain).map((key) => [sources as Plain, key] as const),
  },
  { file: 'program', name: 'step name', reaches: true, where: ({ steps }) => each(steps, 'name') },
  { file: 'program', name: 'step note', reaches: true, where: ({ steps }) => each(steps, 'note') },
  { file: 'program', name: 'step cautions', reaches: true, where: ({ steps }) => each(steps, 'cautions') },
  { file: 'products', name: 'name', reaches: true, where: ({ products }) => each(products, 'name') },
  { file: 'products', name: 'registration', reaches: false, where: ({ products }) => each(products, 'registration') },
  { file: 'own products', name: 'name', reaches: true, where: ({ products }) => each(products, 'name') },
  {
    file: 'own products',
    name: 're-entry',
    reaches: true,
    where: ({ products }) =>
      each(
        Object.values(products as Plain).flatMap((one) => (one as { label?: Plain }).label ?? []),
        're-entry',
      ),
  },
  { file: 'lawn', name: 'name', reaches: true, where: (lawn) => [[lawn, 'name']] },
  { file: 'lawn', name: 'because', reaches: false, where: (lawn) => each(lawn['local-rules'], 'because') },
  { file: 'lawn', name: 'customer', reaches: false, where: (lawn) => [[mapIn(lawn, 'record'), 'customer']] },
  { file: 'lawn', name: 'address', reaches: false, where: (lawn) => [[mapIn(lawn, 'record'), 'address']] },
  { file: 'journal', name: 'note', reaches: true, where: (entries) => each(entries, 'note') },
  ...['registration', 'target', 'by', 'licence', 're-entry', 'notices'].map((key) => ({
    file: 'journal' as const,
    name: key,
    reaches: false,
    where: (entries: Plain) => each(entries, key),
  })),
];

function mapIn(content: Plain, key: string): Plain {
  content[key] ??= {};
  return content[key] as Plain;
}

type Field = (typeof FIELDS)[number];
const titleOf = ({ file, name }: Field): string => `${file}: ${name}`;
/** A word that stands nowhere else, one a field. */
const marker = (field: Field): string => `zq${titleOf(field).replace(/\W/g, '')}qz`;
const reaching = FIELDS.filter(({ reaches }) => reaches);

/** The demo with a text of its own in every field. */
function demoWith(textOf: (field: Field) => string) {
  const { cwd, lawn } = demoCopy();
  for (const [kind, name] of Object.entries(FILES)) {
    const file = path.join(cwd, 'programs', name);
    const content = parse(readFileSync(file, 'utf8'), { schema: 'core' }) as Plain;
    for (const field of FIELDS.filter((one) => one.file === kind))
      for (const [map, key] of field.where(content)) map[key] = key === 'cautions' ? [textOf(field)] : textOf(field);
    // JSON is YAML, with every text in quotes.
    writeFileSync(file, JSON.stringify(content, null, 1));
  }
  return { cwd, lawn };
}

let marked: string;
let feed: string;
beforeAll(async () => {
  const { cwd, lawn } = demoWith(marker);
  const { season, text } = await planned(cwd, lawn, AS_OF);
  feed = text.replaceAll('\r\n ', '');
  // The fewest applications that say all of them: one done, one open, one to come.
  marked = JSON.stringify({ ...season, applications: season.applications.slice(0, 3) });
});

/** The Season with a text in place of a field's marker, as though no file had been checked on the way. */
const seasonWith = (field: Field, text: string): Season =>
  JSON.parse(marked.replaceAll(marker(field), JSON.stringify(text).slice(1, -1))) as Season;

/** Component and property names, in order. */
const skeleton = (component: ICAL.Component): unknown => [
  component.name,
  component.getAllProperties().map(({ name }) => name),
  component.getAllSubcomponents().map(skeleton),
];
const namesIn = (text: string): unknown => skeleton(new ICAL.Component(ICAL.parse(text)));

describe('a field of a file', () => {
  test.each(FIELDS.map((field) => [titleOf(field), field] as const))(
    '%s stands in the feed where it is meant to, and nowhere else',
    (_, field) => expect(feed.includes(marker(field))).toBe(field.reaches),
  );
  test.each(reaching.map((field) => [titleOf(field), field] as const))(
    '%s changes no component and no property name, whatever it holds',
    (_, field) => {
      const plain = namesIn(feedOf(seasonWith(field, 'Feed')).text);
      const breaking = Object.entries(HOSTILE).filter(
        ([, text]) => JSON.stringify(namesIn(feedOf(seasonWith(field, text)).text)) !== JSON.stringify(plain),
      );
      expect(breaking.map(([name]) => name)).toEqual([]);
    },
  );
  test('is tried with at least 30 texts', () => expect(Object.keys(HOSTILE).length).toBeGreaterThanOrEqual(30));
});

/** Through the command each takes a plan of its own: all of them only in one of the runs. */
const planning = Object.entries(HOSTILE).filter(([name]) => process.env.SOILCLOCK_RUNS === 'whole' || name === 'NUL');
describe('a text in every field at once, with', () => {
  test.each(planning)('%s is refused before a feed is written, or gives the same names', async (_, text) => {
    const { cwd, lawn } = demoWith(() => text);
    const { code } = await soilclock(cwd, ['plan', lawn, '--as-of', AS_OF, '--out', 'out/site']);
    const file = path.join(cwd, 'out/site/saltwether-lawn.ics');
    expect(existsSync(file)).toBe(code === 0);
    if (code === 0) expect(namesIn(readFileSync(file, 'utf8'))).toEqual(namesIn(feed.replaceAll('\r\n ', '')));
  });
});
