import { describe, expect, test } from 'vitest';
import { type Case, inLawn, lawn, products, program, refuses, run, type Spoilt } from './lawn-folder.ts';

const whole = (text: string): Spoilt => ({ 'lawn.yaml': text });
const SMALL_FILES = [
  ['lawn.yaml', lawn, 11],
  ['program.yaml', program, 12],
  ['products.yaml', products, 5],
] as const;
/** Just under the limit of 256 KiB. */
const LONG = 250_000;
const repeated = (text: string) => text.repeat(LONG / text.length);
const nested = (depth: number) => Array.from({ length: depth }, (_, i) => `${' '.repeat(i)}a:`).join('\n');

describe.each(SMALL_FILES)('%s', (file, text, next) => {
  test.each<Case>([
    ['empty', { [file]: '' }, 2, [`file-empty ${file}:1:1`]],
    ['nothing but a comment', { [file]: '# nothing\n' }, 2, [`file-empty ${file}:1:1`]],
    ['over 256 KiB', { [file]: text + '# a\n'.repeat(65_536) }, 2, [`file-too-large ${file}`]],
    ['a scalar', { [file]: 'hello\n' }, 1, [`wrong-type ${file}:1:1`]],
    ['a list', { [file]: '- a\n- b\n' }, 1, [`wrong-type ${file}:1:1`]],
    ['an empty list', { [file]: '[]\n' }, 1, [`wrong-type ${file}:1:1`]],
    ['two documents', { [file]: `${text}---\na: 1\n` }, 2, [`yaml-documents ${file}:${next}:1`]],
    ['%YAML 1.1', { [file]: `%YAML 1.1\n---\n${text}` }, 2, [`yaml-directive ${file}:1:1`]],
    ['%TAG', { [file]: `%TAG ! tag:x,2000:\n---\n${text}` }, 2, [`yaml-directive ${file}:1:1`]],
    ['a key twice', { [file]: `${text}kind: lawn\n` }, 2, [`yaml-syntax ${file}:${next}:1`]],
    ['__proto__', { [file]: `${text}__proto__: { polluted: true }\n` }, 1, [`reserved-key ${file}:${next}:1`]],
    ['constructor', { [file]: `${text}constructor: { polluted: true }\n` }, 1, [`reserved-key ${file}:${next}:1`]],
    ['an open bracket', { [file]: `${text}about: [\n` }, 2, [`yaml-syntax ${file}:${next + 1}:1`]],
    ['bytes that are no text', { [file]: '\u0000\u0001\uFFFD\uFFFD' }, 1, [`wrong-type ${file}:1:1`]],
  ])('%s', (...one) => refuses(one));
});

