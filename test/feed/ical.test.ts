/** What is written reads back the same, whatever its characters, on the writer of calendars alone. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { cleaned } from '../../src/base/text.ts';
import { type FeedEvent, icalendar } from '../../src/emit/ical.ts';
import { keepFeed, runs } from '../kit.ts';
import { HOSTILE } from './hostile.ts';

const plain: FeedEvent = {
  uid: 'feed-2027-step-job@soilclock.invalid',
  allDay: true,
  start: '2027-04-02',
  end: '2027-04-03',
  summary: 'Feed',
  description: 'Spread it.',
  status: 'CONFIRMED',
  transparent: true,
  categories: ['Lawn'],
  remindersMin: [720],
  sequence: 0,
  lastModified: '2027-04-02T00:00:00Z',
};
const events = (change: Partial<FeedEvent>[]): string =>
  icalendar({
    name: 'Lawn',
    description: 'About',
    language: 'en-US',
    refreshMin: 720,
    events: change.map((one) => ({ ...plain, ...one })),
  });

/** A calendar with this text in every place that takes one. */
const withText = (text: string): string =>
  icalendar({
    name: text,
    description: text,
    language: 'en-US',
    refreshMin: 720,
    events: [{ ...plain, summary: text, description: text, categories: [text] }],
  });

/** Every text of a calendar, by the place it stands in, as ical.js reads it. */
function textsIn(feed: string): Record<string, unknown> {
  const calendar = new ICAL.Component(ICAL.parse(feed));
  const event = calendar.getFirstSubcomponent('vevent')!;
  // ical.js gives properties that it does not know as they stand.
  const raw = (name: string) =>
    String(calendar.getFirstPropertyValue(name)).replace(/\\(.)/gs, (_, letter: string) =>
      letter === 'n' ? '\n' : letter,
    );
  return {
    name: raw('name'),
    'x-wr-calname': raw('x-wr-calname'),
    'x-wr-caldesc': raw('x-wr-caldesc'),
    'description of the calendar': calendar.getFirstPropertyValue('description'),
    summary: event.getFirstPropertyValue('summary'),
    description: event.getFirstPropertyValue('description'),
    // One alone: ical.js takes the comma between two for an escaped one where the first ends in a backslash.
    category: event.getFirstPropertyValue('categories'),
    alarm: event.getFirstSubcomponent('valarm')?.getFirstPropertyValue('description'),
  };
}

/** The same text in all of those places; a dash where nothing is left of it. */
const everywhere = (text: string) =>
  Object.fromEntries(Object.keys(textsIn(withText('x'))).map((place) => [place, cleaned(text) || '-']));

const LINE = /^[A-Z][A-Z0-9-]*(;[A-Z-]+=[^:;,"]+)*:/;
/** Lines of whole characters, at most 75 octets each, every one a property once unfolded. */
function expectWellFolded(feed: string): void {
  const physical = feed.split('\r\n');
  expect(physical.pop()).toBe('');
  // Written as UTF-8, half a character would read back as another one.
  const whole = (line: string) => Buffer.from(line).toString() === line && !/(?!\t)\p{Cc}/u.test(line);
  expect(physical.filter((line) => Buffer.byteLength(line) > 75 || !whole(line))).toEqual([]);
  const logical = feed.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
  expect(logical.filter((line) => !LINE.test(line))).toEqual([]);
}

const lines = (feed: string): string[] =>
  feed
    .replaceAll('\r\n ', '')
    .split('\r\n')
    .map((line) => line.replace(/[:;].*$/s, ''));

describe('a text with', () => {
  test.each(Object.entries(HOSTILE))('%s reads back the same in every place', (_, text) => {
    const feed = withText(text);
    // Longer ones no file may hold.
    if (text.length <= 1900) keepFeed(feed);
    expect(textsIn(feed)).toEqual(everywhere(text));
    expect(lines(feed)).toEqual(lines(withText('Feed')));
    expectWellFolded(feed);
  });
});

const anyText = fc.string({
  unit: fc.oneof(
    fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
    fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit)),
    fc.constantFrom('\r\n', '\n', ' ', '\t', '\\', ',', ';', ':', '"', '🌱', '\r\n ', '\r\nEND:VEVENT\r\n'),
  ),
  maxLength: 120,
});

