/**
 * What RFC 5545, RFC 7986 and the clients that subscribe ask of any feed of ours, each as a function that gives what breaks
 * it. Rules that depend on what a feed is meant to say stand in the tests that know it.
 */
import { type Part, partsOf, unfolded } from './feed.ts';

interface Feed {
  readonly text: string;
  readonly calendar: Part;
  readonly events: readonly Part[];
  readonly alarms: readonly Part[];
}
interface Property {
  readonly name: string;
  readonly parameters: string;
  readonly value: string;
  readonly line: string;
}

function read(line: string): Property {
  const [, name = '', parameters = '', value = ''] = /^([A-Z0-9-]+)((?:;[^:]*)?):(.*)$/s.exec(line) ?? [];
  return { name, parameters, value, line };
}
const all = ({ properties }: Part): Property[] => properties.map(read);
const values = (part: Part, name: string): string[] =>
  all(part).flatMap((one) => (one.name === name ? [one.value] : []));
const value = (part: Part, name: string): string => values(part, name)[0] ?? '';
const everywhere = ({ calendar, events, alarms }: Feed): Property[] => [calendar, ...events, ...alarms].flatMap(all);

/** Lines of these parts that have not just one (or at most one) of each name. */
const count = (parts: readonly Part[], names: string, fits: (n: number) => boolean): string[] =>
  parts.flatMap((part) =>
    names.split(' ').flatMap((name) => (fits(values(part, name).length) ? [] : `${name} in ${value(part, 'UID')}`)),
  );
const not = (found: readonly string[], form: RegExp): string[] => found.filter((one) => !form.test(one));

const UTC = /^\d{8}T\d{6}Z$/;
/** RFC 5545 3.3.6: units do not skip, no fractions. */
const DURATION = /^[+-]?P(\d+W|(\d+D)?(T(\d+H(\d+M(\d+S)?)?|\d+M(\d+S)?|\d+S))?)$/;
const TEXTS =
  /^(SUMMARY|DESCRIPTION|LOCATION|NAME|X-WR-CALNAME|X-WR-CALDESC|UID|CONTACT|COMMENT|CATEGORIES|X-ALT-DESC)$/;

