import type { Application, Season } from '../../model/season.ts';
import { type DraftEvent, notice, withAsOf, wordsFor } from './draft.ts';

/** Keep off, in the words of the label entry. How long is the label's to say, so it stands on the day of the work alone. */
export function keepOffEvent(season: Season, application: Application): DraftEvent[] {
  const { id, name, date, season: year, reEntry, status } = application;
  if (date === null || reEntry === null) return [];
  const words = wordsFor(season);
  return [
    notice(season, {
      kind: 'keep-off',
      year,
      part: id,
      step: id,
      first: date,
      last: date,
      summary: words.keepOffTitle(name),
      description: withAsOf(season, [words.keepOffText(reEntry), words.labelWins]),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      substance: [date, reEntry, status === 'expected', name],
    }),
  ];
}
