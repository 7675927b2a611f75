/**
 * What is private stands in no byte of what a site gives to everybody: neither in its files nor in their names. A mark is planted in
 * every private field of every file; owners' pages show the marks that they should, so that the test can fail.
 */
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { demoCopy, LONG, tidy } from '../kit.ts';
import { change, filesIn, publishIn, type Report } from './kit.ts';

afterAll(tidy);

const LAWN = 'programs/demo/lawn.yaml';
/** Marks that the owner's own page or feed shows. */
const OWNERS = {
  'the lawn name': 'MarkLawnName',
  'what was noted': 'MarkNote',
  'why a local rule forbids': 'MarkBecause',
  'what is paid': '31.37',
  'an area': 'markfront',
  'a product': 'MarkProduct',
  'what the label says of people': 'MarkReEntry',
};
/** Marks that nothing in the site shows. */
const NOBODYS = {
  'who did it': 'MarkBy',
  'the licence': 'MarkLicence',
  'what it was put down against': 'MarkTarget',
  'the notices given': 'MarkNotices',
  'the customer': 'MarkCustomer',
  'the address': 'MarkAddress',
  'the latitude': '38.4273',
  'the longitude': '72.6181',
  'the name of a weather file': 'markweather',
  'the soil test': '5.83',
  'the thermometer': '51.37',
  'the shelf': '22.41',
  'the latitude of a place': '39.3517',
  'the longitude of a place': '74.9186',
  'the ZIP code of a place': '08270',
  'the name of a thermometer': 'MarkThermometer',
  'where a thermometer stands': '39.2719',
  'the file of a station': 'markstation',
  'the path of a lawn': 'markgarden',
  'the table of places': 'markplaces',
  'the table of lawns': 'marklawns',
};

let cwd: string;
let report: Report;
let everybodys: ReadonlyMap<string, string>;
beforeAll(() => {
  cwd = demoCopy().cwd;
  const file = (name: string) => path.join(cwd, 'programs/demo', name);
  renameSync(file('weather.csv'), file('markweather.csv'));
  change(cwd, LAWN, (text) =>
    text
      .replace(/^id: .*$/m, 'id: mark-lawn-id')
      .replace(/^name: .*$/m, 'name: MarkLawnName')
      .replace(/^feed: .*$/m, 'feed: { key: 482akxt7x, readers: { crew: { as: helper }, street: { as: public } } }')
      .replace('38.4,', '38.4273,')
      .replace('-72.6,', '-72.6181,')
      .replace('weather.csv', 'markweather.csv')
      .replace('  front:', '  markfront:')
      .replace('pH: 5.8 ', 'pH: 5.83 ')
      .replace('feed-16-4-8: 22 lb', 'feed-16-4-8: 22.41 lb')
      .replace(
        /local-rules:\n.*\n/,
        'local-rules: [{ forbid: [pesticide], between: [04-08, 04-12], because: MarkBecause }]\n' +
          'thermometer: [{ date: 2027-03-29, depth: 2 in, reads: 51.37 °F }]\n' +
          'record: { customer: MarkCustomer, address: MarkAddress }\n',
      ),
  );
  change(cwd, 'programs/demo/my-products.yaml', (text) =>
    text
      .replace(/name: Barrier granule.*/, 'name: MarkProduct')
      .replace('price: 27', 'price: 31.37')
      .replace(/re-entry: .*/, 're-entry: MarkReEntry'),
  );
  writeFileSync(
    file('lawn.journal.yaml'),
    `- date: 2027-03-14
  step: late-winter-feed
  product: feed-16-4-8
  target: MarkTarget
  by: MarkBy
  licence: MarkLicence
  notices: MarkNotices
  note: MarkNote
`,
  );
  renameSync(path.join(cwd, 'programs/demo'), path.join(cwd, 'programs/markgarden'));
  writeFileSync(path.join(cwd, 'markstation.csv'), readFileSync(path.join(cwd, 'programs/markgarden/markweather.csv')));
  writeFileSync(path.join(cwd, 'marklawns.csv'), 'file\nprograms/markgarden/lawn.yaml\n');
  writeFileSync(
    path.join(cwd, 'markplaces.csv'),
    'id,name,latitude,longitude,zip,grass\ncove,The cove,39.3517,-74.9186,,tall-fescue\nwoods,The woods,,,08270,tall-fescue\n',
  );
  writeFileSync(
    path.join(cwd, 'publish.yaml'),
    `kind: publication
version: 1
id: island-lawns
name: Lawns of Saltwether Island
base-url: https://lawns.example/
programs: [programs/tall-fescue-transition.yaml]
places-file: markplaces.csv
lawns-file: marklawns.csv
embed: true
thermometers:
  - { name: MarkThermometer, latitude: 39.2719, longitude: -74.9, reach: 60 km, weather: markstation.csv, readings: [{ date: 2027-03-29, depth: 2 in, reads: 47.31 F }] }
`,
  );
  const made = publishIn(cwd);
  if (made.code !== 0) throw new Error(made.stderr);
  report = made.report;
  everybodys = new Map([...filesIn(cwd)].filter(([name]) => !name.startsWith('l/')));
}, LONG.timeout);

