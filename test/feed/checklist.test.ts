/** The rules of RFC 5545 and RFC 7986 that a feed has to keep, on a feed full of awkward texts. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { awkwardDemo, expectedEvents, partsOf, unfolded, valueIn } from './feed.ts';

let season: Season;
let text: string;
let bytes: Buffer;
let calendar: ReturnType<typeof partsOf>;
beforeAll(async () => {
  const written = await awkwardDemo();
  ({ season, text } = written);
  bytes = readFileSync(written.file);
  calendar = partsOf(text);
});

const physical = (): Buffer[] => {
  const lines: Buffer[] = [];
  for (let from = 0, at = bytes.indexOf('\r\n'); at >= 0; from = at + 2, at = bytes.indexOf('\r\n', from))
    lines.push(bytes.subarray(from, at));
  return lines;
};
const names = (properties: readonly string[]) => properties.map((line) => line.split(/[:;]/, 1)[0]);

describe('the feed under test', () => {
  test('has at least 20 events', () => expect(calendar.parts.length).toBeGreaterThanOrEqual(20));
  test('has every kind of event', () => {
    const kinds = calendar.parts.map(
      (event) => /-(job|window|soil|buying|water|keep-off)@/.exec(valueIn(event, 'UID')!)?.[1],
    );
    expect([...new Set(kinds)].sort()).toEqual(['buying', 'job', 'keep-off', 'soil', 'water', 'window']);
  });
  test('has a timed job and a done one for the whole day', () => {
    const jobs = calendar.parts.filter((event) => /-job@/.test(valueIn(event, 'UID')!));
    const timed = jobs.filter((event) => /^\d{8}T\d{6}Z$/.test(valueIn(event, 'DTSTART')!));
    expect(timed.length).toBeGreaterThan(0);
    expect(jobs.length - timed.length).toBeGreaterThan(0);
  });
  test('has exactly the events that the Season says', () => {
    const uids = calendar.parts.map((event) => valueIn(event, 'UID'));
    expect(uids.sort()).toEqual(Object.keys(expectedEvents(season)).sort());
  });
});

describe('stream', () => {
  test('is UTF-8 without a byte order mark', () => {
    expect(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)).toBe(text);
    expect(text.codePointAt(0)).toBe('B'.codePointAt(0));
  });
  test('ends its last line with CRLF', () => expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true));
  test('has no bare CR and no bare LF', () => expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/));
  test('has no line above 75 octets', () =>
    expect(Math.max(...physical().map((line) => line.length))).toBeLessThanOrEqual(75));
  test('does fold', () => expect(physical().some((line) => line[0] === 0x20)).toBe(true));
  test('splits no UTF-8 sequence at a fold', () => {
    const decoder = new TextDecoder('utf-8', { fatal: true });
    for (const line of physical()) expect(() => decoder.decode(line)).not.toThrow();
  });
  test('has no empty line', () => expect(physical().every((line) => line.length > 0)).toBe(true));
  test('has no control character but tab', () =>
    expect(unfolded(text).join('')).not.toMatch(/(?!\t)\p{Cc}|\p{Surrogate}/u));
});

describe('calendar', () => {
  test('begins with exactly one calendar', () => expect(calendar.kind).toBe('VCALENDAR'));
  test.each(['PRODID', 'VERSION', 'NAME', 'REFRESH-INTERVAL', 'X-PUBLISHED-TTL'])('has %s once', (name) =>
    expect(names(calendar.properties).filter((one) => one === name)).toHaveLength(1),
  );
  test('is version 2.0', () => expect(valueIn(calendar, 'VERSION')).toBe('2.0'));
  test('has no METHOD, which would oblige an organizer', () =>
    expect(names(calendar.properties)).not.toContain('METHOD'));
  test('gives REFRESH-INTERVAL as a duration of whole hours', () =>
    expect(calendar.properties).toContain('REFRESH-INTERVAL;VALUE=DURATION:PT12H'));
  test('needs no time zone component', () => {
    expect(calendar.parts.every(({ kind }) => kind === 'VEVENT')).toBe(true);
    expect(text).not.toContain('TZID');
  });
  test('puts the properties of each component before the components in it', () => {
    let ended = false;
    for (const line of unfolded(text)) {
      if (/^BEGIN:/.test(line)) ended = false;
      else if (/^END:/.test(line)) ended = true;
      else if (line !== '') expect(ended, line).toBe(false);
    }
  });
});

describe('event', () => {
  test.each(['UID', 'DTSTAMP', 'DTSTART', 'DTEND', 'SUMMARY', 'SEQUENCE', 'LAST-MODIFIED', 'STATUS', 'TRANSP'])(
    'has %s exactly once',
    (name) => {
      for (const { properties } of calendar.parts)
        expect(names(properties).filter((one) => one === name)).toHaveLength(1);
    },
  );
  test('has a UID of its own, of at most 255 octets, without blanks', () => {
    const uids = calendar.parts.map((event) => valueIn(event, 'UID')!);
    expect(new Set(uids).size).toBe(uids.length);
    for (const uid of uids) expect(uid).toMatch(/^[\w.@-]{1,255}$/);
  });
  test('has no date in its UID but the year of the season', () => {
    for (const event of calendar.parts) expect(valueIn(event, 'UID')).not.toMatch(/\d{4}-\d{2}|\d{8}/);
  });
  test('has DTSTAMP in UTC, equal to LAST-MODIFIED', () => {
    for (const event of calendar.parts) {
      expect(valueIn(event, 'DTSTAMP')).toMatch(/^\d{8}T\d{6}Z$/);
      expect(valueIn(event, 'LAST-MODIFIED')).toBe(valueIn(event, 'DTSTAMP'));
    }
  });
  test('begins at SEQUENCE 0', () => {
    for (const event of calendar.parts) expect(valueIn(event, 'SEQUENCE')).toBe('0');
  });
  test('ends after it starts, with the same type of value', () => {
    for (const event of calendar.parts) {
      const [start, end] = [valueIn(event, 'DTSTART')!, valueIn(event, 'DTEND')!];
      expect(end > start, `${start} ${end}`).toBe(true);
      expect(end).toHaveLength(start.length);
    }
  });
  test('is timed in UTC or has VALUE=DATE', () => {
    for (const { properties } of calendar.parts)
      for (const line of properties.filter((one) => /^DT(START|END)/.test(one)))
        expect(line).toMatch(/^DT(START|END)(;VALUE=DATE:\d{8}|:\d{8}T\d{6}Z)$/);
  });
  test('has a STATUS that an event may have', () => {
    for (const event of calendar.parts) expect(valueIn(event, 'STATUS')).toMatch(/^(TENTATIVE|CONFIRMED|CANCELLED)$/);
  });
  test('blocks no time where it is a window, done work or the soil of today', () => {
    for (const event of calendar.parts.filter((one) => !/T/.test(valueIn(one, 'DTSTART')!)))
      expect(valueIn(event, 'TRANSP')).toBe('TRANSPARENT');
  });
  test('has a description under 2000 characters', () => {
    for (const event of calendar.parts)
      expect([...valueIn(event, 'DESCRIPTION')!.replace(/\\(.)/g, '$1')].length).toBeLessThan(2000);
  });
  test('names nothing of the place', () => {
    const place = /38\.4|72\.6|\bGEO\b|LOCATION|ORGANIZER|ATTENDEE/;
    expect(unfolded(text).filter((line) => place.test(line))).toEqual([]);
  });
});

describe('reminder', () => {
  const alarms = () => calendar.parts.flatMap(({ parts }) => parts);
  test('stands in timed jobs, two each, as the lawn wants them', () => {
    const timed = calendar.parts.filter((event) => /T/.test(valueIn(event, 'DTSTART')!));
    for (const { parts } of timed) expect(parts.map((alarm) => valueIn(alarm, 'TRIGGER'))).toEqual(['-P3D', '-PT12H']);
    expect(alarms()).toHaveLength(2 * timed.length);
  });
  test('is a display with a description, a trigger and nothing else', () => {
    for (const alarm of alarms()) {
      expect(alarm.kind).toBe('VALARM');
      expect(names(alarm.properties).sort()).toEqual(['ACTION', 'DESCRIPTION', 'TRIGGER']);
      expect(valueIn(alarm, 'ACTION')).toBe('DISPLAY');
      expect(valueIn(alarm, 'DESCRIPTION')).not.toBe('');
    }
  });
});

describe('a quiet feed', () => {
  test('has no windows, and is never empty, since the soil of today stands in it', () => {
    const { text: quiet } = calendarOf(
      { ...season, applications: [] },
      { ledger: emptyLedger, revisedAt: '2027-04-02T00:00:00Z', detail: 'quiet' },
    );
    expect(partsOf(quiet).parts.map((event) => valueIn(event, 'UID'))).toEqual([
      `${season.feedKey}-2027-soil@soilclock.invalid`,
    ]);
  });
});
