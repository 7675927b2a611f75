/** A ledger that was lost is read back from the feed: what was written with it is what comes back. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { rebuiltFrom } from '../../src/emit/ledger/rebuilt.ts';
import type { Ledger } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { LONG, runs } from '../kit.ts';
import { awkwardDemo, changed, feedOf } from './feed.ts';

let season: Season;
let first: ReturnType<typeof feedOf>;
beforeAll(async () => {
  ({ season } = await awkwardDemo());
  first = feedOf(season);
});

const BARRIER = 'summer-annual-barrier';
const LATER = '2027-04-03T06:00:00Z';
/** A season in which a job is called off, one is overdue and one is revised. */
const lived = () => {
  const [job] = season.applications.filter(
    ({ id, date, status }) => id !== BARRIER && date !== null && status !== 'done',
  );
  const without = { ...season, applications: season.applications.filter(({ id }) => id !== job!.id) };
  return feedOf(changed(without, BARRIER, { dueSince: '2027-03-28', inWindow: 0.11 }), first.ledger, LATER);
};

describe('rebuilt from its feed', () => {
  test('a first ledger is the same', () => expect(rebuiltFrom(first.text)).toEqual(first.ledger));
  test('is the same bytes', () => expect(JSON.stringify(rebuiltFrom(first.text))).toBe(JSON.stringify(first.ledger)));
  test('a ledger with revised, overdue and cancelled events is the same', () => {
    const { text, ledger } = lived();
    expect(ledger.events.map(({ status }) => status)).toContain('CANCELLED');
    expect(ledger.events.map(({ dueSince }) => dueSince)).toContain('2027-03-28');
    expect(rebuiltFrom(text)).toEqual(ledger);
  });
  test('leads to the same next feed as the ledger itself', () => {
    const { text, ledger } = lived();
    const next = { ...season, asOf: '2027-04-04' };
    expect(feedOf(next, rebuiltFrom(text) as Ledger, '2027-04-04T06:00:00Z').text).toBe(
      feedOf(next, ledger, '2027-04-04T06:00:00Z').text,
    );
  });
  test('any text that a person writes comes back as another reader has it', LONG, () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (name) => {
        const { text } = feedOf(changed(season, BARRIER, { name, how: [name], cautions: [name] }));
        const read = new ICAL.Component(ICAL.parse(text))
          .getAllSubcomponents('vevent')
          .map((event) => ['uid', 'summary', 'description'].map((key) => event.getFirstPropertyValue(key)));
        const ours = rebuiltFrom(text)?.events.map(({ uid, summary, description }) => [uid, summary, description]);
        expect(ours).toEqual(read.sort(([a], [b]) => (String(a) < String(b) ? -1 : 1)));
      }),
      { numRuns: runs(100), seed: 20270402 },
    );
  });
  test.each([1, 5, 1440, 4320, 10_080, 10_085])('a reminder of %i minutes', (minutes) => {
    const { text, ledger } = feedOf({ ...season, remindersMin: [minutes] });
    expect(rebuiltFrom(text)).toEqual(ledger);
  });
});

describe('is nothing', () => {
  test('of an empty text', () => expect(rebuiltFrom('')).toBeNull());
  test('of a feed that is cut short', () => expect(rebuiltFrom(first.text.slice(0, -20))).toBeNull());
  test("of another program's feed", () =>
    expect(rebuiltFrom(first.text.replace(/X-SOILCLOCK-LEDGER/, 'X-OTHER'))).toBeNull());
  test('where an event has lost its SEQUENCE', () =>
    expect(rebuiltFrom(first.text.replace(/SEQUENCE:0/, 'SEQUENCE:x'))).toBeNull());
});
