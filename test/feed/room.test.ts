/** A feed stays under 1 MB and 1000 events by construction, and what gives way does so in order. */
import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger, type Ledger } from '../../src/model/ledger.ts';
import type { Detail } from '../../src/model/reader.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { demoCopy, tidy } from '../kit.ts';
import { AS_OF, partsOf, planned, valueIn } from './feed.ts';

const { cwd, lawn } = demoCopy();
const { season } = await planned(cwd, lawn, AS_OF);
tidy();
const BARRIER = season.applications.find(({ id }) => id === 'summer-annual-barrier') as Application;

/** The barrier many times over, each a day later than the one before; every part of its text as long as it may be. */
const copies = (count: number, letter = 'é', change: (i: number) => Partial<Application> = () => ({})): Season => ({
  ...season,
  applications: Array.from({ length: count }, (_, i): Application => {
    const day = new Date(Date.parse('2027-04-11T00:00:00Z') + i * 86_400_000).toISOString().slice(0, 10);
    return {
      ...BARRIER,
      id: `copy-${i}`,
      date: day,
      start: `${day}T13:00:00Z`,
      end: `${day}T14:00:00Z`,
      waterIn: BARRIER.waterIn && { ...BARRIER.waterIn, by: day },
      how: [letter.repeat(1500)],
      soilChecks: [{ depthM: 0.05, rule: 'it is warm' }],
      ...change(i),
    };
  }),
});
const publish = (one: Season, ledger: Ledger = emptyLedger, detail: Detail = 'full') =>
  calendarOf(one, { ledger, revisedAt: `${one.asOf}T06:00:00Z`, detail });
const bytesOf = (text: string) => Buffer.byteLength(text);
const kindsIn = (text: string) =>
  new Set(partsOf(text).parts.map((event) => (valueIn(event, 'X-SOILCLOCK-LEDGER') ?? '').split(' ')[0]));

const big = publish(copies(200));

describe('a lawn with 200 steps', () => {
  test('would be larger than 1 MB with every event', () =>
    expect(bytesOf(publish(copies(80)).text) * 2.5).toBeGreaterThan(1e6));
  test('has a feed under 1 MB', () => expect(bytesOf(big.text)).toBeLessThan(1e6));
  test('has one that uses most of it', () => expect(bytesOf(big.text)).toBeGreaterThan(9e5));
  test('loses its soil checks first', () => expect(kindsIn(big.text)).not.toContain('soil-check'));
  test('keeps the soil of today', () => expect(kindsIn(big.text)).toContain('soil'));
  test('keeps the work that is nearest', () => expect(big.text).toContain('copy-0-job'));
  test('has nothing in its ledger that was never published', () =>
    expect(big.ledger.events.filter(({ uid }) => !big.text.replace(/\r\n[ \t]/g, '').includes(uid))).toEqual([]));
  test('planned again with that ledger is the same bytes', () =>
    expect(publish(copies(200), big.ledger).text).toBe(big.text));
});

test('emoji of four bytes in every text do not take it over 1 MB', () =>
  expect(bytesOf(publish(copies(200, '🌱')).text)).toBeLessThan(1e6));
test('has at most 999 events, however short', () => {
  const short = publish(copies(400, 'a', () => ({ how: [], cautions: [], why: [], soilChecks: [], waterIn: null })));
  expect(bytesOf(short.text)).toBeLessThan(1e6);
  expect(partsOf(short.text).parts.length).toBeLessThan(1000);
});

describe('a feed that grows too large', () => {
  const small = publish(copies(60));
  const grown = publish({ ...copies(250), asOf: '2027-04-03' }, small.ledger);
  const entry = (kind: string) => grown.ledger.events.filter((one) => one.kind === kind);

  test('lets go what it had published, without calling it off', () => {
    expect(entry('soil-check').map(({ removedOn }) => removedOn)).toEqual(Array(60).fill('2027-04-03'));
    expect(entry('soil-check').filter(({ cancelledOn }) => cancelledOn !== null)).toEqual([]);
  });
  test('tells it once as removed', () => {
    const of = ({ changes }: typeof grown) =>
      changes.filter(({ what, before }) => what === 'removed' && before?.kind === 'soil-check').length;
    expect(of(grown)).toBe(60);
    expect(of(publish({ ...copies(250), asOf: '2027-04-04' }, grown.ledger))).toBe(0);
  });
  test('takes it back when there is room, with SEQUENCE counting on', () => {
    const back = publish({ ...copies(60), asOf: '2027-04-04' }, grown.ledger);
    const checks = back.ledger.events.filter(({ kind }) => kind === 'soil-check');
    expect(checks.map(({ sequence, removedOn }) => [sequence, removedOn])).toEqual(checks.map(() => [1, null]));
  });
});

test('what was called off gives way before a soil check that stands', () => {
  const before = publish(copies(250, 'a', () => ({ how: ['Short.'] })));
  const after = publish({ ...copies(70, 'é'), asOf: '2027-04-03' }, before.ledger);
  const standing = after.ledger.events.filter(({ removedOn }) => removedOn === null);
  const off = (one: typeof after) => one.changes.filter(({ what }) => what === 'cancelled').length;
  expect(off(after)).toBeLessThan(off(publish({ ...copies(1), asOf: '2027-04-03' }, before.ledger)));
  expect(standing.filter(({ kind }) => kind === 'soil-check')).toHaveLength(70);
});

test('work that is done goes after windows and before work to come', () => {
  const done = (i: number): Partial<Application> =>
    i < 60 ? { status: 'done', used: ['é'.repeat(1900)] } : { how: ['é'.repeat(1500)] };
  const { ledger } = publish(copies(260, 'é', done));
  const jobs = ledger.events.filter(({ kind }) => kind === 'job');
  expect(ledger.events.filter(({ kind }) => kind === 'window')).toEqual([]);
  expect(jobs.filter(({ transparent }) => transparent)).toEqual([]);
  expect(jobs.length).toBeGreaterThan(100);
});
