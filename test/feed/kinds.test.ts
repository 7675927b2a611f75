/** What stands round the work in a feed: buying ahead, watering in, keep-off, soil checks; and which feeds carry it. */
import { beforeAll, describe, expect, test } from 'vitest';
import { eventsOf } from '../../src/emit/events/all.ts';
import type { Detail } from '../../src/model/reader.ts';
import type { Season } from '../../src/model/season.ts';
import { demoCopy } from '../kit.ts';
import { AS_OF, changed, planned } from './feed.ts';

let season: Season;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
});

const BARRIER = 'summer-annual-barrier';
const kindsIn = (detail: Detail) => [...new Set(eventsOf(season, detail).map(({ kind }) => kind))];
const event = (one: Season, kind: string, step = BARRIER) =>
  eventsOf(one, 'full').find((draft) => draft.kind === kind && draft.uid.includes(`-${step}-`))!;
const barrier = () => season.applications.find(({ id }) => id === BARRIER)!;
const water = (change: object) => changed(season, BARRIER, { waterIn: { ...barrier().waterIn!, ...change } });

describe('which feeds carry it', () => {
  test.each([
    ['quiet', ['job', 'soil']],
    ['normal', ['buying', 'job', 'keep-off', 'soil', 'water', 'window']],
    ['full', ['buying', 'job', 'keep-off', 'soil', 'soil-check', 'water', 'window']],
  ] as const)('%s', (detail, kinds) => expect(kindsIn(detail).sort()).toEqual(kinds));
  test('no UID is used twice', () => {
    const uids = eventsOf(season, 'full').map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(uids.length);
  });
});

describe('buying ahead', () => {
  const needed = (neededOn: string, asOf: string): Season => ({
    ...season,
    asOf,
    shopping: season.shopping.slice(0, 1).map((one) => ({ ...one, neededOn })),
  });
  const dayOf = (one: Season) => event(one, 'buying', 'barrier-granule').day;
  test.each([
    ['a week before the work', '2027-04-02', '2027-04-04'],
    ['on that day', '2027-04-04', '2027-04-04'],
    ['once that is over, the day before', '2027-04-05', '2027-04-10'],
    ['for days on end', '2027-04-10', '2027-04-10'],
    ['then the day itself', '2027-04-11', '2027-04-11'],
  ])('%s', (_, asOf, day) => expect(dayOf(needed('2027-04-11', asOf))).toBe(day));
  test('products of the same day are one event', () => {
    const both = season.shopping.slice(0, 2).map((one) => ({ ...one, neededOn: '2027-05-10' }));
    const events = eventsOf({ ...season, shopping: both }, 'normal').filter(({ kind }) => kind === 'buying');
    expect(events.map(({ day }) => day)).toEqual(['2027-05-03']);
    for (const { name } of both) expect(events[0]!.description).toContain(name);
  });
  test('what the shelf covers is not bought', () => {
    const covered = { ...season, shopping: season.shopping.map((one) => ({ ...one, neededOn: null })) };
    expect(eventsOf(covered, 'normal').filter(({ kind }) => kind === 'buying')).toEqual([]);
  });
});

describe('watering in', () => {
  test('goes from the day of the work to the last day that the label gives', () =>
    expect(event(season, 'water')).toMatchObject({ start: '2027-04-11', end: '2027-04-26' }));
  test('names what rain has left', () => expect(event(water({ fallenMm: 2.54 }), 'water').summary).toContain('0.4 in'));
  test('is done by rain that is enough', () => {
    const { summary } = event(water({ fallenMm: 12.7 }), 'water');
    expect(summary).not.toBe(event(season, 'water').summary);
    expect(summary).not.toContain('0 in');
  });
  test('counts more rain as a revision only where it shows', () => {
    const substance = (fallenMm: number) => event(water({ fallenMm }), 'water').substance;
    expect(substance(2.54)).toEqual(substance(2.55));
    expect(substance(2.54)).not.toEqual(substance(5.08));
  });
  test('has a word for a lawn without irrigation', () =>
    expect(event(water({ irrigated: false }), 'water').description.length).toBeGreaterThan(
      event(season, 'water').description.length,
    ));
  test('without a time is on the day of the work alone', () =>
    expect(event(water({ withinDays: null, by: null }), 'water').end).toBe('2027-04-12'));
});

describe('keep-off', () => {
  test('says what the label entry says, on the day of the work', () => {
    const { day, end, description } = event(season, 'keep-off');
    expect([day, end]).toEqual(['2027-04-11', '2027-04-12']);
    expect(description).toContain(barrier().reEntry);
  });
  test('is not guessed where the label entry says nothing', () =>
    expect(event(changed(season, BARRIER, { reEntry: null }), 'keep-off')).toBeUndefined());
});

describe('a soil check', () => {
  test('stands a week before the middle opening', () => {
    const opens = barrier().window.opens.p50!;
    expect(Date.parse(opens) - Date.parse(event(season, 'soil-check').day)).toBe(7 * 86_400_000);
  });
  test('stands only where the window opens by the soil', () => {
    const checked = eventsOf(season, 'full').flatMap(({ kind, step }) => (kind === 'soil-check' ? [step] : []));
    const bySoil = season.applications.filter(
      ({ soilChecks, status }) => soilChecks.length > 0 && status !== 'dropped' && status !== 'skipped',
    );
    expect(checked.sort()).toEqual(bySoil.map(({ id }) => id).sort());
    expect(checked.length).toBeLessThan(season.applications.length);
  });
});
