import { describe, expect, test } from 'vitest';
import type { Problem } from '../../src/base/problem.ts';
import { kindOf } from '../../src/read/any.ts';
import { readJournal } from '../../src/read/journal.ts';
import { readLawn, readProducts } from '../../src/read/lawn.ts';
import { readProgram } from '../../src/read/program.ts';
import { lawnText, programText } from '../kit.ts';

const step = `  - id: feed
    name: Feed
    work: spread
    window: { opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 50 F, from: 02-01 } } }
`;
const brief = (problems: readonly Problem[]) =>
  problems.map(({ code, line, column, length }) => [code, line, column, length]);

describe('readProgram', () => {
  test('turns quantities into SI', () => {
    const { value } = readProgram(programText(step), 'p.yaml');
    expect(value?.steps[0]?.window.opens).toEqual({
      kind: 'soil',
      depth: 0.05,
      mean: 5,
      holds: 1,
      from: { month: 2, day: 1 },
      direction: 'rises',
      threshold: expect.closeTo(10, 12),
    });
  });
  test('keeps degree days in the unit of their base: 140 °F·d are 77.8 °C·d', () => {
    const heat = step.replace(/soil: \{[^}]*\}/, 'degree-days: { base: 50 F, from: 01-01, reaches: 140 }');
    const opens = readProgram(programText(heat), 'p.yaml').value?.steps[0]?.window.opens;
    expect(opens).toMatchObject({ base: expect.closeTo(10, 12), reaches: expect.closeTo(77.78, 2), method: 'average' });
  });
  test('makes not-before an all-of and not-after an any-of', () => {
    const limited = step.replace('from: 02-01 }', 'from: 02-01 }, not-before: 03-01, not-after: 05-01');
    const opens = readProgram(programText(limited), 'p.yaml').value?.steps[0]?.window.opens;
    expect(opens).toMatchObject({
      kind: 'any-of',
      of: [
        { kind: 'all-of', of: [{ kind: 'soil' }, { kind: 'date', on: { month: 3, day: 1 } }] },
        { kind: 'date', on: { month: 5, day: 1 } },
      ],
    });
  });
  test('points at the key for an unknown key, at the value for a wrong one', () => {
    const spoilt = step.replace('name:', 'title:').replace('5 cm', '5 kg');
    expect(brief(readProgram(programText(spoilt), 'p.yaml').problems)).toEqual([
      ['missing-key', 7, 5, 8],
      ['wrong-measure', 10, 39, 4],
      ['unknown-key', 8, 5, 5],
    ]);
  });
  test('gives no value where there is an error', () => {
    expect(readProgram(programText(step.replace('5 cm', '5 kg')), 'p.yaml')).not.toHaveProperty('value');
  });
  test('finds the problems of every step in one go', () => {
    const spoilt = step.replace('work: spread', 'work: spred');
    const { problems } = readProgram(programText(spoilt + spoilt.replace('id: feed', 'id: food')), 'p.yaml');
    expect(brief(problems)).toEqual([
      ['unknown-word', 9, 11, 5],
      ['unknown-word', 13, 11, 5],
    ]);
  });
  test('a word that is true in YAML 1.1 is a text: no is not a month and day', () => {
    const { problems } = readProgram(programText(step.replace('02-01', 'no')), 'p.yaml');
    expect(brief(problems)).toEqual([['not-a-date', 10, 78, 2]]);
  });
  test('a number for an id is refused', () => {
    const { problems } = readProgram(programText(step.replace('id: feed', 'id: 012')), 'p.yaml');
    expect(brief(problems)).toEqual([['wrong-type', 7, 9, 3]]);
  });
});

describe('readLawn', () => {
  test('has the sides of an area in metres', () => {
    expect(readLawn(lawnText(), 'l.yaml').value?.areas.front?.shape).toEqual({
      kind: 'rectangle',
      sides: [expect.closeTo(15.24, 10), expect.closeTo(6.096, 10)],
    });
  });
  test('has the corners of a polygon in metres by the unit beside it', () => {
    const text = lawnText('areas: { a: { polygon: [[0, 0], [10, 0], [10, 10]], in: ft } }\n');
    expect(readLawn(text, 'l.yaml').value?.areas.a?.shape).toMatchObject({
      corners: [
        [0, 0],
        [expect.closeTo(3.048, 10), 0],
        [expect.closeTo(3.048, 10), expect.closeTo(3.048, 10)],
      ],
    });
  });
  test('has weekdays as numbers, times in minutes, reminders in days', () => {
    const working = 'working: { days: [sat, sun], between: ["08:00", "18:30"], remind: [3 d, 12 h] }\n';
    expect(readLawn(lawnText(working), 'l.yaml').value?.working).toEqual({
      days: [6, 0],
      between: [480, 1110],
      remind: [3, 0.5],
    });
  });
  test('keeps the shelf apart from the day it was counted', () => {
    const shelf = readLawn(lawnText('shelf: { counted: 2027-02-01, feed: 22 lb }\n'), 'l.yaml').value?.shelf;
    expect(shelf).toEqual({ counted: 20_850, stock: { feed: { by: 'mass', value: expect.closeTo(9.979, 3) } } });
  });
  test('finds all problems in one go, each in its place', () => {
    const text = lawnText('facts: { thin: maybe }\nshelf: { feed: 3 ft }\n').replace('America/', 'Amerika/');
    expect(brief(readLawn(text, 'l.yaml').problems)).toEqual([
      ['wrong-type', 10, 16, 5],
      ['wrong-measure', 11, 16, 4],
      ['unknown-word', 5, 11, 16],
    ]);
  });
  test('a day that is a text in quotes is a day as well', () => {
    const text = lawnText('shelf: { counted: "2027-02-01" }\n');
    expect(readLawn(text, 'l.yaml').value?.shelf?.counted).toBe(20_850);
  });
  test('working hours that end before they begin are refused', () => {
    const { problems } = readLawn(lawnText('working: { between: ["18:00", "08:00"] }\n'), 'l.yaml');
    expect(brief(problems)).toEqual([['out-of-range', 10, 21, 18]]);
  });
});

