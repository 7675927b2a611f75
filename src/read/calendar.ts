import { type Calendar, CalendarSchema } from '../model/calendar.ts';
import { type Parsed, readAs } from './validate.ts';

/**
 * Reads a calendar file, and none of the lawns that it names.
 *
 * @returns The calendar where nothing is wrong, and every problem with its place.
 * @example readCalendar('kind: calendar\n…', 'my-lawns.yaml').value?.lawns
 */
export const readCalendar = (text: string, name: string): Parsed<Calendar> =>
  readAs(CalendarSchema, text, name, 'calendar');
