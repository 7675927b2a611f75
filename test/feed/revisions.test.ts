/** When an event counts as revised: SEQUENCE and LAST-MODIFIED move with its substance, and with nothing else. */
import { beforeAll, describe, expect, test } from 'vitest';
import { emptyLedger, type Ledger } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { demoCopy } from '../kit.ts';
import { AS_OF, bytesByUid, changed, feedOf, partsOf, planned, valueIn } from './feed.ts';

let season: Season;
let first: { readonly text: string; readonly ledger: Ledger };
const LATER = '2027-04-03T06:00:00Z';
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
  first = feedOf(season);
});

const BARRIER = 'summer-annual-barrier';
const uidOf = (step: string, kind = 'job') => `${season.feedKey}-2027-${step}-${kind}@soilclock.invalid`;
const soilUid = () => `${season.feedKey}-2027-soil@soilclock.invalid`;
const eventIn = (text: string, uid: string) => partsOf(text).parts.find((event) => valueIn(event, 'UID') === uid);
const revision = (text: string, uid: string) => {
  const event = eventIn(text, uid)!;
  return { sequence: Number(valueIn(event, 'SEQUENCE')), lastModified: valueIn(event, 'LAST-MODIFIED') };
};
const barrierAreas = (amount: string) =>
  season.applications.find(({ id }) => id === BARRIER)!.areas.map((area) => ({ ...area, amount }));
const dropped = () => changed(season, BARRIER, { date: null, start: null, end: null, status: 'dropped' });
/** UIDs whose bytes differ between two feeds. */
const differing = (a: string, b: string) => {
  const [before, after] = [bytesByUid(a), bytesByUid(b)];
  return [...new Set([...before.keys(), ...after.keys()])].filter((uid) => before.get(uid) !== after.get(uid)).sort();
};

describe('an unchanged season', () => {
  test('gives the same bytes with the same ledger, whatever the instant', () =>
    expect(feedOf(season, first.ledger, LATER).text).toBe(first.text));
  test('leaves the ledger as it is', () => expect(feedOf(season, first.ledger, LATER).ledger).toEqual(first.ledger));
  test('gives the same bytes when the command plans it twice', async () => {
    const { cwd, lawn } = demoCopy();
    const once = await planned(cwd, lawn, AS_OF);
    const twice = await planned(cwd, lawn, AS_OF);
    expect(twice.text).toBe(once.text);
  });
});

describe('a later day with the same dates', () => {
  const tomorrow = (): Season => ({
    ...season,
    asOf: '2027-04-03',
    now: ['Nothing new.'],
    today: { ...season.today, date: '2027-04-02', lines: ['Soil at 2 in on Apr 2: 50 °F.'] },
    applications: season.applications.map((one) => ({ ...one, why: [`Soil at 2 in on Apr 2: 50 °F.`] })),
  });
  test('changes the soil of today and not a byte of anything else', () =>
    expect(differing(first.text, feedOf(tomorrow(), first.ledger, LATER).text)).toEqual([soilUid()]));
  test('raises the SEQUENCE of the soil of today by one', () =>
    expect(revision(feedOf(tomorrow(), first.ledger, LATER).text, soilUid())).toEqual({
      sequence: 1,
      lastModified: '20270403T060000Z',
    }));
  test('moves the soil of today to the day', () =>
    expect(valueIn(eventIn(feedOf(tomorrow(), first.ledger, LATER).text, soilUid())!, 'DTSTART')).toBe('20270403'));
  test('planned by the command leaves every job alone that is still the same', async () => {
    const { cwd, lawn } = demoCopy();
    const before = await planned(cwd, lawn, '2027-04-02');
    const after = await planned(cwd, lawn, '2027-04-03');
    const substance = ({ applications }: Season) =>
      new Map(
        applications.map((one) => [
          one.id,
          JSON.stringify([one.date, one.start, one.end, one.status, one.areas, Math.round((one.inWindow ?? 0) * 10)]),
        ]),
      );
    const [old, now] = [substance(before.season), substance(after.season)];
    const same = [...old].filter(([id, one]) => now.get(id) === one).map(([id]) => uidOf(id));
    const touched = differing(before.text, after.text);
    expect(same.length).toBeGreaterThan(5);
    expect(same.filter((uid) => touched.includes(uid))).toEqual([]);
    expect(touched).toContain(soilUid());
  });
});

