import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Application, Season } from '../../model/season.ts';
import { type Words, wordsOf } from '../../words/words.ts';
import type { FeedEvent } from '../ical.ts';
import { fitted, type Part, section } from './fitted.ts';
import { weatherFrom } from './weather-from.ts';

/** What an event is about. */
export type EventKind = 'job' | 'window' | 'buying' | 'water' | 'keep-off' | 'soil-check' | 'soil' | 'ended';

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
  /** What makes one when it changes by more than a little: a share of runs, and start and end where `days` says by how much. */
  readonly about?: {
    readonly odds: number | null;
    readonly days: { readonly start: Leeway; readonly end: Leeway } | null;
  };
}

/** How many days earlier or later than the plan's own a published day may lie and still be about right. */
export interface Leeway {
  readonly early: number;
  readonly late: number;
}

export const nextDay = (day: string): string => formatDay((parseDay(day) as Day) + 1);

/** The UID of an event: from feed key, season, step and kind, never from the date. */
export const uidOf = (season: Season, kind: EventKind, year: number, step: string | null): string =>
  [season.feedKey, year, step, kind]
    .filter((part) => part !== null)
    .join('-')
    .concat('@soilclock.invalid');

/** The words of a feed for a season's reader. */
export const wordsFor = ({ display }: Pick<Season, 'display'>): Words['feed'] => wordsOf(display.language).feed;

/** A day as the reader writes it. */
export const shownDay = ({ display }: Season, day: string): string =>
  displayOf(display.units, display.language).shortDay(parseDay(day) as Day);

/** The day of writing, and where the weather came from. */
export function asOfLine(season: Season): string {
  const { files, services } = weatherFrom(season);
  const { observedThrough, generated } = season.weather;
  return wordsFor(season).asOf(season.asOf, observedThrough, generated, files, services);
}

/** A text with the day that it was written on and where its weather came from, which stay where there is too much of it. */
export const withAsOf = (season: Season, lines: readonly string[], more: readonly string[] = []): string =>
  fitted(
    [
      { goes: 'late', lines },
      { goes: 'never', lines: ['', asOfLine(season)] },
      { goes: 'first', lines: more },
    ],
    wordsFor(season).more,
  );

/** How the work is done and with which care; what is to be looked at first, and what goes before the plan, stay in any case. */
export function workParts(season: Season, { how, cautions, notJudged }: Application): Part[] {
  const words = wordsFor(season);
  const first = notJudged.length > 0 ? [words.lookFirst(notJudged)] : [];
  return [
    { goes: 'late', lines: section(words.whatToDo, how) },
    { goes: 'last', lines: section(words.cautions, cautions) },
    { goes: 'never', lines: [...first, words.labelWins, asOfLine(season)] },
  ];
}

/** A notice: something for the whole day, or days, that takes no time from the day. */
export function notice(season: Season, { kind, year, part, step, first, last, ...rest }: Notice): DraftEvent {
  return {
    uid: uidOf(season, kind, year, part),
    kind,
    season: year,
    step,
    day: first,
    dueSince: null,
    allDay: true,
    start: first,
    end: nextDay(last),
    status: 'CONFIRMED',
    transparent: true,
    categories: [wordsFor(season).category],
    remindersMin: [],
    ...rest,
  };
}

interface Notice extends Pick<DraftEvent, 'kind' | 'step' | 'summary' | 'description' | 'substance'> {
  readonly year: number;
  /** What tells it from others of its kind in its UID. */
  readonly part: string;
  readonly first: string;
  readonly last: string;
  readonly status?: DraftEvent['status'];
  readonly about?: NonNullable<DraftEvent['about']>;
}

/** Odds as they are published: to 10 points. */
export const odds = (share: number | null): number | null => (share === null ? null : Math.round(share * 10) / 10);

/** Whether a step is still to come. */
export const isOpen = ({ status }: Application): boolean => ['expected', 'open', 'due'].includes(status);
