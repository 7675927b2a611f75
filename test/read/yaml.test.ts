import { describe, expect, test } from 'vitest';
import { readYaml } from '../../src/read/yaml.ts';

const data = (text: string) => readYaml(text, 'a.yaml').data;

describe('readYaml takes the core schema of YAML 1.2', () => {
  test.each([
    ['no', 'no'],
    ['yes', 'yes'],
    ['on', 'on'],
    ['off', 'off'],
    ['y', 'y'],
    ['2027-04-03', '2027-04-03'],
    ['04-03', '04-03'],
    ['12:30:45', '12:30:45'],
    ['1_000', '1_000'],
    ['16-4-8', '16-4-8'],
    ['25%', '25%'],
    ['~', null],
    ['null', null],
    ['', null],
    ['true', true],
    // YAML 1.2.2, 10.3.2: an int is [-+]?[0-9]+, base ten; 012 was ten in YAML 1.1.
    ['012', 12],
    ['0o12', 10],
    ['0x10', 16],
    ['1e3', 1000],
    ['.5', 0.5],
    ['!!str 012', '012'],
    ['"012"', '012'],
  ])('%s', (written, value) => {
    expect(data(`a: ${written}\n`)).toEqual({ a: value });
  });
  test('keys are text', () => {
    expect(data('1: a\ntrue: b\n01-02: c\n')).toEqual({ '1': 'a', true: 'b', '01-02': 'c' });
  });
  test('<< is a key like any other', () => {
    expect(data('<<: { a: 1 }\n')).toEqual({ '<<': { a: 1 } });
  });
  test('an alias stands for its value', () => {
    expect(data('a: &x { b: 1 }\nc: *x\n')).toEqual({ a: { b: 1 }, c: { b: 1 } });
  });
  test('a tag of another language makes nothing of that language', () => {
    expect(data('a: !!js/function "x"\n')).toEqual({ a: 'x' });
  });
  test('20 aliases are allowed', () => {
    expect(readYaml(`a: &x 1\nb: [${'*x,'.repeat(20)}]\n`, 'a.yaml').problems).toEqual([]);
  });
  test('5000 keys are allowed', () => {
    const text = Array.from({ length: 5000 }, (_, i) => `k${i}: 1\n`).join('');
    expect(readYaml(text, 'a.yaml').problems).toEqual([]);
  });
  test('an empty file has no data and no problem of its own', () => {
    expect(readYaml('', 'a.yaml')).toMatchObject({ problems: [] });
  });
});

describe('places', () => {
  const text = 'a: 1\nbee:\n  - { c: "x y", d: }\n  - long\nlast:\n';
  const { place } = readYaml(text, 'a.yaml');
  const at = (path: readonly (string | number)[], part?: 'key' | 'value') => {
    const { line, column, length } = place(path, part);
    return [line, column, length];
  };

  test.each([
    ['a value', ['a'], undefined, [1, 4, 1]],
    ['a key', ['a'], 'key', [1, 1, 1]],
    ['a longer key', ['bee'], 'key', [2, 1, 3]],
    ['a list, at its first line', ['bee'], undefined, [3, 3, 18]],
    ['an entry', ['bee', 1], undefined, [4, 5, 4]],
    ['a map in a list', ['bee', 0], undefined, [3, 5, 16]],
    ['a quoted value, with its quotes', ['bee', 0, 'c'], undefined, [3, 10, 5]],
    ['a value that is not there, where it would stand', ['bee', 0, 'd'], undefined, [3, 20, 1]],
    ['a value that is not there at the end of a line', ['last'], undefined, [5, 6, 1]],
    ['a key that is not there, at its map', ['bee', 0, 'nix'], 'key', [3, 5, 16]],
    ['the whole file, at its first line', [], undefined, [1, 1, 4]],
  ] as const)('%s', (_, path, part, expected) => {
    expect(at(path, part)).toEqual(expected);
  });
  test('are the same after a byte order mark', () => {
    expect(readYaml(`\uFEFF${text}`, 'a.yaml').place(['a'])).toEqual(place(['a']));
  });
  test('are the same with CRLF', () => {
    expect(readYaml(text.replaceAll('\n', '\r\n'), 'a.yaml').place(['bee', 1])).toEqual(place(['bee', 1]));
  });
  test('lead through an alias to the value that it stands for', () => {
    expect(readYaml('a: &x { b: 1 }\nc: *x\n', 'a.yaml').place(['c', 'b'])).toMatchObject({ line: 1, column: 12 });
  });
  test('count columns in UTF-16 units', () => {
    expect(readYaml('{ "🌱": 1 }\n', 'a.yaml').place(['🌱'])).toMatchObject({ line: 1, column: 9 });
  });
});
