/** What becomes of an event that a plan no longer has: called off for a month, kept where the work was done, never forgotten. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Ledger } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { demoCopy, runs } from '../kit.ts';
import { AS_OF, changed, feedOf, partsOf, planned, valueIn } from './feed.ts';

let season: Season;
let first: ReturnType<typeof feedOf>;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
  first = feedOf(season);
});

const BARRIER = 'summer-annual-barrier';
const uidOf = (step: string, kind = 'job', year = 2027) =>
  `${season.feedKey}-${year}-${step}-${kind}@soilclock.invalid`;
const dropped = (asOf: string, step = BARRIER): Season => {
  const { window } = season.applications.find(({ id }) => id === step)!;
  const none = { p10: null, p50: null, p90: null, usual: null };
  const gone = { date: null, start: null, end: null, status: 'dropped', window: { ...window, opens: none } } as const;
  return { ...changed(season, step, gone), asOf };
};
const without = (asOf: string, step: string): Season => ({
  ...season,
  asOf,
  applications: season.applications.filter(({ id }) => id !== step),
});
const at = (day: string) => `${day}T06:00:00Z`;
const next = (plan: Season, ledger: Ledger) => feedOf(plan, ledger, at(plan.asOf));
const eventIn = (text: string, uid: string) => partsOf(text).parts.find((event) => valueIn(event, 'UID') === uid);
const changeOf = ({ changes }: ReturnType<typeof feedOf>, uid: string) =>
  changes.find(({ before, after }) => (before ?? after)?.uid === uid);
const entryIn = (ledger: Ledger, uid: string) => ledger.events.find((entry) => entry.uid === uid)!;

test('the window of work that is done leaves at once: nothing was called off', () => {
  const done = { ...changed(season, BARRIER, { status: 'done', date: '2027-04-11' }), asOf: '2027-04-12' };
  const after = next(done, first.ledger);
  expect(eventIn(first.text, uidOf(BARRIER, 'window'))).toBeDefined();
  expect(eventIn(after.text, uidOf(BARRIER, 'window'))).toBeUndefined();
  expect(entryIn(after.ledger, uidOf(BARRIER, 'window'))).toMatchObject({ cancelledOn: null, removedOn: '2027-04-12' });
});

describe('a dropped job', () => {
  const cancelled = () => next(dropped('2027-04-03'), first.ledger);
  const event = () => eventIn(cancelled().text, uidOf(BARRIER))!;

  test('is CANCELLED', () => expect(valueIn(event(), 'STATUS')).toBe('CANCELLED'));
  test('says so in its title', () => expect(valueIn(event(), 'SUMMARY')).toMatch(/^Cancelled: /));
  test('blocks no time', () => expect(valueIn(event(), 'TRANSP')).toBe('TRANSPARENT'));
  test('reminds nobody', () => {
    expect(eventIn(first.text, uidOf(BARRIER))!.parts).not.toEqual([]);
    expect(event().parts).toEqual([]);
  });
  test('keeps its hours', () =>
    expect(valueIn(event(), 'DTSTART')).toBe(valueIn(eventIn(first.text, uidOf(BARRIER))!, 'DTSTART')));
  test('no longer says what to do', () => {
    expect(valueIn(eventIn(first.text, uidOf(BARRIER))!, 'DESCRIPTION')).toContain('What to do');
    expect(valueIn(event(), 'DESCRIPTION')).not.toContain('What to do');
  });
  test('raises SEQUENCE by one', () => expect(valueIn(event(), 'SEQUENCE')).toBe('1'));
  test('raises LAST-MODIFIED', () => expect(valueIn(event(), 'LAST-MODIFIED')).toBe('20270403T060000Z'));
  test('raises LAST-MODIFIED where the instant of revision is older too', () => {
    const { text } = feedOf(dropped('2027-04-03'), first.ledger, '2026-12-31T00:00:00Z');
    expect(valueIn(eventIn(text, uidOf(BARRIER))!, 'LAST-MODIFIED')).toBe('20270402T000001Z');
  });
  test('takes its window along', () =>
    expect(valueIn(eventIn(cancelled().text, uidOf(BARRIER, 'window'))!, 'STATUS')).toBe('CANCELLED'));
  test('is told as cancelled', () => expect(changeOf(cancelled(), uidOf(BARRIER))?.what).toBe('cancelled'));
  test('stays the same bytes for 29 days more, and is told once', () => {
    const last = next(dropped('2027-05-02'), cancelled().ledger);
    expect(eventIn(last.text, uidOf(BARRIER))).toEqual(event());
    expect(changeOf(last, uidOf(BARRIER))).toBeUndefined();
  });
  test('leaves the feed after 30 days', () =>
    expect(eventIn(next(dropped('2027-05-03'), cancelled().ledger).text, uidOf(BARRIER))).toBeUndefined());
  test('is told once as removed', () => {
    const gone = next(dropped('2027-05-03'), cancelled().ledger);
    expect(changeOf(gone, uidOf(BARRIER))).toMatchObject({ what: 'removed', after: null });
    expect(changeOf(next(dropped('2027-05-04'), gone.ledger), uidOf(BARRIER))).toBeUndefined();
  });
  test('that was never published is not cancelled', () =>
    expect(eventIn(next(dropped(AS_OF), { ...first.ledger, events: [] }).text, uidOf(BARRIER))).toBeUndefined());
});

describe('a job that comes back', () => {
  test('while it is cancelled: SEQUENCE rises, the title is as it was, it is told as new', () => {
    const cancelled = next(dropped('2027-04-03'), first.ledger);
    const back = next({ ...season, asOf: '2027-04-04' }, cancelled.ledger);
    expect(valueIn(eventIn(back.text, uidOf(BARRIER))!, 'SEQUENCE')).toBe('2');
    expect(valueIn(eventIn(back.text, uidOf(BARRIER))!, 'SUMMARY')).not.toMatch(/^Cancelled/);
    expect(changeOf(back, uidOf(BARRIER))?.what).toBe('new');
  });
  test('after it has left: SEQUENCE goes on from where it was, it is told as new', () => {
    const cancelled = next(dropped('2027-04-03'), first.ledger);
    const gone = next(dropped('2027-05-03'), cancelled.ledger);
    const back = next({ ...season, asOf: '2027-05-04' }, gone.ledger);
    expect(valueIn(eventIn(back.text, uidOf(BARRIER))!, 'SEQUENCE')).toBe('2');
    expect(changeOf(back, uidOf(BARRIER))).toMatchObject({ what: 'new', before: null });
  });
  test('and goes again is cancelled anew, for 30 days from then', () => {
    const cancelled = next(dropped('2027-04-03'), first.ledger);
    const back = next({ ...season, asOf: '2027-04-20' }, cancelled.ledger);
    const again = next(dropped('2027-04-25'), back.ledger);
    expect(entryIn(again.ledger, uidOf(BARRIER))).toMatchObject({ sequence: 3, cancelledOn: '2027-04-25' });
    expect(eventIn(next(dropped('2027-05-20'), again.ledger).text, uidOf(BARRIER))).toBeDefined();
  });
});

describe('done work that the plan no longer has', () => {
  const done = () => season.applications.find(({ status }) => status === 'done')!;
  const later = (asOf: string, year: number): Season => ({
    ...without(asOf, done().id),
    season: { ...season.season, year },
  });
  const uid = () => uidOf(done().id, 'job', done().season);
  const days = (count: number) =>
    new Date(Date.parse(`${done().date}T00:00:00Z`) + count * 86_400_000).toISOString().slice(0, 10);

  test('stays through its season, byte for byte', () => {
    const autumn = next(later('2027-11-20', done().season), first.ledger);
    expect(eventIn(autumn.text, uid())).toEqual(eventIn(first.text, uid()));
  });
  test('stays for 90 days when its season is over', () =>
    expect(eventIn(next(later(days(90), done().season + 1), first.ledger).text, uid())).toBeDefined());
  test('leaves after 90 days when its season is over, without being cancelled', () => {
    const gone = next(later(days(91), done().season + 1), first.ledger);
    expect(eventIn(gone.text, uid())).toBeUndefined();
    expect(changeOf(gone, uid())?.what).toBe('removed');
  });
  test('is cancelled where the journal has taken it back and the step has no day', () => {
    const { text } = next(dropped('2027-04-03', done().id), first.ledger);
    expect(valueIn(eventIn(text, uid())!, 'STATUS')).toBe('CANCELLED');
  });
});

describe('what is no work', () => {
  const soil = () => `${season.feedKey}-2027-soil@soilclock.invalid`;
  const in2028 = () => next({ ...season, asOf: '2028-01-02', season: { ...season.season, year: 2028 } }, first.ledger);
  test('leaves at once when its season is over', () => {
    expect(eventIn(first.text, soil())).toBeDefined();
    expect(eventIn(in2028().text, soil())).toBeUndefined();
  });
  test('is told as removed', () => expect(changeOf(in2028(), soil())?.what).toBe('removed'));
});

test('an entry that has left carries no words any more, so that a ledger stays small', () => {
  const cancelled = next(dropped('2027-04-03'), first.ledger);
  const { ledger } = next(dropped('2027-05-03'), cancelled.ledger);
  expect(entryIn(ledger, uidOf(BARRIER))).toMatchObject({ description: '', removedOn: '2027-05-03', sequence: 1 });
});

test('whatever comes and goes, SEQUENCE and LAST-MODIFIED rise together and never fall, and what the plan has stands in the feed', () => {
  const steps = () => season.applications.filter(({ date }) => date !== null).map(({ id }) => id);
  const day = (count: number) =>
    new Date(Date.parse(`${AS_OF}T00:00:00Z`) + count * 86_400_000).toISOString().slice(0, 10);
  fc.assert(
    fc.property(
      fc.array(fc.record({ after: fc.integer({ min: 0, max: 40 }), has: fc.infiniteStream(fc.boolean()) }), {
        maxLength: 12,
      }),
      (plans) => {
        let { ledger } = first;
        let count = 0;
        for (const { after, has } of plans) {
          count += after;
          const kept = new Set(steps().filter(() => has.next().value));
          const applications = season.applications.filter(({ id, date }) => date === null || kept.has(id));
          const before = new Map(ledger.events.map((entry) => [entry.uid, entry]));
          const { text, ledger: revised } = next({ ...season, asOf: day(count), applications }, ledger);
          ledger = revised;
          for (const { uid, sequence, lastModified } of ledger.events) {
            const old = before.get(uid);
            if (old === undefined) continue;
            expect(sequence - old.sequence).toBeGreaterThanOrEqual(0);
            expect(lastModified > old.lastModified).toBe(sequence > old.sequence);
          }
          expect([...before.keys()].filter((uid) => !ledger.events.some((entry) => entry.uid === uid))).toEqual([]);
          const standing = partsOf(text).parts.filter((event) => valueIn(event, 'STATUS') !== 'CANCELLED');
          for (const id of kept)
            expect(standing.filter((event) => valueIn(event, 'UID')?.includes(`-${id}-job@`)).length).toBeGreaterThan(
              0,
            );
        }
      },
    ),
    { numRuns: runs(60), seed: 20270402 },
  );
});
