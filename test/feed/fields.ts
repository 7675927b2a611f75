/** Every text that the schemas let a person write into a file: how it gets into the demo, and whether a feed may say it. */
import { schemas } from '../../programs/schema/schemas.ts';

/** A file as plain data. */
export type Plain = Record<string, unknown>;

/** The file that holds each part of the corpus. */
export const FILES = {
  program: 'tall-fescue-transition.yaml',
  products: 'products.yaml',
  'own products': 'demo/my-products.yaml',
  lawn: 'demo/lawn.yaml',
  journal: 'demo/lawn.journal.yaml',
} as const;
type File = keyof typeof FILES;

interface Field {
  readonly file: File;
  /** The keys that lead to it in the file's schema. */
  readonly at: string;
  /** Whether a feed is meant to say it. */
  readonly reaches: boolean;
  /** The maps to write a text into, and its key there. */
  readonly where: (content: Plain) => readonly (readonly [Plain, string])[];
}

const each = (maps: unknown, key: string): (readonly [Plain, string])[] =>
  Object.values(maps as Record<string, Plain>).map((map) => [map, key] as const);
const inner = (maps: unknown, key: string): Plain[] =>
  Object.values(maps as Record<string, Plain>).flatMap((map) => (key in map ? [map[key] as Plain] : []));
/** Fields of a file that are written alike. */
const all = (file: File, reaches: boolean, at: readonly string[], where: (content: Plain) => unknown) =>
  at.map((path): Field => {
    const key = path.split('.').at(-1) ?? '';
    return { file, at: path, reaches, where: (content) => each([where(content)].flat(), key) };
  });
const own = ({ products }: Plain): Plain => (products as Plain[]).at(-1) as Plain;

export const FIELDS: readonly Field[] = [
  ...all('program', true, ['.name'], (program) => program),
  ...all('program', false, ['.about', '.author', '.license'], (program) => program),
  ...all(
    'program',
    false,
    ['.based-on.name', '.based-on.author', '.based-on.license'],
    (program) => program['based-on'],
  ),
  {
    file: 'program',
    at: '.sources.*',
    reaches: false,
    where: ({ sources }) => Object.keys(sources as Plain).map((key) => [sources as Plain, key] as const),
  },
  ...all('program', true, ['.steps.name', '.steps.note', '.steps.cautions'], ({ steps }) => steps),
  ...all('program', true, ['.steps.if-missed.note'], ({ steps }) =>
    inner(steps, 'if-missed').filter((one) => typeof one === 'object'),
  ),
  ...all('products', true, ['.products.*.name'], ({ products }) => Object.values(products as Plain)),
  ...all('products', false, ['.products.*.registration'], ({ products }) => Object.values(products as Plain)),
  ...all('own products', true, ['.products.*.name'], ({ products }) => Object.values(products as Plain)),
  ...all('own products', true, ['.products.*.label.re-entry'], ({ products }) => inner(products, 'label')),
  ...all('lawn', true, ['.name'], (lawn) => lawn),
  ...all('lawn', true, ['.local-rules.because'], (lawn) => lawn['local-rules']),
  ...all('lawn', true, ['.products.name'], own),
  ...all('lawn', true, ['.products.label.re-entry'], (lawn) => own(lawn).label),
  ...all('lawn', false, ['.products.registration'], own),
  ...all('lawn', false, ['.record.customer', '.record.address'], ({ record }) => record),
  ...all('journal', true, ['.note'], (entries) => Object.values(entries)),
  ...all('journal', false, ['.registration', '.target', '.by', '.licence', '.re-entry', '.notices'], (entries) =>
    Object.values(entries),
  ),
];

