/** The hours of a job: dew, heat, wet leaves, sunrise, the working hours, civil daylight, and days on which clocks change. */
import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../../src/base/day.ts';
import { sunTimes } from '../../src/climate/day-length.ts';
import type { Lawn } from '../../src/model/lawn.ts';
import { hoursOn, type Stretch } from '../../src/schedule/hours/hours-on.ts';
import { application, feed, PRODUCTS, plan, work } from './plan-kit.ts';

const ZONE = 'America/New_York';
const MINUTE = 60_000;
const lawnAt = (latitude: number, longitude: number, between?: readonly [number, number]) =>
  ({ location: { latitude, longitude }, ...(between && { working: { between } }) }) as unknown as Lawn;
const day = (text: string) => parseDay(text) as Day;
const SOUGHT = { right: 'any', minutes: 60, hot: false, byItself: false, taken: [] } as const;
const LONG = [0, 24 * 60] as const;
/** Hours at a place of the Ohio valley. */
const hours = (on: string, more: object = {}, between: readonly [number, number] | undefined = undefined) =>
  hoursOn(day(on), lawnAt(39, -84, between), ZONE, { ...SOUGHT, ...more });
const sunOn = (on: string) => sunTimes(day(on), { latitude: 39, longitude: -84 }, ZONE);
const clock = (instant: number) =>
  new Date(instant).toLocaleTimeString('en-GB', { timeZone: ZONE, hour: '2-digit', minute: '2-digit' });
const minutesAfter = (instant: number, since: number | null) => (instant - (since as number)) / MINUTE;

describe('dry leaves', () => {
  test('from two to three hours after sunrise', () => {
    const late = minutesAfter(hours('2027-09-15', { right: 'dry' }, LONG).start, sunOn('2027-09-15').sunrise);
    expect(late).toBeGreaterThanOrEqual(120);
    expect(late).toBeLessThanOrEqual(180);
  });
  test('at the end of working hours that are over before', () =>
    expect(clock(hours('2027-09-15', { right: 'dry' }, [7 * 60, 9 * 60]).end)).toMatch(/^08:5[05]|^09:00/));
});

describe('wet leaves', () => {
  test('from civil dawn on', () => {
    const late = minutesAfter(hours('2027-05-15', { right: 'wet' }, LONG).start, sunOn('2027-05-15').dawn);
    expect(late).toBeGreaterThanOrEqual(0);
    expect(late).toBeLessThan(5);
  });
  test('not before the working hours', () =>
    expect(clock(hours('2027-05-15', { right: 'wet' }, [8 * 60, 18 * 60]).start)).toBe('08:00'));
});

describe('out of the heat', () => {
  const noon = (on: string) => ((sunOn(on).sunrise as number) + (sunOn(on).sunset as number)) / 2;
  const hot = { right: 'cool', hot: true };
  test('on a hot day done two hours before the sun stands highest', () =>
    expect(minutesAfter(hours('2027-07-15', hot, LONG).end, noon('2027-07-15'))).toBeLessThanOrEqual(-120));
  test('or late, where the morning does not do', () => {
    const late = minutesAfter(hours('2027-07-15', hot, [11 * 60, 20 * 60]).start, noon('2027-07-15'));
    expect(late).toBeGreaterThanOrEqual(240);
    expect(late).toBeLessThan(245);
  });
  test('on a day that is not hot, at any hour once the dew has dried', () =>
    expect(clock(hours('2027-04-15', { right: 'cool' }, [11 * 60, 20 * 60]).start)).toBe('11:00'));
});

describe('watering', () => {
  const early = { right: 'sunrise', minutes: 20, byItself: true };
  test('ends at sunrise where the lawn waters itself', () => {
    const { end } = hours('2027-07-15', early);
    expect(Math.abs(minutesAfter(end, sunOn('2027-07-15').sunrise))).toBeLessThanOrEqual(5);
  });
  test('not before civil dawn', () => {
    const { start } = hours('2027-07-15', { ...early, minutes: 90 });
    expect(minutesAfter(start, sunOn('2027-07-15').dawn)).toBeGreaterThanOrEqual(0);
  });
  test('keeps the working hours where somebody has to be there', () =>
    expect(clock(hours('2027-07-15', { ...early, byItself: false }, [8 * 60, 18 * 60]).start)).toBe('08:00'));
});

describe('always', () => {
  test('after the other jobs of the day', () => {
    const taken: Stretch[] = [hours('2027-05-15')];
    expect(hours('2027-05-15', { taken }).start).toBe(taken[0]!.end);
  });
  test('inside civil daylight on the shortest day', () => {
    const { start, end } = hours('2027-12-21', { minutes: 120, right: 'dry' }, LONG);
    const { dawn, dusk } = sunOn('2027-12-21');
    expect(start).toBeGreaterThanOrEqual(dawn as number);
    expect(end).toBeLessThanOrEqual(dusk as number);
  });
  test('done by dusk where the working hours begin late', () => {
    const { end } = hours('2027-12-21', {}, [17 * 60, 20 * 60]);
    expect(minutesAfter(end, sunOn('2027-12-21').dusk)).toBeLessThanOrEqual(0);
  });
  test('where the sun does not set, by the working hours', () => {
    const there = hoursOn(day('2027-06-21'), lawnAt(69.6, 18.9), 'Europe/Oslo', { ...SOUGHT, right: 'dry' });
    expect(new Date(there.start).toISOString()).toBe('2027-06-21T06:00:00.000Z');
  });
  // Clocks went on at 02:00 on 14 March and go back on 7 November 2027 (U.S. Energy Policy Act of 2005).
  test.each([
    ['before', '2027-03-13', '13:00'],
    ['on', '2027-03-14', '12:00'],
    ['on the autumn', '2027-11-07', '13:00'],
    ['before the autumn', '2027-11-06', '12:00'],
  ])('eight in the morning %s day of changed clocks', (_, on, utc) =>
    expect(new Date(hours(on).start).toISOString().slice(11, 16)).toBe(utc),
  );
});

describe('which hours suit a step', () => {
  const hoursOf = async (steps: string, lawn = PRODUCTS) => application(await plan({ steps, lawn }), 'a').hours;
  const granules = (more = '') =>
    `  - { id: a, name: A, work: spread, window: { opens: { date: 05-03 } }, apply: { pesticide: broadleaf }${more} }\n`;
  test('granules', async () => expect(await hoursOf(feed('a', '05-03', '05-03'))).toBe('dry'));
  test('a feed that is dissolved', async () =>
    expect(
      await hoursOf(feed('a', '05-03', '05-03'), 'products: [{ id: urea, form: soluble, analysis: 46-0-0 }]\n'),
    ).toBe('cool'));
  test('granules for leaf weeds', async () => expect(await hoursOf(granules())).toBe('wet'));
  test('what the program says goes first', async () => expect(await hoursOf(granules(', leaves: dry'))).toBe('dry'));
  test.each([
    ['spray', 'cool'],
    ['water', 'sunrise'],
    ['mow', 'dry'],
    ['scout', 'any'],
  ])('%s', async (kind, right) => expect(await hoursOf(work('a', kind, '05-03', '05-03'))).toBe(right));
});
