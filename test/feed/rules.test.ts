/** Every rule on feeds is kept by a feed full of awkward texts, and speaks up where a feed breaks it. */
import { beforeAll, describe, expect, test } from 'vitest';
import { awkwardDemo } from './feed.ts';
import { faultsOf, RULES } from './rules.ts';

let text: string;
beforeAll(async () => {
  ({ text } = await awkwardDemo());
});

test('the awkward feed breaks no rule', () => expect(faultsOf(text)).toEqual({}));

const long = `X-LONG:${'x'.repeat(80)}`;
/** One way or more to break each rule: what is replaced, once, by what. */
const BREAKS: readonly (readonly [rule: string, what: string | RegExp, by: string])[] = [
  ['no byte order mark', /^/, '\ufeff'],
  ['CRLF after every line', /\r\n$/, ''],
  ['CRLF after every line', 'VERSION:2.0\r\n', 'VERSION:2.0\nX-A:b\r\n'],
  ['CRLF after every line', 'VERSION:2.0\r\n', 'VERSION:2.0\rX\r\n'],
  ['no empty line', 'VERSION:2.0\r\n', 'VERSION:2.0\r\n\r\n'],
  ['at most 75 octets', 'VERSION:2.0\r\n', `VERSION:2.0\r\n${long}\r\n`],
  ['no UTF-8 sequence split', 'VERSION:2.0\r\n', 'VERSION:2.0\r\nX-A:\ud83c\r\n \udf31\r\n'],
  ['every line has a name', 'VERSION:2.0\r\n', 'VERSION:2.0\r\nnot a property\r\n'],
  ['TEXT is escaped', /SUMMARY:/, 'SUMMARY:a;b '],
  ['TEXT is escaped', /SUMMARY:/, 'SUMMARY:\\: '],
  ['TEXT is escaped', /CATEGORIES:/, 'CATEGORIES:a;b,'],
  ['no control character', /SUMMARY:/, 'SUMMARY:\u0007'],
  ['no mark that turns', /SUMMARY:/, 'SUMMARY:\u202e'],
  ['one calendar of events alone', /END:VCALENDAR/, 'BEGIN:VJOURNAL\r\nUID:a\r\nEND:VJOURNAL\r\nEND:VCALENDAR'],
  ['properties stand before', /END:VCALENDAR/, 'X-A:b\r\nEND:VCALENDAR'],
  ['PRODID, VERSION and names', /PRODID.*\r\n/, ''],
  ['PRODID, VERSION and names', 'VERSION:2.0\r\n', 'VERSION:2.0\r\nVERSION:2.0\r\n'],
  ['VERSION is 2.0', 'VERSION:2.0', 'VERSION:1.0'],
  ['no METHOD', 'VERSION:2.0\r\n', 'VERSION:2.0\r\nMETHOD:PUBLISH\r\n'],
  ['never empty', /BEGIN:VEVENT.*END:VEVENT\r\n/s, ''],
  ['REFRESH-INTERVAL says', ';VALUE=DURATION:', ':VALUE=DURATION:'],
  ['both hints to poll', /X-PUBLISHED-TTL:.*\r/, 'X-PUBLISHED-TTL:PT1H\r'],
  ['durations are derivable', 'VALUE=DURATION:PT12H', 'VALUE=DURATION:PT1H1S'],
  ['durations are derivable', 'TRIGGER:-PT12H', 'TRIGGER:-PT1.5H'],
  ['both names of the calendar', /NAME:/, 'NAME:x'],
  ['both descriptions of the calendar', /DESCRIPTION:/, 'DESCRIPTION:x'],
  ['what an event has once', /DTSTAMP:.*\r\n/, ''],
  ['what an event has once', /SEQUENCE:0\r\n/, 'SEQUENCE:0\r\nSEQUENCE:0\r\n'],
  ['what an event has at most once', /SEQUENCE:0\r\n/, 'SEQUENCE:0\r\nURL:a\r\nURL:b\r\n'],
  ['UIDs are plain', /UID:/, 'UID:a b'],
  ['UIDs are plain', /UID:/, 'UID:2027-04-02-'],
  ['no UID twice', /BEGIN:VEVENT.*?END:VEVENT\r\n/s, '$&$&'],
  ['stamps are in UTC', /(DTSTAMP:.*)Z\r/, '$1\r'],
  ['DTSTAMP is LAST-MODIFIED', /DTSTAMP:2027/, 'DTSTAMP:2028'],
  ['SEQUENCE is a whole number', 'SEQUENCE:0', 'SEQUENCE:-1'],
  ['a day says VALUE=DATE', /DTSTART;VALUE=DATE:/, 'DTSTART:'],
  ['a day says VALUE=DATE', /(DTSTART:.*)Z\r/, '$1\r'],
  ['days and times are in the calendar', /DTSTART;VALUE=DATE:\d+/, 'DTSTART;VALUE=DATE:20270230'],
  [
    'an event ends after its start',
    /DTSTART;VALUE=DATE:(\d+)(.*?)DTEND;VALUE=DATE:\d+/s,
    'DTSTART;VALUE=DATE:$1$2DTEND;VALUE=DATE:$1',
  ],
  ['no DURATION, no recurrence', /SEQUENCE:0\r\n/, 'SEQUENCE:0\r\nRRULE:FREQ=DAILY\r\n'],
  ['no DURATION, no recurrence', /DTSTART:/, 'DTSTART;TZID=America/New_York:'],
  ['STATUS and TRANSP', /STATUS:\w+/, 'STATUS:DONE'],
  ['a window and the soil', /(UID:\S+-window@(?:(?!END:VEVENT).)*?)TRANSP:TRANSPARENT/s, '$1TRANSP:OPAQUE'],
  ['what was cancelled', /STATUS:TENTATIVE((?:(?!END:VEVENT).)*?BEGIN:VALARM)/s, 'STATUS:CANCELLED$1'],
  [
    'a description under 2,000',
    /(?<=BEGIN:VEVENT.*)DESCRIPTION:/s,
    `DESCRIPTION:${`\r\n ${'x'.repeat(70)}`.repeat(30)}`,
  ],
  ['colours are names', 'VERSION:2.0\r\n', 'VERSION:2.0\r\nCOLOR:#ff0000\r\n'],
  ['no person, no place', /SEQUENCE:0\r\n/, 'SEQUENCE:0\r\nGEO:38.4;-72.6\r\n'],
  ['an alarm displays', 'ACTION:DISPLAY', 'ACTION:EMAIL'],
  ['an alarm displays', /TRIGGER:.*\r/, 'TRIGGER;VALUE=DATE-TIME:20270402T000000Z\r'],
  ['under 1 MB', 'VERSION:2.0\r\n', `VERSION:2.0\r\n${`X-A:${'x'.repeat(70)}\r\n`.repeat(14_000)}`],
];

describe('a rule speaks up:', () => {
  test.each(BREAKS.map(([rule, what, by], i) => [rule, i, what, by] as const))('%s (%i)', (rule, _, what, by) => {
    const broken = text.replace(what, by);
    expect(broken).not.toBe(text);
    expect(Object.keys(faultsOf(broken)).filter((one) => one.startsWith(rule))).toHaveLength(1);
  });
  test('every one of them is tried', () => {
    const untried = Object.keys(RULES).filter((rule) => !BREAKS.some(([begin]) => rule.startsWith(begin)));
    expect(untried).toEqual([]);
  });
});
