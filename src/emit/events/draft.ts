import { type Day, formatDay, parseDay } from '../../base/day.ts';
import type { Application, Season } from '../../model/season.ts';
import type { FeedEvent } from '../ical.ts';

/** What an event is about. */
export type EventKind = 'job' | 'window' | 'soil';

/** An event before it has a revision. */
export interface DraftEvent extends Omit<FeedEvent, 'sequence' | 'lastModified'> {
  readonly kind: EventKind;
  readonly season: number;
  readonly step: string | null;
  /** The chosen day, or the first day of a window. */
  readonly day: string;
  readonly dueSince: string | null;
  /** What makes a revision when it changes at all: day, hours, status, amounts, product, cautions. */
  readonly substance: readonly unknown[];
  /** What makes one when it changes by more than a little: a share of runs, and start and end where `days` says so. */
  readonly about?: { readonly odds: number | null; readonly days: boolean };
}

export const nextDay = (day: string): string => formatDay((parseDay(day) as Day) + 1);

/** The UID of an event: from feed key, season, step and kind, never from the date. */
export const uidOf = (season: Season, kind: EventKind, year: number, step: string | null): string =>
  [season.feedKey, year, step, kind]
    .filter((part) => part !== null)
    .join('-')
    .concat('@soilclock.invalid');

/** The longest description that every client keeps whole. */
const LONGEST = 1900;

/** Lines up to the longest description: `always` whole, then as many of `more` as there is room for. */
export function fitted(always: readonly string[], more: readonly string[]): string {
  const kept = [...always];
  let length = kept.join('\n').length;
  for (const line of more) {
    length += line.length + 1;
    if (length > LONGEST) break;
    kept.push(line);
  }
  return kept.join('\n').slice(0, LONGEST);
}

/** Odds as they are published: to 10 points. */
export const odds = (share: number | null): number | null => (share === null ? null : Math.round(share * 10) / 10);

/** Whether a step is still to come. */
export const isOpen = ({ status }: Application): boolean => ['expected', 'open', 'due'].includes(status);
