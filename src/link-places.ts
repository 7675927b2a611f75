/** A publication with all that it names: programs for its places, thermometers near them. */
import { contentHash } from './base/hash.ts';
import { type Place, type Problem, problem } from './base/problem.ts';
import { climateClasses } from './climate/climate-class.ts';
import { greatCircleKm, nearestPlace } from './climate/nearest-place.ts';
import type { Program } from './model/program.ts';
import type { SharedReadings, SharedThermometer } from './model/publication.ts';
import type { WeatherSeries } from './model/weather.ts';
import type { PlaceJob, PlacesInput } from './places.ts';
import type { Lookup } from './read/lookup.ts';
import { readProgram } from './read/program.ts';
import type { ListedPlace, ReadPublication } from './read/publication.ts';
import { readWeather } from './read/weather.ts';

/** Where something lies. */
export interface Position {
  readonly latitude: number;
  readonly longitude: number;
}

/** What the shared thermometers have for a lawn or a place. */
interface Near {
  readonly readings: SharedReadings | null;
  /** A station, by its number in the list. */
  readonly station: number | null;
}

/** A publication, ready to be planned place by place. */
export interface LinkedPublication {
  readonly jobs: readonly (PlaceJob & { readonly place: Place })[];
  readonly programs: PlacesInput['programs'];
  readonly stations: readonly WeatherSeries[];
  /** What lies nearest to a position, within its reach. */
  readonly near: (position: Position) => Near;
  readonly problems: readonly Problem[];
}

/** Reads the programs and stations that a publication names, and gives each place its own. What cannot be read is told. */
export function linkPublication(read: ReadPublication, lookup: Lookup): LinkedPublication {
  const problems: Problem[] = [];
  const programs = new Programs(lookup, problems);
  const named = (read.value?.programs ?? []).flatMap(
    (ref, i) => programs.read(ref, read.file, read.place(['programs', i])) ?? [],
  );
  const { stations, stationOf } = stationsOf(read, lookup, problems);
  const near = nearTo(read.value?.thermometers ?? [], stationOf);
  const jobs = read.places.flatMap((place) => {
    const program = programFor(place, named, programs, problems);
    if (program === null) return [];
    const { id, name, latitude, longitude, grass, place: at } = place;
    return [{ id, name, latitude, longitude, grass, program, ...near(place), place: at }];
  });
  return { jobs, programs: programs.all, stations, near, problems };
}

/** Programs that were read, each once. */
class Programs {
  readonly all: { readonly program: Program; readonly version: string }[] = [];
  private readonly numbers = new Map<string, number | null>();
  private readonly lookup: Lookup;
  private readonly problems: Problem[];

  constructor(lookup: Lookup, problems: Problem[]) {
    this.lookup = lookup;
    this.problems = problems;
  }

  /** The number of a program; null where it cannot be read, which is told. */
  read(ref: string, from: string, at: Place): number | null {
    const source = this.lookup(ref, from);
    if (source === null || 'reason' in source) {
      const reason = source?.reason;
      this.problems.push(
        reason === undefined ? problem('file-missing', { ref }, at) : problem('file-unreadable', { ref, reason }, at),
      );
      return null;
    }
    const known = this.numbers.get(source.name);
    if (known !== undefined) return known;
    const { value: program, problems } = readProgram(source.text, source.name, this.lookup);
    this.problems.push(...problems);
    const number = program === undefined ? null : this.all.length;
    // Of what it says, joined with what it extends, and not of its comments and order of keys.
    if (program !== undefined) this.all.push({ program, version: contentHash(JSON.stringify(program), 8) });
    this.numbers.set(source.name, number);
    return number;
  }
}

/** The program of a place: its own, else of those for its grass the first whose climate it has, else the first. */
function programFor(
  { grass, program: own, place, latitude, longitude }: ListedPlace,
  named: readonly number[],
  programs: Programs,
  problems: Problem[],
): number | null {
  const of = (number: number) => programs.all[number]?.program as Program;
  if (own !== null) {
    const number = programs.read(own.ref, own.from, place);
    if (number === null || of(number).grass.includes(grass)) return number;
    problems.push(problem('site-other-grass', { program: of(number).id, grass, expected: of(number).grass }, place));
    return null;
  }
  const fit = named.filter((number) => of(number).grass.includes(grass));
  const [first] = fit;
  if (first === undefined) {
    problems.push(problem('site-no-program', { grass, programs: named.map((number) => of(number).id) }, place));
    return null;
  }
  if (fit.length === 1) return first;
  const normals = nearestPlace(latitude, longitude, null).value?.normals;
  const classes = normals ? climateClasses({ latitude, normals }) : [];
  return fit.find((number) => of(number).climate?.some((climate) => classes.includes(climate))) ?? first;
}

/** The stations' weather, and for each thermometer that has one its number. */
function stationsOf({ value, file, place }: ReadPublication, lookup: Lookup, problems: Problem[]) {
  const stations: WeatherSeries[] = [];
  const stationOf = (value?.thermometers ?? []).map(({ weather: ref }, i): number | null => {
    if (ref === undefined) return null;
    const at = place(['thermometers', i, 'weather']);
    const source = lookup(ref, file);
    if (source === null || 'reason' in source) {
      const reason = source?.reason;
      problems.push(
        reason === undefined ? problem('file-missing', { ref }, at) : problem('file-unreadable', { ref, reason }, at),
      );
      return null;
    }
    const { value: series, problems: ofFile } = readWeather(source.text, source.name);
    problems.push(...ofFile);
    return series === undefined ? null : stations.push(series) - 1;
  });
  return { stations, stationOf };
}

/** For a position the nearest readings and the nearest station within reach, each by itself; of two as near the first. */
function nearTo(thermometers: readonly SharedThermometer[], stationOf: readonly (number | null)[]) {
  return ({ latitude, longitude }: Position): Near => {
    const within = thermometers
      .map((one, i) => ({ one, i, km: greatCircleKm(latitude, longitude, one.latitude, one.longitude) }))
      .filter(({ one, km }) => 1000 * km <= one.reach)
      .sort((a, b) => a.km - b.km || a.i - b.i);
    return {
      readings: within.find(({ one }) => one.readings !== undefined)?.one.readings ?? null,
      station: within.flatMap(({ i }) => stationOf[i] ?? [])[0] ?? null,
    };
  };
}
