/** No text of a person adds, removes or renames a property or a component, whatever its characters. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { cleaned } from '../../src/base/text.ts';
import type { Season } from '../../src/model/season.ts';
import { demoCopy, runs } from '../kit.ts';
import { AS_OF, feedOf, planned } from './feed.ts';

let season: Season;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  const { season: whole } = await planned(cwd, lawn, AS_OF);
  // Three applications have all there is: one done, one open, one to come.
  season = { ...whole, applications: whole.applications.slice(0, 3) };
});

/** The Season with this text in every place that a person writes. */
const withText = (text: string): Season => ({
  ...season,
  lawnName: text,
  programName: text,
  today: { ...season.today, lines: [text] },
  applications: season.applications.map((one) => ({
    ...one,
    name: text,
    how: [text],
    why: [text],
    cautions: [text],
    notJudged: [text],
  })),
});

const read = (feed: string) => new ICAL.Component(ICAL.parse(feed));

/** Component and property names, in order. */
const skeleton = (component: ICAL.Component): unknown => [
  component.name,
  component.getAllProperties().map(({ name }) => name),
  component.getAllSubcomponents().map(skeleton),
];

const jobOf = (feed: string) =>
  read(feed)
    .getAllSubcomponents('vevent')
    .find((event) => String(event.getFirstPropertyValue('uid')).includes('summer-annual-barrier-job'))!;

const HOSTILE: Record<string, string> = {
  'a CRLF and a component': 'Feed\r\nBEGIN:VEVENT\r\nUID:x\r\nEND:VEVENT\r\n',
  'a CRLF and the end of the calendar': 'Feed\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n',
  'a bare CR': 'Feed\rBEGIN:VEVENT',
  'a bare LF': 'Feed\nBEGIN:VEVENT',
  'a folded line': 'Feed\r\n BEGIN:VEVENT',
  'a next-line character': 'Feed\u0085BEGIN:VEVENT',
  'line and paragraph separators': 'Feed\u2028BEGIN:VEVENT\u2029END:VEVENT',
  'a vertical tab and a form feed': 'Feed\u000bBEGIN:VEVENT\u000cEND:VEVENT',
  NUL: 'Fe\u0000ed',
  'every control character': String.fromCharCode(...Array.from({ length: 32 }, (_, i) => i), 127, 128, 159),
  'a lone high surrogate': 'Feed \ud83c',
  'a lone low surrogate': '\udf31 feed',
  'a bidi override': 'Feed \u202egnp.exe\u202c',
  'bidi isolates': '\u2066Feed\u2067 a\u2068 b\u2069',
  'a byte order mark': '\ufeffFeed',
  'quotes and a parameter': 'Feed";X-EVIL="1":2',
  'escapes already': 'Feed\\n\\, \\; \\\\ \\N \\',
  'only separators': ';,:,;',
  'a value of another property': 'ATTACH:file:///etc/passwd',
  'a formula and markup': '=HYPERLINK("http://x.invalid")<script>alert(1)</script>',
  'ten thousand letters': 'x'.repeat(10_000),
  'blanks at the ends': '  Feed  ',
};

describe('a text with', () => {
  test.each(Object.keys(HOSTILE))('%s changes no component and no property name', (name) => {
    expect(skeleton(read(feedOf(withText(HOSTILE[name]!)).text))).toEqual(
      skeleton(read(feedOf(withText('Feed')).text)),
    );
  });
  test.each(Object.keys(HOSTILE))('%s reads back as the same text, cleaned', (name) => {
    const { text } = feedOf(withText(HOSTILE[name]!));
    expect(jobOf(text).getFirstPropertyValue('summary')).toBe(`${cleaned(HOSTILE[name]!)}: 20.7 lb`);
  });
  test.each(Object.keys(HOSTILE))('%s keeps lines within 75 octets and free of control characters', (name) => {
    const lines = feedOf(withText(HOSTILE[name]!)).text.split('\r\n');
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(lines.join('')).not.toMatch(/(?!\t)\p{Cc}|\p{Surrogate}|\ufeff|[\u202a-\u202e\u2066-\u2069]/u);
  });
});

describe('cleaned', () => {
  test('turns every line end into a line feed', () =>
    expect(cleaned('a\r\nb\rc\u0085d\u2028e\u2029f')).toBe('a\nb\nc\nd\ne\nf'));
  test('keeps tabs, accents, emoji and their joiners', () => expect(cleaned('a\té 👩🏽‍🌾')).toBe('a\té 👩🏽‍🌾'));
  test('takes out NUL', () => expect(cleaned('a\u0000b')).toBe('ab'));
  test('takes out lone surrogates', () => expect(cleaned('a\ud83cb\udf31')).toBe('ab'));
  test('takes out bidi overrides', () => expect(cleaned('a\u202eb')).toBe('ab'));
});

describe('for any text', () => {
  const anyText = fc.string({
    unit: fc.oneof(
      fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }),
      fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit)),
      fc.constantFrom(
        '\r\n',
        '\n',
        ' ',
        '\t',
        '\\',
        ',',
        ';',
        ':',
        '"',
        '🌱',
        'BEGIN:VEVENT',
        'END:VEVENT\r\n',
        '\r\n ',
      ),
    ),
    maxLength: 120,
  });
  test('components and property names stay, and the title reads back cleaned', () => {
    const plain = skeleton(read(feedOf(withText('Feed')).text));
    fc.assert(
      fc.property(anyText, (any) => {
        const text = `Feed ${any}`;
        const feed = feedOf(withText(text)).text;
        expect(skeleton(read(feed))).toEqual(plain);
        expect(jobOf(feed).getFirstPropertyValue('summary')).toBe(`${cleaned(text)}: 20.7 lb`);
      }),
      { numRuns: runs(300), seed: 20270402 },
    );
  });
  test('lines are at most 75 octets, and unfolding gives whole characters', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 80 }),
        fc.constantFrom('é', '€', '🌱', '👩🏽‍🌾', '\n🌱', ' ', ',', '\\'),
        (padding, odd) => {
          const { text } = feedOf(withText(`${'x'.repeat(padding)}${odd.repeat(40)}`));
          for (const line of text.split('\r\n')) {
            expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
            expect(line).not.toMatch(/\p{Surrogate}/u);
          }
        },
      ),
      { numRuns: runs(200), seed: 20270402 },
    );
  });
});
