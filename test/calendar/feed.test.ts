/** The one feed of several lawns, as the command writes it. */
import { existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Ledger } from '../../src/model/ledger.ts';
import { bytesByUid, partsOf, valueIn } from '../feed/feed.ts';
import { faultsOf } from '../feed/rules.ts';
import { soilclock } from '../kit.ts';
import { AS_OF, CALENDAR, calendarText, edit, FEED, LAWNS, LEDGER, lawnsFolder, plan, read } from './lawns.ts';

const titles = (text: string): string[] => partsOf(text).parts.map((event) => valueIn(event, 'SUMMARY') ?? '');
const withKey = (text: string): string[] => [...bytesByUid(text).keys()];

describe('a calendar of two lawns', () => {
  let cwd: string;
  let text: string;
  beforeAll(async () => {
    cwd = lawnsFolder();
    await plan(cwd, AS_OF);
    text = read(cwd, FEED);
  });

  test("has every lawn's jobs and windows, the lawn's name in front of each title", () =>
    expect(titles(text).sort()).toEqual([
      'Plot 7: Autumn feed',
      'Plot 7: Spring feed',
      'Plot 7: Window: Autumn feed',
      'Plot 7: Window: Spring feed',
      'Soil today: Plot 7 44 °F\\, The hill 44 °F',
      'The hill: Autumn feed',
      'The hill: Spring feed',
      'The hill: Window: Autumn feed',
      'The hill: Window: Spring feed',
    ]));
  test('is called by the name of the calendar', () => expect(valueIn(partsOf(text), 'X-WR-CALNAME')).toBe('My lawns'));
  test('tells the soil of all lawns in one event', () =>
    expect(withKey(text).filter((uid) => uid.includes('-soil@'))).toHaveLength(1));
  test('has no key and no id of anybody in it', () => {
    for (const secret of ['4h8r2k9w', 'keyplot7', 'keyhill', 'plot-7']) expect(text).not.toContain(secret);
  });
  test('breaks no rule on feeds', () => expect(faultsOf(text)).toEqual({}));
  test("writes each lawn's own feed and ledger as a plan of it would", async () => {
    const alone = lawnsFolder();
    await soilclock(alone, ['plan', LAWNS[1], '--as-of', AS_OF]);
    for (const file of ['out/site/hill.ics', 'hill/lawn.ledger.json']) expect(read(cwd, file)).toBe(read(alone, file));
  });
  test('is the same bytes on the same inputs, and so is its ledger', async () => {
    const before = [text, read(cwd, LEDGER)];
    await plan(cwd, AS_OF);
    expect([read(cwd, FEED), read(cwd, LEDGER)]).toEqual(before);
  });
  test('changes nothing but the soil on a day on which nothing else has moved', async () => {
    await plan(cwd, '2027-03-21');
    const after = bytesByUid(read(cwd, FEED));
    const changed = [...bytesByUid(text)].filter(([uid, bytes]) => after.get(uid) !== bytes);
    expect(changed.map(([uid]) => uid.replace(/^\w+/, ''))).toEqual(['-2027-soil@soilclock.invalid']);
  });
});

describe('who reads it', () => {
  test('has its own units', async () => {
    const cwd = lawnsFolder(calendarText(LAWNS.slice(0, 2), 'display: { units: metric }\n'));
    await plan(cwd, AS_OF);
    expect(titles(read(cwd, FEED))).toContainEqual(expect.stringMatching(/^Soil today: Plot 7 \S+ °C/));
    expect(read(cwd, 'out/site/hill.ics')).toContain('44 °F');
  });
  test('sees as much as the calendar says', async () => {
    const cwd = lawnsFolder(calendarText(LAWNS.slice(0, 2), 'detail: quiet\n'));
    await plan(cwd, AS_OF);
    expect(titles(read(cwd, FEED)).filter((title) => title.includes('Window'))).toEqual([]);
  });
  test('sees jobs alone as a helper, and no reasons', async () => {
    const cwd = lawnsFolder(calendarText(LAWNS.slice(0, 2), 'as: helper\n'));
    await plan(cwd, AS_OF);
    const text = read(cwd, FEED);
    expect([titles(text).length, text.includes('Window'), text.includes('Why this day')]).toEqual([5, false, false]);
  });
  test('keeps nothing of what the owner was told, once it is a helper', async () => {
    const cwd = lawnsFolder();
    const entry = '- { date: 2027-04-01, step: spring-feed, note: the gate code }\n';
    writeFileSync(path.join(cwd, 'plot-7/lawn.journal.yaml'), entry);
    await plan(cwd, AS_OF);
    await plan(cwd, '2027-04-01');
    expect(read(cwd, FEED)).toContain('gate code');
    edit(cwd, CALENDAR, 'lawns:', 'as: helper\nlawns:');
    await plan(cwd, '2027-04-02');
    const beside = ['out/site/my-lawns-changes.txt', 'out/site/my-lawns-changes.xml', 'out/site/my-lawns.changes.json'];
    const before = new Set(withKey(read(cwd, FEED)));
    const { events } = JSON.parse(read(cwd, LEDGER)) as Ledger;
    expect(events.filter(({ uid, removedOn }) => removedOn === null && !before.has(uid))).toEqual([]);
    for (const file of [FEED, ...beside]) expect(read(cwd, file)).not.toMatch(/gate code|Window/);
  });
  test('reads the id with the name where two lawns have the same', async () => {
    const cwd = lawnsFolder();
    edit(cwd, LAWNS[1], 'The hill', 'Plot 7');
    await plan(cwd, AS_OF);
    expect(titles(read(cwd, FEED))).toEqual(
      expect.arrayContaining(['Plot 7 (plot-7): Spring feed', 'Plot 7 (hill): Spring feed']),
    );
  });
});

describe('a question', () => {
  test.each([[['--dry-run']], [['--json']]])('%j writes nothing', async (flags) => {
    const cwd = lawnsFolder();
    await soilclock(cwd, ['plan', CALENDAR, '--as-of', AS_OF, ...flags]);
    const files = [FEED, LEDGER, 'out/site/hill.ics', 'hill/lawn.ledger.json'];
    expect(files.filter((file) => existsSync(path.join(cwd, file)))).toEqual([]);
  });
  test('with --json and a folder writes there', async () => {
    const cwd = lawnsFolder();
    await soilclock(cwd, ['plan', CALENDAR, '--as-of', AS_OF, '--json', '--out', 'there']);
    for (const file of ['there/my-lawns.ics', 'there/hill.ics']) expect(read(cwd, file)).toContain('BEGIN:VEVENT');
  });
});

test('without --as-of each lawn is planned for today in its own zone', async () => {
  const cwd = lawnsFolder();
  edit(cwd, LAWNS[1], 'America/New_York', 'Pacific/Auckland');
  const noon = Date.UTC(2027, 2, 20, 16);
  const { stdout } = await soilclock(cwd, ['plan', CALENDAR, '--json'], noon);
  const { seasons, asOf } = JSON.parse(stdout) as { seasons: { asOf: string }[]; asOf: string };
  expect([...seasons.map((one) => one.asOf), asOf]).toEqual(['2027-03-20', '2027-03-21', '2027-03-21']);
});
