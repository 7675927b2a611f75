/**
 * The one place that knows ical-generator and its traps (version 11):
 * names and descriptions of a calendar are not escaped, and left out where empty; control characters, lone surrogates and bidi marks pass through;
 * a calendar time zone would print UTC stamps as local; start after end is swapped in silence, an equal all-day end and
 * a UID used twice are accepted; properties are written after components; the last line has no line end.
 */
import { escape as escaped, ICalAlarmType, ICalCalendar, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import { cleaned } from '../base/text.ts';
import { descriptionHtml } from './description-html.ts';

/** An event as plain data. Days are `YYYY-MM-DD`, instants `YYYY-MM-DDTHH:MM:SSZ`; the end is the first moment after it. */
export interface FeedEvent {
  readonly uid: string;
  readonly allDay: boolean;
  readonly start: string;
  readonly end: string;
  readonly summary: string;
  readonly description: string;
  readonly status: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';
  readonly transparent: boolean;
  readonly categories: readonly string[];
  /** Minutes before the start. */
  readonly remindersMin: readonly number[];
  readonly sequence: number;
  readonly lastModified: string;
  /** A property of ours with a plain value, for whoever makes the next feed; calendars pass over it. */
  readonly own?: { readonly name: string; readonly value: string };
}

interface Calendar {
  readonly name: string;
  readonly description: string;
  readonly language: string;
  /** Minutes between two polls that would be enough. */
  readonly refreshMin: number;
  readonly events: readonly FeedEvent[];
}

const PRODID = { company: 'soilclock', product: 'season feed', language: 'EN' };

/**
 * A calendar as iCalendar text (RFC 5545, RFC 7986): UTF-8, CRLF after every line, at most 75 octets a line.
 *
 * @throws RangeError for our own bugs: an empty calendar, a UID used twice, an event that does not end after its start, a
 *   moment or a number that is none.
 */
export function icalendar(asked: Calendar): string {
  check(asked);
  const { name, description, language, refreshMin, events } = asked;
  const calendar = new ICalCalendar({
    prodId: { ...PRODID, language: language.slice(0, 2).toUpperCase() },
    name: escaped(said(name), false),
    description: escaped(said(description), false),
    ttl: refreshMin * 60,
    // The standard's own name of it (RFC 7986), beside that which older programs know; it is escaped there.
    x: [['DESCRIPTION', said(description)]],
  });
  for (const event of events) {
    calendar.createEvent({
      id: event.uid,
      sequence: event.sequence,
      stamp: new Date(event.lastModified),
      lastModified: new Date(event.lastModified),
      allDay: event.allDay,
      // A day as text is the only form that no host zone can shift.
      start: event.allDay ? event.start : new Date(event.start),
      end: event.allDay ? event.end : new Date(event.end),
      summary: said(event.summary),
      description: { plain: said(event.description), html: descriptionHtml(event.description) },
      status: ICalEventStatus[event.status],
      x: event.own === undefined ? [] : [{ key: event.own.name, value: event.own.value }],
      transparency: event.transparent ? ICalEventTransparency.TRANSPARENT : ICalEventTransparency.OPAQUE,
      categories: event.categories.map((category) => ({ name: said(category) })),
      alarms: event.remindersMin.map((minutes) => ({
        type: ICalAlarmType.display,
        trigger: minutes * 60,
        description: said(event.summary),
      })),
    });
  }
  return propertiesFirst(calendar.toString());
}

/** A text as a calendar may carry it; a dash where nothing of it is left, since some properties have to say something. */
const said = (text: string): string => cleaned(text) || '-';

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/;
/** A day or an instant that is in the calendar: 30 February reads back as another day. */
const isMoment = (form: RegExp, text: string): boolean =>
  form.test(text) &&
  Number.isFinite(Date.parse(text)) &&
  new Date(text).toISOString().startsWith(text.replace('Z', ''));
const isWhole = (number: number, least: number): boolean => Number.isSafeInteger(number) && number >= least;

function check({ events, refreshMin, language }: Calendar): void {
  const refuse = (what: string): never => {
    throw new RangeError(what);
  };
  if (events.length === 0) refuse('a calendar needs at least one event');
  if (!isWhole(refreshMin, 1)) refuse(`a refresh of ${refreshMin} minutes is not a whole number of them`);
  if (!/^[a-z]{2,3}(-\w+)*$/i.test(language)) refuse(`the language ${JSON.stringify(language)} is none`);
  const seen = new Set<string>();
  for (const { uid, allDay, start, end, sequence, lastModified, remindersMin } of events) {
    if (!/^[\w.@-]{1,255}$/.test(uid)) refuse(`the UID ${JSON.stringify(uid)} is not plain`);
    if (seen.has(uid)) refuse(`the UID ${uid} is used twice`);
    for (const moment of [start, end])
      if (!isMoment(allDay ? DAY : INSTANT, moment)) refuse(`the event ${uid} has ${moment} for a moment`);
    if (!(end > start)) refuse(`the event ${uid} ends at ${end}, not after its start ${start}`);
    if (!isMoment(INSTANT, lastModified)) refuse(`the event ${uid} was modified at ${lastModified}, no instant in UTC`);
    if (!isWhole(sequence, 0)) refuse(`the event ${uid} has the SEQUENCE ${sequence}`);
    if (!remindersMin.every((minutes) => isWhole(minutes, 0))) refuse(`the event ${uid} reminds at ${remindersMin}`);
    seen.add(uid);
  }
}

/** Puts the properties of each component before the components inside it, and ends the last line. */
function propertiesFirst(text: string): string {
  const lines = text.split('\r\n').filter((line) => line !== '');
  const physical: string[][] = [];
  for (const line of lines) {
    if (/^[ \t]/.test(line)) physical.at(-1)?.push(line);
    else physical.push([line]);
  }
  interface Component {
    readonly properties: string[];
    readonly inner: Component[];
    readonly begin: string;
  }
  const root: Component = { properties: [], inner: [], begin: '' };
  const open = [root];
  for (const folded of physical) {
    const [first = ''] = folded;
    const current = open.at(-1) as Component;
    if (first.startsWith('BEGIN:')) {
      const component: Component = { properties: [], inner: [], begin: first };
      current.inner.push(component);
      open.push(component);
    } else if (first.startsWith('END:')) open.pop();
    else current.properties.push(...folded);
  }
  const written = ({ properties, inner, begin }: Component): string[] => [
    begin,
    ...properties,
    ...inner.flatMap(written),
    begin.replace('BEGIN:', 'END:'),
  ];
  return `${root.inner.flatMap(written).join('\r\n')}\r\n`;
}