export const RULES: Readonly<Record<string, (feed: Feed) => readonly string[]>> = {
  'no byte order mark (RFC 5545 6)': ({ text }) => (text.startsWith('BEGIN:VCALENDAR\r\n') ? [] : [text.slice(0, 20)]),
  'CRLF after every line, the last one too (3.4)': ({ text }) =>
    [text.replaceAll('\r\n', ''), text.endsWith('END:VCALENDAR\r\n') ? '' : '\n'].filter((one) => /[\r\n]/.test(one)),
  'no empty line (3.1)': ({ text }) => (/\r\n\r\n|^\r\n/.test(text) ? ['an empty line'] : []),
  'at most 75 octets a line (3.1)': ({ text }) => text.split('\r\n').filter((line) => Buffer.byteLength(line) > 75),
  'no UTF-8 sequence split at a fold (3.1)': ({ text }) =>
    text.split('\r\n').filter((line) => Buffer.from(line).toString() !== line),
  'every line has a name and a value (3.1)': ({ text }) =>
    not(unfolded(text).slice(0, -1), /^[A-Z][A-Z0-9-]*(;[A-Z-]+=[^";:,]+)*:/),
  'TEXT is escaped: backslash, comma, semicolon (3.3.11)': (feed) =>
    everywhere(feed).flatMap(({ name, value: text, line }) =>
      TEXTS.test(name) && /[,;\\]/.test(text.replace(/\\[\\;,n]/g, '').replace(name === 'CATEGORIES' ? /,/g : /$^/, ''))
        ? line
        : [],
    ),
  'no control character but tab, no half of a surrogate pair (3.1)': ({ text }) =>
    text.split('\r\n').filter((line) => /(?!\t)\p{Cc}|\p{Surrogate}/u.test(line)),
  'no mark that turns the reading direction': ({ text }) =>
    text.split('\r\n').filter((line) => /[\ufeff\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/.test(line)),
  'one calendar of events alone (3.6)': ({ calendar, events }) =>
    [
      calendar.kind === 'VCALENDAR' ? '' : calendar.kind,
      ...events.map(({ kind }) => (kind === 'VEVENT' ? '' : kind)),
    ].filter((one) => one !== ''),
  'properties stand before components (3.6)': ({ text }) => {
    let ended = false;
    return unfolded(text).filter((line) => {
      if (/^(BEGIN|END):/.test(line)) ended = line.startsWith('END:');
      return !/^(BEGIN|END):|^$/.test(line) && ended;
    });
  },
  'PRODID, VERSION and names of the calendar once (3.6)': ({ calendar }) =>
    count([calendar], 'PRODID VERSION NAME X-WR-CALNAME REFRESH-INTERVAL X-PUBLISHED-TTL', (n) => n === 1),
  'VERSION is 2.0 (3.7.4)': ({ calendar }) => not(values(calendar, 'VERSION'), /^2\.0$/),
  'no METHOD, which would oblige an ORGANIZER (RFC 5546)': ({ calendar }) => values(calendar, 'METHOD'),
  'never empty, since clients keep or drop all of an empty feed (3.6)': ({ events }) =>
    events.length > 0 ? [] : ['no event'],
  'REFRESH-INTERVAL says VALUE=DURATION (RFC 7986 5.7)': ({ calendar }) =>
    not(
      calendar.properties.filter((line) => line.startsWith('REFRESH')),
      /^REFRESH-INTERVAL;VALUE=DURATION:P/,
    ),
  'both hints to poll say the same': ({ calendar }) =>
    values(calendar, 'X-PUBLISHED-TTL').filter((ttl) => ttl !== value(calendar, 'REFRESH-INTERVAL')),
  'durations are derivable (3.3.6)': ({ calendar, alarms }) =>
    not([...values(calendar, 'REFRESH-INTERVAL'), ...alarms.flatMap((one) => values(one, 'TRIGGER'))], DURATION),
  'both names of the calendar say the same': ({ calendar }) =>
    values(calendar, 'NAME').filter((name) => name !== value(calendar, 'X-WR-CALNAME')),
  'both descriptions of the calendar say the same (RFC 7986 5.2)': ({ calendar }) => {
    const both = [values(calendar, 'DESCRIPTION'), values(calendar, 'X-WR-CALDESC')];
    return both[0]?.length === 1 && String(both[0]) === String(both[1]) ? [] : both.flat();
  },
  'what an event has once (3.6.1)': ({ events }) =>
    count(events, 'UID DTSTAMP DTSTART DTEND SUMMARY DESCRIPTION SEQUENCE LAST-MODIFIED STATUS TRANSP', (n) => n === 1),
  'what an event has at most once (3.6.1)': ({ events }) =>
    count(events, 'CLASS CREATED GEO LOCATION URL', (n) => n <= 1),
  'UIDs are plain, at most 255 octets, and no date is in them': ({ events }) => {
    const uids = events.map((one) => value(one, 'UID'));
    return [...not(uids, /^[\w.@-]{1,255}$/), ...uids.filter((uid) => /\d{4}-\d{2}-\d{2}|\d{8}T?/.test(uid))];
  },
  'no UID twice (3.8.4.7)': ({ events }) => {
    const uids = events.map((one) => value(one, 'UID'));
    return uids.filter((uid, i) => uids.indexOf(uid) !== i);
  },
  'stamps are in UTC (3.8.7)': ({ events }) =>
    not(
      ['DTSTAMP', 'LAST-MODIFIED', 'CREATED'].flatMap((name) => events.flatMap((one) => values(one, name))),
      UTC,
    ),
  'DTSTAMP is LAST-MODIFIED, since there is no METHOD (3.8.7.2)': ({ events }) =>
    events.flatMap((one) => (value(one, 'DTSTAMP') === value(one, 'LAST-MODIFIED') ? [] : value(one, 'UID'))),
  'SEQUENCE is a whole number (3.8.7.4)': ({ events }) =>
    not(
      events.map((one) => value(one, 'SEQUENCE')),
      /^(0|[1-9]\d*)$/,
    ),
  'a day says VALUE=DATE, a time is in UTC (3.3.4, 3.3.5)': ({ events }) =>
    events.flatMap(({ properties }) =>
      not(
        properties.filter((line) => /^DT(START|END)/.test(line)),
        /^DT(START|END)(;VALUE=DATE:\d{8}|:\d{8}T\d{6}Z)$/,
      ),
    ),
  'days and times are in the calendar': ({ events }) =>
    ['DTSTART', 'DTEND', 'DTSTAMP']
      .flatMap((name) => events.flatMap((one) => values(one, name)))
      .filter((one) => !exists(one)),
  'an event ends after its start, both of one type (3.8.2.2)': ({ events }) =>
    events.flatMap((one) => {
      const [start, end] = [value(one, 'DTSTART'), value(one, 'DTEND')];
      return end > start && end.length === start.length ? [] : value(one, 'UID');
    }),
  'no DURATION, no recurrence, no time zone': ({ events, text }) => [
    ...events
      .flatMap(all)
      .flatMap(({ name, line }) => (/^(DURATION|RRULE|RDATE|EXDATE|RECURRENCE-ID)$/.test(name) ? line : [])),
    ...unfolded(text).filter((line) => /^[A-Z-]+;[^:]*TZID=|VTIMEZONE$/.test(line)),
  ],
  'STATUS and TRANSP are words of the standard (3.8.1.11, 3.8.2.7)': ({ events }) => [
    ...not(
      events.map((one) => value(one, 'STATUS')),
      /^(TENTATIVE|CONFIRMED|CANCELLED)$/,
    ),
    ...not(
      events.map((one) => value(one, 'TRANSP')),
      /^(OPAQUE|TRANSPARENT)$/,
    ),
  ],
  'a window and the soil of today block no time': ({ events }) =>
    events.flatMap((one) =>
      /-(window|soil)@/.test(value(one, 'UID')) && value(one, 'TRANSP') !== 'TRANSPARENT' ? value(one, 'UID') : [],
    ),
  'what was cancelled blocks no time and reminds nobody': ({ events }) =>
    events.flatMap((one) =>
      value(one, 'STATUS') === 'CANCELLED' && (value(one, 'TRANSP') !== 'TRANSPARENT' || one.parts.length > 0)
        ? value(one, 'UID')
        : [],
    ),
  'a description under 2,000 characters': ({ events }) =>
    events.flatMap((one) =>
      [...value(one, 'DESCRIPTION').replace(/\\(.)/gs, '$1')].length < 2000 ? [] : value(one, 'UID'),
    ),
  'colours are names (RFC 7986 5.9)': ({ calendar, events }) =>
    not(
      [calendar, ...events].flatMap((one) => values(one, 'COLOR')),
      /^[a-z]+$/i,
    ),
  'no person, no place, no address of a feed': (feed) =>
    everywhere(feed).flatMap(({ name, line }) =>
      /^(ORGANIZER|ATTENDEE|GEO|LOCATION|SOURCE|ATTACH|CONTACT)$/.test(name) ? line : [],
    ),
  'an alarm displays a text before the start, and nothing else (3.6.6)': ({ alarms }) =>
    alarms.flatMap((one) =>
      one.kind === 'VALARM' &&
      [...new Set(all(one).map(({ name }) => name))].sort().join() === 'ACTION,DESCRIPTION,TRIGGER' &&
      one.properties.length === 3 &&
      value(one, 'ACTION') === 'DISPLAY' &&
      value(one, 'DESCRIPTION') !== '' &&
      one.properties.some((line) => /^TRIGGER:-?P/.test(line)) &&
      one.parts.length === 0
        ? []
        : one.properties.join(),
    ),
  'under 1 MB and 1,000 events, which clients take': ({ text, events }) => [
    ...(Buffer.byteLength(text) < 1_000_000 ? [] : ['too large']),
    ...(events.length < 1000 ? [] : ['too many events']),
  ],
};

/** Whether a day or an instant of iCalendar is one: not 30 February. */
function exists(moment: string): boolean {
  const iso = moment.replace(/^(\d{4})(\d\d)(\d\d)(T(\d\d)(\d\d)(\d\d)Z)?$/, (_, y, m, d, time, h, min, s) =>
    time ? `${y}-${m}-${d}T${h}:${min}:${s}.000Z` : `${y}-${m}-${d}`,
  );
  const at = new Date(iso);
  return Number.isFinite(at.getTime()) && at.toISOString().startsWith(iso);
}

/** Every rule that a feed breaks, and where. */
export function faultsOf(text: string): Record<string, readonly string[]> {
  const calendar = partsOf(text.replace(/^\ufeff/, ''));
  const events = calendar.parts;
  const feed = { text, calendar, events, alarms: events.flatMap(({ parts }) => parts) };
  return Object.fromEntries(
    Object.entries(RULES)
      .map(([rule, breaking]) => [rule, breaking(feed)] as const)
      .filter(([, breaking]) => breaking.length > 0),
  );
}