/** Texts of the schemas that no person words, and why no feed can say what stands there. */
export const WORDED_BY_NOBODY: Readonly<Record<string, readonly [why: string, at: RegExp]>> = {
  'a key of the sources, which is an id': ['any other is refused', /^program .*\.source$/],
  'a path of another file': [
    'a file that is not there is refused, and weather says of its files only that they are some',
    /^(program \.extends|calendar \.lawns|publication \.(programs|places-file|places\.program|lawns|lawns-file|thermometers\.weather)|lawn \.(program|products|areas\.\*\.program|areas\.\*(\.less)?\.geojson|weather\.files))$/,
  ],
  'a time zone': ['any other is refused', /^lawn \.timezone$/],
};

/** Texts that a feed of somebody else says, and the test that holds them. */
export const HELD_ELSEWHERE: Readonly<Record<string, RegExp>> = {
  'test/calendar/injection.test.ts': /^calendar \.name$/,
  'test/site/injection.test.ts': /^publication \.(name|about|changelog|places\.name|thermometers\.name)$/,
  'test/readers/injection.test.ts': /^lawn \.feed\.readers\.\*\.title$/,
};

type Json = { readonly [key: string]: unknown };

/** Every text of the files that people write which is neither one of some words nor of a fixed form: kind and keys. */
export function textsOfSchemas(): readonly string[] {
  const { ledger: _, ...kinds } = schemas();
  return Object.entries(kinds).flatMap(([kind, { schema }]) =>
    [...textsIn(schema)].map((at) => `${kind} ${at}`).sort(),
  );
}

function textsIn(schema: Json): ReadonlySet<string> {
  const found = new Set<string>();
  const definitions = (schema.$defs ?? {}) as Record<string, Json>;
  const walk = (json: Json, at: string, within: readonly string[]): void => {
    const name = typeof json.$ref === 'string' ? json.$ref.replace('#/$defs/', '') : null;
    if (name !== null && !within.includes(name)) walk(definitions[name] as Json, at, [...within, name]);
    const limits = [json, ...((json.allOf as Json[] | undefined) ?? [])];
    if (json.type === 'string' && !limits.some((one) => 'pattern' in one || 'enum' in one || 'const' in one))
      found.add(at);
    for (const part of [json.anyOf, json.prefixItems].flat()) if (isJson(part)) walk(part, at, within);
    if (isJson(json.items)) walk(json.items, at, within);
    for (const [key, part] of Object.entries((json.properties ?? {}) as Json))
      if (isJson(part)) walk(part, `${at}.${key}`, within);
    if (isJson(json.propertyNames)) walk(json.propertyNames, `${at}.{key}`, within);
    if (isJson(json.additionalProperties)) walk(json.additionalProperties, `${at}.*`, within);
  };
  walk(schema, '', []);
  return found;
}

const isJson = (value: unknown): value is Json => typeof value === 'object' && value !== null;

/**
 * Work that makes the demo say every text that a feed may: a step that is late, and one that a local rule holds up, with a
 * product of the lawn's own.
 */
export function furnish(file: File, content: Plain): void {
  const step = (id: string, more: Plain): Plain => ({ id, name: id, ...more });
  if (file === 'program') {
    content['based-on'] ??= [{ id: 'base' }];
    (content.steps as Plain[]).push(
      step('late', {
        work: 'scout',
        window: { opens: { date: '03-01' }, closes: { date: '03-20' } },
        'if-missed': { until: { date: '05-01' }, note: 'late' },
      }),
      step('held-up', {
        work: 'spread',
        // A Saturday, when somebody is there to do it.
        window: { opens: { date: '04-03' }, closes: { date: '05-10' } },
        apply: { product: 'own-feed', rate: '1 lb/1000 sqft' },
      }),
    );
  }
  if (file !== 'lawn') return;
  (content.products as unknown[]).push({
    id: 'own-feed',
    form: 'granular',
    analysis: '16-0-8',
    label: { rate: '1 lb/1000 sqft', 're-entry': 'dry' },
  });
  (content['local-rules'] as Plain[]).push({ forbid: ['fertilizer'], between: ['04-03', '04-20'] });
  content.record ??= {};
}
