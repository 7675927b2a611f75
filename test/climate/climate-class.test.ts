/**
 * The kinds of climate against what agronomists call these places: U.S. turf-zone maps, which agree on them in broad
 * terms (from memory), and for the rest Köppen's letters as every atlas has them.
 */
import { describe, expect, test } from 'vitest';
import { type Climate, climateClasses } from '../../src/climate/climate-class.ts';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import { withVariability } from '../../src/climate/variability.ts';
import { CLIMATES } from '../../src/model/program.ts';

const classesOf = (id: string): Climate[] => {
  const place = REFERENCE_PLACES.find((one) => one.id === id);
  if (!place) throw new Error(`There is no place ${id}.`);
  return climateClasses(place);
};

describe('A place well inside its zone has that class alone', () => {
  test.each([
    ['milwaukee-wi', 'cool-humid'],
    ['madison-wi', 'cool-humid'],
    ['lansing-mi', 'cool-humid'],
    ['albany-ny', 'cool-humid'],
    ['boston-ma', 'cool-humid'],
    ['des-moines-ia', 'cool-humid'],
    ['toronto-ca', 'cool-humid'],
    ['denver-co', 'cool-arid'],
    ['boise-id', 'cool-arid'],
    ['salt-lake-city-ut', 'cool-arid'],
    ['reno-nv', 'cool-arid'],
    ['seattle-wa', 'maritime'],
    ['portland-or', 'maritime'],
    ['vancouver-ca', 'maritime'],
    ['london-gb', 'maritime'],
    ['dublin-ie', 'maritime'],
    ['wellington-nz', 'maritime'],
    ['philadelphia-pa', 'transition'],
    ['louisville-ky', 'transition'],
    ['st-louis-mo', 'transition'],
    ['richmond-va', 'transition'],
    ['atlanta-ga', 'warm-humid'],
    ['houston-tx', 'warm-humid'],
    ['new-orleans-la', 'warm-humid'],
    ['buenos-aires-ar', 'warm-humid'],
    ['phoenix-az', 'warm-arid'],
    ['las-vegas-nv', 'warm-arid'],
    ['fresno-ca', 'warm-arid'],
    ['miami-fl', 'tropical'],
    ['west-palm-beach-fl', 'tropical'],
    ['honolulu-hi', 'tropical'],
  ] as const)('%s is %s', (id, climate) => expect(classesOf(id)).toEqual([climate]));
});

describe('A place at a border has both classes', () => {
  test.each([
    ['columbus-oh', ['cool-humid', 'transition']],
    ['raleigh-nc', ['transition', 'warm-humid']],
    ['nashville-tn', ['transition', 'warm-humid']],
    ['calgary-ca', ['cool-humid', 'cool-arid']],
    ['san-antonio-tx', ['warm-humid', 'warm-arid']],
    ['tampa-fl', ['warm-humid', 'tropical']],
    ['berlin-de', ['cool-humid', 'maritime']],
  ] as const)('%s: %s', (id, climates) => expect(classesOf(id)).toEqual(climates));
});

test('every reference climate has a class, and every class a reference climate', () => {
  const found = new Set(REFERENCE_PLACES.flatMap(climateClasses));
  expect(REFERENCE_PLACES.filter((place) => climateClasses(place).length === 0)).toEqual([]);
  expect([...found].toSorted()).toEqual([...CLIMATES].toSorted());
});

test('the same climate half a year later south of the equator is the same class', () => {
  const half = (months: readonly number[]) => [...months.slice(6), ...months.slice(0, 6)];
  const differing = REFERENCE_PLACES.filter(({ latitude, longitude, normals: { tmin, tmax, precip } }) => {
    const turned = { tmin: half(tmin), tmax: half(tmax), precip: half(precip) };
    const south = climateClasses({ latitude: -latitude, normals: withVariability(turned, -latitude, longitude) });
    const north = climateClasses({ latitude, normals: withVariability({ tmin, tmax, precip }, latitude, longitude) });
    return south.join() !== north.join();
  });
  // The sun is nearer in January, so evapotranspiration differs by some percent. Wichita Falls lies at the 0.5 of dry.
  expect(differing.map(({ id }) => id)).toEqual(['wichita-falls-tx']);
});
