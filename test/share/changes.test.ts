/** What an update of a program changes, and what is told of a program, in words. */
import { describe, expect, test } from 'vitest';
import { aboutProgramLines } from '../../src/emit/program-about.ts';
import { programChangeLines, programChanges } from '../../src/emit/program-changes.ts';
import { isAddress, partsOfRef, pinnedRef } from '../../src/model/program-ref.ts';
import { readProgram } from '../../src/read/program.ts';
import { programText } from '../kit.ts';
import { SHARED } from './kit.ts';

const step = (id: string, more: object = {}) => ({ id, name: id, ...more });
const told = (before: object, now: object) =>
  programChanges(before, now).map((one) => `${one.step ?? '*'}: ${one.text}`);

describe('what is other', () => {
  test('nothing where nothing is', () => expect(told({ steps: [step('a')] }, { steps: [step('a')] })).toEqual([]));
  test('a value deep in a step', () => {
    const window = (depth: string) => ({ opens: { soil: { depth, 'rises-to': '50 F' } } });
    expect(
      told({ steps: [step('a', { window: window('5 cm') })] }, { steps: [step('a', { window: window('10 cm') })] }),
    ).toEqual(['a: window, opens, soil, depth was 5 cm, is 10 cm']);
  });
  test('a key that comes, and one that goes', () =>
    expect(told({ steps: [step('a', { lean: 'early' })] }, { steps: [step('a', { note: 'Wait.' })] })).toEqual([
      'a: lean was early, is left out',
      'a: note is new: Wait.',
    ]));
  test('a trigger of another kind', () =>
    expect(
      told(
        { steps: [step('a', { opens: { date: '04-01' } })] },
        { steps: [step('a', { opens: { frost: { last: '28 F' } } })] },
      ),
    ).toEqual(['a: opens, date was 04-01, is left out', 'a: opens, frost is new: { last: 28 F }']));
  test('one trigger among several', () => {
    const any = (to: string) => ({ 'any-of': [{ date: '04-01' }, { soil: { 'rises-to': to } }] });
    expect(told({ steps: [step('a', any('50 F'))] }, { steps: [step('a', any('55 F'))] })).toEqual([
      'a: any-of, 2, soil, rises-to was 50 F, is 55 F',
    ]);
  });
  test('a list, as a whole', () =>
    expect(told({ grass: ['a'] }, { grass: ['a', 'b'] })).toEqual(['*: grass was [a], is [a, b]']));
  test('the order of the steps', () =>
    expect(told({ steps: [step('a'), step('b')] }, { steps: [step('b'), step('a')] })).toEqual([
      '*: the steps stand in another order',
    ]));
  test('a step in between is no other order', () =>
    expect(told({ steps: [step('a'), step('b')] }, { steps: [step('a'), step('c'), step('b')] })).toEqual([
      'c: is new: c',
    ]));
  test('is told with a step once', () =>
    expect(
      programChangeLines([
        { step: 'a', text: 'x' },
        { step: 'a', text: 'y' },
        { step: null, text: 'z' },
      ]),
    ).toEqual(['  a', '    x', '    y', '  the whole program', '    z']));
  test('can steer no terminal', () =>
    expect(told({ steps: [] }, { steps: [step('a', { name: 'x\u001b[2J\u202Ey\nz' })] })).toEqual([
      'a: is new: x[2Jy z',
    ]));
});

describe('what is told of a program', () => {
  const lines = (text: string) =>
    aboutProgramLines(readProgram(text, 'p.yaml').value!, null).map((line) => line.trim());
  test('what it asks for, each once', () => {
    const steps = `  - { id: a, name: A, work: spray, window: { opens: { date: 04-01 } }, apply: { pesticide: pre-emergent, actives: { prodiamine: {} } } }
  - { id: b, name: B, work: spray, window: { opens: { date: 05-01 } }, apply: { pesticide: pre-emergent } }
  - { id: c, name: C, work: spread, window: { opens: { date: 06-01 } }, apply: { amendment: lime-stone, rate: 5 lb/1000 sqft } }
`;
    expect(lines(programText(steps))).toEqual([
      'Test program (test-program)',
      'author not stated, no licence stated',
      'for tall-fescue; 3 steps',
      'asks for products: lime-stone',
      'asks for pesticides, each by its label in your hand: pre-emergent',
      'compares the rates of: prodiamine',
    ]);
  });
  test('can steer no terminal', () =>
    expect(lines(SHARED.replace('The keeper of Saltwether Island', '"a\\e[2J\\u202Eb\\nc"'))[1]).toBe(
      'by a[2Jb c, licence CC-BY-4.0',
    ));
});

describe('a reference', () => {
  const sha256 = 'ab'.repeat(32);
  test('is an address by how it begins', () =>
    expect(['https://a.example/p', 'webcal://a.example/p', 'a/p.yaml', 'https:p', 'C:\\p.yaml'].map(isAddress)).toEqual(
      [true, true, false, false, false],
    ));
  test('keeps address and pin in one text', () =>
    expect(partsOfRef(pinnedRef('https://a.example/p#top', sha256))).toEqual({
      address: 'https://a.example/p',
      sha256,
    }));
  test('has no pin where none stands, or none that is one', () =>
    expect(
      ['', '#top', '#sha256=ab', `#sha256=${sha256.toUpperCase()}`].map(
        (end) => partsOfRef(`https://a.example/p${end}`).sha256,
      ),
    ).toEqual(Array(4).fill(null)));
});
