import { displayOf } from '../../base/display.ts';
import type { Season } from '../../model/season.ts';
import { asOfLine, type DraftEvent, nextDay, uidOf, wordsFor } from '../events/draft.ts';
import { fitted } from '../events/fitted.ts';
import type { NamedSeason } from './names.ts';

/**
 * The soil of today of several lawns, in one event: one a lawn would fill the top of every day with what changes daily.
 *
 * @param latest The season that is planned for the latest day; what is told of the whole calendar is of that day.
 */
export function soilOfLawns(lawns: readonly NamedSeason[], latest: Season, feedKey: string): DraftEvent {
  const { asOf, season } = latest;
  const words = wordsFor(latest);
  const seasons = lawns.map((one) => one.season);
  const values = lawns.map(({ name, season: { today, display } }) => {
    const { temperature } = displayOf(display.units, display.language);
    return `${name} ${today.soil5C === null ? '–' : temperature(today.soil5C)}`;
  });
  const blocks = lawns.map(({ name, season: { today } }) => [name, ...today.lines.map((line) => `- ${line}`), '']);
  const now = lawns.flatMap(({ name, season: one }) => one.now.map((line) => `${name}: ${line}`));
  return {
    uid: uidOf({ ...latest, feedKey }, 'soil', season.year, null),
    kind: 'soil',
    season: season.year,
    step: null,
    day: asOf,
    dueSince: null,
    allDay: true,
    start: asOf,
    end: nextDay(asOf),
    summary: words.soilOfLawns(values),
    description: fitted(
      [
        { goes: 'late', lines: blocks.flat() },
        // Each lawn may have its own; of many the first lines do.
        { goes: 'last', lines: [...new Set(seasons.map(asOfLine))] },
        { goes: 'first', lines: ['', ...now] },
      ],
      words.more,
    ),
    status: 'CONFIRMED',
    transparent: true,
    categories: [words.category],
    remindersMin: [],
    substance: [asOf, lawns.map(({ name, season: { today } }) => [name, today.lines]), now],
  };
}
