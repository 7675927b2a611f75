import type * as v from 'valibot';
import { hasErrors, type Place, type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import { formatInstant, isZone, unknownRule, zoneAt } from '../base/zone.ts';
import { type Coordinates, type Lawn, LawnSchema } from '../model/lawn.ts';
import { type ProductsFile, ProductsSchema } from '../model/product.ts';
import { labelProblems } from './label.ts';
import { type Parsed, readAs } from './validate.ts';

/** Finds the middle of a ZIP code's area; null for one that is not known. */
export type ZipLookup = (zip: string) => Pick<Coordinates, 'latitude' | 'longitude'> | null;

/**
 * Reads a lawn file.
 *
 * @param zips Finds the place of a ZIP code, for a lawn that says no other.
 * @returns The lawn where nothing is wrong, and every problem with its place.
 * @example readLawn('kind: lawn\n…', 'lawn.yaml').value?.areas
 */
export function readLawn(text: string, name: string, zips?: ZipLookup): Parsed<Lawn> {
  if (latest?.text !== text || latest.name !== name || latest.zips !== zips)
    latest = { text, name, zips, parsed: parseLawn(text, name, zips) };
  return latest.parsed;
}

/** A plan asks for its lawn several times: for its feeds, its kept weather, and to plan it. */
let latest: {
  readonly text: string;
  readonly name: string;
  readonly zips: ZipLookup | undefined;
  readonly parsed: Parsed<Lawn>;
} | null = null;

function parseLawn(text: string, name: string, zips: ZipLookup | undefined): Parsed<Lawn> {
  const parsed = readAs(LawnSchema, text, name, 'lawn');
  const problems: Problem[] = [...parsed.problems];
  const zone = (parsed.data as { timezone?: unknown } | undefined)?.timezone;
  if (typeof zone === 'string' && !isZone(zone)) {
    const zones = Intl.supportedValuesOf('timeZone');
    const nearest = nearestWord(zone, zones);
    problems.push(
      problem(
        'unknown-word',
        { found: zone, allowed: ['an IANA zone such as America/New_York'], nearest },
        parsed.place(['timezone']),
      ),
    );
  }
  const { value, ...rest } = parsed;
  const location = value && placeOf(value.location, zips);
  if (location && 'code' in location)
    problems.push(problem(location.code, { zip: location.zip }, parsed.place(['location', 'zip'])));
  for (const [i, product] of (value?.products ?? []).entries())
    if (typeof product !== 'string') problems.push(...labelProblems(product, ['products', i], parsed.place));
  const fine = problems.every(({ severity }) => severity !== 'error');
  if (!value || !location || 'code' in location || !fine) return { ...rest, problems };
  const named = value.timezone ?? zoneAt(location.latitude, location.longitude);
  problems.push(...staleZone(named, parsed.place([value.timezone === undefined ? 'location' : 'timezone'])));
  return { ...rest, problems, value: { ...value, location } };
}

/** A warning where Node's own zone data is known to be wrong for the lawn's zone. */
function staleZone(zone: string, place: Place): Problem[] {
  const rule = unknownRule(zone);
  if (rule === null) return [];
  const hours = rule.offsetMin / 60;
  const args = {
    found: zone,
    since: formatInstant(rule.since).slice(0, 10),
    clock: hours < 0 ? `${hours}` : `+${hours}`,
  };
  return [problem('zone-stale', args, place)];
}

type Written = v.InferOutput<typeof LawnSchema>['location'];

/** The coordinates of a lawn, or why its ZIP code gives none. */
function placeOf(
  written: Written,
  zips: ZipLookup | undefined,
): Coordinates | { readonly code: 'zip-unknown' | 'zip-no-table'; readonly zip: string } {
  if (!('zip' in written)) return written;
  const { zip, ...rest } = written;
  if (!zips) return { code: 'zip-no-table', zip };
  const found = zips(zip.slice(0, 5));
  return found ? { ...rest, ...found } : { code: 'zip-unknown', zip };
}

/** Reads a products file. @example readProducts('kind: products\n…', 'products.yaml').value?.products */
export function readProducts(text: string, name: string): Parsed<ProductsFile> {
  const parsed = readAs(ProductsSchema, text, name, 'products');
  const labels = Object.entries(parsed.value?.products ?? {}).flatMap(([id, product]) =>
    labelProblems({ ...product, id }, ['products', id], parsed.place),
  );
  return withProblems(parsed, labels);
}

/** A file with more problems; without its value where one of them is an error. */
function withProblems<T>({ value, ...rest }: Parsed<T>, more: readonly Problem[]): Parsed<T> {
  const problems = [...rest.problems, ...more];
  return { ...rest, problems, ...(value !== undefined && !hasErrors(problems) && { value }) };
}
