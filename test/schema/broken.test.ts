/** Broken files: refused by the JSON Schema and by the reader; and those that only the reader can tell. */
import { describe, expect, test } from 'vitest';
import { problemsOf } from '../../src/read/any.ts';
import { readYaml } from '../../src/read/yaml.ts';
import { type Kind, validators } from './kit.ts';

const program = (step: string, head = '') =>
  `{ kind: program, version: 1, id: p, name: P, grass: [tall-fescue], ${head} steps: [{ id: a, name: A, work: spread, ${step} }] }`;
const opens = (trigger: string) => program(`window: { opens: ${trigger} }`);
const apply = (what: string) => program(`window: { opens: { date: 04-15 } }, apply: ${what}`);
const products = (product: string) => `{ kind: products, version: 1, products: { a: ${product} } }`;
const lawn = (more: string, areas = '{ front: { measured: 400 m2 } }') =>
  `{ kind: lawn, version: 1, id: l, location: { latitude: 38.4, longitude: -72.6 }, grass: tall-fescue, program: p.yaml, areas: ${areas}, ${more} }`;
const area = (shape: string) => lawn('', `{ front: ${shape} }`);
const journal = (entry: string) => `[{ date: 2027-04-03, ${entry} }]`;

/** Whether the reader finds no fault and whether the schema finds none. */
const judged = (kind: Exclude<Kind, 'ledger'>, text: string) => ({
  reader: problemsOf(text, 'file.yaml', kind, () => null).length === 0,
  schema: validators[kind](readYaml(text, 'file.yaml').data),
});

type Case = readonly [name: string, kind: Exclude<Kind, 'ledger'>, text: string];

