import { nameHash } from '../../base/hash.ts';
import type { Ledger } from '../../model/ledger.ts';
import type { Season } from '../../model/season.ts';
import { type DraftEvent, nextDay, wordsFor } from '../events/draft.ts';
import type { Plan } from '../ledger/vanished.ts';
import { type Feed, publishedAs } from '../published-as.ts';

/** Seasons through which the feed of somebody who is no reader any more is still written. */
const KEPT_SEASONS = 1;

/**
 * The feed of somebody who is no reader any more: what was to come is called off, and one event says that the calendar has
 * ended, so that it is never empty. After the next season it is no longer written.
 *
 * @param season Any season of the lawn; nothing of it is told but its day.
 * @returns Without a text where it is over for good: then nothing is left of it in the ledger.
 * @throws RangeError where an instant is not one.
 */
export function endedCalendar(
  season: Omit<Plan, 'applications'> & Pick<Season, 'feedKey'>,
  options: { readonly ledger: Ledger; readonly revisedAt: string; readonly feed: string },
): { readonly text: string | null; readonly ledger: Ledger } {
  const { ledger, feed } = options;
  const ended = ledger.readers[feed]?.find(({ kind, removedOn }) => kind === 'ended' && removedOn === null);
  if (ended && ended.season < season.season.year - KEPT_SEASONS) {
    const { [feed]: _, ...readers } = ledger.readers;
    return { text: null, ledger: { ...ledger, readers } };
  }
  const words = wordsFor(season);
  const calendar: Feed = { ...options, name: words.endedName, about: words.endedText, keeps: () => true };
  // Without applications: what was done stays as it was told.
  return publishedAs(
    { ...season, applications: [] },
    [endedEvent(season, feed, ended?.day ?? season.asOf, ended?.season ?? season.season.year)],
    calendar,
  );
}

function endedEvent(season: Pick<Season, 'feedKey' | 'display'>, feed: string, day: string, year: number): DraftEvent {
  const words = wordsFor(season);
  return {
    uid: `${nameHash(`${season.feedKey} ${feed}`)}-ended@soilclock.invalid`,
    kind: 'ended',
    season: year,
    step: null,
    day,
    dueSince: null,
    allDay: true,
    start: day,
    end: nextDay(day),
    summary: words.endedName,
    description: words.endedText,
    status: 'CONFIRMED',
    transparent: true,
    categories: [words.category],
    remindersMin: [],
    substance: [day],
  };
}
