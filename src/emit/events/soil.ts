import type { Season } from '../../model/season.ts';
import { type DraftEvent, nextDay, uidOf, withAsOf, wordsFor } from './draft.ts';

/** The one event that changes every day: the values of today. A feed is never empty, since this stands in it. */
export function soilEvent(season: Season): DraftEvent[] {
  const { today, asOf } = season;
  return [
    {
      uid: uidOf(season, 'soil', season.season.year, null),
      kind: 'soil',
      season: season.season.year,
      step: null,
      day: asOf,
      dueSince: null,
      allDay: true,
      start: asOf,
      end: nextDay(asOf),
      summary: today.title,
      description: withAsOf(season, today.lines, ['', ...season.now]),
      status: 'CONFIRMED',
      transparent: true,
      categories: [wordsFor(season).category],
      remindersMin: [],
      substance: [asOf, today.lines, season.now],
    },
  ];
}
