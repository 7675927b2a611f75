/**
 * What a reader may not see stands in no byte of their feed. A mark is planted in every private field of every file; the
 * owner's feed shows the marks that it should, so that the test can fail.
 */
import { renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { change, demoWith, feed, kindsIn, plan } from './kit.ts';

const AS_OF = '2027-04-02';
const LAWN = 'programs/demo/lawn.yaml';

/** Marks that the owner's feed shows. */
const OWNERS = {
  'the lawn name': 'MarkLawnName',
  'what was noted': 'MarkNote',
  'what was used': '9.87 lb',
  'the setting that was used': 'setting 7.77',
  'why a local rule forbids': 'MarkBecause',
  'what is paid': '$31.37',
  'what the shelf decides': 'it is on the shelf',
};
/** Marks that a helper needs: where, and of what. */
const WORK = { 'an area': 'markfront', 'a product': 'MarkProduct', 'what the label says of people': 'MarkReEntry' };
/** Marks that no feed shows, the owner's neither. */
const NOBODYS = {
  'who did it': 'MarkBy',
  'the licence': 'MarkLicence',
  'what it was put down against': 'MarkTarget',
  'the notices given': 'MarkNotices',
  'what was left': '3.21 lb',
  'the customer': 'MarkCustomer',
  'the address': 'MarkAddress',
  'the latitude': '38.4273',
  'the longitude': '72.6181',
  'the name of a weather file': 'markweather',
  'the soil test': '5.83',
  'the thermometer': '51.37',
  'the day of the thermometer': '2027-03-29',
  'a day away': '2027-07-03',
  'the shelf': '22.41',
};

let cwd: string;
beforeAll(async () => {
  cwd = demoWith('crew: { as: helper, detail: full }, street: { as: public, detail: full }, partner: { as: owner }');
  const file = (name: string) => path.join(cwd, 'programs/demo', name);
  renameSync(file('weather.csv'), file('markweather.csv'));
  change(cwd, LAWN, (text) =>
    text
      .replace(/^name: .*$/m, 'name: MarkLawnName')
      .replace('38.4,', '38.4273,')
      .replace('-72.6,', '-72.6181,')
      .replace('weather.csv', 'markweather.csv')
      .replace('  front:', '  markfront:')
      .replace('pH: 5.8 ', 'pH: 5.83 ')
      .replace('2027-07-02', '2027-07-03')
      .replace('feed-16-4-8: 22 lb', 'feed-16-4-8: 22.41 lb')
      .replace(
        /local-rules:\n.*\n/,
        'local-rules: [{ forbid: [pesticide], between: [04-08, 04-12], because: MarkBecause }]\n' +
          'thermometer: [{ date: 2027-03-29, depth: 2 in, reads: 51.37 °F }]\n' +
          'record: { customer: MarkCustomer, address: MarkAddress }\n',
      ),
  );
  change(cwd, LAWN, (text) => text.replace('key: 482akxt7,', 'key: 482akxt7x,'));
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
  loaded: 13.08 lb
  left: 3.21 lb
  used: 9.87 lb
  setting: 7.77
  by: MarkBy
  licence: MarkLicence
  notices: MarkNotices
  note: MarkNote
`,
  );
  const { code, stderr } = await plan(cwd, AS_OF);
  if (code !== 0) throw new Error(stderr);
}, 60_000);

describe.each([
  ['the owner', undefined],
  ['a reader who sees everything', 'partner'],
] as const)('%s sees', (_, id) => {
  test.each(Object.entries({ ...OWNERS, ...WORK }))('%s', (_what, mark) => expect(feed(cwd, id)).toContain(mark));
  test('every kind of event of a normal feed', () =>
    expect(kindsIn(feed(cwd, id))).toEqual(['buying', 'job', 'keep-off', 'soil', 'water', 'window']));
});
test.each(Object.entries(NOBODYS))('no feed shows %s', (_, mark) =>
  expect([undefined, 'crew', 'street', 'partner'].filter((id) => feed(cwd, id).includes(mark))).toEqual([]),
);

test("the lawn's own key stands in its own feed alone", () =>
  expect([undefined, 'crew', 'street', 'partner'].filter((id) => feed(cwd, id).includes('482akxt7x'))).toEqual([
    undefined,
  ]));

describe('a helper', () => {
  test.each(Object.entries(WORK))('sees %s', (_, mark) => expect(feed(cwd, 'crew')).toContain(mark));
  test.each(Object.entries(OWNERS))('does not see %s', (_, mark) => expect(feed(cwd, 'crew')).not.toContain(mark));
  test('sees the work and what goes with it alone', () =>
    expect(kindsIn(feed(cwd, 'crew'))).toEqual(['job', 'keep-off', 'soil', 'soil-check', 'water']));
  test('sees no money', () => expect(feed(cwd, 'crew')).not.toMatch(/\$/));
  test('sees what is done without more', () => expect(feed(cwd, 'crew')).toContain('SUMMARY:Done: '));
});

describe('the public', () => {
  test.each(Object.entries({ ...OWNERS, ...WORK }))('does not see %s', (_, mark) =>
    expect(feed(cwd, 'street')).not.toContain(mark),
  );
  test('sees windows, soil checks and the soil alone', () =>
    expect(kindsIn(feed(cwd, 'street'))).toEqual(['soil', 'soil-check', 'window']));
  test('sees no event with a time', () => expect(feed(cwd, 'street')).not.toMatch(/^DTSTART:/m));
  test('sees a rate on the area that rates are given on', () =>
    expect(feed(cwd, 'street')).toContain('0.9 lb of nitrogen per 1,000 sq ft.'));
  test('sees a rate of a pesticide nowhere', () =>
    expect(feed(cwd, 'street')).toContain('The rate is from your label'));
});

/** A public feed before and after something private changes. */
test.each([
  ['a step skipped', (text: string) => text.replace('autumn-broadleaf: skip', 'autumn-feed-1: skip')],
  ['a day pinned', (text: string) => text.replace('autumn-broadleaf: skip', 'autumn-feed-1: { date: 2027-09-04 }')],
  ['other working days', (text: string) => text.replace('[sat, sun]', '[tue]')],
  ['other facts', (text: string) => text.replace('thin: true', 'thin: false')],
  ['no sprayer', (text: string) => text.replace(/^ {2}sprayer: .*$/m, '')],
  ['another area', (text: string) => text.replace('[50 ft, 40 ft]', '[60 ft, 40 ft]')],
  ['a place 3 km on', (text: string) => text.replace('38.4,', '38.43,')],
])('%s changes no byte of what the public sees', async (_, how) => {
  const [one, other] = [demoWith('street: { as: public }'), demoWith('street: { as: public }')];
  change(other, LAWN, how);
  await plan(one, AS_OF);
  await plan(other, AS_OF);
  expect(feed(other, 'street')).toBe(feed(one, 'street'));
});
