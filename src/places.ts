/** Places of a publication, from what is written of them to their files. */
import type { Day } from './base/day.ts';
import { formatDay } from './base/day.ts';
import { nameHash } from './base/hash.ts';
import type { Problem } from './base/problem.ts';
import { calendarOf } from './emit/calendar.ts';
import { atomFeed } from './emit/changes/atom.ts';
import { type Digest, digestText, digestWith } from './emit/changes/digest.ts';
import { changesInWords, isFirstFeed } from './emit/changes/words.ts';
import { endedCalendar } from './emit/readers/ended.ts';
import { seenBy } from './emit/readers/seen-by.ts';
import { filesOfPlace } from './emit/site/addresses.ts';
import { emptyPlan } from './emit/site/ended-feed.ts';
import { embedPage, endedPage, type PlaceAbout, placePage } from './emit/site/place-page.ts';
import type { Lawn } from './model/lawn.ts';
import { emptyLedger, type Ledger } from './model/ledger.ts';
import type { Program } from './model/program.ts';
import type { SharedReadings } from './model/publication.ts';
import type { WeatherSeries } from './model/weather.ts';
import { climateFor, type PlanInput } from './schedule/placed-season.ts';
import { placeInPublic, publicPlace } from './schedule/public-place.ts';
import { tellSeason } from './schedule/tell.ts';

/** What is the same for all places of a publication. Plain data, so that it can be handed to another thread. */
export interface PlacesInput {
  readonly publication: {
    readonly id: string;
    readonly name: string;
    readonly baseUrl: string | null;
    readonly embed: boolean;
    readonly changelog: readonly string[];
    readonly display: NonNullable<Lawn['display']>;
  };
  readonly programs: readonly { readonly program: Program; readonly version: string }[];
  readonly stations: readonly WeatherSeries[];
  readonly asOf: Day;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
}

/** One place to make files of. */
export interface PlaceJob extends Pick<Lawn, 'grass'> {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  /** Its program, by its number in the list. */
  readonly program: number;
  /** Readings of the thermometer that is nearest. */
  readonly readings: SharedReadings | null;
  /** The station that is nearest, by its number in the list. */
  readonly station: number | null;
}

/** What is kept of a place from one run to the next. */
export interface PlaceState {
  readonly kind: 'place-ledger';
  readonly version: 1;
  readonly ledger: Ledger;
  readonly changes: Digest | null;
}

/** A place's files, by their names in the site's folder, and what is kept of it; no file where its weather carries no plan. */
export interface MadePlace {
  readonly files: readonly { readonly name: string; readonly text: string }[];
  readonly state: PlaceState | null;
  /** Warnings and errors. */
  readonly problems: readonly Problem[];
}

/** The id of a place's feed in its ledger. */
const FEED = 'public';

/** What the events of a place are called by. */
const keyOf = (publication: string, place: string): string => nameHash(`${publication} ${place}`, 12);

/** Plans one place, as the public sees it, and makes its files. The same inputs give the same bytes, whoever makes them. */
export function filesForPlace(job: PlaceJob, input: PlacesInput, before: PlaceState | null): MadePlace {
  const { publication, asOf, revisedAt } = input;
  const { program, version } = input.programs[job.program] as PlacesInput['programs'][number];
  const units = publication.display.units ?? 'us';
  const planned = planInputOf(job, program, input);
  const shared = job.readings ?? undefined;
  const told = placeInPublic(planned, units, shared);
  if (told === null)
    return { files: [], state: null, problems: climateFor(publicPlace(planned, units, shared)).problems };

  const season = tellSeason(told.placed, told.input);
  const title = `${job.name}: ${publication.name}`;
  const ledger = before?.ledger ?? emptyLedger;
  const feed = calendarOf(season, { ledger, revisedAt, detail: 'normal', reader: 'public', feed: FEED, title });
  const { season: seen } = seenBy(season, { id: FEED, as: 'public', title });
  const isFirst = isFirstFeed(feed.changes, feed.ledger.readers[FEED] ?? []);
  const moved = isFirst ? [] : changesInWords(feed.changes, seen);
  const of = { lawn: job.id, lawnName: title, asOf: seen.asOf, display: seen.display, feedKey: seen.feedKey };
  const changes = digestWith(before?.changes ?? null, moved, formatDay(asOf), revisedAt);
  const about: PlaceAbout = { ...publication, siteName: publication.name, ...job, program, version };
  const files = filesOfPlace(job.id);
  return {
    files: [
      { name: files.feed, text: feed.text },
      { name: files.changesText, text: digestText(changes, of) },
      { name: files.changesFeed, text: atomFeed(changes, of) },
      { name: files.page, text: placePage(seen, about) },
      ...(publication.embed ? [{ name: files.embed, text: embedPage(seen, about) }] : []),
    ],
    state: { kind: 'place-ledger', version: 1, ledger: feed.ledger, changes },
    problems: told.placed.problems.filter(({ severity }) => severity !== 'note'),
  };
}

/** A place as a lawn is planned, with nothing that a lawn has of its own. */
function planInputOf(job: PlaceJob, program: Program, { publication, stations, asOf }: PlacesInput): PlanInput {
  const { latitude, longitude, grass, station } = job;
  return {
    program,
    products: new Map(),
    lawn: {
      kind: 'lawn',
      version: 1,
      id: job.id,
      feed: { key: keyOf(publication.id, job.id) },
      location: { latitude, longitude },
      grass,
      program: program.id,
      weather: {},
      display: publication.display,
      areas: {},
    },
    journal: [],
    observed: station === null ? null : (stations[station] ?? null),
    history: [],
    forecast: null,
    // A station may have been given for this season alone.
    ofFiles: false,
    previous: [],
    asOf,
  };
}

/**
 * A place that a publication no longer names: its calendar calls off what was to come and says that it has ended, and its page
 * says so too.
 */
export function filesOfEnded(
  { id, name }: Pick<PlaceJob, 'id' | 'name'>,
  { publication, asOf, revisedAt }: Pick<PlacesInput, 'publication' | 'asOf' | 'revisedAt'>,
  before: PlaceState,
): MadePlace {
  const plan = emptyPlan(keyOf(publication.id, id), { publication, asOf });
  const { text, ledger } = endedCalendar(plan, { ledger: before.ledger, revisedAt, feed: FEED });
  const files = filesOfPlace(id);
  return {
    files: [
      ...(text === null ? [] : [{ name: files.feed, text }]),
      { name: files.page, text: endedPage(name, plan.display.language) },
    ],
    state: { ...before, ledger },
    problems: [],
  };
}