describe('an id called __proto__ or constructor', () => {
  test.each<Case>([
    ['of an area', inLawn('front:', 'constructor:'), 1, ['wrong-type lawn.yaml:9:8', 'reserved-key lawn.yaml:9:10']],
    [
      'of a product',
      { 'products.yaml': products.replace('feed-16-4-8', '__proto__') },
      1,
      ['reserved-key products.yaml:4:3'],
    ],
    [
      'deep in a step',
      { 'program.yaml': program.replace('N: 0.9', '__proto__: { N: 9 lb/1000 sqft }, N: 0.9') },
      1,
      ['reserved-key program.yaml:11:26'],
    ],
  ])('%s is refused', (...one) => refuses(one));

  test('reaches no prototype', async () => {
    const before = Object.getOwnPropertyNames(Object.prototype);
    for (const key of ['__proto__', 'constructor', 'prototype'])
      await run(whole(`${lawn}${key}: { polluted: true, prototype: { polluted: true } }\n`));
    expect(Object.getOwnPropertyNames(Object.prototype)).toEqual(before);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});

describe('what is made to be slow', () => {
  const keys = (count: number, between: string, after: string) =>
    Array.from({ length: count }, (_, i) => `k${i}${after}`).join(between);
  const laughs = (width: number) =>
    `a: &a [${'x,'.repeat(width)}]\n` +
    [...'bcdefgh'].map((c, i) => `${c}: &${c} [${`*${'abcdefg'[i]},`.repeat(width)}]\n`).join('');

  test.each<Case>([
    ['nine times nine aliases', whole(laughs(9)), 2, ['yaml-alias lawn.yaml:4:14']],
    [
      'few aliases of a long list',
      whole(`a: &a [${'x,'.repeat(9000)}]\nb: [*a, *a]\nc: [*a]\n`),
      2,
      ['yaml-alias lawn.yaml:3:5'],
    ],
    ['an alias that contains itself', whole('a: &a [*a]\n'), 2, ['yaml-alias lawn.yaml:1:8']],
    ['an alias of nothing', whole('a: *b\n'), 2, ['yaml-alias lawn.yaml:1:4']],
    ['800 bytes of "? "', whole('? '.repeat(400)), 2, ['yaml-key-mark lawn.yaml:1:1']],
    ['40,000 keys', whole(keys(40_000, '\n', ':').slice(0, LONG)), 2, ['yaml-too-many-keys lawn.yaml:5001:6']],
    [
      '30,000 keys without colons in braces',
      whole(`{${keys(30_000, ',', '')}}`),
      2,
      ['yaml-too-many-keys lawn.yaml:1:28891'],
    ],
    ['30,000 maps in braces', whole(`[${repeated('{},')}]`), 2, ['yaml-too-many-keys lawn.yaml:1:15002']],
    ['a list of 62,500 words', whole(repeated('- a\n')), 2, ['yaml-too-many-keys lawn.yaml:20001:1']],
    ['125,000 words in brackets', whole(`[${'a,'.repeat(LONG / 2)}]`), 2, ['yaml-too-many-keys lawn.yaml:1:40003']],
    ['250,000 closing brackets', whole(']'.repeat(LONG)), 2, ['yaml-too-many-keys lawn.yaml:1:20001']],
    ['80,000 anchors on one value', whole(`a: ${'&a '.repeat(80_000)}`), 2, ['yaml-too-many-keys lawn.yaml:1:60004']],
    ['5,000 brackets deep', whole(`a: ${'['.repeat(5000)}${']'.repeat(5000)}`), 2, ['yaml-too-deep lawn.yaml:1:42']],
    ['5,000 braces deep', whole(`${'{a: '.repeat(5000)}${'}'.repeat(5000)}`), 2, ['yaml-too-deep lawn.yaml:1:157']],
    ['600 indents deep', whole(nested(600)), 2, ['yaml-too-deep lawn.yaml:40:40']],
    ['5,000 dashes deep', whole('- '.repeat(5000)), 2, ['yaml-too-deep lawn.yaml:1:79']],
    ['4,000 colons on a line each', whole('a: b: c\n'.repeat(4000)), 2, ['yaml-too-deep lawn.yaml:38:7']],
    ['a text without an end', whole(`a: "${repeated('a\n ')}`), 2, ['yaml-syntax lawn.yaml:83334:2']],
    [
      'a polygon of 3,000 corners',
      inLawn('rectangle: [50 ft, 20 ft]', `in: m, polygon: [${'[1, 2],'.repeat(3000)}]`),
      1,
      ['out-of-range lawn.yaml:9:35'],
    ],
  ])('%s', (...one) => refuses(one));

  test('2,000 unknown keys are all found', async () => {
    const { problems, stderr } = await run(whole(`${lawn}${keys(2000, '\n', ': 1')}`));
    expect(problems).toHaveLength(2000);
    expect(stderr.length).toBeLessThan(100_000);
  });
  test('check looks at a file over its limit no longer than plan', () =>
    refuses(['', whole(`a: [${'x, '.repeat(1_400_000)}]`), 2, ['file-too-large lawn.yaml']], ['check', 'lawn.yaml']));
});

describe('tabs', () => {
  test.each<Case>([
    ['before a key', inLawn('grass:', '\tgrass:'), 2, ['yaml-syntax lawn.yaml:6:1']],
    [
      'for an indent',
      inLawn('areas: { front: { rectangle: [50 ft, 20 ft] } }', 'areas:\n\tfront: { measured: 9 m2 }'),
      2,
      ['yaml-syntax lawn.yaml:10:1'],
    ],
  ])('%s are refused', (...one) => refuses(one));

  test('after a colon are spaces', async () => {
    expect((await run(inLawn('grass: ', 'grass:\t'))).code).toBe(0);
  });
});

describe('a list for a map, and nothing for something', () => {
  test.each<Case>([
    [
      'areas as a list',
      inLawn('areas: { front: { rectangle: [50 ft, 20 ft] } }', 'areas: [{ measured: 9 m2 }]'),
      1,
      ['wrong-type lawn.yaml:9:8'],
    ],
    [
      'optional maps as lists',
      whole(`${lawn}facts: []\ndisplay: []\nshelf: []\n`),
      1,
      ['wrong-type lawn.yaml:11:8', 'wrong-type lawn.yaml:12:10', 'wrong-type lawn.yaml:13:8'],
    ],
    [
      'a trigger as a list',
      { 'program.yaml': program.replace('{ date: 09-01 }', '[{ date: 09-01 }]') },
      1,
      ['trigger-kind program.yaml:10:22'],
    ],
    [
      'a map of steps for a list',
      { 'program.yaml': program.replace('  - id: autumn-feed', '  a:') },
      1,
      ['wrong-type program.yaml:7:3'],
    ],
    [
      'no location',
      inLawn('location: { latitude: 39, longitude: -84, elevation: 270 m }', 'location:'),
      1,
      ['wrong-type lawn.yaml:4:10'],
    ],
    ['no areas', inLawn('areas: { front: { rectangle: [50 ft, 20 ft] } }', 'areas:'), 1, ['wrong-type lawn.yaml:9:7']],
    [
      'an empty map of areas',
      inLawn('{ front: { rectangle: [50 ft, 20 ft] } }', '{}'),
      1,
      ['wrong-type lawn.yaml:9:8'],
    ],
    ['an area of nothing', inLawn('{ rectangle: [50 ft, 20 ft] }', '~'), 1, ['area-shape lawn.yaml:9:17']],
    ['no program', inLawn('program: program.yaml', 'program: null'), 1, ['wrong-type lawn.yaml:7:10']],
    ['a kind of nothing', inLawn('kind: lawn', 'kind: ~'), 2, ['wrong-kind lawn.yaml:1:7']],
    ['no files of weather', inLawn('[weather.csv]', '[]'), 1, ['wrong-type lawn.yaml:8:19']],
    ['no opening', { 'program.yaml': program.replace('{ date: 09-01 }', '~') }, 1, ['trigger-kind program.yaml:10:22']],
    [
      'nothing to apply',
      { 'program.yaml': program.replace(/apply: .*/, 'apply:') },
      1,
      ['apply-one-of program.yaml:11:11'],
    ],
    [
      'a step of nothing',
      { 'program.yaml': program.replace(/steps:[\s\S]*/, 'steps: [~]') },
      1,
      ['wrong-type program.yaml:6:9'],
    ],
    [
      'a product of nothing',
      { 'products.yaml': products.replace(/\{ name.*/, '') },
      1,
      ['wrong-type products.yaml:4:16'],
    ],
    ['a version to come', inLawn('version: 1', 'version: 2'), 1, ['wrong-type lawn.yaml:2:10']],
  ])('%s', (...one) => refuses(one));
});

describe("a stranger's text on the terminal", () => {
  const hostile = whole(`${lawn}"\\e[2J\\n    at evil (file.js:1:1)\\x9b": 1\n`);

  test('is refused in its place', () => refuses(['', hostile, 1, ['unknown-key lawn.yaml:11:1']]));
  test('brings no control character', async () => {
    expect((await run(hostile)).stderr.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });
});
