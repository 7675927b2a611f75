import { contentHash } from '../../base/hash.ts';
import type { Calendar } from '../../model/calendar.ts';
import type { Ledger } from '../../model/ledger.ts';
import { type Role, readerKey } from '../../model/reader.ts';
import type { Season } from '../../model/season.ts';
import { changesOfParts, isFirstFeed, type Told } from '../changes/words.ts';
import { eventsOf } from '../events/all.ts';
import { type Part, publishedOf, wholePart } from '../published-as.ts';
import { forHelper } from '../readers/for-helper.ts';
import { feedWords as words } from '../words-en.ts';
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
  const role = calendar.as ?? 'owner';
  const seen = namedSeasons(seasons).map(({ season, name }) => ({
    name,
    season: { ...(role === 'helper' ? forHelper(season) : season), feedKey: lawnKey(calendar, role, season.lawn) },
  }));
  const other = roleKey(calendar, role === 'owner' ? 'helper' : 'owner');
  const own = lawnKey(calendar, role, null);
  const whole: Part = {
    ...wholePart({ ...latest, applications: [] }, [soilOfLawns(seen, latest, own)]),
    owns: (uid) => isWhole || uid.startsWith(other) || uid.startsWith(`${own}-`),
  };
  const parts = [...seen.map((one) => partOf(one, calendar, role)), whole];
  const made = publishedOf(parts, latest.display.language, {
    ledger,
    revisedAt,
    feed: undefined,
    ...coverOf(calendar, role, seasons),
    // Who saw more before is not to have it told on here.
    keeps: ({ uid }) => !uid.startsWith(other),
  });
  return {
    text: made.text,
    ledger: made.ledger,
    told: changesOfParts(made.changes, parts),
    isFirst: isFirstFeed(made.changes, made.ledger.events),
  };
}

/** How many digits of a key tell who reads; the others tell the lawn. */
const ROLE_DIGITS = 6;
const roleKey = ({ feed: { key } }: Calendar, as: Role): string => readerKey(key, { id: '', as }).slice(0, ROLE_DIGITS);

/** What events of a lawn are called by, or those of the calendar itself: made one way from its key. */
function lawnKey(calendar: Calendar, as: Role, lawn: string | null): string {
  const own = contentHash(JSON.stringify([calendar.feed.key, as, lawn]));
  return `${roleKey(calendar, as)}${own.slice(ROLE_DIGITS)}`;
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

function coverOf({ id, name = id }: Calendar, role: Role, seasons: readonly Season[]) {
  const programs = [...new Set(seasons.map(({ programName }) => programName))].join(', ');
  const about = role === 'helper' ? words.helperAbout : words.calendarAbout(name, programs);
  return { name, about };
}
