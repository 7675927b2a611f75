/** Hours on the wall clock are the instants that another source of zone rules gives: Python's zoneinfo on the system's data. */
import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { parseDay } from '../../src/base/day.ts';
import { dayAt, formatInstant, instantAt, unknownRule } from '../../src/base/zone.ts';
import { readLawn } from '../../src/read/lawn.ts';
import { demoCopy, lawnText } from '../kit.ts';
import { AS_OF, planned } from './feed.ts';

const python = (script: string, input = ''): string =>
  execFileSync('/usr/bin/python3', ['-c', script], { encoding: 'utf8', input, stdio: ['pipe', 'pipe', 'pipe'] });
function hasZones(): boolean {
  try {
    return python('import zoneinfo; zoneinfo.ZoneInfo("America/New_York"); print(1)').trim() === '1';
  } catch {
    return false;
  }
}

const ZONES = [
  ...[
    'America/New_York',
    'America/Chicago',
    'America/Denver',
    'America/Phoenix',
    'America/Los_Angeles',
    'America/St_Johns',
  ],
  ...[
    'Pacific/Honolulu',
    'America/Anchorage',
    'America/Sao_Paulo',
    'America/Santiago',
    'Europe/London',
    'Europe/Dublin',
  ],
  ...['Europe/Berlin', 'Asia/Tokyo', 'Asia/Kathmandu', 'Australia/Sydney', 'Australia/Lord_Howe', 'Pacific/Auckland'],
];
/** Zone, day, minutes and the instant: all hours of the days about each change from 2026 to 2028, and of every 29th day. */
const WALL = `
import datetime as d, sys, zoneinfo
for name in sys.stdin.read().split():
    zone = zoneinfo.ZoneInfo(name)
    at = lambda day, minutes=720: d.datetime(day.year, day.month, day.day, minutes // 60, minutes % 60, tzinfo=zone)
    days = [d.date(2026, 1, 1) + d.timedelta(i) for i in range(1096)]
    changes = [day for day in days if at(day).utcoffset() != at(day - d.timedelta(1)).utcoffset()]
    near = {day + d.timedelta(i) for day in changes for i in (-2, -1, 0, 1)}
    for day in sorted(near | set(days[::29])):
        for minutes in (0, 30, 60, 90, 120, 135, 150, 180, 210, 480, 720, 1110, 1439):
            print(name, day, minutes, at(day, minutes).astimezone(d.timezone.utc).strftime('%Y-%m-%dT%H:%M:%SZ'))
`;
const LOCAL = `
import datetime as d, sys, zoneinfo
zone = zoneinfo.ZoneInfo('America/New_York')
for text in sys.stdin.read().split():
    print(d.datetime.fromisoformat(text.replace('Z', '+00:00')).astimezone(zone).isoformat())
`;

const installed = hasZones();
describe.skipIf(!installed)(installed ? 'zoneinfo' : "skipped: Python's zoneinfo is not there", () => {
  test('agrees on the instant of every hour about every change, gaps and overlaps too', () => {
    const rows = python(WALL, ZONES.join(' ')).trim().split('\n');
    const changing = new Set(rows.filter((row) => !/ \d\d\d\d-01-/.test(row)).map((row) => row.split(' ')[0]));
    expect(changing.size).toBe(ZONES.length);
    expect(rows.length).toBeGreaterThan(10_000);
    const wrong = rows.filter((row) => {
      const [zone = '', day = '', minutes, instant] = row.split(' ');
      return formatInstant(instantAt(parseDay(day) as number, Number(minutes), zone)) !== instant;
    });
    expect(wrong).toEqual([]);
  });
  test('puts every timed job of the demo on its day within the working hours, on both clocks', async () => {
    const { cwd, lawn } = demoCopy();
    const { season } = await planned(cwd, lawn, AS_OF);
    const timed = season.applications.filter(({ start }) => start !== null);
    const locals = python(LOCAL, timed.map(({ start }) => start).join(' '))
      .trim()
      .split('\n');
    expect(locals.map((local) => local.slice(0, 10))).toEqual(timed.map(({ date }) => date));
    expect(locals.filter((local) => local.slice(11, 16) < '05:00' || local.slice(11, 16) > '21:00')).toEqual([]);
    expect([...new Set(locals.map((local) => local.slice(19)))].sort()).toEqual(['-04:00', '-05:00']);
  });
});

// IANA tz database 2026f: Vancouver stays at UTC-7 from 8 March 2026, Casablanca at UTC+0 from 20 September 2026.
describe('a zone whose law changed', () => {
  test.each([
    ['America/Vancouver', '2026-01-15', 16],
    ['America/Vancouver', '2026-07-15', 15],
    ['America/Vancouver', '2026-12-15', 15],
    ['Canada/Pacific', '2027-12-15', 15],
    ['Africa/Casablanca', '2026-08-15', 7],
    ['Africa/Casablanca', '2026-12-15', 8],
    ['Africa/Casablanca', '2027-07-15', 8],
    ['Africa/El_Aaiun', '2026-12-15', 8],
  ])('in %s 08:00 on %s is %i:00 UTC', (zone, day, hour) => {
    const instant = instantAt(parseDay(day) as number, 480, zone);
    expect(formatInstant(instant)).toBe(`${day}T${String(hour).padStart(2, '0')}:00:00Z`);
    expect(dayAt(instant - 480 * 60_000, zone)).toBe(parseDay(day));
    expect(dayAt(instant - 481 * 60_000, zone)).toBe((parseDay(day) as number) - 1);
  });

  const nodeSays = (zone: string) =>
    new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' })
      .formatToParts(Date.UTC(2026, 11, 15))
      .find(({ type }) => type === 'timeZoneName')
      ?.value.replace('+00:00', '');
  test.each([
    ['America/Vancouver', 'GMT-07:00'],
    ['Africa/Casablanca', 'GMT'],
    ['Canada/Pacific', 'GMT-07:00'],
  ])('%s brings a warning where Node does not know it', (zone, right) => {
    const codes = readLawn(lawnText().replace('America/New_York', zone), 'lawn.yaml').problems.map(({ code }) => code);
    expect(codes).toEqual(nodeSays(zone) === right ? [] : ['zone-stale']);
    expect(unknownRule(zone) === null).toBe(nodeSays(zone) === right);
  });
  test('brings it where the place alone tells the zone', () => {
    const lawn = lawnText()
      .replace('timezone: America/New_York\n', '')
      .replace('39, longitude: -84', '49.25, longitude: -123.1');
    const codes = readLawn(lawn, 'lawn.yaml').problems.map(({ code }) => code);
    expect(codes).toEqual(nodeSays('America/Vancouver') === 'GMT-07:00' ? [] : ['zone-stale']);
  });
  test('is no other', () => expect(ZONES.filter((zone) => unknownRule(zone) !== null)).toEqual([]));
});
