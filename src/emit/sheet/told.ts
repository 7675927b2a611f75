import { type Day, parseDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import { clockAt } from '../../base/zone.ts';
import { PUBLIC_PLACE } from '../../model/reader.ts';
import type { Application, Season, Spread } from '../../model/season.ts';
import { type Words, wordsOf } from '../../words/words.ts';
import { dayText } from '../day-text.ts';

/** A season with what tells it: the words and the units of its reader. */
export interface Told {
  readonly season: Season;
  readonly words: Words;
  readonly display: Display;
}

/** Whether the season is that of a place, with no lawn of anybody's. */
export const isPublic = ({ season }: Told): boolean => season.lawn === PUBLIC_PLACE;

/** What the sheet is of. */
export const titleOf = (told: Told): string =>
  isPublic(told) || told.season.lawnName === '' ? told.season.programName : told.season.lawnName;

/** A season to be told on a sheet. */
export const toldOf = (season: Season): Told => ({
  season,
  words: wordsOf(season.display.language),
  display: displayOf(season.display.units, season.display.language),
});

/** A day with its weekday, and with its year where that is another than the as-of day's. */
export const dayOn = (day: string, { season, display }: Told): string => dayText(day, season.asOf, display);

/** A day without its weekday; null for none. */
export function shortDay(day: string | null, { display }: Told): string | null {
  const parsed = parseDay(day ?? '');
  return parsed === null ? null : display.shortDay(parsed);
}

/** A day with its odds: "about Apr 8 (8 in 10: Apr 3 to Apr 21)"; the day alone where nothing is left open. */
export function aboutDay({ p10, p50, p90 }: Spread, told: Told): string {
  const [first, middle, last] = [p10, p50, p90].map((day) => shortDay(day, told));
  const { feed } = told.words;
  return first === last && middle !== null
    ? feed.onDay(middle ?? null)
    : feed.aboutDay(middle ?? null, first ?? null, last ?? null);
}

/** The hours of a job by the clock of the lawn; null where it has none. */
export function hoursOf({ start, end }: Application, { season, display }: Told): string | null {
  if (start === null || end === null) return null;
  const [from, to] = [start, end].map((instant) => clockAt(Date.parse(instant), season.timezone)) as [number, number];
  return display.hours(from, to);
}

/** How long a job lasts [min]; null where it has no hours. */
export const minutesOf = ({ start, end }: Application): number | null =>
  start === null || end === null ? null : Math.round((Date.parse(end) - Date.parse(start)) / 60_000);

/** A day that is known to be one. */
export const dayNumber = (day: string): Day => parseDay(day) as Day;

/** The name of a step, with its year where it is of the next season. */
export const nameOf = ({ name, season: year }: Application, { season }: Told): string =>
  year === season.season.year ? name : `${name} ${year}`;