describe('a changed amount', () => {
  const more = () => changed(season, BARRIER, { areas: barrierAreas('12 lb') });
  test('raises SEQUENCE by one and sets LAST-MODIFIED to the instant of revision', () =>
    expect(revision(feedOf(more(), first.ledger, LATER).text, uidOf(BARRIER))).toEqual({
      sequence: 1,
      lastModified: '20270403T060000Z',
    }));
  test('raises LAST-MODIFIED by a second even where the instant of revision is older', () =>
    expect(revision(feedOf(more(), first.ledger, '2026-12-31T23:59:59Z').text, uidOf(BARRIER)).lastModified).toBe(
      '20270402T000001Z',
    ));
  test('raises LAST-MODIFIED by a second where the instant of revision is the same', () =>
    expect(revision(feedOf(more(), first.ledger, '2027-04-02T00:00:00Z').text, uidOf(BARRIER)).lastModified).toBe(
      '20270402T000001Z',
    ));
  test('leaves every other event alone', () =>
    expect(differing(first.text, feedOf(more(), first.ledger, LATER).text)).toEqual([uidOf(BARRIER)]));
  test('and changed back counts on', () => {
    const second = feedOf(more(), first.ledger, LATER);
    expect(revision(feedOf(season, second.ledger, '2027-04-04T06:00:00Z').text, uidOf(BARRIER)).sequence).toBe(2);
  });
});

describe('what makes a revision', () => {
  const raised = (next: Season, uid: string) => revision(feedOf(next, first.ledger, LATER).text, uid).sequence === 1;
  test.each([
    ['the day', { date: '2027-04-17', start: '2027-04-17T12:00:00Z', end: '2027-04-17T12:20:00Z' }],
    ['the hour', { start: '2027-04-11T13:00:00Z', end: '2027-04-11T13:20:00Z' }],
    ['the status', { status: 'open' as const }],
    ['a caution', { cautions: ['Another caution.'] }],
    ['the name', { name: 'Another name' }],
    ['odds by more than ten points', { inWindow: 0.31 }],
  ])('%s of a job', (_, change) => expect(raised(changed(season, BARRIER, change), uidOf(BARRIER))).toBe(true));
  test.each([
    ['reasons', { why: ['Another reason.'] }],
    ['the way to put it down', { how: ['Another way.'] }],
    ['what was not judged', { notJudged: ['frost'] }],
  ])('not: %s of a job', (_, change) => expect(raised(changed(season, BARRIER, change), uidOf(BARRIER))).toBe(false));
  test('not: odds within the same ten points', () => {
    const from = feedOf(changed(season, BARRIER, { inWindow: 0.76 }));
    const to = feedOf(changed(season, BARRIER, { inWindow: 0.84 }), from.ledger, LATER);
    expect(to.text).toBe(from.text);
  });
  test('a moved window, of the window alone', () => {
    const { window } = season.applications.find(({ id }) => id === BARRIER)!;
    const moved = { ...window, opens: { ...window.opens, p50: '2027-04-14' } };
    const next = feedOf(changed(season, BARRIER, { window: moved }), first.ledger, LATER);
    expect(differing(first.text, next.text)).toEqual([uidOf(BARRIER, 'window')]);
  });
  test('a job that moves keeps its UID', () => {
    const moved = { date: '2027-04-17', start: '2027-04-17T12:00:00Z', end: '2027-04-17T12:20:00Z' };
    const next = feedOf(changed(season, BARRIER, moved), first.ledger, LATER);
    expect(valueIn(eventIn(next.text, uidOf(BARRIER))!, 'DTSTART')).toBe('20270417T120000Z');
  });
  test('the words of an event are of its last revision', () => {
    const next = feedOf(changed(season, BARRIER, { why: ['Another reason.'] }), first.ledger, LATER);
    expect(next.text).toBe(first.text);
    expect(next.text).not.toContain('Another reason');
  });
});

