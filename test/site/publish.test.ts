/** A publication as a site of files: what is written, what stays, what goes. */
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { faultsOf } from '../feed/rules.ts';
import { LONG, soilclock, tidy } from '../kit.ts';
import { BASE, change, filesIn, linksOf, program, publication, publishIn, siteFile, siteFolder } from './kit.ts';

afterAll(tidy);

describe('a site of three places', LONG, () => {
  let cwd: string;
  let first: ReturnType<typeof publishIn>;
  beforeAll(() => {
    cwd = siteFolder(publication(`${BASE}embed: true\nchangelog: ["2027-03-01: half rate in spring"]\n`));
    first = publishIn(cwd);
  });

  test('ends well', () => expect([first.code, first.report.problems.map(({ code }) => code)]).toEqual([0, []]));
  test('has a list, and for each place a page, a feed, a digest twice and a small page', () =>
    expect([...filesIn(cwd).keys()]).toEqual([
      ...['abbey'].flatMap((id) => filesOf(id)),
      'index.html',
      ...['mill', 'north-shore'].flatMap((id) => filesOf(id)),
    ]));
  test('names every file that it has written', () =>
    expect(first.report.written).toEqual([...filesIn(cwd).keys()].sort()));
  test('every link leads to a file of it', () => {
    const files = filesIn(cwd);
    const links = [...files].flatMap(([name, text]) =>
      name.endsWith('.html') ? linksOf(name, text, 'https://lawns.example/green/') : [],
    );
    expect(links.length).toBeGreaterThan(20);
    expect(links.filter((link) => !files.has(link))).toEqual([]);
  });
  test('every feed keeps the rules on feeds', () => {
    for (const [name, text] of filesIn(cwd)) if (name.endsWith('.ics')) expect(faultsOf(text)).toEqual({});
  });
  test('a place takes the program for its grass', () => {
    expect(siteFile(cwd, 'mill/mill.ics')).toContain('Feed of bluegrass');
    expect(siteFile(cwd, 'abbey/abbey.ics')).toContain('Feed of fescue');
  });
  test('a page tells the cautions of the work to come', () =>
    expect(siteFile(cwd, 'mill/index.html')).toContain('Keep it off bluegrass walks.'));
  test('a page says that the label goes first', () =>
    expect(siteFile(cwd, 'mill/index.html')).toContain('The label in hand, local rules'));
  test('a page tells author, licence and what changed', () => {
    for (const told of ['Somebody of bluegrass', 'CC-BY-4.0', '2027-03-01: half rate in spring'])
      expect(siteFile(cwd, 'mill/index.html')).toContain(told);
  });
  test('a name is text and never markup', () => {
    for (const page of ['index.html', 'abbey/index.html', 'abbey/embed.html'])
      expect(siteFile(cwd, page)).not.toContain('<b>');
    expect(siteFile(cwd, 'index.html')).toContain('Abbey &lt;b&gt;&amp; well&lt;/b&gt;');
  });
  test('the list stands in the order of the names', () =>
    expect([...siteFile(cwd, 'index.html').matchAll(/<li><a href="([^/]*)/g)].map(([, id]) => id)).toEqual([
      'abbey',
      'north-shore',
      'mill',
    ]));
  test.each([
    ['the calendar of the device', 'href="webcal://lawns.example/green/mill/mill.ics"'],
    [
      'Google, by a webcal address',
      'href="https://calendar.google.com/calendar/r?cid=webcal%3A%2F%2Flawns.example%2Fgreen%2Fmill%2Fmill.ics"',
    ],
    ['any other, by its address', 'href="https://lawns.example/green/mill/mill.ics"'],
    ['a camera', '<svg class="qr" role="img"'],
    ['a page of other people', '&lt;iframe src=&quot;https://lawns.example/green/mill/embed.html&quot;'],
  ])('a page leads to %s', (_, link) => expect(siteFile(cwd, 'mill/index.html')).toContain(link));

  test('a second run writes nothing', () => {
    const before = stamps(cwd);
    const { code, report } = publishIn(cwd);
    expect([code, report.written, report.removed]).toEqual([0, [], []]);
    expect(stamps(cwd)).toEqual(before);
  });
  test('another day rewrites pages and no identity of an event', () => {
    const uids = (text: string) => [...text.matchAll(/^UID:.*$/gm)].map(([line]) => line).sort();
    const before = uids(siteFile(cwd, 'mill/mill.ics'));
    publishIn(cwd, '2027-04-05');
    expect(uids(siteFile(cwd, 'mill/mill.ics'))).toEqual(before);
  });
  test('an edit of one program rewrites only its places', () => {
    change(cwd, 'bluegrass.yaml', (text) => text.replace('closes: { date: 04-20 }', 'closes: { date: 04-24 }'));
    const { report } = publishIn(cwd, '2027-04-05');
    expect([...new Set(report.written.map((name) => name.split('/')[0]))]).toEqual(['mill']);
  });
  test('the digest tells what moved', () => expect(siteFile(cwd, 'mill/changes.txt')).toContain('Feed of bluegrass'));
  test('a file that was deleted is written again', () => {
    rmSync(path.join(cwd, 'site/mill/index.html'));
    expect(publishIn(cwd, '2027-04-05').report.written).toEqual(['mill/index.html']);
  });
  test('a dry run writes nothing and says what it would', () => {
    change(cwd, 'fescue.yaml', (text) => text.replace('Feed of fescue', 'Spring feed'));
    const before = stamps(cwd);
    const { report } = publishIn(cwd, '2027-04-05', { dryRun: true });
    expect(report.written).toContain('abbey/index.html');
    expect(stamps(cwd)).toEqual(before);
  });
});

const filesOf = (id: string) =>
  ['changes.txt', 'changes.xml', 'embed.html', 'index.html']
    .map((f) => `${id}/${f}`)
    .concat(`${id}/${id}.ics`)
    .sort();

/** When each file of the folder was written. */
const stamps = (cwd: string) =>
  [...filesIn(cwd, '.').keys()].map((name) => [
    name,
    statSync(path.join(cwd, name)).mtimeMs,
    statSync(path.join(cwd, name)).ino,
  ]);

describe('without an address', LONG, () => {
  test('pages have no link to subscribe by, no QR code and no snippet', () => {
    const cwd = siteFolder(publication('embed: true\n'));
    publishIn(cwd);
    const page = siteFile(cwd, 'mill/index.html');
    for (const absent of ['webcal', 'https:', '<svg', 'iframe']) expect(page).not.toContain(absent);
    expect(page).toContain('href="mill.ics"');
  });
  test('one on the command line goes before that of the file', () => {
    const cwd = siteFolder();
    publishIn(cwd, '2027-04-02', { baseUrl: 'https://other.example' });
    expect(siteFile(cwd, 'mill/index.html')).toContain('webcal://other.example/mill/mill.ics');
  });
  test.each(['ftp://lawns.example/', 'lawns.example', 'https://a.example/?x=1', 'https://a"b.example/'])(
    '%s is refused',
    async (address) => {
      const cwd = siteFolder();
      const { code, stdout } = await soilclock(cwd, ['publish', 'publish.yaml', '--base-url', address, '--json']);
      expect([code, JSON.parse(stdout).problems[0].code]).toEqual([1, 'site-base-url']);
    },
  );
});

describe('a place that is no longer named', LONG, () => {
  let cwd: string;
  const uidsOf = (text: string, status: string) =>
    [...text.matchAll(/BEGIN:VEVENT.*?END:VEVENT/gs)].filter(([event]) => event.includes(`STATUS:${status}`)).length;
  beforeAll(() => {
    cwd = siteFolder();
    publishIn(cwd, '2027-04-02');
    change(cwd, 'publish.yaml', (text) => text.replace(/^.*id: mill.*\n/m, ''));
  });

  test('has its work to come called off and says that it has ended', () => {
    const { code, report } = publishIn(cwd, '2027-04-03');
    expect([code, report.ended]).toEqual([0, ['mill']]);
    const feed = siteFile(cwd, 'mill/mill.ics');
    expect(uidsOf(feed, 'CANCELLED')).toBeGreaterThan(1);
    expect(feed).toContain('-ended@soilclock.invalid');
    expect(faultsOf(feed)).toEqual({});
  });
  test('is in no list, and its page says that it is over', () => {
    expect(siteFile(cwd, 'index.html')).not.toContain('mill');
    expect(siteFile(cwd, 'mill/index.html')).toContain('no longer published');
  });
  test('is not touched again while it stands there', () =>
    expect(publishIn(cwd, '2027-04-03').report.written).toEqual([]));
  test('stands there for 29 days more', () => {
    publishIn(cwd, '2027-05-02');
    expect([...filesIn(cwd).keys()]).toContain('mill/mill.ics');
  });
  test('goes after 30 days, its folder too', () => {
    publishIn(cwd, '2027-05-03');
    expect([...filesIn(cwd).keys()].filter((name) => name.includes('mill'))).toEqual([]);
    expect(statSync(path.join(cwd, 'site/mill'), { throwIfNoEntry: false })).toBeUndefined();
  });
  test('comes back with the numbers of its events going on', () => {
    change(cwd, 'publish.yaml', () => publication(BASE));
    publishIn(cwd, '2027-05-04');
    const numbers = [...siteFile(cwd, 'mill/mill.ics').matchAll(/^SEQUENCE:(\d+)/gm)].map(([, n]) => Number(n));
    expect(Math.max(...numbers)).toBeGreaterThan(1);
  });
});

describe("what is nobody else's", LONG, () => {
  test('a file that the site did not write stays', () => {
    const cwd = siteFolder(publication(BASE), { 'site/mill/photo.jpg': 'x', 'site/robots.txt': 'y' });
    publishIn(cwd, '2027-04-02');
    change(cwd, 'publish.yaml', (text) => text.replace(/^.*id: mill.*\n/m, ''));
    publishIn(cwd, '2027-04-03');
    publishIn(cwd, '2027-06-03');
    expect([...filesIn(cwd).keys()].filter((name) => /mill|robots/.test(name))).toEqual([
      'mill/photo.jpg',
      'robots.txt',
    ]);
  });
  test('a ledger that would have files removed outside of the site is refused', () => {
    const cwd = siteFolder();
    publishIn(cwd);
    change(cwd, 'publish.ledger.json', (text) => text.replace('"index.html"', '"../publish.yaml.txt"'));
    expect(publishIn(cwd).report.problems.map(({ code }) => code)).toEqual(['site-ledger-damaged']);
  });
});

describe('where something is wrong', LONG, () => {
  test('a place that could not be read is not taken for removed', () => {
    const cwd = siteFolder();
    publishIn(cwd);
    change(cwd, 'publish.yaml', (text) => text.replace('latitude: 39.1, ', ''));
    const { code, report } = publishIn(cwd, '2027-04-03');
    expect([code, report.ended, report.problems.map((one) => one.code)]).toEqual([1, [], ['site-place-where']]);
    expect(siteFile(cwd, 'mill/mill.ics')).not.toContain('STATUS:CANCELLED');
  });
  test('a program that cannot be read keeps back its places alone', () => {
    const cwd = siteFolder();
    publishIn(cwd);
    writeFileSync(
      path.join(cwd, 'bluegrass.yaml'),
      program('bluegrass', 'kentucky-bluegrass').replace('work: aerate', 'work: areate'),
    );
    const before = siteFile(cwd, 'mill/index.html');
    const { code, report } = publishIn(cwd, '2027-04-03');
    expect([code, report.written.some((name) => name.startsWith('abbey'))]).toEqual([1, true]);
    expect(siteFile(cwd, 'mill/index.html')).toBe(before);
  });
  test('a damaged ledger of a place keeps back that place', () => {
    const cwd = siteFolder();
    publishIn(cwd);
    writeFileSync(path.join(cwd, 'publish.ledger/mill.json'), '{');
    const { code, report } = publishIn(cwd, '2027-04-03');
    expect([code, report.problems.map((one) => one.code)]).toEqual([1, ['site-ledger-damaged']]);
    expect(readFileSync(path.join(cwd, 'publish.ledger/mill.json'), 'utf8')).toBe('{');
  });
});

describe('on threads', LONG, () => {
  test.each([1, 2, 3])('%i of them write the same bytes as none', (workers) => {
    const [here, there] = [siteFolder(), siteFolder()];
    publishIn(here, '2027-04-02', { workers: 0 });
    const { code } = publishIn(there, '2027-04-02', { workers });
    expect(code).toBe(0);
    expect(filesIn(there, '.')).toEqual(filesIn(here, '.'));
  });
});
