import { parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Application, Season, Spread } from '../../model/season.ts';
import { feedWords as words } from '../words-en.ts';
import { type DraftEvent, isOpen, type Leeway, nextDay, uidOf, withAsOf } from './draft.ts';

/** The days in which the work is right. */
export function windowEvent(season: Season, application: Application): DraftEvent[] {
  const { id, name, status, window, chance, why, season: year } = application;
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
      description: withAsOf(
        season,
        [words.windowText(window.opens, window.closes, displayOf(season.display.units, season.display.language))],
        ['', ...why],
      ),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      transparent: true,
      categories: [words.category],
      remindersMin: [],
      substance: [status, name],
      about: { odds: chance, days: { start: leewayOf(window.opens), end: leewayOf(window.closes) } },
    },
  ];
}

/** A quarter of the days from p10 to p90, about as far as the quartiles are from the middle: half of all runs lie as near. */
function leewayOf({ p10, p90 }: Spread): Leeway {
  const [first, last] = [parseDay(p10 ?? ''), parseDay(p90 ?? '')];
  const days = first === null || last === null ? 0 : Math.floor((last - first) / 4);
  return { early: days, late: days };
}
