/** Broken files: refused by the JSON Schema and by the reader; and those that only the reader can tell. */
import { describe, expect, test } from 'vitest';
import type { ProblemCode } from '../../src/base/wording.ts';
import { problemsOf } from '../../src/read/any.ts';
import { readYaml } from '../../src/read/yaml.ts';
import { type Kind, validators } from './kit.ts';

const program = (step: string, head = '') =>
  `{ kind: program, version: 1, id: p, name: P, grass: [tall-fescue], ${head} steps: [{ id: a, name: A, work: spread, ${step} }] }`;
/** One more step with the same id. */
const STEP = '{ id: a, name: B, work: mow, window: { opens: { date: 05-15 } } }';
const opens = (trigger: string) => program(`window: { opens: ${trigger} }`);
const apply = (what: string) => program(`window: { opens: { date: 04-15 } }, apply: ${what}`);
const products = (product: string) => `{ kind: products, version: 1, products: { a: ${product} } }`;
const lawn = (more: string, areas = '{ front: { measured: 400 m2 } }') =>
  `{ kind: lawn, version: 1, id: l, location: { latitude: 38.4, longitude: -72.6 }, grass: tall-fescue, program: p.yaml, areas: ${areas}, ${more} }`;
const area = (shape: string) => lawn('', `{ front: ${shape} }`);
const journal = (entry: string) => `[{ date: 2027-04-03, ${entry} }]`;

type Written = Exclude<Kind, 'ledger'>;

/** The codes of what the reader finds, and whether the schema finds nothing. */
function judged(kind: Written, text: string) {
  const { data, problems } = readYaml(text, 'file.yaml');
  expect(problems, 'is YAML').toEqual([]);
  return {
    reader: problemsOf(text, 'file.yaml', kind, () => null).map(({ code }) => code),
    schema: validators[kind](data),
  };
}

const fine: readonly (readonly [name: string, kind: Written, text: string])[] = [
  ['a step', 'program', opens('{ date: 04-15 }')],
  ['a trigger with limits', 'program', opens('{ frost: { first: 28 F, chance: 50% }, not-after: 11-15 }')],
  ['a trigger in a trigger', 'program', opens('{ any-of: [{ all-of: [{ date: 04-15 }] }, { date: 05-01 }] }')],
  ['a product of a step', 'program', apply('{ product: a, rate: 1 fl oz/1000 sq ft }')],
  ['a product', 'products', products('{ form: granular, analysis: 16-4-8 }')],
  ['a lawn', 'lawn', lawn('')],
  ['an area by its corners', 'lawn', area('{ polygon: [[0, 0], [9, 0], [9, 9]], in: ft }')],
  ['a product of its own', 'lawn', lawn('products: [p.yaml, { id: a, form: seed }]')],
  ['a weather file of days to come', 'lawn', lawn('weather: { forecast: days.csv }')],
  ['an entry', 'journal', journal('work: mow')],
  [
    'an entry taken back',
    'journal',
    '[{ id: a, date: 2027-04-03, work: mow }, { date: 2027-04-04, undo: true, corrects: a }]',
  ],
];
test.each(fine)('%s is fine', (_, kind, text) => expect(judged(kind, text)).toEqual({ reader: [], schema: true }));

type Case = readonly [name: string, kind: Written, code: ProblemCode, text: string];

