/**
 * The way through the house, on one page.
 *
 *     lawn.yaml ─► read ─► link ──► program, products, journal, weather      every problem with its line
 *                                      │
 *                                      ▼
 *     weather ─► climate ─► traces: observed, then each past year ─► soil temperature, degree days
 *                                      │
 *                                      ▼
 *     program × lawn × traces ─► schedule (with amounts) ─► Season           plain data
 *                                      │
 *                                      ▼
 *     Season × ledger ─► emit ─► iCalendar feeds and the next ledger         text
 *     for every other reader: the same, as that one may see it
 *
 * Nothing here touches a file, the network or the clock: the same inputs give the same bytes.
 */

import { checkLawn } from './agronomy/check.ts';
import type { Day } from './base/day.ts';
import { hasErrors, inOrder, type Problem } from './base/problem.ts';
import { calendarOf } from './emit/calendar.ts';
import { changesInWords, isFirstFeed, type Told } from './emit/changes/words.ts';
import { feedsOfReaders, type ReaderFeed } from './feeds.ts';
import { problemsOfAreas, problemsOfPans, problemsOfTests } from './measures.ts';
import type { Coordinates, Lawn } from './model/lawn.ts';
import { emptyLedger, type Ledger } from './model/ledger.ts';
import type { Detail, Telling } from './model/reader.ts';
import type { Season } from './model/season.ts';
import type { WeatherSeries } from './model/weather.ts';
import { readLawn, type ZipLookup } from './read/lawn.ts';
import { type Linked, link } from './read/link.ts';
import type { Lookup, Source } from './read/lookup.ts';
import type { Parsed } from './read/validate.ts';
import { type PlanInput, placeSeason } from './schedule/placed-season.ts';
import { planSeason } from './schedule/plan.ts';
import { tellSeason } from './schedule/tell.ts';

/** What a lawn is compiled from. */
export interface CompileInput {
  readonly lawn: Source;
  /** Finds the files that the lawn names. */
  readonly lookup: Lookup;
  /** Weather files to take instead of the lawn's own. */
  readonly weather?: readonly string[] | undefined;
  /** A program file to take instead of the lawn's own. */
  readonly program?: string | undefined;
  /** Finds the place of a ZIP code, for a lawn that says no other. */
  readonly zips?: ZipLookup | undefined;
  /** What the lawn's weather services have told; files win over it. */
  readonly service?: ServiceWeather | undefined;
  readonly asOf: Day;
  /** What the lawn's feed has published; null where it has published nothing. */
  readonly ledger: Ledger | null;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  readonly detail: Detail;
  /** How a calendar of several lawns wants the season told besides. */
  readonly calendar?: Telling | undefined;
  /** Thermometers that serve what lies near them, for a lawn that has none of its own. */
  readonly shared?: ((position: Coordinates) => SharedNear) | undefined;
}

/** What shared thermometers have for a lawn. */
export interface SharedNear {
  readonly readings: Lawn['thermometer'] | null;
  readonly station: WeatherSeries | null;
}

/** Weather from services, and what was wrong with it. */
export interface ServiceWeather {
  readonly observed: readonly WeatherSeries[];
  readonly forecast: WeatherSeries | null;
  readonly problems: readonly Problem[];
}

/** What subscribers see change, and whether the feed is their first. */
export interface Seen {
  readonly told: readonly Told[];
  readonly isFirst: boolean;
}

/** A compiled lawn: its season, its feed, the ledger to keep. All null where a problem is an error. */
export interface Compiled {
  readonly season: Season | null;
  /** The lawn with what it names, as it was read. */
  readonly linked: Linked | null;
  /** The same season as a calendar of several lawns wants it told; null where none has asked. */
  readonly forCalendar: Season | null;
  /** The owner's. */
  readonly feed: string | null;
  /** The feeds of other readers. */
  readonly readers: readonly ReaderFeed[];
  readonly ledger: Ledger | null;
  readonly changes: Seen | null;
  readonly problems: readonly Problem[];
}

/** Reads a lawn and everything that it names. */
export function readAll({
  lawn,
  lookup,
  weather,
  program,
  zips,
}: Pick<CompileInput, 'lawn' | 'lookup' | 'weather' | 'program' | 'zips'>) {
  const parsed = readLawn(lawn.text, lawn.name, zips);
  const linked = link(parsed, lookup, { weather, program });
  const ofAreas = linked.value ? problemsOfAreas(linked.value, parsed) : [];
  return {
    value: hasErrors(ofAreas) ? undefined : linked.value,
    problems: [...linked.problems, ...ofAreas, ...problemsOfPans(parsed), ...problemsOfTests(parsed)],
    parsed,
  };
}

