/** A journal: damaged entries are told and kept, corrections followed; nothing is erased. */
import { describe, expect, test } from 'vitest';
import { formatDay } from '../../src/base/day.ts';
import { entriesInForce } from '../../src/model/corrections.ts';
import { readJournal } from '../../src/read/journal.ts';

const read = (text: string) => readJournal(text, 'lawn.journal.yaml');
const told = (text: string) =>
  read(text).problems.map(({ code, severity, line, column }) => `${severity} ${code} ${line}:${column}`);
const inForce = (text: string) =>
  entriesInForce(read(text).value ?? []).map(({ date, step, work, used }) =>
    [formatDay(date), step ?? work, used === undefined ? null : Math.round(used.value * 1000)].join(' '),
  );

describe('entries', () => {
  test('of a step, of work outside the program, of some areas', () =>
    expect(
      read('- { date: 2027-04-03, step: feed, areas: [front] }\n- { date: 2027-04-01, work: mow }\n').value,
    ).toMatchObject([{ step: 'feed', areas: ['front'] }, { work: 'mow' }]));
  test('of a step of the program of an area', () =>
    expect(told('- { date: 2027-04-03, step: shade.feed }\n')).toEqual([]));
  test('used is what was loaded less what was left', () =>
    expect(inForce('- { date: 2027-04-03, step: feed, loaded: 10 kg, left: 2 kg }\n')).toEqual([
      '2027-04-03 feed 8000',
    ]));
  test('used, loaded and left have to agree', () => {
    expect(told('- { date: 2027-04-03, step: feed, loaded: 10 kg, used: 5 kg, left: 2 kg }\n')).toEqual([
      'warning journal-entry 1:56',
    ]);
    expect(told('- { date: 2027-04-03, step: feed, loaded: 10 kg, used: 8.1 kg, left: 2 kg }\n')).toEqual([]);
  });
  test('of decades are read: three thousand of them', () => {
    const row = '- { date: 2027-04-03, step: feed, areas: [front, back], used: 2 lb, setting: 5, note: dry }\n';
    expect(read(row.repeat(3000)).value).toHaveLength(3000);
  });
  test('with thousands of keys are refused before they cost seconds', () => {
    const keys = Array.from({ length: 6000 }, (_, i) => `k${i}: 1`).join(', ');
    expect(read(`- { ${keys} }\n`).problems.map(({ code }) => code)).toEqual(['yaml-too-many-keys']);
    expect(read(`- { date: 2027-04-03, work: mow }\n- { ${keys} }\n`).problems.map(({ code }) => code)).toEqual([
      'yaml-too-many-keys',
    ]);
  });
  test('an empty file is an empty journal', () => expect(read('# nothing yet\n').value).toEqual([]));
});

describe('a damaged entry', () => {
  const damaged =
    '- { date: 2027-04-03, step: feed }\n- { date: 2027-04-33, step: feed }\n- { date: 2027-04-05, stepp: feed }\n';
  test('is a warning at its line, and the others count', () => {
    expect(told(damaged)).toEqual(['warning journal-entry 2:11', 'warning journal-entry 3:23']);
    expect(inForce(damaged)).toEqual(['2027-04-03 feed ']);
  });
  test('is told no more once another one corrects it', () =>
    expect(
      told('- { id: a, date: 2027-04-33, step: feed }\n- { date: 2027-04-03, step: feed, corrects: a }\n'),
    ).toEqual([]));
  test('only a file that is no list is an error', () =>
    expect(told('date: 2027-04-03\n')).toEqual(['error wrong-type 1:1']));
});

describe('a correction', () => {
  const first = '- { id: a, date: 2027-04-03, step: feed, used: 5 kg }\n';
  test('stands in place of the entry that it names by id', () =>
    expect(inForce(`${first}- { date: 2027-04-03, step: feed, used: 6 kg, corrects: a }\n`)).toEqual([
      '2027-04-03 feed 6000',
    ]));
  test('or by day and step', () =>
    expect(
      inForce(
        `- { date: 2027-04-03, step: feed, used: 5 kg }\n- { date: 2027-04-04, step: feed, corrects: "2027-04-03 feed" }\n`,
      ),
    ).toEqual(['2027-04-04 feed ']));
  test('an undo takes an entry away', () =>
    expect(inForce(`${first}- { date: 2027-04-05, corrects: a, undo: true }\n`)).toEqual([]));
  test('an undo of an undo brings it back', () =>
    expect(
      inForce(
        `${first}- { id: b, date: 2027-04-05, corrects: a, undo: true }\n- { date: 2027-04-05, corrects: b, undo: true }\n`,
      ),
    ).toEqual(['2027-04-03 feed 5000']));
  test('a correction of a correction stands', () =>
    expect(
      inForce(
        `${first}- { id: b, date: 2027-04-03, step: feed, used: 6 kg, corrects: a }\n- { date: 2027-04-03, step: feed, used: 7 kg, corrects: b }\n`,
      ),
    ).toEqual(['2027-04-03 feed 7000']));
  test.each([
    [
      'that leads nowhere',
      `${first}- { date: 2027-04-03, step: feed, corrects: x }\n`,
      ['warning journal-corrects 2:49'],
      2,
    ],
    [
      'that may mean two',
      '- { date: 2027-04-03, step: feed }\n- { date: 2027-04-03, step: feed }\n- { date: 2027-04-03, step: feed, corrects: "2027-04-03 feed" }\n',
      ['warning journal-corrects 3:49'],
      3,
    ],
    [
      'in a circle',
      '- { id: a, date: 2027-04-03, step: feed, corrects: b }\n- { id: b, date: 2027-04-03, step: feed, corrects: a }\n',
      ['warning journal-corrects 1:56', 'warning journal-corrects 2:56'],
      2,
    ],
  ])('%s takes nothing away, and is told', (_, text, problems, count) => {
    expect(told(text).map((line) => line.replace(/\d+$/, ''))).toEqual(
      problems.map((line) => line.replace(/\d+$/, '')),
    );
    expect(inForce(text)).toHaveLength(count);
  });
});
