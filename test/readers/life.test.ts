/** Each reader's feed is revised on its own, ends in words, and is taken up again where its ledger is lost. */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { endedCalendar } from '../../src/emit/readers/ended.ts';
import { emptyLedger, type Ledger } from '../../src/model/ledger.ts';
import { readLawn } from '../../src/read/lawn.ts';
import { planned } from '../feed/feed.ts';
import { lawnText } from '../kit.ts';
import { change, demoWith, eventsIn, feed, fileOf, kindsIn, ledgerAt, name, plan, raw } from './kit.ts';

const sequences = (text: string): Record<string, number> =>
  Object.fromEntries(eventsIn(text).map(({ uid, sequence }) => [uid, sequence]));
const ledgerOf = (cwd: string): Ledger => JSON.parse(readFileSync(ledgerAt(cwd), 'utf8')) as Ledger;
const LAWN = 'programs/demo/lawn.yaml';
const AS_OF = '2027-04-02';

describe('revised on its own', () => {
  const HELPER = 'crew: { as: helper }, street: { as: public }';

  test('the same plan changes no byte of any feed', async () => {
    const cwd = demoWith(HELPER);
    await plan(cwd, AS_OF);
    const before = [undefined, 'crew', 'street'].map((id) => raw(cwd, id));
    await plan(cwd, AS_OF);
    expect([undefined, 'crew', 'street'].map((id) => raw(cwd, id))).toEqual(before);
  });
  test('what changes for the owner alone moves no SEQUENCE of a helper', async () => {
    const cwd = demoWith(HELPER);
    await plan(cwd, AS_OF);
    const [own, crew] = [sequences(raw(cwd)), raw(cwd, 'crew')];
    change(cwd, 'programs/demo/my-products.yaml', (text) => text.replace('size: 18 lb', 'size: 9 lb'));
    await plan(cwd, AS_OF);
    expect(sequences(raw(cwd))).not.toEqual(own);
    expect(raw(cwd, 'crew')).toBe(crew);
  });
  test('what changes for one reader moves no SEQUENCE of another', async () => {
    const cwd = demoWith('crew: { as: helper }, north: { as: helper }');
    await plan(cwd, AS_OF);
    const [own, crew] = [raw(cwd), raw(cwd, 'crew')];
    name(cwd, 'crew: { as: helper }, north: { as: helper, detail: quiet, units: metric }');
    await plan(cwd, AS_OF);
    expect([raw(cwd), raw(cwd, 'crew')]).toEqual([own, crew]);
    expect(
      eventsIn(raw(cwd, 'north')).filter(({ kind, status }) => kind === 'water' && status !== 'CANCELLED'),
    ).toEqual([]);
  });
  test('no event has the UID of another feed', async () => {
    const cwd = demoWith('crew: { as: helper }, north: { as: helper }, partner: { as: owner }, street: { as: public }');
    await plan(cwd, AS_OF);
    const uids = [undefined, 'crew', 'north', 'partner', 'street'].flatMap((id) =>
      eventsIn(raw(cwd, id)).map(({ uid }) => uid),
    );
    expect(new Set(uids).size).toBe(uids.length);
  });
  test("a reader's day is the owner's", async () => {
    const cwd = demoWith('crew: { as: helper, units: metric, language: en-GB }');
    await plan(cwd, AS_OF);
    const starts = (text: string) => [...text.matchAll(/^DTSTART:(.*)\r$/gm)].map(([, start]) => start).sort();
    expect(starts(raw(cwd, 'crew'))).toEqual(starts(raw(cwd)));
  });
});

