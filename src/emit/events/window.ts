import { parseDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import type { Role } from '../../model/reader.ts';
import type { Application, Season, Spread } from '../../model/season.ts';
import type { Words } from '../../words/words.ts';
import { type DraftEvent, isOpen, type Leeway, nextDay, odds, uidOf, withAsOf, wordsFor, workParts } from './draft.ts';
import { fitted, section } from './fitted.ts';

/** The days in which the work is right. */
export function windowEvent(season: Season, application: Application, role: Role): DraftEvent[] {
  const { id, name, status, window, chance, how, cautions, season: year } = application;
  const [first, last] = [window.opens.p50, window.closes.p50];
  if (first === null || last === null || !isOpen(application)) return [];
  const words = wordsFor(season);
  return [
    {
      uid: uidOf(season, 'window', year, id),
      kind: 'window',
      season: year,
      step: id,
      day: first,
      dueSince: null,
      allDay: true,
      start: first,
      end: nextDay(last),
      summary: words.windowTitle(name),
      description: (role === 'public' ? wholeText : shortText)(season, application),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      transparent: true,
      categories: [words.category],
      remindersMin: [],
      substance: role === 'public' ? [status, name, how, cautions] : [status, name],
      about: { odds: chance, days: { start: leewayOf(window.opens), end: leewayOf(window.closes) } },
    },
  ];
}

function days(season: Season, { window }: Application): string {
  const words = wordsFor(season);
  const display = displayOf(season.display.units, season.display.language);
  return words.windowText(rangeOf(window.opens, words, display), rangeOf(window.closes, words, display));
}

/** Beside a job that says the rest. */
const shortText = (season: Season, application: Application): string =>
  withAsOf(season, [days(season, application)], ['', ...application.why]);

/** Where no job says it: what is to be done, how likely there is a window, and why then. */
function wholeText(season: Season, application: Application): string {
  const { why, chance, hours } = application;
  const words = wordsFor(season);
  const share = odds(chance);
  const hoursLine = words.hours[hours];
  return fitted(
    [
      { goes: 'never', lines: [days(season, application), ''] },
      ...workParts(season, application),
      {
        goes: 'first',
        lines: [
          ...(share === null || share === 1 ? [] : [words.windowOdds(Math.round(10 * share))]),
          ...(hoursLine === null ? [] : [hoursLine]),
          '',
          ...section(words.whyThen, why),
        ],
      },
    ],
    words.more,
  );
}

/** A quarter of the days from p10 to p90, about as far as the quartiles are from the middle: half of all runs lie as near. */
function leewayOf({ p10, p90 }: Spread): Leeway {
  const [first, last] = [parseDay(p10 ?? ''), parseDay(p90 ?? '')];
  const days = first === null || last === null ? 0 : Math.floor((last - first) / 4);
  return { early: days, late: days };
}

/** Days of an edge of a window: the middle one, and those between which it falls in 8 of 10 runs. */
function rangeOf({ p10, p50, p90 }: Spread, words: Words['feed'], display: Display): string {
  const shown = (day: string | null) => {
    const parsed = parseDay(day ?? '');
    return parsed === null ? null : display.shortDay(parsed);
  };
  return p10 === p90 ? words.onDay(shown(p50)) : words.aboutDay(shown(p50), shown(p10), shown(p90));
}
