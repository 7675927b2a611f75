/** The record as CSV, read back by a library that did not write it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cleaned } from '../../src/base/text.ts';
import { entryLine } from '../../src/emit/journal-entry.ts';
import { recordCsv } from '../../src/emit/record-csv.ts';
import { csvRows, recordFrom, unguarded } from '../record-kit.ts';

const csvOf = (...entries: Parameters<typeof entryLine>[0][]) =>
  recordCsv(recordFrom(entries.map((entry) => `${entryLine({ date: '2027-04-01', ...entry })}\n`).join('')));
const noted = (note: string) => csvRows(csvOf({ work: 'mow', note }))[0];

describe('RFC 4180', () => {
  // Section 2: each record on a line of its own, ended by CRLF; a header of as many fields; quotes doubled.
  test('every line ends with CRLF, the last one too', () => {
    const text = csvOf({ work: 'mow' }, { work: 'water' });
    expect(text.split('\r\n')).toHaveLength(4);
    expect(text.endsWith('\r\n')).toBe(true);
  });
  test('commas, quotes and line ends stay inside their field', () => {
    expect(csvOf({ work: 'mow', note: 'a, "b"\nc' })).toContain('"a, ""b""\nc"');
  });
  test('no header stands twice', () => {
    const [header = ''] = csvOf({ work: 'mow' }).slice(1).split('\r\n');
    expect(new Set(header.split(',')).size).toBe(header.split(',').length);
  });
});

describe('a text that a spreadsheet would run', () => {
  test.each([
    '=1+1',
    '+1',
    '-1',
    '@SUM(A1)',
    '  =1+1',
    '\t=1+1',
    '\n=1+1',
    '＝1+1',
    '=HYPERLINK("http://a.example","b")',
  ])('%j has an apostrophe before it', (note) => expect(noted(note)?.note).toBe(`'${note}`));
  test('in any column of a person', () => {
    const evil = '=1+1';
    const person = { by: evil, licence: evil, target: evil, registration: evil, notices: evil, 're-entry': evil };
    const [row = {}] = csvRows(csvOf({ work: 'spray', ...person }));
    const cells = ['by', 'licence', 'target', 'registration', 'notices', 're_entry'].map((key) => row[key]);
    expect(new Set(cells)).toEqual(new Set([`'${evil}`]));
  });
  test('a figure below zero stays a figure', () =>
    expect(csvRows(csvOf({ work: 'spray', air: '-4 C' }))[0]?.air_c).toBe('-4'));
});

test('any text comes back', () => {
  const text = fc
    .string({ unit: fc.oneof(fc.constantFrom('"', "'", ',', '\n', '=', '-', ' ', ';', '#', 'é'), fc.string()) })
    .filter((one) => cleaned(one) === one && one !== '');
  fc.assert(
    fc.property(text, (note) => {
      expect(unguarded(noted(note)?.note)).toBe(note);
    }),
  );
});
