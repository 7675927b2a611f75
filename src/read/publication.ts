import { hasErrors, type Place, type Problem, problem } from '../base/problem.ts';
import {
  PLACE_KEYS,
  type Publication,
  PublicationSchema,
  type WrittenPlace,
  WrittenPlaceSchema,
} from '../model/publication.ts';
import type { ZipLookup } from './lawn.ts';
import type { Lookup } from './lookup.ts';
import { type Row, readTable } from './table.ts';
import { judge, type Parsed, readAs } from './validate.ts';

/** A place whose position is known, and where it is written. */
export interface ListedPlace extends Pick<WrittenPlace, 'id' | 'name' | 'grass'> {
  readonly latitude: number;
  readonly longitude: number;
  /** A program of its own, and the file from which its path counts; null for the publication's. */
  readonly program: { readonly ref: string; readonly from: string } | null;
  readonly place: Place;
}

/** A lawn file that a publication names, and from where. */
export interface NamedLawn {
  readonly ref: string;
  readonly from: string;
  readonly place: Place;
}

/** A publication with the places and lawns of its tables. */
export interface ReadPublication {
  readonly value?: Publication;
  readonly places: readonly ListedPlace[];
  readonly lawns: readonly NamedLawn[];
  readonly problems: readonly Problem[];
  /** Where something of the file stands. */
  readonly place: Parsed<unknown>['place'];
  readonly file: string;
}

/** Folders of the site that are no place's. */
const KEPT_IDS = ['l'];

/**
 * Reads a publication, and its tables of places and lawns. What is wrong with one row or one place is told, and the others go on;
 * what is wrong with the file itself leaves nothing.
 *
 * @param zips Finds the place of a ZIP code.
 * @example readPublication('kind: publication\n…', 'publish.yaml', lookup, zips).places[0]?.id
 */
export function readPublication(text: string, name: string, lookup: Lookup, zips?: ZipLookup): ReadPublication {
  const parsed = readAs(PublicationSchema, text, name, 'publication');
  const { value, file, place } = parsed;
  if (!value) return { places: [], lawns: [], problems: parsed.problems, place, file };
  const problems = [...parsed.problems, ...thermometerProblems(value, place)];
  const written = [
    ...(value.places ?? []).map((one, i) => ({ one, from: file, at: place(['places', i]) })),
    ...placesOfTable(value.placesFile, place(['places-file']), file, lookup, problems),
  ];
  const places = located(written, zips, problems);
  const lawns = [
    ...(value.lawns ?? []).map((ref, i) => ({ ref, from: file, place: place(['lawns', i]) })),
    ...rowsOf(value.lawnsFile, place(['lawns-file']), file, lookup, LAWN_COLUMNS, problems).map((row) => ({
      ref: row.cells.file ?? '',
      from: row.place.file,
      place: row.place,
    })),
  ];
  if (written.length + lawns.length === 0 && !hasErrors(problems))
    problems.push(problem('site-nothing', { found: name }, place(['kind'])));
  return { value, places, lawns, problems, place, file };
}

const PLACE_COLUMNS = { allowed: PLACE_KEYS, needed: ['id', 'name', 'grass'] };
const LAWN_COLUMNS = { allowed: ['file'], needed: ['file'] };

/** The rows of a table that the publication names; what is wrong with it is added to `problems`. */
function rowsOf(
  ref: string | undefined,
  here: Place,
  from: string,
  lookup: Lookup,
  columns: { readonly allowed: readonly string[]; readonly needed: readonly string[] },
  problems: Problem[],
): readonly Row[] {
  if (ref === undefined) return [];
  const source = lookup(ref, from);
  if (source === null || 'reason' in source) {
    const reason = source?.reason;
    problems.push(
      reason === undefined ? problem('file-missing', { ref }, here) : problem('file-unreadable', { ref, reason }, here),
    );
    return [];
  }
  const { rows, problems: ofTable } = readTable(source.text, source.name, columns);
  problems.push(...ofTable);
  return rows;
}

interface Written {
  readonly one: WrittenPlace;
  readonly from: string;
  readonly at: Place;
}

function placesOfTable(
  ref: string | undefined,
  here: Place,
  from: string,
  lookup: Lookup,
  problems: Problem[],
): Written[] {
  return rowsOf(ref, here, from, lookup, PLACE_COLUMNS, problems).flatMap(({ cells, place }) => {
    const { latitude, longitude, ...rest } = cells;
    const data = {
      ...rest,
      ...(latitude !== undefined && { latitude: asNumber(latitude) }),
      ...(longitude !== undefined && { longitude: asNumber(longitude) }),
    };
    const judged = judge(WrittenPlaceSchema, { problems: [], file: place.file, place: () => place, data });
    problems.push(...judged.problems);
    return judged.value ? [{ one: judged.value, from: place.file, at: place }] : [];
  });
}

/** A number as it stands in a table; what is none stays a text, and is told as such. */
const asNumber = (cell: string): number | string => (/^[+-]?\d+(\.\d+)?$/.test(cell) ? Number(cell) : cell);

/** Places with their position; one without, or with the id of another, is told and left out. */
function located(written: readonly Written[], zips: ZipLookup | undefined, problems: Problem[]): ListedPlace[] {
  const taken = new Map<string, string>();
  return written.flatMap(({ one, from, at }) => {
    const { id, name, grass, program, ...where } = one;
    const refused = KEPT_IDS.includes(id)
      ? problem('site-id-kept', { id }, at)
      : taken.has(id)
        ? problem('site-same-id', { id, before: taken.get(id) ?? '' }, at)
        : null;
    const position = refused ?? positionOf(where, zips, at);
    if ('code' in position) {
      problems.push(position);
      return [];
    }
    taken.set(id, `"${name}"`);
    return [
      { id, name, grass, ...position, program: program === undefined ? null : { ref: program, from }, place: at },
    ];
  });
}

function positionOf(
  { latitude, longitude, zip }: Pick<WrittenPlace, 'latitude' | 'longitude' | 'zip'>,
  zips: ZipLookup | undefined,
  at: Place,
): { readonly latitude: number; readonly longitude: number } | Problem {
  if (zip === undefined && latitude !== undefined && longitude !== undefined) return { latitude, longitude };
  if (zip === undefined || latitude !== undefined || longitude !== undefined)
    return problem('site-place-where', { found: zip ?? '' }, at);
  if (!zips) return problem('zip-no-table', { zip }, at);
  const found = zips(zip);
  return found ? { latitude: found.latitude, longitude: found.longitude } : problem('zip-unknown', { zip }, at);
}

const thermometerProblems = ({ thermometers = [] }: Publication, place: Parsed<unknown>['place']): Problem[] =>
  thermometers.flatMap(({ readings, weather }, i) =>
    readings === undefined && weather === undefined
      ? [problem('site-thermometer', { found: '' }, place(['thermometers', i]))]
      : [],
  );
