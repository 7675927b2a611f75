/** Tables of places and lawns: each row by itself, with its line; the others go on. */
import { afterAll, describe, expect, test } from 'vitest';
import { readPublication } from '../../src/read/publication.ts';
import { readTable } from '../../src/read/table.ts';
import { LONG, tidy } from '../kit.ts';
import { BASE, filesIn, publication, publishIn, siteFolder } from './kit.ts';

afterAll(tidy);

const zips = (zip: string) => (zip === '08270' ? { latitude: 39.2, longitude: -74.8 } : null);
/** A publication whose places are this table. */
const tableOf = (text: string) =>
  readPublication(
    publication('', 'places-file: places.csv\n'),
    'publish.yaml',
    (ref) => (ref === 'places.csv' ? { name: ref, text } : null),
    zips,
  );
const told = (text: string) => {
  const { places, problems } = tableOf(text);
  return [places.map(({ id }) => id), problems.map(({ code, line }) => `${line} ${code}`)];
};
const HEAD = 'id,name,latitude,longitude,zip,grass\n';
const GOOD = 'good,Good,39,-75,,tall-fescue\n';

describe('a row', () => {
  test.each([
    ['without a position', 'a,A,,,,tall-fescue', '3 site-place-where'],
    ['with half a position', 'a,A,39,,,tall-fescue', '3 site-place-where'],
    ['with two positions', 'a,A,39,-75,08270,tall-fescue', '3 site-place-where'],
    ['with a ZIP code that lost its zero', 'a,A,,,8270,tall-fescue', '3 wrong-type'],
    ['with a ZIP code that nobody knows', 'a,A,,,99999,tall-fescue', '3 zip-unknown'],
    ['with a latitude that is no number', 'a,A,39N,-75,,tall-fescue', '3 wrong-type'],
    ['beyond the last latitude', 'a,A,71,-75,,tall-fescue', '3 out-of-range'],
    ['with a grass that is none', 'a,A,39,-75,,tall-fesce', '3 unknown-word'],
    ['with an id that is none', 'A b,A,39,-75,,tall-fescue', '3 wrong-type'],
    ['with the id of the folder of owners', 'l,A,39,-75,,tall-fescue', '3 site-id-kept'],
    ['with the id of another', 'good,A,39,-75,,tall-fescue', '3 site-same-id'],
    ['without a name', 'a,,39,-75,,tall-fescue', '3 site-row-missing'],
    ['with a cell too many', 'a,A,39,-75,,tall-fescue,x', '3 site-table-cells'],
  ])('%s is told, and the others go on', (_, row, problem) =>
    expect(told(`${HEAD}${GOOD}${row}\nlast,Last,,,08270,tall-fescue\n`)).toEqual([['good', 'last'], [problem]]),
  );
  test('after a cell of two lines has its own line', () =>
    expect(told(`${HEAD}two,"A\nB",39,-75,,tall-fescue\na,A,,,,tall-fescue\n`)).toEqual([
      ['two'],
      ['4 site-place-where'],
    ]));
  test('without anything in it is none', () => expect(told(`${HEAD}\n${GOOD},,,,,\n`)).toEqual([['good'], []]));
});

describe('a head', () => {
  test('may have its columns in any order, after semicolons too', () =>
    expect(told('grass;zip;name;id\ntall-fescue;08270;The mill;mill\n')).toEqual([['mill'], []]));
  test('without a needed column is told', () => expect(told('id,name\na,A\n')).toEqual([[], ['1 site-table-header']]));
  test('with a column that is none is told, with the one that was meant', () => {
    const { problems } = readTable('id,names\n', 't.csv', { allowed: ['id', 'name'], needed: ['id'] });
    expect([problems[0]?.code, problems[0]?.message.includes('"name"')]).toEqual(['site-table-column', true]);
  });
  test('alone is told', () => expect(told(HEAD)).toEqual([[], ['1 site-table-empty']]));
  test('may begin with a byte order mark', () => expect(told(`\uFEFF${HEAD}${GOOD}`)).toEqual([['good'], []]));
});

describe('a publication', () => {
  test('without a place or a lawn is told', () =>
    expect(readPublication(publication('', ''), 'p.yaml', () => null).problems.map(({ code }) => code)).toEqual([
      'site-nothing',
    ]));
  test('whose table is not there is told', () =>
    expect(
      readPublication(publication('places-file: x.csv\n'), 'p.yaml', () => null).problems.map(({ code }) => code),
    ).toEqual(['file-missing']));
  test('with a thermometer that reads nothing is told', () =>
    expect(
      readPublication(
        publication('thermometers: [{ latitude: 39, longitude: -75, reach: 9 km }]\n'),
        'p.yaml',
        () => null,
      ).problems.map(({ code }) => code),
    ).toEqual(['site-thermometer']));
  test('is published but for its bad rows, and ends with 1', LONG, () => {
    const cwd = siteFolder(publication(BASE, 'places-file: places.csv\n'), {
      'places.csv': `${HEAD}${GOOD}bad,Bad,,,,tall-fescue\nwarm,Warm,39,-75,,bermudagrass\n`,
    });
    const { code, report } = publishIn(cwd);
    expect([code, report.problems.map((one) => `${one.file}:${one.line} ${one.code}`)]).toEqual([
      1,
      ['places.csv:3 site-place-where', 'places.csv:4 site-no-program'],
    ]);
    expect([...filesIn(cwd).keys()].filter((name) => name.endsWith('.ics'))).toEqual(['good/good.ics']);
  });
  test('of which nothing can be published ends with 1', LONG, () =>
    expect(publishIn(siteFolder(publication(BASE, 'places: [{ id: a, name: A, grass: tall-fescue }]\n'))).code).toBe(1),
  );
});