const fine: readonly Case[] = [
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
test.each(fine)('%s is fine', (_, kind, text) => expect(judged(kind, text)).toEqual({ reader: true, schema: true }));

const broken: readonly Case[] = [
  ['a wrong kind', 'program', opens('{ date: 04-15 }').replace('kind: program', 'kind: programme')],
  ['a version to come', 'lawn', lawn('').replace('version: 1', 'version: 2')],
  ['a wrong key', 'program', program('window: { opens: { date: 04-15 } }, colour: green')],
  ['a wrong key of the file', 'products', '{ kind: products, version: 1, products: {}, more: 1 }'],
  ['a missing key', 'program', program('lean: early')],
  ['a missing key of the file', 'lawn', lawn('').replace('grass: tall-fescue,', '')],
  ['a wrong unit', 'program', opens('{ soil: { depth: 5 cm, rises-to: 50 K } }')],
  ['a unit of something else', 'program', apply('{ product: a, rate: 4 lb }')],
  ['a number without its unit', 'program', apply('{ mow: { height: 3 } }')],
  ['a negative amount', 'journal', journal('work: spread, used: -2 lb')],
  ['a rate of nothing', 'program', apply('{ product: a, rate: 0 lb/1000 sqft }')],
  ['an unknown word', 'program', program('window: { opens: { date: 04-15 } }, lean: middle')],
  ['an unknown grass', 'lawn', lawn('').replace('tall-fescue', 'tall-fescues')],
  ['an unknown service', 'lawn', lawn('weather: { service: crystal-ball }')],
  ['two kinds of triggers', 'program', opens('{ date: 04-15, frost: { first: 28 F, chance: 50% } }')],
  ['no kind of trigger', 'program', opens('{ not-before: 04-15 }')],
  ['an unknown kind of trigger', 'program', opens('{ moon: full }')],
  ['a broken trigger in a trigger', 'program', opens('{ any-of: [{ date: 04-15 }, { date: april }] }')],
  ['a list of no triggers', 'program', opens('{ all-of: [] }')],
  ['both directions', 'program', opens('{ soil: { depth: 5 cm, rises-to: 50 F, falls-to: 60 F } }')],
  ['no direction', 'program', opens('{ air: { mean: 5 d } }')],
  ['first and last frost', 'program', opens('{ frost: { first: 28 F, last: 32 F, chance: 50% } }')],
  ['before and after a frost', 'program', opens('{ frost: { last: 32 F, chance: 50%, before: 2 d, after: 2 d } }')],
  ['a wait after nothing', 'program', opens('{ after: { wait: 5 d } }')],
  ['two things to put down', 'program', apply('{ nutrient: { N: 0.5 lb/1000 sqft }, bag-rate: a }')],
  ['nothing to put down', 'program', apply('{ rate: 4 lb/1000 sqft }')],
  ['a bad id', 'program', opens('{ date: 04-15 }').replace('id: a', 'id: Front_Lawn')],
  ['a bad id of a product', 'products', '{ kind: products, version: 1, products: { A B: { form: seed } } }'],
  [
    'a program without steps',
    'program',
    '{ kind: program, version: 1, id: p, name: P, grass: [tall-fescue], steps: [] }',
  ],
  ['a step left out of no other program', 'program', program('window: { opens: { date: 04-15 } }, drop: true')],
  ['an analysis in words', 'products', products('{ form: granular, analysis: high nitrogen }')],
  ['a form that is none', 'products', products('{ form: gas }')],
  ['five package sizes', 'products', products(`{ form: seed, packages: [${'{ size: 1 lb }, '.repeat(5)}] }`)],
  ['no area', 'lawn', lawn('', '{}')],
  ['two shapes', 'lawn', area('{ measured: 400 m2, circle: { radius: 6 ft } }')],
  ['no shape', 'lawn', area('{ grass: tall-fescue }')],
  ['radius and diameter', 'lawn', area('{ circle: { radius: 6 ft, diameter: 12 ft } }')],
  ['corners without a unit', 'lawn', area('{ polygon: [[0, 0], [9, 0], [9, 9]] }')],
  ['two corners', 'lawn', area('{ polygon: [[0, 0], [9, 0]], in: ft }')],
  ['three sides of a rectangle', 'lawn', area('{ rectangle: [1 m, 2 m, 3 m] }')],
  ['half a place', 'lawn', lawn('').replace(', longitude: -72.6', '')],
  ['a ZIP code as a number', 'lawn', lawn('').replace('latitude: 38.4, longitude: -72.6', 'zip: 53202')],
  ['seed and sod at once', 'lawn', lawn('turf: { seeded: 2027-04-10, sodded: 2027-04-10 }')],
  ['a rule that limits nothing', 'lawn', lawn('local-rules: [{ limit: N }]')],
  ['a rule that is none', 'lawn', lawn('local-rules: [{ because: of it }]')],
  ['a time that is none', 'lawn', lawn('working: { between: ["08:00", "25:00"] }')],
  ['an entry that says nothing', 'journal', journal('note: it rained')],
  ['an entry without a day', 'journal', '[{ work: mow }]'],
  ['an undo of nothing', 'journal', journal('undo: true')],
  ['a journal that is no list', 'journal', '{ date: 2027-04-03, work: mow }'],
];
test.each(broken)('%s is refused by both', (_, kind, text) =>
  expect(judged(kind, text)).toEqual({ reader: false, schema: false }),
);

/** JSON Schema looks at one value at a time and knows no units: these the reader alone can tell. */
const beyond: readonly Case[] = [
  ['a day that no year has', 'program', opens('{ date: 02-31 }')],
  ['a day that this year has not', 'journal', '[{ date: 2027-02-29, work: mow }]'],
  ['edges that cross', 'lawn', area('{ polygon: [[0, 0], [9, 9], [9, 0], [0, 9]], in: ft }')],
  ['sides that do not meet', 'lawn', area('{ triangle: { sides: [1 m, 1 m, 9 m] } }')],
  ['a range of a quantity: a depth below the soil model', 'program', opens('{ soil: { depth: 3 m, rises-to: 50 F } }')],
  ['a wait of one and a half days', 'program', opens('{ any-of: [{ after: { opening: true, wait: 36 h } }] }')],
  ['nutrients above 100 %', 'products', products('{ form: granular, analysis: 60-60-8 }')],
  [
    'two quantities: an upper threshold below the base',
    'program',
    opens('{ degree-days: { from: 01-01, base: 50 F, upper: 40 F, reaches: 200 } }'),
  ],
  [
    'what a word asks of another: a cutoff without sines',
    'program',
    opens('{ degree-days: { from: 01-01, base: 50 F, cutoff: vertical, reaches: 200 } }'),
  ],
  ['a later day first', 'lawn', lawn('working: { away: [[2027-07-11, 2027-07-02]] }')],
  ['a sum that is wrong', 'journal', journal('work: spread, loaded: 9 lb, used: 2 lb, left: 1 lb')],
  ['a time zone that is none', 'lawn', lawn('timezone: America/Saltwether')],
  ['a step that is not there', 'program', opens('{ after: { step: b, wait: 5 d } }')],
  [
    'an id used twice',
    'program',
    opens('{ date: 04-15 }')
      .replace(/\[(\{ id: a.*\})\]/, '[$1, $1]')
      .replace(/\[(\{ id: a.*) \}\] \}/, '[$1 }] }'),
  ],
];
describe('beyond JSON Schema', () => {
  test.each(beyond)('%s', (_, kind, text) => expect(judged(kind, text)).toEqual({ reader: false, schema: true }));
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