/**
 * Compiles a lawn into its season and its feed.
 *
 * @example compile({ lawn, lookup, asOf, ledger: null, revisedAt: '2027-04-02T06:00:00Z', detail: 'normal' }).feed
 */
export function compile(input: CompileInput): Compiled {
  // 1. Read the lawn and what it names.
  const { value: linked, problems: readProblems } = readAll(input);
  if (!linked || hasErrors(readProblems)) return failed(readProblems);
  const { value, service } = withShared(linked, input);

  // 2. Climate, windows, days, amounts: the season.
  const planned = planInputOf(value, { ...input, service });
  const { value: placed, problems: placeProblems } = placeSeason(planned);
  const season = placed && tellSeason(placed, planned);
  const planProblems = season?.problems ?? placeProblems;
  const problems = inOrder([...readProblems, ...(input.service?.problems ?? []), ...planProblems]);
  if (!placed || !season || hasErrors(problems)) return failed(problems);
  const whole: Season = { ...season, problems };

  // 3. The feed, revised against what it has published.
  const { ledger: before, revisedAt, detail } = input;
  const own = calendarOf(whole, { ledger: before ?? emptyLedger, revisedAt, detail });
  const changes = {
    told: changesInWords(own.changes, whole),
    isFirst: isFirstFeed(own.changes, own.ledger.events),
  };

  // 4. The feeds of other readers, from the same placed season.
  const { feeds, ledger } = feedsOfReaders(whole, { placed, input: planned }, { ledger: own.ledger, revisedAt });
  const forCalendar = input.calendar ? { ...tellSeason(placed, planned, input.calendar), problems } : null;
  return { season: whole, linked: value, forCalendar, feed: own.text, readers: feeds, ledger, changes, problems };
}

/** A lawn with what is shared near it: readings where it has no thermometer, a station where it has no weather of its own. */
function withShared(linked: Linked, { shared, service }: Pick<CompileInput, 'shared' | 'service'>) {
  const { readings, station } = shared?.(linked.lawn.location) ?? { readings: null, station: null };
  const { lawn, weather } = linked;
  const thermometer = lawn.thermometer ?? readings;
  const isSeen = weather.length + (service?.observed.length ?? 0) > 0;
  const { forecast = null, problems = [] } = service ?? {};
  return {
    value: { ...linked, lawn: { ...lawn, ...(thermometer && { thermometer }) } },
    service: isSeen || station === null ? service : { observed: [station], forecast, problems },
  };
}

const failed = (problems: readonly Problem[]): Compiled => ({
  season: null,
  linked: null,
  forCalendar: null,
  feed: null,
  readers: [],
  ledger: null,
  changes: null,
  problems: inOrder(problems),
});

/** Plans a linked lawn, with the days that its feed has published. */
export const planLinked = (linked: Linked, from: Pick<CompileInput, 'asOf' | 'ledger' | 'service'>) =>
  planSeason(planInputOf(linked, from));

function planInputOf(
  linked: Linked,
  { asOf, ledger, service }: Pick<CompileInput, 'asOf' | 'ledger' | 'service'>,
): PlanInput {
  const jobs = ledger?.events.flatMap(({ kind, season, step, day, dueSince, cancelledOn }) =>
    // A day that was called off before it came binds nobody; one that had passed by then is still due.
    kind === 'job' && step !== null && (cancelledOn === null || day <= cancelledOn)
      ? [{ season, step, day, dueSince }]
      : [],
  );
  return { ...linked, ...weatherOf(linked, service), previous: jobs ?? [], asOf };
}

/** Problems of a lawn by agronomy, on its own weather and products. @param parsed The lawn as it was read. */
export function agronomyOf(
  linked: Linked,
  parsed: Parsed<Lawn>,
  service: ServiceWeather | undefined,
  asOf: Day,
): readonly Problem[] {
  return checkLawn(linked, parsed, { ...linked, ...weatherOf(linked, service), previous: [], asOf });
}

/** A lawn's weather: of services, then of its files, the later winning; a forecast of its own file over that of a service. */
export function weatherOf({ weather, forecast }: Linked, service: ServiceWeather | undefined) {
  const known = [...(service?.observed ?? []), ...weather];
  return {
    observed: known.at(-1) ?? null,
    history: known.slice(0, -1),
    forecast: forecast ?? service?.forecast ?? null,
    ofFiles: weather.length > 0,
  };
}