describe('an event that goes and comes back', () => {
  test('stays in the ledger while its season lasts', () =>
    expect(feedOf(dropped(), first.ledger, LATER).ledger.events.map(({ uid }) => uid)).toContain(uidOf(BARRIER)));
  test('comes back unchanged with a SEQUENCE above that of its cancellation', () => {
    const second = feedOf(changed(season, BARRIER, { areas: barrierAreas('12 lb') }), first.ledger, LATER);
    const gone = feedOf(dropped(), second.ledger, '2027-04-04T06:00:00Z');
    const back = feedOf(
      changed(season, BARRIER, { areas: barrierAreas('12 lb') }),
      gone.ledger,
      '2027-04-05T06:00:00Z',
    );
    expect(revision(back.text, uidOf(BARRIER)).sequence).toBe(3);
  });
  test('comes back changed with a higher SEQUENCE', () => {
    const second = feedOf(changed(season, BARRIER, { areas: barrierAreas('12 lb') }), first.ledger, LATER);
    const gone = feedOf(dropped(), second.ledger, '2027-04-04T06:00:00Z');
    const back = feedOf(
      changed(season, BARRIER, { areas: barrierAreas('13 lb') }),
      gone.ledger,
      '2027-04-05T06:00:00Z',
    );
    expect(revision(back.text, uidOf(BARRIER)).sequence).toBe(3);
  });
  test('stays in the ledger through the season after', () => {
    const next: Season = { ...season, season: { ...season.season, year: 2028 }, applications: [] };
    expect(feedOf(next, first.ledger, LATER).ledger.events.map(({ uid }) => uid)).toContain(uidOf(BARRIER));
  });
  test('is forgotten two seasons after, once it has left the feed', () => {
    const in2029 = (asOf: string): Season => ({
      ...season,
      asOf,
      season: { ...season.season, year: 2029 },
      applications: [],
    });
    const cancelled = feedOf(in2029('2029-01-01'), first.ledger, LATER);
    const removed = feedOf(in2029('2029-02-01'), cancelled.ledger, LATER);
    expect(removed.ledger.events.map(({ uid }) => uid)).toContain(uidOf(BARRIER));
    const forgotten = feedOf(in2029('2029-02-02'), removed.ledger, LATER);
    expect(forgotten.ledger.events.map(({ uid }) => uid)).not.toContain(uidOf(BARRIER));
  });
});

test('over a spring of daily plans no SEQUENCE falls and no LAST-MODIFIED goes back', () => {
  let ledger: Ledger = emptyLedger;
  const seen = new Map<string, { sequence: number; lastModified: string }>();
  const amounts = ['20 lb', '21 lb', '21 lb', '20 lb', '20 lb', '22 lb'];
  for (const [i, amount] of amounts.entries()) {
    const day = `2027-04-${String(i + 2).padStart(2, '0')}`;
    const whole = changed({ ...season, asOf: day }, BARRIER, { areas: barrierAreas(amount) });
    const applications = i === 3 ? whole.applications.filter(({ id }) => id !== BARRIER) : whole.applications;
    const next = feedOf({ ...whole, applications }, ledger, `${day}T06:00:00Z`);
    ({ ledger } = next);
    for (const { uid, sequence, lastModified } of ledger.events) {
      const before = seen.get(uid);
      if (before) {
        expect(sequence).toBeGreaterThanOrEqual(before.sequence);
        expect(lastModified >= before.lastModified).toBe(true);
        expect(sequence > before.sequence).toBe(lastModified > before.lastModified);
      }
      seen.set(uid, { sequence, lastModified });
    }
  }
  expect(seen.get(uidOf(BARRIER))).toEqual({ sequence: 4, lastModified: '2027-04-07T06:00:00Z' });
  expect(seen.get(soilUid())?.sequence).toBe(5);
});
