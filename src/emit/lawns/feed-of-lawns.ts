import type { Calendar } from '../../model/calendar.ts';
import type { Ledger } from '../../model/ledger.ts';
import type { Role } from '../../model/reader.ts';
import type { Season } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { changesOfParts, isFirstFeed, type Told } from '../changes/words.ts';
import { eventsOf } from '../events/all.ts';
import { type Part, publishedOf, wholePart } from '../published-as.ts';
import { forHelper } from '../readers/for-helper.ts';
import { isForReader, keyOfCalendar, keyOfLawn, roleOf } from './keys.ts';
import { type NamedSeason, namedSeasons } from './names.ts';
import { soilOfLawns } from './soil-of-lawns.ts';

/** How a feed of several lawns is made. */
export interface LawnsFeedOptions {
  /** What it has published so far. */
  readonly ledger: Ledger;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  /** Whether every lawn of the calendar has a season here. */
  readonly isWhole: boolean;
}

/** The feed of several lawns, the ledger to keep, and what its subscribers see change. */
interface LawnsFeed {
  readonly text: string;
  readonly ledger: Ledger;
  readonly told: readonly Told[];
  readonly isFirst: boolean;
}

/** The season that is planned for the latest day: lawns may lie in several zones. */
export const latestOf = (seasons: readonly Season[]): Season | undefined =>
  [...seasons].sort((a, b) => (a.asOf < b.asOf ? 1 : a.asOf > b.asOf ? -1 : 0))[0];

/**
 * One feed of several lawns, each told for its reader. Titles bear the lawn's name. Events of a lawn that was taken out of the
 * calendar are called off; while a lawn of it has no season here, all that no season owns stays as it was published, since
 * it may be that lawn's.
 *
 * @throws RangeError where there is no season at all, or an instant is not one.
 */
export function feedOfLawns(
  calendar: Calendar,
  seasons: readonly Season[],
  { ledger, revisedAt, isWhole }: LawnsFeedOptions,
): LawnsFeed {
  const latest = latestOf(seasons);
  if (latest === undefined) throw new RangeError('a feed of lawns needs at least one of them');
  const role = roleOf(calendar);
  const seen = namedSeasons(seasons).map(({ season, name }) => ({
    name,
    season: { ...(role === 'helper' ? forHelper(season) : season), feedKey: keyOfLawn(calendar, season.lawn) },
  }));
  const own = keyOfCalendar(calendar);
  const isFor = isForReader(calendar);
  const whole: Part = {
    ...wholePart({ ...latest, applications: [] }, [soilOfLawns(seen, latest, own)]),
    owns: (uid) => isWhole || !isFor(uid) || uid.startsWith(`${own}-`),
  };
  const parts = [...seen.map((one) => partOf(one, calendar, role)), whole];
  const made = publishedOf(parts, latest.display.language, {
    ledger,
    revisedAt,
    feed: undefined,
    ...coverOf(calendar, role, seasons, latest.display.language),
    // Who saw more before is not to have it told on here.
    keeps: ({ uid }) => isFor(uid),
  });
  return {
    text: made.text,
    ledger: made.ledger,
    told: changesOfParts(made.changes, parts),
    isFirst: isFirstFeed(made.changes, made.ledger.events),
  };
}

function partOf({ season, name }: NamedSeason, { detail = 'normal' }: Calendar, role: Role): Part {
  const titled = (title: string): string => `${name}: ${title}`;
  return {
    plan: season,
    titled,
    owns: (uid) => uid.startsWith(`${season.feedKey}-`),
    drafts: eventsOf(season, detail, role)
      .filter(({ kind }) => kind !== 'soil')
      .map((draft) => ({ ...draft, summary: titled(draft.summary), substance: [...draft.substance, name] })),
  };
}

function coverOf({ id, name = id }: Calendar, role: Role, seasons: readonly Season[], language: string) {
  const words = wordsOf(language).feed;
  const programs = [...new Set(seasons.map(({ programName }) => programName))].join(', ');
  const about = role === 'helper' ? words.helperAbout : words.calendarAbout(name, programs);
  return { name, about };
}
