/** Owners' lawns in a site: at addresses that stay, each with its own, until they are no longer named. */
import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { faultsOf } from '../feed/rules.ts';
import { demoCopy, LONG, soilclock, tidy } from '../kit.ts';
import { change, filesIn, publishIn, siteFile } from './kit.ts';

afterAll(tidy);

const LAWN = 'programs/demo/lawn.yaml';
/** The demo's lawn and a copy of it under another id. */
function twoLawns(): string {
  const { cwd } = demoCopy();
  cpSync(path.join(cwd, LAWN), path.join(cwd, 'programs/demo/second.yaml'));
  change(cwd, 'programs/demo/second.yaml', (text) =>
    text.replace(/^id: .*$/m, 'id: second').replace(/key: \w+/, 'key: q8m2x7'),
  );
  writeFileSync(
    path.join(cwd, 'publish.yaml'),
    `kind: publication
version: 1
id: two
name: Two lawns
base-url: https://lawns.example/
programs: [programs/tall-fescue-transition.yaml]
lawns:
  - ${LAWN}
  - programs/demo/second.yaml
`,
  );
  return cwd;
}

describe('two lawns', LONG, () => {
  let cwd: string;
  let addresses: string[];
  const feedAt = (i: number) => siteFile(cwd, `${addresses[i]}calendar.ics`);
  beforeAll(() => {
    cwd = twoLawns();
    const { code, report } = publishIn(cwd);
    addresses = report.lawns.map(({ owner }) => owner);
    if (code !== 0) throw new Error('not published');
  });

  test('have a page and a feed each, and no list names them', () => {
    expect([...filesIn(cwd).keys()].sort()).toEqual(
      [...addresses.flatMap((at) => [`${at}calendar.ics`, `${at}index.html`]), 'index.html'].sort(),
    );
    expect(siteFile(cwd, 'index.html')).not.toMatch(/saltwether-lawn|second|Two lawns.*href/s);
  });
  test('have the feed that a plan of their own file gives', async () => {
    const own = readFileSync(path.join(cwd, 'programs/demo/lawn.ledger.json'), 'utf8');
    await soilclock(cwd, ['plan', LAWN, '--as-of', '2027-04-02', '--out', 'own']);
    expect(readFileSync(path.join(cwd, 'own/saltwether-lawn.ics'), 'utf8')).toBe(feedAt(0));
    expect(readFileSync(path.join(cwd, 'programs/demo/lawn.ledger.json'), 'utf8')).toBe(own);
  });
  test('keep the rules on feeds', () => {
    for (const i of [0, 1]) expect(faultsOf(feedAt(i))).toEqual({});
  });
  test('are not written again where nothing has changed', () => expect(publishIn(cwd).report.written).toEqual([]));
  test('one that has a fault stays as it was, and the other goes on', () => {
    change(cwd, 'programs/demo/second.yaml', (text) => text.replace('grass: tall-fescue', 'grass: tall-fesce'));
    const before = feedAt(1);
    const { code, report } = publishIn(cwd, '2027-04-03');
    expect([code, report.problems.map((one) => one.code)]).toEqual([
      1,
      expect.arrayContaining(['unknown-word', 'site-left-out']),
    ]);
    expect(feedAt(1)).toBe(before);
    expect(report.written).toContain(`${addresses[0]}calendar.ics`);
    change(cwd, 'programs/demo/second.yaml', (text) => text.replace('grass: tall-fesce', 'grass: tall-fescue'));
  });
  test('one that is no longer named has its work to come called off', () => {
    change(cwd, 'publish.yaml', (text) => text.replace('  - programs/demo/second.yaml\n', ''));
    publishIn(cwd, '2027-04-04');
    expect(feedAt(1)).toMatch(/STATUS:CANCELLED/);
    expect(feedAt(1)).toContain('-ended@soilclock.invalid');
    expect(faultsOf(feedAt(1))).toEqual({});
  });
  test('it stands there for 29 days more, untouched', () => {
    expect(publishIn(cwd, '2027-04-04').report.written).toEqual([]);
    publishIn(cwd, '2027-05-03');
    expect([...filesIn(cwd).keys()]).toContain(`${addresses[1]}calendar.ics`);
  });
  test('it goes after 30', () => {
    publishIn(cwd, '2027-05-04');
    expect([...filesIn(cwd).keys()].filter((name) => name.startsWith(addresses[1]!))).toEqual([]);
  });
});

describe('a dry run', LONG, () => {
  test('gives no address and writes no ledger', () => {
    const cwd = twoLawns();
    publishIn(cwd, '2027-04-02', { dryRun: true });
    expect([
      filesIn(cwd).size,
      existsSync(path.join(cwd, 'publish.ledger.json')),
      existsSync(path.join(cwd, 'programs/demo/lawn.ledger.json')),
    ]).toEqual([0, false, false]);
  });
});

test('two lawns of one id are told', LONG, () => {
  const cwd = twoLawns();
  change(cwd, 'programs/demo/second.yaml', (text) =>
    text.replace('id: second', 'id: saltwether-lawn').replace('q8m2x7', '482akxt7'),
  );
  const { code, report } = publishIn(cwd);
  expect([code, report.lawns.length, report.problems.some((one) => one.code === 'site-same-id')]).toEqual([1, 1, true]);
});

test('"check" tells what is wrong with a publication', async () => {
  const cwd = twoLawns();
  change(cwd, 'publish.yaml', (text) => text.replace('name: Two lawns', 'nmae: Two lawns'));
  const { code, stdout } = await soilclock(cwd, ['check', 'publish.yaml', '--json']);
  expect([code, JSON.parse(stdout).problems.map((one: { code: string }) => one.code)]).toEqual([
    1,
    ['missing-key', 'unknown-key'],
  ]);
});
