/** What moved in the last weeks: kept, as text, and as an Atom feed that others can read. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { atomFeed } from '../../src/emit/changes/atom.ts';
import { type Digest, digestText, digestWith } from '../../src/emit/changes/digest.ts';
import type { Told } from '../../src/emit/changes/words.ts';
import type { Season } from '../../src/model/season.ts';
import { planned } from '../feed/feed.ts';
import { demoCopy, soilclock } from '../kit.ts';

let season: Season;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, '2027-04-02'));
});

const UID = 'private-2027-step-job@soilclock.invalid';
const told = (title: string, sequence = 1): Told => ({
  ...{ uid: UID, sequence, what: 'moved', kind: 'job', step: 'step' },
  ...{ before: '2027-04-11', after: '2027-04-18', days: 7, title, text: `${title}, later` },
});
const on = (day: string, kept: Digest | null, ...lines: Told[]) => digestWith(kept, lines, day, `${day}T06:00:00Z`);
const titles = ({ entries }: Digest) => entries.map(({ title }) => title);
const idsIn = (xml: string) => [...xml.matchAll(/<id>(.*)<\/id>/g)].map(([, id]) => id!);

describe('a digest', () => {
  const first = on('2027-04-02', null, told('A'));
  test('has the latest first', () => expect(titles(on('2027-04-09', first, told('B', 2)))).toEqual(['B', 'A']));
  test('keeps four weeks and no day more', () => {
    expect(titles(on('2027-04-29', first))).toEqual(['A']);
    expect(titles(on('2027-04-30', first))).toEqual([]);
  });
  test('tells a revision once', () => expect(titles(on('2027-04-03', first, told('A again')))).toEqual(['A again']));
  test('is the same where nothing changed, whatever the instant', () =>
    expect(digestWith(first, [], '2027-04-02', '2027-04-02T18:00:00Z')).toEqual(first));
  test('stands in a text below its days', () =>
    expect(
      digestText(on('2027-04-09', first, told('B', 2)), season)
        .split('\n')
        .slice(3),
    ).toEqual(['Fri, Apr 9', '- B, later', '', 'Fri, Apr 2', '- A, later', '']));
});

describe('an Atom feed', () => {
  const digest = on('2027-04-09', on('2027-04-02', null, told('A')), told('B', 2));
  const xml = () => atomFeed(digest, season);
  test('has ids that differ, are UUIDs and stay', () => {
    const ids = idsIn(xml());
    expect(new Set(ids).size).toBe(3);
    for (const id of ids)
      expect(id).toMatch(/^urn:uuid:[\da-f]{8}-[\da-f]{4}-8[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
    expect(idsIn(atomFeed(on('2027-04-02', null, told('A')), season))).toEqual([ids[0], ids[2]]);
  });
  test('says nothing of the UIDs and the key of the feed', () => {
    expect(xml()).not.toContain(UID);
    expect(xml()).not.toContain(season.feedKey);
  });
  test('was updated with its latest entry', () =>
    expect([...xml().matchAll(/<updated>(.*)<\/updated>/g)].map(([, at]) => at)).toEqual([
      '2027-04-09T06:00:00Z',
      '2027-04-09T06:00:00Z',
      '2027-04-02T06:00:00Z',
    ]));
  test('was updated when it began where nothing has moved', () =>
    expect(atomFeed(on('2027-04-02', null), season)).toContain('<updated>2027-04-02T06:00:00Z</updated>'));
  test('has no markup and no forbidden character by any text', () =>
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const made = atomFeed(on('2027-04-02', null, told(text)), season);
        const [, title = '<'] = /<entry>[\s\S]*<title>([\s\S]*)<\/title>/.exec(made) ?? [];
        expect(title).not.toMatch(/[<>]|&(?!(amp|lt|gt|quot|#39);)/);
        // The characters of XML 1.0.
        expect(made).toMatch(/^[\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]*$/u);
      }),
    ));

  const PARSE = `import json, sys, xml.etree.ElementTree as E
atom = '{http://www.w3.org/2005/Atom}'
root = E.fromstring(sys.stdin.buffer.read())
json.dump([root.tag, root.findtext(atom + 'title'), [e.findtext(atom + 'title') for e in root.iter(atom + 'entry')],
  [[e.find(atom + n) is not None for n in ('id', 'title', 'updated', 'content')] for e in root.iter(atom + 'entry')]], sys.stdout)`;
  const hasPython = spawnSync('python3', ['-c', 'import xml.etree.ElementTree']).status === 0;
  test.skipIf(!hasPython)('is read back by the XML parser of Python, text by text', () => {
    const hostile = ['</title><entry/>', ']]> & <!-- "x" \'y\'', '&#x1f331; 🌱 Ümläut', 'a\u0000b\uffff\u202e'];
    const made = hostile.reduce<Digest | null>((kept, text, i) => on('2027-04-02', kept, told(text, i)), null)!;
    const { stdout, status } = spawnSync('python3', ['-c', PARSE], { input: atomFeed(made, season) });
    expect(status).toBe(0);
    expect(JSON.parse(stdout.toString())).toEqual([
      '{http://www.w3.org/2005/Atom}feed',
      `What moved: ${season.lawnName}`,
      [...hostile.slice(0, 3), 'ab'].reverse(),
      hostile.map(() => [true, true, true, true]),
    ]);
  });
});

describe('plan', () => {
  const NAMES = ['.changes.json', '-changes.txt', '-changes.xml'].map((end) => `out/site/saltwether-lawn${end}`);
  const plan = (cwd: string, lawn: string, asOf: string, ...flags: string[]) =>
    soilclock(cwd, ['plan', lawn, '--no-sheet', '--as-of', asOf, ...flags]);
  const textsIn = (cwd: string) => NAMES.map((name) => readFileSync(path.join(cwd, name), 'utf8'));
  const kept = (cwd: string) => JSON.parse(textsIn(cwd)[0]!) as Digest;

  test('tells of a first feed its count alone, and keeps nothing of it', async () => {
    const { cwd, lawn } = demoCopy();
    const { stdout } = await plan(cwd, lawn, '2027-04-02');
    const events = readFileSync(path.join(cwd, 'out/site/saltwether-lawn.ics'), 'utf8').match(/BEGIN:VEVENT/g)!.length;
    expect(stdout).toContain(`\nWhat subscribers will see change\n  A new calendar of ${events} events.\n\n`);
    expect(kept(cwd).entries).toEqual([]);
  });
  test('keeps what it prints, and writes the same bytes again', async () => {
    const { cwd, lawn } = demoCopy();
    await plan(cwd, lawn, '2027-04-02');
    await plan(cwd, lawn, '2027-04-20');
    const once = textsIn(cwd);
    expect(kept(cwd).entries.map(({ what }) => what)).toContain('moved');
    const { stdout } = await plan(cwd, lawn, '2027-04-20');
    expect(stdout).toContain('\n  Nothing but the soil of today.\n');
    expect(textsIn(cwd)).toEqual(once);
  });
  test('--dry-run says what would be seen, and --json the same, without a write', async () => {
    const { cwd, lawn } = demoCopy();
    await plan(cwd, lawn, '2027-04-02');
    const before = textsIn(cwd);
    const { stdout } = await plan(cwd, lawn, '2027-04-20', '--dry-run');
    const { changes } = JSON.parse((await plan(cwd, lawn, '2027-04-20', '--json')).stdout) as { changes: Told[] };
    const [, said = ''] = /\nWhat subscribers would see change\n([\s\S]*?)\n\n/.exec(stdout) ?? [];
    expect(changes.length).toBeGreaterThan(1);
    expect(said.replace(/\n {4}/g, ' ').split('\n')).toEqual(changes.map(({ text }) => `  ${text}`));
    expect(textsIn(cwd)).toEqual(before);
  });
  test('begins anew where what was kept is gone or spoilt, with the ledger as it was', async () => {
    const { cwd, lawn } = demoCopy();
    await plan(cwd, lawn, '2027-04-02');
    rmSync(path.join(cwd, 'out'), { recursive: true });
    await plan(cwd, lawn, '2027-04-20');
    expect(kept(cwd).entries.length).toBeGreaterThan(1);
    writeFileSync(path.join(cwd, NAMES[0]!), '{"kind":');
    expect((await plan(cwd, lawn, '2027-04-20')).code).toBe(0);
    expect(kept(cwd).entries).toEqual([]);
  });
  test('a dry run of a first feed writes none of it', async () => {
    const { cwd, lawn } = demoCopy();
    await plan(cwd, lawn, '2027-04-02', '--dry-run');
    expect(NAMES.filter((name) => existsSync(path.join(cwd, name)))).toEqual([]);
  });
});
