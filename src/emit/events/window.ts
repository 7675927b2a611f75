import { displayOf } from '../../base/display.ts';
import type { Role } from '../../model/reader.ts';
import type { Application, Season } from '../../model/season.ts';
import { feedWords as words } from '../words-en.ts';
import { asOfLine, type DraftEvent, fittedAround, isOpen, nextDay, odds, section, uidOf, withAsOf } from './draft.ts';

/** The days in which the work is right. */
export function windowEvent(season: Season, application: Application, role: Role): DraftEvent[] {
  const { id, name, status, window, chance, how, cautions, season: year } = application;
  const [first, last] = [window.opens.p50, window.closes.p50];
  if (first === null || last === null || !isOpen(application)) return [];
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

const days = ({ display }: Season, { window }: Application): string =>
  words.windowText(window.opens, window.closes, displayOf(display.units, display.language));

/** Beside a job that says the rest. */
const shortText = (season: Season, application: Application): string =>
  withAsOf(season, [days(season, application)], ['', ...application.why]);

/** Where no job says it: what is to be done, how likely there is a window, and why then. */
function wholeText(season: Season, application: Application): string {
  const { how, cautions, why, notJudged, chance, hours } = application;
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
      ...(share === null || share === 1 ? [] : [words.windowOdds(share)]),
      ...(hoursLine === null ? [] : [hoursLine]),
      '',
      ...section(words.whyThen, why),
    ],
  );
}