describe('told in their own way', () => {
  test('in their units', async () => {
    const cwd = demoWith('crew: { as: helper, units: metric }');
    await plan(cwd, AS_OF);
    expect(feed(cwd, 'crew')).toMatch(/^SUMMARY:First autumn feed: [\d.]+ kg\r$/m);
  });
  test('under the title that the lawn file gives', async () => {
    const cwd = demoWith('crew: { as: helper, title: North side }');
    await plan(cwd, AS_OF);
    expect(feed(cwd, 'crew')).toMatch(/^X-WR-CALNAME:North side\r$/m);
  });
  test('a dry run writes none', async () => {
    const cwd = demoWith('crew: { as: helper }');
    await plan(cwd, AS_OF, '--dry-run');
    expect([existsSync(fileOf(cwd)), existsSync(fileOf(cwd, 'crew'))]).toEqual([false, false]);
  });
});

describe('a reader who is taken out', () => {
  const gone = async () => {
    const cwd = demoWith('crew: { as: helper }, street: { as: public }');
    await plan(cwd, AS_OF);
    const before = eventsIn(raw(cwd, 'crew'));
    name(cwd, 'street: { as: public }');
    await plan(cwd, '2027-04-03');
    return { cwd, before };
  };

  test('sees what was to come called off, and that the calendar has ended', async () => {
    const { cwd } = await gone();
    const open = eventsIn(raw(cwd, 'crew')).filter(
      ({ status, text }) => status !== 'CANCELLED' && !text.includes('SUMMARY:Done'),
    );
    expect(open.map(({ kind }) => kind)).toEqual(['ended']);
  });
  test('with SEQUENCEs that rise', async () => {
    const { cwd, before } = await gone();
    const now = sequences(raw(cwd, 'crew'));
    const called = before.filter(({ kind, text }) => kind === 'job' && !text.includes('SUMMARY:Done'));
    expect(called.length).toBeGreaterThan(5);
    for (const { uid, sequence } of called) expect(now[uid]).toBe(sequence + 1);
  });
  test('after thirty days only that it has ended, and what was done', async () => {
    const { cwd } = await gone();
    await plan(cwd, '2027-05-04');
    expect(kindsIn(raw(cwd, 'crew'))).toEqual(['ended', 'job']);
    expect(eventsIn(raw(cwd, 'crew')).filter(({ status }) => status === 'CANCELLED')).toEqual([]);
  });
  test('is forgotten when the next season is over too, and nothing is written any more', async () => {
    const { cwd } = await gone();
    const { season } = await planned(cwd, LAWN, '2027-04-03');
    const inYear = (year: number, ledger: Ledger) =>
      endedCalendar(
        { ...season, asOf: `${year}-06-01`, season: { ...season.season, year } },
        { ledger, revisedAt: `${year}-06-01T00:00:00Z`, feed: 'crew' },
      );
    const next = inYear(2028, ledgerOf(cwd));
    expect(kindsIn(next.text ?? '')).toEqual(['ended']);
    const last = inYear(2029, next.ledger);
    expect([last.text, last.ledger.readers]).toEqual([null, { street: next.ledger.readers.street }]);
  });
  test('and comes back goes on counting', async () => {
    const { cwd } = await gone();
    const ended = sequences(raw(cwd, 'crew'));
    name(cwd, 'crew: { as: helper }');
    await plan(cwd, '2027-04-04');
    const back = eventsIn(raw(cwd, 'crew'));
    expect(back.map(({ kind }) => kind)).not.toContain('ended');
    const jobs = back.filter(({ kind, text }) => kind === 'job' && !text.includes('SUMMARY:Done'));
    for (const { uid, sequence } of jobs) expect(sequence).toBeGreaterThan(ended[uid] ?? Number.NaN);
  });
});

test('a reader who may see less from now on keeps nothing of what was told before', async () => {
  const cwd = demoWith('north: { as: owner }');
  await plan(cwd, AS_OF);
  expect(feed(cwd, 'north')).toContain('Waited a week');
  name(cwd, 'north: { as: public }');
  await plan(cwd, AS_OF);
  expect(kindsIn(raw(cwd, 'north'))).toEqual(['soil', 'window']);
  expect(feed(cwd, 'north')).not.toContain('Waited a week');
});