describe('readProducts and readJournal', () => {
  test('an analysis over 100 % is refused', () => {
    const text = 'kind: products\nversion: 1\nproducts:\n  a: { name: A, form: granular, analysis: 60-30-20 }\n';
    expect(brief(readProducts(text, 'p.yaml').problems)).toEqual([['out-of-range', 4, 43, 8]]);
  });
  test('an empty journal is a journal of nothing', () => {
    expect(readJournal('', 'j.yaml')).toMatchObject({ value: [], problems: [] });
  });
  test('an entry has its day as a number', () => {
    expect(readJournal('- { date: 2027-01-01, work: mow }\n', 'j.yaml').value).toEqual([{ date: 20_819, work: 'mow' }]);
  });
  test('a journal may be longer than a program', () => {
    const text = `- { date: 2027-01-01, work: mow }\n${`# ${'a'.repeat(98)}\n`.repeat(3000)}`;
    expect(readJournal(text, 'j.yaml').problems).toEqual([]);
  });
});

describe('kindOf', () => {
  test.each([
    ['a.csv', 'date,tmin_c', 'weather'],
    ['a.yaml', 'kind: program', 'program'],
    ['a.yaml', 'kind: products', 'products'],
    ['a.yaml', '{ kind: lawn }', 'lawn'],
    ['a.yaml', 'kind: calendar', 'calendar'],
    ['a.yaml', '- { date: 2027-01-01 }', 'journal'],
    ['a.yaml', 'kind: other', null],
    ['a.yaml', 'hello', null],
    ['a.yaml', '', null],
    ['long.yaml', `# a\n- { date: 2027-01-01 }\n${'# a\n'.repeat(70_000)}`, 'journal'],
    ['long.yaml', `kind: lawn\n${'# a\n'.repeat(70_000)}`, null],
  ])('%s', (name, text, kind) => {
    expect(kindOf(text, name)).toBe(kind);
  });
});

describe('a label entry with a rate above its own limit', () => {
  const products = (product: string) => `kind: products\nversion: 1\nproducts:\n  barrier: ${product}\n`;
  const barrier = (label: string, more = '') => `{ form: liquid, pesticide: weed-killer${more}, label: { ${label} } }`;
  test('is an error at that rate', () => {
    const over = barrier('rate: 4 lb/1000 sqft, per-application: 3 lb/1000 sqft');
    expect(brief(readProducts(products(over), 'p.yaml').problems)).toEqual([['label-rate', 4, 67, 14]]);
  });
  test('has no value', () => {
    const over = barrier('rate: 4 lb/1000 sqft, per-application: 3 lb/1000 sqft');
    expect(readProducts(products(over), 'p.yaml').value).toBe(undefined);
  });
  test('stands in a lawn file as well', () => {
    const over = barrier('rate: 4 lb/1000 sqft, per-application: 3 lb/1000 sqft').replace('{', '{ id: barrier,');
    const { problems } = readLawn(lawnText(`products:\n  - ${over}\n`), 'lawn.yaml');
    expect(problems.map(({ code, line }) => [code, line])).toEqual([['label-rate', 11]]);
  });
  test('is found by the density where one is a weight and the other a volume', () => {
    const over = barrier('rate: 4 lb/1000 sqft, per-application: 0.3 gal/1000 sqft', ', density: 10 lb/gal');
    expect(readProducts(products(over), 'p.yaml').problems.map(({ code }) => code)).toEqual(['label-rate']);
  });
  test('is none where both are the same', () => {
    const same = barrier('rate: 3 lb/1000 sqft, per-application: 3 lb/1000 sqft');
    expect(readProducts(products(same), 'p.yaml').problems).toEqual([]);
  });
});