const broken: readonly Case[] = [
  ['a wrong kind', 'program', 'wrong-kind', opens('{ date: 04-15 }').replace('kind: program', 'kind: programme')],
  ['a version to come', 'lawn', 'wrong-type', lawn('').replace('version: 1', 'version: 2')],
  ['a wrong key', 'program', 'unknown-key', program('window: { opens: { date: 04-15 } }, colour: green')],
  ['a wrong key of the file', 'products', 'unknown-key', '{ kind: products, version: 1, products: {}, more: 1 }'],
  ['a missing key', 'program', 'missing-key', program('lean: early')],
  ['a missing key of the file', 'lawn', 'missing-key', lawn('').replace('grass: tall-fescue,', '')],
  ['a wrong unit', 'program', 'unknown-unit', opens('{ soil: { depth: 5 cm, rises-to: 50 K } }')],
  ['a unit of something else', 'program', 'wrong-measure', apply('{ product: a, rate: 4 lb }')],
  ['a number without its unit', 'program', 'wrong-type', apply('{ mow: { height: 3 } }')],
  ['a negative amount', 'journal', 'journal-entry', journal('work: spread, used: -2 lb')],
  ['a rate of nothing', 'program', 'out-of-range', apply('{ product: a, rate: 0 lb/1000 sqft }')],
  ['an unknown word', 'program', 'unknown-word', program('window: { opens: { date: 04-15 } }, lean: middle')],
  ['an unknown grass', 'lawn', 'unknown-word', lawn('').replace('tall-fescue', 'tall-fescues')],
  ['an unknown service', 'lawn', 'unknown-word', lawn('weather: { service: crystal-ball }')],
  ['two kinds of triggers', 'program', 'trigger-kind', opens('{ date: 04-15, frost: { first: 28 F, chance: 50% } }')],
  ['no kind of trigger', 'program', 'trigger-kind', opens('{ not-before: 04-15 }')],
  ['an unknown kind of trigger', 'program', 'trigger-kind', opens('{ moon: full }')],
  ['a broken trigger in a trigger', 'program', 'not-a-date', opens('{ any-of: [{ date: 04-15 }, { date: april }] }')],
  ['a list of no triggers', 'program', 'wrong-type', opens('{ all-of: [] }')],
  [
    'both directions',
    'program',
    'trigger-direction',
    opens('{ soil: { depth: 5 cm, rises-to: 50 F, falls-to: 60 F, from: 02-01 } }'),
  ],
  ['no direction', 'program', 'trigger-direction', opens('{ air: { mean: 5 d } }')],
  ['first and last frost', 'program', 'trigger-frost', opens('{ frost: { first: 28 F, last: 32 F, chance: 50% } }')],
  [
    'before and after a frost',
    'program',
    'trigger-frost',
    opens('{ frost: { last: 32 F, chance: 50%, before: 2 d, after: 2 d } }'),
  ],
  ['a wait after nothing', 'program', 'trigger-after', opens('{ after: { wait: 5 d } }')],
  ['two things to put down', 'program', 'apply-one-of', apply('{ nutrient: { N: 0.5 lb/1000 sqft }, bag-rate: a }')],
  ['nothing to put down', 'program', 'apply-one-of', apply('{ rate: 4 lb/1000 sqft }')],
  [
    'a time between parts of what goes by no soil test',
    'program',
    'by-soil-test',
    apply('{ amendment: a, rate: 50 lb/1000 sqft, spacing: 26 weeks }'),
  ],
  ['a bad id', 'program', 'wrong-type', opens('{ date: 04-15 }').replace('id: a', 'id: Front_Lawn')],
  [
    'a bad id of a product',
    'products',
    'wrong-type',
    '{ kind: products, version: 1, products: { A B: { form: seed } } }',
  ],
  [
    'a program without steps',
    'program',
    'wrong-type',
    '{ kind: program, version: 1, id: p, name: P, grass: [tall-fescue], steps: [] }',
  ],
  [
    'a step left out of no other program',
    'program',
    'unknown-key',
    program('window: { opens: { date: 04-15 } }, drop: true'),
  ],
  ['an analysis in words', 'products', 'out-of-range', products('{ form: granular, analysis: high nitrogen }')],
  ['a form that is none', 'products', 'unknown-word', products('{ form: gas }')],
  [
    'five package sizes',
    'products',
    'out-of-range',
    products(`{ form: seed, packages: [${'{ size: 1 lb }, '.repeat(5)}] }`),
  ],
  ['no area', 'lawn', 'wrong-type', lawn('', '{}')],
  ['two shapes', 'lawn', 'area-shape', area('{ measured: 400 m2, circle: { radius: 6 ft } }')],
  ['no shape', 'lawn', 'area-shape', area('{ grass: tall-fescue }')],
  ['radius and diameter', 'lawn', 'missing-key', area('{ circle: { radius: 6 ft, diameter: 12 ft } }')],
  ['corners without a unit', 'lawn', 'missing-key', area('{ polygon: [[0, 0], [9, 0], [9, 9]] }')],
  ['two corners', 'lawn', 'area-corners', area('{ polygon: [[0, 0], [9, 0]], in: ft }')],
  ['three sides of a rectangle', 'lawn', 'wrong-type', area('{ rectangle: [1 m, 2 m, 3 m] }')],
  ['three radii', 'lawn', 'wrong-type', area('{ radii: [7, 8, 9], in: ft }')],
  ['offsets without a unit', 'lawn', 'missing-key', area('{ offsets: { every: 10, widths: [12] } }')],
  [
    'the unit of offsets twice',
    'lawn',
    'unknown-key',
    area('{ offsets: { every: 10, widths: [12], in: ft }, in: ft }'),
  ],
  ['two points', 'lawn', 'area-corners', area('{ points: [[38.4, -72.6], [38.4, -72.5]] }')],
  ['a latitude of 91', 'lawn', 'out-of-range', area('{ points: [[38, -72], [38, -72.1], [91, -72]] }')],
  ['a point as GeoJSON', 'lawn', 'geojson-type', area('{ geojson: { type: Point, coordinates: [1, 2] } }')],
  [
    'GeoJSON without features',
    'lawn',
    'geojson-several',
    area('{ geojson: { type: FeatureCollection, features: [] } }'),
  ],
  ['a setback from nothing', 'lawn', 'missing-key', area('{ circle: { radius: 6 ft }, setback: { width: 3 ft } }')],
  [
    'a setback from edge 0',
    'lawn',
    'out-of-range',
    area('{ circle: { radius: 6 ft }, setback: { from-edge: 0, width: 3 ft } }'),
  ],
  ['a place of one length', 'lawn', 'wrong-type', area('{ measured: 9 m2, less: [{ measured: 1 m2, at: [1 m] }] }')],
  ['half a place', 'lawn', 'missing-key', lawn('').replace(', longitude: -72.6', '')],
  ['a ZIP code as a number', 'lawn', 'wrong-type', lawn('').replace('latitude: 38.4, longitude: -72.6', 'zip: 53202')],
  [
    'a swath and pans at once',
    'lawn',
    'spreader-swath',
    lawn('equipment: { spreader: { swath: 10 ft, pans: { spacing: 1 ft, catches: [1, 4, 1] } } }'),
  ],
  [
    'a spreader by two passes that are none',
    'lawn',
    'unknown-word',
    lawn('equipment: { spreaders: { old: { passes: twice } } }'),
  ],
  ['seed and sod at once', 'lawn', 'turf-both', lawn('turf: { seeded: 2027-04-10, sodded: 2027-04-10 }')],
  ['a sprayer without an output', 'lawn', 'sprayer-output', lawn('equipment: { sprayer: { tank: 4 gal } }')],
  [
    'a sprayer with two outputs',
    'lawn',
    'sprayer-output',
    lawn(
      'equipment: { sprayer: { tank: 4 gal, output: 1 gal/1000 sqft, catch-test: { course: 340 sqft, caught: 40 fl oz } } }',
    ),
  ],
  [
    'a bucket held for a time that goes with none',
    'lawn',
    'sprayer-caught-in',
    lawn(
      'equipment: { sprayer: { tank: 4 gal, catch-test: { course: 340 sqft, caught: 40 fl oz, caught-in: 30 s } } }',
    ),
  ],
  ['a rule that limits nothing', 'lawn', 'local-rule', lawn('local-rules: [{ limit: N }]')],
  ['a rule that is none', 'lawn', 'missing-key', lawn('local-rules: [{ because: of it }]')],
  ['a time that is none', 'lawn', 'out-of-range', lawn('working: { between: ["08:00", "25:00"] }')],
  ['an entry that says nothing', 'journal', 'journal-entry', journal('note: it rained')],
  ['an entry without a day', 'journal', 'journal-entry', '[{ work: mow }]'],
  ['an undo of nothing', 'journal', 'journal-entry', journal('undo: true')],
  ['a journal that is no list', 'journal', 'wrong-type', '{ date: 2027-04-03, work: mow }'],
];
test.each(broken)('%s is refused by both', (_, kind, code, text) =>
  expect(judged(kind, text)).toEqual({ reader: [code], schema: false }),
);