test('any text reads back the same in every place, and adds no line', () => {
  const expectedLines = lines(withText('Feed'));
  fc.assert(
    fc.property(anyText, (text) => {
      const feed = withText(text);
      expect(textsIn(feed)).toEqual(everywhere(text));
      expect(lines(feed)).toEqual(expectedLines);
    }),
    { numRuns: runs(1500), seed: 20270402 },
  );
});
test('cleaning any text twice is cleaning it once', () => {
  fc.assert(fc.property(anyText, (text) => cleaned(cleaned(text)) === cleaned(text)));
});

describe('a fold', () => {
  test.each([
    ['two octets', 'é'],
    ['three octets', '€'],
    ['four octets', '🌱'],
    ['several code points joined', '👩🏽‍🌾'],
    ['a line end before four octets', '\n🌱'],
    ['a blank', ' '],
    ['a tab', '\t'],
    ['an escape', ','],
    ['a backslash', '\\'],
  ])('at any of 400 paddings splits no character of %s', (_, odd) => {
    for (let from = 0; from < 400; from += 20) {
      // Twenty events a calendar, each a padding longer than the one before.
      const texts = Array.from({ length: 20 }, (_, i) => `${'x'.repeat(from + i)}${odd.repeat(40)}y`);
      const feed = events(
        texts.map((text, i) => ({ uid: `e${i}@soilclock.invalid`, description: text, remindersMin: [] })),
      );
      const read = new ICAL.Component(ICAL.parse(feed)).getAllSubcomponents('vevent');
      expect(read.map((event) => event.getFirstPropertyValue('description'))).toEqual(texts);
      expectWellFolded(feed);
    }
  });
});

describe('our own bugs are refused', () => {
  test.each<[string, Partial<FeedEvent>[]]>([
    ['no event', []],
    ['a UID used twice', [{}, {}]],
    ['a UID with a line end', [{ uid: 'a\r\nBEGIN:VEVENT' }]],
    ['a UID of 256 octets', [{ uid: 'a'.repeat(256) }]],
    ['an empty UID', [{ uid: '' }]],
    ['an end that is the start', [{ end: plain.start }]],
    ['an end before the start', [{ end: '2027-04-01' }]],
    ['a time in an event for the whole day', [{ start: '2027-04-02T08:00:00Z', end: '2027-04-02T09:00:00Z' }]],
    ['a day in an event with hours', [{ allDay: false }]],
    ['a day that is not in the calendar', [{ start: '2027-02-30', end: '2027-03-04' }]],
    ['an instant without a zone', [{ lastModified: '2027-04-02T00:00:00' }]],
    ['a SEQUENCE below 0', [{ sequence: -1 }]],
    ['a SEQUENCE that is not whole', [{ sequence: 1.5 }]],
    ['a reminder that is not whole', [{ remindersMin: [0.5] }]],
    ['a reminder after the start', [{ remindersMin: [-60] }]],
  ])('%s', (_, change) => expect(() => events(change)).toThrow(RangeError));
  test('a refresh of no minute', () => {
    expect(() => icalendar({ name: 'L', description: 'A', language: 'en-US', refreshMin: 0, events: [plain] })).toThrow(
      RangeError,
    );
  });
  test('a language that is not one', () => {
    const language = '\r\nBEGIN:VEVENT';
    expect(() => icalendar({ name: 'L', description: 'A', language, refreshMin: 720, events: [plain] })).toThrow(
      RangeError,
    );
  });
});

test.each(['UTC', 'America/Los_Angeles', 'Asia/Tokyo', 'Pacific/Auckland'])(
  'the clock of a machine in %s changes no byte',
  (zone) => {
    const changes = [
      {},
      { uid: 'b@x.invalid', allDay: false, start: '2027-03-14T07:30:00Z', end: '2027-03-14T09:00:00Z' },
    ];
    const before = process.env.TZ;
    const here = events(changes);
    process.env.TZ = zone;
    try {
      expect(events(changes)).toBe(here);
    } finally {
      if (before === undefined) delete process.env.TZ;
      else process.env.TZ = before;
    }
  },
);
