import { parseDay } from '../base/day.ts';
import type { Display } from '../base/display.ts';

/**
 * A day for a reader, with its year where that is another than the as-of day's.
 *
 * @returns Nothing for no day.
 * @example dayText('2028-03-05', '2027-11-20', display) //=> 'Sun, Mar 5, 2028'
 */
export function dayText(day: string | null, asOf: string, display: Display): string {
  const parsed = parseDay(day ?? '');
  if (parsed === null) return '';
  return day?.slice(0, 4) === asOf.slice(0, 4) ? display.day(parsed) : display.fullDay(parsed);
}
