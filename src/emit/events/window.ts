import { parseDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import type { Role } from '../../model/reader.ts';
import type { Application, Season, Spread } from '../../model/season.ts';
import type { Words } from '../../words/words.ts';
import {
  asOfLine,
  type DraftEvent,
  fittedAround,
  isOpen,
  nextDay,
  odds,
  section,
  uidOf,
  withAsOf,
  wordsFor,
} from './draft.ts';

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
      about: { odds: chance, days: true },
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
  const { how, cautions, why, notJudged, chance, hours } = application;
  const words = wordsFor(season);
  const share = odds(chance);
  const hoursLine = words.hours[hours];
  return fittedAround(
    [days(season, application), '', ...section(words.whatToDo, how)],
    [
      ...section(words.cautions, cautions),
      ...(notJudged.length > 0 ? [words.lookFirst(notJudged)] : []),
      words.labelWins,
      asOfLine(season),
    ],
    [
      ...(share === null || share === 1 ? [] : [words.windowOdds(Math.round(10 * share))]),
      ...(hoursLine === null ? [] : [hoursLine]),
      '',
      ...section(words.whyThen, why),
    ],
    words.more,
  );
}

/** Days of an edge of a window: the middle one, and those between which it falls in 8 of 10 runs. */
function rangeOf({ p10, p50, p90 }: Spread, words: Words['feed'], display: Display): string {
  const shown = (day: string | null) => {
    const parsed = parseDay(day ?? '');
    return parsed === null ? null : display.shortDay(parsed);
  };
  return p10 === p90 ? words.onDay(shown(p50)) : words.aboutDay(shown(p50), shown(p10), shown(p90));
}
