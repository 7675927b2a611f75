import * as v from 'valibot';
import { type Ledger, LedgerSchema } from '../../model/ledger.ts';
import { KEPT_NAME, readKeptLine } from './kept-line.ts';

/**
 * The ledger that a feed of ours was written with, less the events that had left it and the feeds of other readers.
 * It reads what `icalendar` writes and is no reader of calendars at large.
 *
 * @returns Null where the text is no whole feed of ours, or one of its events does not say what it is.
 * @example rebuiltFrom(calendarOf(season, options).text)
 */
export function rebuiltFrom(feed: string): Ledger | null {
  if (!feed.endsWith('END:VCALENDAR\r\n')) return null;
  const unfolded = feed.replace(/\r\n[ \t]/g, '');
  const events = [...unfolded.matchAll(/^BEGIN:VEVENT\r\n(.*?)^END:VEVENT\r\n/gms)].map(([, lines = '']) =>
    entryOf(lines),
  );
  events.sort((a, b) => (String(a?.uid) < String(b?.uid) ? -1 : 1));
  const result = v.safeParse(LedgerSchema, { kind: 'ledger', version: 2, events, readers: {} });
  return result.success && events.length > 0 ? result.output : null;
}

/** An event's lines as an entry, not checked yet. */
function entryOf(lines: string) {
  const [own = '', ...alarms] = lines.split('BEGIN:VALARM\r\n');
  const properties = propertiesOf(own);
  const raw = (name: string): string => properties.get(name) ?? '';
  const text = (name: string): string => unescaped(raw(name));
  const kept = readKeptLine(raw(KEPT_NAME));
  if (kept === null) return null;
  // In the order in which a ledger is read back, so that the same ledger is the same bytes.
  return {
    uid: text('UID'),
    kind: kept.kind,
    season: kept.season,
    step: kept.step,
    day: kept.day,
    dueSince: kept.dueSince,
    hash: kept.hash,
    sequence: Number(raw('SEQUENCE')),
    lastModified: moment(raw('LAST-MODIFIED')),
    allDay: !raw('DTSTART').includes('T'),
    start: moment(raw('DTSTART')),
    end: moment(raw('DTEND')),
    summary: text('SUMMARY'),
    description: text('DESCRIPTION'),
    status: raw('STATUS'),
    transparent: raw('TRANSP') === 'TRANSPARENT',
    categories: (raw('CATEGORIES').match(/(?:\\.|[^\\,])+/g) ?? []).map(unescaped),
    remindersMin: alarms.map((alarm) => minutesBefore(propertiesOf(alarm).get('TRIGGER') ?? '')),
    cancelledOn: kept.cancelledOn,
    removedOn: null,
  };
}

/** Name → value; none of our parameters has a colon in it. */
const propertiesOf = (lines: string): Map<string, string> =>
  new Map(
    lines.split('\r\n').flatMap((line): [string, string][] => {
      const [, name, value] = /^([A-Z-]+)(?:;[^:]*)?:(.*)$/s.exec(line) ?? [];
      return name === undefined || value === undefined ? [] : [[name, value]];
    }),
  );

const unescaped = (text: string): string =>
  text.replace(/\\(.)/g, (_, letter: string) => (letter === 'n' || letter === 'N' ? '\n' : letter));

/** `20270402` and `20270402T060000Z` as a ledger has them. */
const moment = (value: string): string =>
  value.replace(/^(\d{4})(\d\d)(\d\d)/, '$1-$2-$3').replace(/T(\d\d)(\d\d)(\d\d)Z$/, 'T$1:$2:$3Z');

const MINUTES = { W: 10_080, D: 1440, H: 60, M: 1 } as const;

/** Minutes of a trigger before the start; NaN where it is none of ours, which no ledger takes. */
function minutesBefore(trigger: string): number {
  const [, duration] = /^-P([\dWDTHM]+)$/.exec(trigger) ?? [];
  if (duration === undefined) return Number.NaN;
  return [...duration.matchAll(/(\d+)([WDHM])/g)].reduce(
    (sum, [, count, unit]) => sum + Number(count) * MINUTES[unit as keyof typeof MINUTES],
    0,
  );
}
