/** Every program compiles wherever it says it is for, and every step of it gets a window there. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Climate, climateClasses } from '../../src/climate/climate-class.ts';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import type { ReferencePlace } from '../../src/climate/places/table.ts';
import type { Season } from '../../src/model/season.ts';
import { readProgram } from '../../src/read/program.ts';
import { fromPrograms, PROGRAMS, planProgram } from './plan-program.ts';

const NO_WINTER =
  'in the mildest winters the soil never cools to 50 °F, so spring has no day on which it warms to that';
const NO_FROST = 'it waits for the usual first frost, which mild coasts and deserts lack';
const COOL_COAST = 'at the coolest coasts the first feed comes so late that the next ones would fall into autumn';
/** Steps that get no window in some place, by program and step, each with the reason. Empty rows are taken out. */
const WITHOUT: Readonly<Record<string, string>> = {
  'bahiagrass.yaml: autumn-potash': NO_FROST,
  'bermudagrass-warm-humid.yaml: autumn-potash': NO_FROST,
  'centipedegrass.yaml: autumn-potash': NO_FROST,
  'st-augustinegrass.yaml: autumn-potash': NO_FROST,
  'fine-fescue-low-input.yaml: summer-annual-barrier': NO_WINTER,
  'perennial-ryegrass-maritime.yaml: summer-annual-barrier': NO_WINTER,
  'zoysiagrass.yaml: autumn-potash': NO_FROST,
  'kentucky-bluegrass-cool-humid.yaml: autumn-feed-2': 'at Anchorage winter comes before its wait is over',
  'st-augustinegrass.yaml: summer-feed': COOL_COAST,
  'st-augustinegrass.yaml: late-summer-feed': COOL_COAST,
};

/** A window counts where it comes in at least half of the years. */
const HALF = 0.5;
/** Places of each class: the middle one every time, all of them by `npm run test:climates`. */
const AT_MOST = Number(process.env.SOILCLOCK_PLACES ?? 1);
const ALL = AT_MOST > 1;

/** The places of a class, thinned: spread over it from the coldest to the warmest. */
function placesIn(climate: Climate): ReferencePlace[] {
  const yearly = ({ normals: { tmin, tmax } }: ReferencePlace) => [...tmin, ...tmax].reduce((sum, t) => sum + t, 0);
  const all = REFERENCE_PLACES.filter((place) => climateClasses(place).includes(climate));
  const sorted = all.toSorted((a, b) => yearly(a) - yearly(b));
  const count = Math.min(AT_MOST, sorted.length);
  return Array.from(
    { length: count },
    (_, i) => sorted[Math.round((ALL ? i / (count - 1) : 0.5) * (sorted.length - 1))] as ReferencePlace,
  );
}

const programs = readdirSync(PROGRAMS).flatMap((name) => {
  const text = readFileSync(path.join(PROGRAMS, name.endsWith('.yaml') ? name : 'products.yaml'), 'utf8');
  if (!/^kind: program$/m.test(text)) return [];
  const { value } = readProgram(text, name, fromPrograms);
  return value ? [{ name, program: value }] : [];
});
const cases = programs.flatMap(({ name, program }) => {
  const places = new Set((program.climate ?? []).flatMap(placesIn));
  return [...places].map((place) => ({ name, program, place, at: place.id }));
});
const windowless = new Set<string>();

test('every program claims a climate', () => {
  expect(programs.length).toBeGreaterThan(0);
  expect(programs.filter(({ program }) => (program.climate ?? []).length === 0).map(({ name }) => name)).toEqual([]);
});

describe.each(cases)('$name at $at', ({ name, program, place }) => {
  const asked = program.steps.flatMap(({ onlyIf, unless }) => Object.keys({ ...onlyIf?.lawn, ...unless?.lawn }));
  const seasonWith = (facts: Readonly<Record<string, boolean>>): Season => {
    const { season, problems } = planProgram({
      program: name,
      grass: program.grass[0] as string,
      ...place,
      facts,
      pH: 4.5,
    });
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    return season as Season;
  };
  const hasWindow = (season: Season, step: string) =>
    season.applications.some(
      ({ id, status, chance, window }) =>
        id === step && status !== 'dropped' && chance >= HALF && window.opens.p50 !== null,
    );

  test('every step has a window, or the reason stands here', () => {
    const all = seasonWith(Object.fromEntries(asked.map((fact) => [fact, true])));
    // What one step asks for may rule another out, so a step without a window gets a lawn of its own.
    const missing = program.steps
      .filter(({ id }) => !hasWindow(all, id))
      .filter(({ id, onlyIf, unless }) => {
        const ruledOut = Object.entries(unless?.lawn ?? {}).map(([fact, value]) => [fact, !value]);
        return !hasWindow(seasonWith({ ...onlyIf?.lawn, ...Object.fromEntries(ruledOut) }), id);
      })
      .map(({ id }) => id);
    for (const id of missing) windowless.add(`${name}: ${id}`);
    expect(missing.filter((id) => !(`${name}: ${id}` in WITHOUT))).toEqual([]);
  });
});

test.runIf(ALL)('every reason is still needed', () =>
  expect(Object.keys(WITHOUT).filter((key) => !windowless.has(key))).toEqual([]),
);
