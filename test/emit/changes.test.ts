/** What changed in the feed, in words, a line a change. */
import { beforeAll, describe, expect, test } from 'vitest';
import { changesInWords, isFirstFeed } from '../../src/emit/changes/words.ts';
import type { Change } from '../../src/emit/published-as.ts';
import type { LedgerEntry } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { AS_OF, changed, feedOf, planned } from '../feed/feed.ts';
import { demoCopy } from '../kit.ts';

const BARRIER = 'summer-annual-barrier';
const LATER = '2027-04-03T06:00:00Z';
let season: Season;
let ledger: ReturnType<typeof feedOf>['ledger'];
let job: LedgerEntry;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
  ({ ledger } = feedOf(season));
  job = entryOf('job');
});

const entryOf = (kind: string) => ledger.events.find((one) => one.step === BARRIER && one.kind === kind)!;
const later = (): Partial<LedgerEntry> => ({
  day: '2027-04-18',
  start: '2027-04-18T12:00:00Z',
  end: '2027-04-18T12:20:00Z',
});
const told = (what: Change['what'], before: LedgerEntry | null, after: LedgerEntry | null, of = season) =>
  changesInWords([{ what, before, after }], of);
const after = (change: Partial<Season['applications'][number]>) => {
  const next = changed(season, BARRIER, change);
  return changesInWords(feedOf(next, ledger, LATER).changes, next);
};
const moved = (change: Partial<Season['applications'][number]> = {}) =>
  told('moved', { ...job, day: '2027-04-11' }, { ...job, ...later() }, changed(season, BARRIER, change))[0]!;

describe('a job that moved', () => {
  test('says both days and by how many', () => {
    expect(moved().text).toMatch(/ Sun, Apr 11 → Sun, Apr 18 \(7 days later\)$/);
    expect(moved()).toMatchObject({ what: 'moved', before: '2027-04-11', after: '2027-04-18', days: 7 });
  });
  test('says why, as the season does', () =>
    expect(moved({ moved: { from: '2027-04-11', reason: 'too much rain' } }).text).toMatch(/\): too much rain\.$/));
  test('says why where it was due', () => expect(moved({ dueSince: '2027-04-11' }).text).toMatch(/\): .*Sun, Apr 11/));
  test('gives no reason that is of another day', () =>
    expect(moved({ moved: { from: '2027-04-10', reason: 'too much rain' }, dueSince: '2027-04-09' }).text).toMatch(
      /later\)$/,
    ));
  test('is told by its name without the amount', () => expect(moved().text).not.toContain(job.summary));
});

describe('a job that changed', () => {
  const partsOf = (change: Parameters<typeof after>[0]) => after(change).find(({ kind }) => kind === 'job')!.text;
  test.each([
    ['hours', { start: `${AS_OF}T13:00:00Z`, end: `${AS_OF}T13:20:00Z` }],
    ['status', { status: 'open' as const }],
    ['amount, now 12 lb', { inAll: '12 lb', secondPasses: [{ id: 'front', amount: '12 lb', dial: null }] as never }],
    ['cautions', { cautions: ['Another caution.'] }],
    ['odds or details', { dueSince: '2027-04-01' }],
  ])('in its %s says so and nothing else', (words, change) =>
    expect(partsOf(change)).toMatch(new RegExp(`, [^:]*: ${words}$`)),
  );
  test('in its odds says so where they are printed', () => {
    const says = (share: number) => ({
      ...job,
      day: '2027-04-11',
      description: `What to do\n\nWhy this day\n- Rain in 90 % of years.\n- Sun, Apr 11 lies inside in ${share}%.`,
    });
    expect(told('changed', says(80), says(50))[0]!.text).toMatch(/: odds$/);
  });
});

test('a done job is told as done, and its window not besides', () => {
  const done = { ...job, summary: 'Done: It', transparent: true };
  const window = { what: 'cancelled' as const, before: entryOf('window'), after: null };
  const lines = changesInWords([{ what: 'changed', before: job, after: done }, window], season);
  expect(lines.map(({ what, kind }) => [what, kind])).toEqual([['done', 'job']]);
});
test('a cancelled job says the day on which it stood', () =>
  expect(told('cancelled', job, { ...job, status: 'CANCELLED' })[0]).toMatchObject({
    what: 'cancelled',
    before: job.day,
    after: null,
    days: null,
  }));
test('a new job says its day', () => expect(told('new', null, job)[0]).toMatchObject({ what: 'new', after: job.day }));
test('a window says its first and last day', () => {
  const window = { ...entryOf('window'), start: '2027-04-01', day: '2027-04-01', end: '2027-04-21' };
  expect(told('new', null, window)[0]!.text).toMatch(/Thu, Apr 1 to Tue, Apr 20$/);
});
test('a window that closes later is told as changed in its days', () => {
  const window = entryOf('window');
  expect(told('changed', window, { ...window, end: '2027-05-30' })[0]!.text).toMatch(/: days$/);
});
test('the soil of today and what leaves the feed are not told', () => {
  const soil = ledger.events.find(({ kind }) => kind === 'soil')!;
  expect([...told('changed', soil, { ...soil, hash: 'other' }), ...told('removed', job, null)]).toEqual([]);
});
test('a line stays one line', () =>
  expect(told('new', null, { ...entryOf('window'), summary: 'A\n\nb' })[0]!.title).toBe('New: A b'));
test('only the first feed is the first', () => {
  const { changes, ledger: first } = feedOf(season);
  expect(isFirstFeed(changes, first.events)).toBe(true);
  expect(isFirstFeed(changes.slice(1), first.events)).toBe(false);
});
