import { PUBLIC_PLACE, type Reader, readerKey } from '../../model/reader.ts';
import type { Season } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { servicesIn } from '../events/weather-from.ts';
import { forHelper } from './for-helper.ts';

/** A season as somebody may see it, and what their calendar is called and tells of itself. */
interface Seen {
  readonly season: Season;
  readonly name: string;
  readonly about: string;
}

/** Who a feed is for; without an id it is the lawn's own. */
type Feed = Pick<Reader, 'as' | 'title'> & { readonly id: string | null };

/**
 * The season that a feed is made from. What a reader may not see is not in it.
 *
 * @throws RangeError where a season of somebody's lawn is to be told to the public.
 */
export function seenBy(season: Season, { id, as, title }: Feed): Seen {
  const { lawnName, programName } = season;
  const words = wordsOf(season.display.language).feed;
  const own: Season = { ...season, feedKey: id === null ? season.feedKey : readerKey(season.feedKey, { id, as }) };
  switch (as) {
    case 'owner':
      return { season: own, name: title ?? lawnName, about: words.calendarAbout(title ?? lawnName, programName) };
    case 'helper':
      return { season: forHelper(own), name: title ?? words.helperName, about: words.helperAbout };
    case 'public':
      if (season.lawn !== PUBLIC_PLACE) throw new RangeError(`the season of ${season.lawn} is not for the public`);
      return { season: forPublic(own), name: title ?? programName, about: words.publicAbout(programName) };
  }
}

/** The soil of today and the windows; what is due on which day is nobody's. */
const forPublic = (season: Season): Season => ({
  ...season,
  now: [],
  weather: { ...season.weather, sources: servicesIn(season.weather.sources) },
});
