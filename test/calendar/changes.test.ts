/** Lawns that come, go and cannot be planned, and what becomes of their events in the one feed. */
import { rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { bytesByUid, partsOf, valueIn } from '../feed/feed.ts';
import { soilclock } from '../kit.ts';
import { agrees } from '../shell/plan-kit.ts';
import { AS_OF, brief, CALENDAR, calendarText, edit, FEED, LAWNS, LEDGER, lawnsFolder, plan, read } from './lawns.ts';

const events = (cwd: string, title: string | RegExp) =>
  partsOf(read(cwd, FEED)).parts.filter((event) => valueIn(event, 'SUMMARY')?.match(title));
const only = (cwd: string, title: string | RegExp, name: string) =>
  events(cwd, title).map((event) => valueIn(event, name));
const bytesOf = (cwd: string, title: string): string[] =>
  [...bytesByUid(read(cwd, FEED)).values()].filter((event) => event.includes(`SUMMARY:${title}`));
const lawns = (cwd: string, refs: readonly string[]) => writeFileSync(path.join(cwd, CALENDAR), calendarText(refs));
const [PLOT, HILL] = LAWNS;
const BREAK = ['grass: tall-fescue', 'grass: moss'] as const;

const soilclockJson = (cwd: string, asOf: string, ...flags: string[]) =>
  soilclock(cwd, ['plan', CALENDAR, '--as-of', asOf, '--json', ...flags]);

/** A calendar that has published two lawns. */
async function published(): Promise<string> {
  const cwd = lawnsFolder();
  await plan(cwd, AS_OF);
  return cwd;
}

describe('a lawn that is taken out', () => {
  test('has its work called off, without alarms', async () => {
    const cwd = await published();
    expect(events(cwd, /^The hill: Spring feed/)[0]?.parts).toHaveLength(1);
    lawns(cwd, [PLOT]);
    await plan(cwd, '2027-03-21');
    const gone = events(cwd, /The hill: Spring feed/);
    expect([only(cwd, /The hill/, 'STATUS'), gone[0]?.parts]).toEqual([Array(4).fill('CANCELLED'), []]);
  });
  test('leaves the events of the others as they were', async () => {
    const cwd = await published();
    const before = bytesOf(cwd, 'Plot 7');
    lawns(cwd, [PLOT]);
    await plan(cwd, '2027-03-21');
    expect(bytesOf(cwd, 'Plot 7')).toEqual(before);
  });
  test('is gone after 30 days', async () => {
    const cwd = await published();
    lawns(cwd, [PLOT]);
    for (const asOf of ['2027-03-21', '2027-04-19']) await plan(cwd, asOf);
    expect(events(cwd, /The hill/)).toHaveLength(4);
    await plan(cwd, '2027-04-20');
    expect(events(cwd, /The hill/)).toEqual([]);
  });
  test('keeps what was done there', async () => {
    const cwd = lawnsFolder();
    writeFileSync(path.join(cwd, 'hill/lawn.journal.yaml'), '- { date: 2027-04-01, step: spring-feed }\n');
    await plan(cwd, '2027-04-02');
    const before = bytesOf(cwd, 'The hill: Done: Spring feed');
    lawns(cwd, [PLOT]);
    await plan(cwd, '2027-04-03');
    expect([before.length, bytesOf(cwd, 'The hill: Done: Spring feed')]).toEqual([1, before]);
  });
  test('stands again when it comes back, and its SEQUENCE has gone on', async () => {
    const cwd = await published();
    lawns(cwd, [PLOT]);
    await plan(cwd, '2027-03-21');
    lawns(cwd, [PLOT, HILL]);
    await plan(cwd, '2027-03-22');
    const [job] = events(cwd, /^The hill: Spring feed/);
    expect([valueIn(job!, 'STATUS'), valueIn(job!, 'SEQUENCE')]).toEqual(['TENTATIVE', '2']);
  });
  test('is told by its name', async () => {
    const cwd = await published();
    lawns(cwd, [PLOT]);
    const { stdout } = await plan(cwd, '2027-03-21');
    expect(stdout).toContain('Cancelled: The hill: Spring feed');
  });
});

describe('a lawn that comes in', () => {
  test('is told, and nothing else is', async () => {
    const cwd = await published();
    lawns(cwd, LAWNS);
    const { stdout } = await plan(cwd, '2027-03-21');
    const told = stdout.split('\n').filter((line) => /^ {2}(New|Moved|Changed|Cancelled)/.test(line));
    expect(told.map((line) => line.replace(/,.*/, '')).sort()).toEqual([
      '  New: By the pond: Autumn feed',
      '  New: By the pond: Spring feed',
      '  New: By the pond: Window: Autumn feed',
      '  New: By the pond: Window: Spring feed',
    ]);
  });
  test('stands in the digest beside the feed', async () => {
    const cwd = await published();
    lawns(cwd, LAWNS);
    await plan(cwd, '2027-03-21');
    expect(read(cwd, 'out/site/my-lawns-changes.txt')).toContain('- New: By the pond: Spring feed');
    expect(read(cwd, 'out/site/my-lawns-changes.xml')).toContain('New: By the pond: Spring feed');
  });
});

describe('a lawn that cannot be planned', () => {
  test('keeps its events as they were, while the others go on', async () => {
    const cwd = await published();
    const before = bytesOf(cwd, 'The hill');
    edit(cwd, HILL, ...BREAK);
    const { stdout } = await plan(cwd, '2027-03-21', 1);
    expect(stdout).toContain('My lawns: 2 lawns, 1 without a new plan');
    expect([before.length, bytesOf(cwd, 'The hill')]).toEqual([4, before]);
    expect(only(cwd, /^Soil/, 'DTSTART')).toEqual(['20270321']);
  });
  test.each([
    ['an error in its file', (cwd: string) => edit(cwd, HILL, ...BREAK), 'unknown-word hill/lawn.yaml:8:8'],
    [
      'an error in its program',
      (cwd: string) => edit(cwd, 'hill/program.yaml', '09-01', '09-31'),
      'not-a-date hill/program.yaml:14:30',
    ],
    ['no file', (cwd: string) => rmSync(path.join(cwd, HILL)), 'file-missing my-lawns.yaml:6:27'],
    ['no YAML', (cwd: string) => writeFileSync(path.join(cwd, HILL), 'a: [\n'), 'yaml-syntax hill/lawn.yaml:2:1'],
    [
      "another lawn's id",
      (cwd: string) => edit(cwd, HILL, 'id: hill', 'id: plot-7'),
      'calendar-same-id my-lawns.yaml:6:27',
    ],
  ])('with %s is told at its place, with exit 1', async (_, spoil, problem) => {
    const cwd = await published();
    spoil(cwd);
    const { code, stdout } = await soilclockJson(cwd, '2027-03-21');
    const found = (JSON.parse(stdout) as { problems: Parameters<typeof brief>[0][] }).problems.map(brief);
    expect([code, found]).toEqual([1, expect.arrayContaining([problem, 'calendar-kept my-lawns.yaml:6:27'])]);
  });
  test('and a problem of no file names the lawn that it is of', async () => {
    const cwd = lawnsFolder();
    const step = 'work: spread\n    apply: { pesticide: pre-emergent }';
    edit(cwd, 'hill/program.yaml', 'work: spread', step);
    const { stdout } = await soilclockJson(cwd, AS_OF);
    const found = (JSON.parse(stdout) as { problems: Parameters<typeof brief>[0][] }).problems.map(brief);
    expect(found).toContain('no-label hill/lawn.yaml');
  });
  test('with a warning counts as one under --strict', async () => {
    const { code, stdout } = await soilclockJson(await published(), '2027-03-21', '--strict');
    expect([code, stdout.includes('"calendar-kept"')]).toEqual([1, true]);
  });
  test('lets a lawn that is taken out wait, since nobody knows whose its events are', async () => {
    const cwd = lawnsFolder(calendarText(LAWNS));
    await plan(cwd, AS_OF);
    const before = bytesOf(cwd, 'By the pond');
    edit(cwd, HILL, ...BREAK);
    lawns(cwd, [PLOT, HILL]);
    await plan(cwd, '2027-03-21', 1);
    expect(bytesOf(cwd, 'By the pond')).toEqual(before);
    edit(cwd, HILL, BREAK[1], BREAK[0]);
    await plan(cwd, '2027-03-22');
    expect(new Set(only(cwd, /By the pond/, 'STATUS'))).toEqual(new Set(['CANCELLED']));
  });
  test('leaves feed and ledger untouched where there is no other', async () => {
    const cwd = await published();
    const before = [read(cwd, FEED), read(cwd, LEDGER)];
    for (const file of [PLOT, HILL]) edit(cwd, file, ...BREAK);
    await plan(cwd, '2027-03-21', 1);
    expect([read(cwd, FEED), read(cwd, LEDGER)]).toEqual(before);
  });
});

describe('a ledger that is lost', () => {
  test('is taken from the feed: the same bytes again', async () => {
    const cwd = await published();
    await plan(cwd, '2027-03-21');
    const before = read(cwd, FEED);
    rmSync(path.join(cwd, LEDGER));
    const { stderr } = await plan(cwd, '2027-03-21');
    expect([read(cwd, FEED), stderr.includes('[ledger-rebuilt]')]).toEqual([before, true]);
    agrees(cwd, FEED, LEDGER);
  });
});

test('a file of another feed in its place is not written over', async () => {
  const cwd = await published();
  edit(cwd, CALENDAR, '4h8r2k9w', '7c7c7c7c');
  rmSync(path.join(cwd, LEDGER));
  const before = read(cwd, FEED);
  const { stderr } = await plan(cwd, '2027-03-21', 1);
  expect([read(cwd, FEED), stderr.includes('[feed-taken]')]).toEqual([before, true]);
});
