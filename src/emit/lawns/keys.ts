import { nameHash } from '../../base/hash.ts';
import type { Calendar } from '../../model/calendar.ts';
import type { Role } from '../../model/reader.ts';

/** How many letters of a key tell who reads, and how many tell the lawn. */
const LETTERS = { role: 6, lawn: 12 } as const;

/** Who reads a calendar. */
export const roleOf = ({ as = 'owner' }: Calendar): Role => as;

const keyStart = (key: string, as: Role): string => nameHash(JSON.stringify([key, as]), LETTERS.role);

/**
 * What the events of a lawn in a calendar are called by: made one way from the calendar's key, who reads it and the lawn's id.
 *
 * @param lawn Null for events of the calendar itself.
 */
export function keyOfLawn(calendar: Calendar, lawn: string | null): string {
  const [key, as] = [calendar.feed.key, roleOf(calendar)];
  return `${keyStart(key, as)}${nameHash(JSON.stringify([key, as, lawn]), LETTERS.lawn)}`;
}

/** What the events of the calendar itself are called by. */
export const keyOfCalendar = (calendar: Calendar): string => keyOfLawn(calendar, null);

/** Whether an event was never told to another role: what that may see is not to be told on to this one. */
export function isForReader(calendar: Calendar): (uid: string) => boolean {
  const other = keyStart(calendar.feed.key, roleOf(calendar) === 'owner' ? 'helper' : 'owner');
  return (uid) => !uid.startsWith(other);
}
