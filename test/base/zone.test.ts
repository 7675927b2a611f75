import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civil, parseDay } from '../../src/base/day.ts';
import { dayAt, formatInstant, instantAt, isZone, zoneAt } from '../../src/base/zone.ts';

const at = (date: string, clock: string, zone: string): string => {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return formatInstant(instantAt(parseDay(date) ?? Number.NaN, hours * 60 + minutes, zone));
};

// Changes of 2027 by the rules in force (IANA tz database 2025): New York and St. John's 14 March and 7 November, Auckland
// 26 September and 4 April; Lord Howe shifts by half an hour; Troll by two.
describe('instantAt', () => {
  test.each([
    ['in summer', '2027-07-01', '08:00', 'America/New_York', '2027-07-01T12:00:00Z'],
    ['in winter', '2027-01-01', '08:00', 'America/New_York', '2027-01-01T13:00:00Z'],
    ['at midnight', '2027-07-01', '00:00', 'America/New_York', '2027-07-01T04:00:00Z'],
    ['east of Greenwich, on the day before in UTC', '2027-01-01', '08:00', 'Pacific/Auckland', '2026-12-31T19:00:00Z'],
    ['with an offset of half an hour', '2027-01-01', '08:00', 'America/St_Johns', '2027-01-01T11:30:00Z'],
    ['just before the gap', '2027-03-14', '01:59', 'America/New_York', '2027-03-14T06:59:00Z'],
    ['just after the gap', '2027-03-14', '03:00', 'America/New_York', '2027-03-14T07:00:00Z'],
    ['just before the overlap', '2027-11-07', '00:59', 'America/New_York', '2027-11-07T04:59:00Z'],
    ['just after the overlap', '2027-11-07', '02:00', 'America/New_York', '2027-11-07T07:00:00Z'],
    ['on the morning of the change, summer time', '2027-03-14', '08:00', 'America/New_York', '2027-03-14T12:00:00Z'],
    ['on the morning of the change, winter time', '2027-11-07', '08:00', 'America/New_York', '2027-11-07T13:00:00Z'],
  ])('%s', (_, date, clock, zone, instant) => expect(at(date, clock, zone)).toBe(instant));

  test.each([
    // 02:30 is not; an hour later the clock shows 03:30.
    ['America/New_York', '2027-03-14', '02:30', '2027-03-14T07:30:00Z'],
    ['Pacific/Auckland', '2027-09-26', '02:30', '2027-09-25T14:30:00Z'],
    ['America/St_Johns', '2027-03-14', '02:30', '2027-03-14T06:00:00Z'],
    ['Australia/Lord_Howe', '2027-10-03', '02:15', '2027-10-02T15:45:00Z'],
  ])('in the gap of %s is the time after it', (zone, date, clock, instant) => {
    expect(at(date, clock, zone)).toBe(instant);
  });
  test.each([
    ['America/New_York', '2027-11-07', '01:30', '2027-11-07T05:30:00Z'],
    ['Pacific/Auckland', '2027-04-04', '02:30', '2027-04-03T13:30:00Z'],
    ['America/St_Johns', '2027-11-07', '01:30', '2027-11-07T04:00:00Z'],
    ['Australia/Lord_Howe', '2027-04-04', '01:45', '2027-04-03T14:45:00Z'],
  ])('in the overlap of %s is the first of the two', (zone, date, clock, instant) => {
    expect(at(date, clock, zone)).toBe(instant);
  });

  test('shows the wall clock asked for, outside of gaps', () => {
    const zones = fc.constantFrom('America/New_York', 'Pacific/Auckland', 'America/St_Johns', 'Asia/Kathmandu', 'UTC');
    const days = fc.integer({ min: civil(1975, 1, 1), max: civil(2035, 12, 31) });
    // From 04:00 on no zone here has ever been inside a change.
    const minutes = fc.integer({ min: 240, max: 1439 });
    fc.assert(
      fc.property(zones, days, minutes, (zone, day, minute) => {
        const shown = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' });
        const instant = instantAt(day, minute, zone);
        const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
        expect(shown.format(instant)).toBe(clock);
        expect(dayAt(instant, zone)).toBe(day);
      }),
    );
  });
});

describe('dayAt', () => {
  test.each([
    ['2027-04-02T03:59:59Z', 'America/New_York', '2027-04-01'],
    ['2027-04-02T04:00:00Z', 'America/New_York', '2027-04-02'],
    ['2027-04-01T11:00:00Z', 'Pacific/Auckland', '2027-04-02'],
    ['2027-12-31T10:59:59Z', 'Pacific/Auckland', '2027-12-31'],
    ['2027-12-31T11:00:00Z', 'Pacific/Auckland', '2028-01-01'],
    ['2027-07-01T02:29:59Z', 'America/St_Johns', '2027-06-30'],
    ['2027-07-01T02:30:00Z', 'America/St_Johns', '2027-07-01'],
  ])('at %s in %s it is %s', (instant, zone, day) => {
    expect(dayAt(Date.parse(instant), zone)).toBe(parseDay(day));
  });
});

describe('zones', () => {
  test.each(['America/New_York', 'UTC', 'Pacific/Auckland'])('%s is one', (name) => expect(isZone(name)).toBe(true));
  test.each(['America/NewYork', '', 'EST5', 'nowhere', '../etc/passwd'])('"%s" is none', (name) => {
    expect(isZone(name)).toBe(false);
  });
  test.each([
    [39, -84, 'America/New_York'],
    [-41.3, 174.8, 'Pacific/Auckland'],
    [47.56, -52.71, 'America/St_Johns'],
  ])('at %d, %d it is %s', (latitude, longitude, zone) => expect(zoneAt(latitude, longitude)).toBe(zone));
  test('an instant is written to the second', () => {
    expect(formatInstant(Date.UTC(2027, 3, 2, 6, 30, 15, 999))).toBe('2027-04-02T06:30:15Z');
  });
});