/** A text with folds of a feed undone, beside itself. */
const unfolded = (text: string) => `${text}\n${text.replace(/\r\n[ \t]/g, '').replace(/\\(.)/g, '$1')}`;
const whoShow = (mark: string, files: ReadonlyMap<string, string>) =>
  [...files].filter(([name, text]) => `${name}\n${unfolded(text)}`.includes(mark)).map(([name]) => name);
/** What stands at the address of the owner, or of a reader. */
const at = (address: string) => new Map([...filesIn(cwd)].filter(([name]) => name.startsWith(address)));
const lawn = () => report.lawns[0]!;

test('the site gives everybody a list and all files of two places', () => expect(everybodys.size).toBe(11));
test('a place near a station is told by it', () =>
  expect(unfolded(everybodys.get('cove/cove.ics') ?? '')).toContain('Weather observed through'));

describe('what everybody sees', () => {
  test.each(Object.entries({ ...OWNERS, ...NOBODYS }))('does not have %s', (_, mark) =>
    expect(whoShow(mark, everybodys)).toEqual([]),
  );
  test.each([
    ['the id of a lawn', 'mark-lawn-id'],
    ["a lawn's key", '482akxt7x'],
    ['a money sign', '$'],
  ])('does not have %s', (_, mark) => {
    const files = new Map([...everybodys].map(([name, text]) => [name, text.replace(/<script>.*<\/script>/s, '')]));
    expect(whoShow(mark, files)).toEqual([]);
  });
  test('does not have the address of an owner or a reader', () => {
    const addresses = [lawn().owner, ...Object.values(lawn().readers)];
    expect(addresses.length).toBe(3);
    for (const address of addresses) expect(whoShow(address.split('/')[1]!, everybodys)).toEqual([]);
  });
});

describe('the owner', () => {
  test.each(Object.entries(OWNERS))('sees %s', (_, mark) => expect(whoShow(mark, at(lawn().owner))).not.toEqual([]));
  test.each(Object.entries(NOBODYS))('does not see %s', (_, mark) =>
    expect(whoShow(mark, at(lawn().owner))).toEqual([]),
  );
  test('has a page that search engines leave out', () =>
    expect(at(lawn().owner).get(`${lawn().owner}index.html`)).toContain('<meta name="robots" content="noindex">'));
  test('has no word of the addresses of readers', () => {
    for (const address of Object.values(lawn().readers))
      expect(whoShow(address.split('/')[1]!, at(lawn().owner))).toEqual([]);
  });
});

describe('a reader', () => {
  test.each(['MarkLawnName', 'MarkNote', 'MarkBecause', '31.37'])('who helps does not see %s', (mark) =>
    expect(whoShow(mark, at(lawn().readers.crew!))).toEqual([]),
  );
  test.each(Object.values(OWNERS))('of the public does not see %s', (mark) =>
    expect(whoShow(mark, at(lawn().readers.street!))).toEqual([]),
  );
  test.each(['crew', 'street'])('%s has a feed of their own, and nothing else there', (id) =>
    expect([...at(lawn().readers[id]!).keys()]).toEqual([`${lawn().readers[id]}calendar.ics`]),
  );
});

test('addresses stay as they were given', () =>
  expect(publishIn(cwd, '2027-04-03').report.lawns).toEqual(report.lawns));
test('an address has 128 bits', () => expect(lawn().owner).toMatch(/^l\/[0-9a-f]{32}\/$/));
