/** The text of a new lawn file reads back to the answers, whatever characters stand in them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lawnFile } from '../../src/emit/lawn-file.ts';
import type { Draft } from '../../src/model/draft.ts';
import { area, less } from '../../src/read/answers/area.ts';
import { answer, type World } from '../../src/read/answers/question.ts';
import { QUESTIONS } from '../../src/read/answers/questions.ts';
import { idOf } from '../../src/read/answers/words.ts';
import { readLawn } from '../../src/read/lawn.ts';
import { LONG, runs } from '../kit.ts';

const draft: Draft = {
  id: 'my-lawn',
  name: 'My lawn',
  location: { latitude: 39, longitude: -84 },
  grass: 'tall-fescue',
  program: 'program.yaml',
  areas: { front: { rectangle: ['50 ft', '40 ft'] } },
};
const world = { netArea: () => 1 } as unknown as World;
const back = (made: Draft, name = 'lawn.yaml') => readLawn(lawnFile(made, '482akxt7', name), 'lawn.yaml');
const asData = (made: Draft) => ({ kind: 'lawn', version: 1, feed: { key: '482akxt7' }, ...made });

/** Any characters at all, and those that mean something to YAML more often. */
const anyText = fc.oneof(
  fc.string({ unit: 'binary', minLength: 1, maxLength: 80 }),
  fc
    .array(
      fc.constantFrom(
        ': ',
        ' #',
        '"',
        "'",
        '\\',
        '{',
        '[',
        ']',
        '- ',
        '\n',
        '\t',
        '\0',
        '\u2028',
        '\u0085',
        '💚',
        '|',
        '&a',
        '*a',
        '!t',
        '%',
        '@',
        '`',
        '~',
        'null',
        '1e3',
        '---',
      ),
      { minLength: 1, maxLength: 12 },
    )
    .map((parts) => parts.join('')),
);

test('a plain draft reads back without a problem', () => {
  expect(back(draft).problems).toEqual([]);
  expect(back(draft).data).toEqual(asData(draft));
});

test('any name reads back', LONG, () =>
  fc.assert(
    fc.property(anyText, (text) => {
      const answered = answer(QUESTIONS[0]!, text, draft, world);
      if (!('draft' in answered)) throw new Error('a name was refused');
      expect(back(answered.draft).problems).toEqual([]);
      expect(back(answered.draft).data).toEqual(asData(answered.draft));
      expect(answered.draft.name).toBe(text.trim() === '' ? 'My lawn' : text.trim());
    }),
    { numRuns: runs(500) },
  ),
);

test('any area name that has an id reads back, any other is refused', LONG, () =>
  fc.assert(
    fc.property(anyText, (name) => {
      const answered = answer(area, `${name}: rectangle 50 x 40 ft`, { ...draft, areas: {} }, world);
      const id = name.trim() === '' ? 'area-1' : idOf(name.trim());
      if ('problems' in answered) expect(['', 'constructor', 'prototype']).toContain(id);
      else {
        expect(Object.keys(answered.draft.areas ?? {})).toEqual([id]);
        expect(back(answered.draft).data).toEqual(asData(answered.draft));
      }
    }),
    { numRuns: runs(500) },
  ),
);

test('any path reads back', () =>
  fc.assert(
    fc.property(anyText, (text) => {
      const made = { ...draft, program: text, products: [text, 'b.yaml'], weather: { files: [text] } };
      expect(back(made).data).toEqual(asData(made));
    }),
  ));

test('a file name in the first comment breaks out of nothing', () =>
  fc.assert(
    fc.property(anyText, (text) => {
      expect(back(draft, text).data).toEqual(asData(draft));
    }),
  ));

test('every sort of area reads back', () => {
  const words = [
    'a: rectangle 5 x 4 m',
    'b: circle diameter 3 m',
    'c: triangle sides 3, 4, 5 m',
    '123: 40 m2',
    'true: 40 m2',
    'null: 4 m2',
  ];
  const measured = words.reduce<Draft>((before, text) => {
    const answered = answer(area, text, before, world);
    const taken = 'draft' in answered ? answer(less, '1 m2', answered.draft, world) : answered;
    return 'draft' in taken ? taken.draft : before;
  }, draft);
  expect(Object.keys(measured.areas ?? {}).toSorted()).toEqual(['123', 'a', 'b', 'c', 'front', 'null', 'true']);
  expect(back(measured).problems).toEqual([]);
  expect(back(measured).data).toEqual(asData(measured));
});

describe('a whole file', () => {
  const whole: Draft = {
    ...draft,
    products: ['products.yaml'],
    weather: { service: 'none', forecast: 'none' },
    display: { units: 'us', language: 'en-US' },
    equipment: { spreader: { kind: 'rotary', swath: '10 ft', dial: { from: 1, to: 15, step: 0.25 } } },
    working: { days: ['sat'], between: ['08:00', '18:00'], remind: ['1 d'] },
  };
  const lines = lawnFile(whole, '482akxt7', 'lawn.yaml').split('\n');
  test('reads back', () => expect(back(whole).data).toEqual(asData(whole)));
  test('explains every key: a comment stands above each block', () => {
    const blocks = lines.join('\n').trim().split('\n\n');
    expect(blocks.length).toBe(11);
    expect(blocks.filter((block) => !block.startsWith('# '))).toEqual([]);
  });
  test('is no wider than 120 columns', () => expect(lines.filter((line) => line.length > 120)).toEqual([]));
});
