/** A program that extends another: steps by id, sources joined, every problem where it stands. */
import { describe, expect, test } from 'vitest';
import type { Lookup } from '../../src/read/lookup.ts';
import { readProgram } from '../../src/read/program.ts';

const BASE = `kind: program
version: 1
id: base
name: Base
grass: [tall-fescue]
sources: { a: "A (2001)", b: "B (2002)" }
steps:
  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 04-01, source: a }, closes: { date: 05-01, source: a } }
    apply: { nutrient: { N: 1 lb/1000 sqft } }
  - { id: scout, name: Scout, work: scout, window: { opens: { date: 06-01, source: b } } }
`;
const child = (rest: string): string => `kind: program\nversion: 1\nid: child\nextends: base.yaml\n${rest}`;
const files =
  (all: Readonly<Record<string, string>>): Lookup =>
  (ref) =>
    ref in all ? { name: ref, text: all[ref] as string } : null;
const read = (text: string, all: Readonly<Record<string, string>> = { 'base.yaml': BASE }) =>
  readProgram(text, 'child.yaml', files(all));
const told = (text: string, all?: Readonly<Record<string, string>>) =>
  read(text, all).problems.map(({ code, file, line, column }) => `${code} ${file}:${line}:${column}`);

describe('what a program takes over', () => {
  test('a key of a step replaces that key; the others stay', () => {
    const [feed] =
      read(child('steps:\n  - { id: feed, name: Less, window: { opens: { date: 03-01 } } }\n')).value?.steps ?? [];
    expect(feed).toMatchObject({ name: 'Less', work: 'spread', apply: { kind: 'nutrient' } });
    expect(feed?.window.closes).toBeUndefined();
  });
  test('steps stay in their places, new ones follow', () => {
    const steps = 'steps:\n  - { id: new, name: N, work: other, window: { opens: { date: 01-01 } } }\n';
    expect(read(child(steps)).value?.steps.map(({ id }) => id)).toEqual(['feed', 'scout', 'new']);
  });
  test('drop leaves a step out', () =>
    expect(read(child('steps: [{ id: scout, drop: true }]\n')).value?.steps.map(({ id }) => id)).toEqual(['feed']));
  test('sources are joined, its own winning', () =>
    expect(read(child('sources: { b: "Mine", c: "C" }\n')).value?.sources).toEqual({
      a: 'A (2001)',
      b: 'Mine',
      c: 'C',
    }));
  test('every other key given replaces the one of the other file', () => {
    const { value } = read(child('grass: [fine-fescue]\n'));
    expect([value?.id, value?.name, value?.grass]).toEqual(['child', 'Base', ['fine-fescue']]);
  });
  test('it may extend one that extends', () => {
    const all = {
      'base.yaml': child('').replaceAll('child', 'mid').replace('base.yaml', 'root.yaml'),
      'root.yaml': BASE,
    };
    expect(read(child(''), all).value?.steps).toHaveLength(2);
  });
});

describe('what is wrong', () => {
  test('is told where it stands, in this file or the other', () => {
    expect(told(child('steps:\n  - { id: feed, work: shovel }\n'))).toEqual(['unknown-word child.yaml:6:23']);
    expect(told(child(''), { 'base.yaml': BASE.replace('06-01', '06-31') })).toEqual(['not-a-date base.yaml:13:69']);
    expect(told(child('grass: [moss]\n'))).toEqual(['unknown-word child.yaml:5:9']);
  });
  test('a file that is not there', () => expect(told(child(''), {})).toEqual(['file-missing child.yaml:4:10']));
  test('a circle', () => {
    const all = {
      'base.yaml': child('').replaceAll('child', 'base').replace('extends: base.yaml', 'extends: child.yaml'),
    };
    expect(told(child(''), { ...all, 'child.yaml': child('') })).toEqual(['extends-circle base.yaml:4:10']);
  });
  test('more than five in a row', () => {
    const all = Object.fromEntries(
      [1, 2, 3, 4, 5, 6].map((n) => [`p${n}.yaml`, child('').replace('base.yaml', `p${n + 1}.yaml`)]),
    );
    expect(told(child('').replace('base.yaml', 'p1.yaml'), all)).toEqual(['extends-deep p5.yaml:4:10']);
  });
  test('dropping what is not there', () =>
    expect(told(child('steps: [{ id: scoot, drop: true }]\n'))).toEqual(['unknown-step child.yaml:5:15']));
  test('an id twice', () =>
    expect(told(child('steps: [{ id: feed, name: A }, { id: feed, name: B }]\n'))[0]).toMatch(
      /^missing-key child.yaml/,
    ));
  test('a file of another kind', () =>
    expect(told(child(''), { 'base.yaml': 'kind: products\n' })).toEqual(['wrong-kind base.yaml:1:7']));
  test('no id of its own', () =>
    expect(told(child('').replace('id: child\n', ''))).toEqual(['missing-key child.yaml:1:1']));
});