/** JSON Schema looks at one value at a time and knows no units: these the reader alone can tell. */
const beyond: readonly Case[] = [
  ['a day that no year has', 'program', 'not-a-date', opens('{ date: 02-31 }')],
  ['a day that this year has not', 'journal', 'journal-entry', '[{ date: 2027-02-29, work: mow }]'],
  ['edges that cross', 'lawn', 'area-crossing', area('{ polygon: [[0, 0], [9, 9], [9, 0], [0, 9]], in: ft }')],
  ['sides that do not meet', 'lawn', 'area-triangle', area('{ triangle: { sides: [1 m, 1 m, 9 m] } }')],
  [
    'a range of a quantity: a depth below the soil model',
    'program',
    'soil-depth',
    opens('{ soil: { depth: 3 m, rises-to: 50 F } }'),
  ],
  [
    'a wait of one and a half days',
    'program',
    'out-of-range',
    program('window: { opens: { date: 04-15 }, closes: { after: { opening: true, wait: 36 h } } }'),
  ],
  ['nutrients above 100 %', 'products', 'out-of-range', products('{ form: granular, analysis: 60-60-8 }')],
  [
    'two quantities: an upper threshold below the base',
    'program',
    'degree-days-upper',
    opens('{ degree-days: { from: 01-01, base: 50 F, upper: 40 F, reaches: 200 } }'),
  ],
  [
    'what a word asks of another: a cutoff without sines',
    'program',
    'degree-days-cutoff',
    opens('{ degree-days: { from: 01-01, base: 50 F, cutoff: vertical, reaches: 200 } }'),
  ],
  ['a later day first', 'lawn', 'out-of-range', lawn('working: { away: [[2027-07-11, 2027-07-02]] }')],
  ['a sum that is wrong', 'journal', 'journal-entry', journal('work: spread, loaded: 9 lb, used: 2 lb, left: 1 lb')],
  [
    'nitrogen by the soil test',
    'program',
    'soil-test-nitrogen',
    apply('{ nutrient: { N: 0.5 lb/1000 sqft }, by: soil-test }'),
  ],
  ['a time zone that is none', 'lawn', 'unknown-word', lawn('timezone: America/Saltwether')],
  ['a step that is not there', 'program', 'unknown-step', opens('{ after: { step: b, wait: 5 d } }')],
  ['an id used twice', 'program', 'duplicate-id', opens('{ date: 04-15 }').replace('steps: [', `steps: [${STEP}, `)],
];
describe('beyond JSON Schema', () => {
  test.each(beyond)('%s', (_, kind, code, text) =>
    expect(judged(kind, text)).toEqual({ reader: [code], schema: true }),
  );
});

describe('a program that extends another', () => {
  const child = (more: string, steps = '[{ id: a, drop: true }]') =>
    validators.program(
      readYaml(`{ kind: program, version: 1, id: c, extends: base.yaml, steps: ${steps}, ${more} }`, 'c.yaml').data,
    );
  test('may leave out what it takes over', () => expect(child('')).toBe(true));
  test('may change one key of a step', () => expect(child('', '[{ id: a, note: later }]')).toBe(true));
  test('names the steps that it changes', () => expect(child('', '[{ drop: true }]')).toBe(false));
  test('drops or keeps, nothing between', () => expect(child('', '[{ id: a, drop: maybe }]')).toBe(false));
  test('has no other keys', () => expect(child('stepz: []')).toBe(false));
  test('says what it does in the same words', () => expect(child('climate: [lukewarm]')).toBe(false));
});