describe('a ledger that is lost', () => {
  test("is taken from every reader's feed", async () => {
    const cwd = demoWith('crew: { as: helper }, street: { as: public }');
    await plan(cwd, '2027-03-20');
    await plan(cwd, AS_OF);
    const before = ledgerOf(cwd);
    rmSync(ledgerAt(cwd));
    const { stderr } = await plan(cwd, AS_OF);
    expect(stderr).toContain('[ledger-rebuilt]');
    const standing = (ledger: Ledger) =>
      Object.entries(ledger.readers).map(([id, list]) => [id, list.filter(({ removedOn }) => removedOn === null)]);
    expect(standing(ledgerOf(cwd))).toEqual(standing(before));
  });
});

describe('two feeds of one file name', () => {
  const ONE = 'b: { as: helper }';
  const twin = (cwd: string) => {
    change(cwd, LAWN, (text) => text.replace('id: saltwether-lawn', 'id: saltwether').replace('482akxt7', 'otherkey'));
    rmSync(ledgerAt(cwd));
  };

  test('a reader does not write over the feed of another lawn', async () => {
    const cwd = demoWith(ONE);
    await plan(cwd, AS_OF);
    const before = raw(cwd);
    twin(cwd);
    change(cwd, LAWN, (text) => text.replace('{ b: ', '{ lawn: '));
    const { code, stderr } = await plan(cwd, AS_OF);
    expect([code, stderr.includes('[feed-taken]')]).toEqual([1, true]);
    expect(raw(cwd)).toBe(before);
  });
  test('nor a lawn over the feed of a reader', async () => {
    const cwd = demoWith(ONE);
    await plan(cwd, AS_OF);
    const before = raw(cwd, 'b');
    rmSync(ledgerAt(cwd));
    change(cwd, LAWN, (text) =>
      text.replace('id: saltwether-lawn', 'id: saltwether-lawn-b').replace('482akxt7', 'otherkey'),
    );
    const { code, stderr } = await plan(cwd, AS_OF);
    expect([code, stderr.includes('[feed-taken]')]).toEqual([1, true]);
    expect(raw(cwd, 'b')).toBe(before);
  });
});

describe('a wrong reader', () => {
  const problems = (reader: string) =>
    readLawn(lawnText(`feed:\n  key: 7f3k9q2m\n  readers:\n    ${reader}\n`), 'lawn.yaml').problems.map(
      ({ code, line, column }) => [code, line, column],
    );
  const LINE = lawnText('feed:\n').split('\n').indexOf('feed:') + 4;

  test.each([
    ['crew: { as: guest }', 'unknown-word', 17],
    ['crew: { as: helper, detail: loud }', 'unknown-word', 33],
    ['crew: { as: helper, language: xx }', 'unknown-word', 35],
    ['crew: { as: helper, colour: red }', 'unknown-key', 25],
    ['crew: { detail: quiet }', 'missing-key', 11],
    ['"Crew one": { as: helper }', 'wrong-type', 17],
  ])('%s', (reader, code, column) => expect(problems(reader)).toEqual([[code, LINE, column]]));
});

test("a season of somebody's lawn is told to nobody as the public", async () => {
  const cwd = demoWith('crew: { as: helper }');
  const { season } = await planned(cwd, LAWN, AS_OF);
  expect(() =>
    calendarOf(season, { ledger: emptyLedger, revisedAt: '2027-04-02T06:00:00Z', detail: 'normal', reader: 'public' }),
  ).toThrow(RangeError);
});
test('a season as a helper sees it, by the API', async () => {
  const cwd = demoWith('crew: { as: helper }');
  const { season } = await planned(cwd, LAWN, AS_OF);
  const options = { ledger: emptyLedger, revisedAt: '2027-04-02T06:00:00Z', detail: 'full', reader: 'helper' } as const;
  expect(kindsIn(calendarOf(season, options).text)).not.toContain('buying');
});
