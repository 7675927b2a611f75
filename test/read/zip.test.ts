/** A lawn placed by its ZIP code. */
import { describe, expect, test } from 'vitest';
import { readLawn } from '../../src/read/lawn.ts';
import { zipLookup } from '../../src/shell/zips.ts';
import { folderWith, lawnText, soilclock } from '../kit.ts';

const PLACE = 'location: { latitude: 39, longitude: -84, elevation: 270 m }\ntimezone: America/New_York';
const at = (location: string) => lawnText().replace(PLACE, location);
const read = (location: string, zips = zipLookup) => readLawn(at(location), 'lawn.yaml', zips);
const found = (location: string, zips?: typeof zipLookup) =>
  readLawn(at(location), 'lawn.yaml', zips).problems.map(({ code, line }) => [code, line]);

describe('location: { zip }', () => {
  // Census Gazetteer 2021, ZCTA national file, row 43004: INTPTLAT 40.015374, INTPTLONG -82.804489.
  test('is the middle of the code in the Census Gazetteer', () => {
    expect(read('location: { zip: "43004" }').value?.location).toEqual({ latitude: 40.015374, longitude: -82.804489 });
  });
  test('keeps a height, and takes the five digits of ZIP+4', () => {
    const { value } = read('location: { zip: "43004-1234", elevation: 1000 ft }');
    expect(value?.location.latitude).toBe(40.015374);
    expect(value?.location.elevation).toBeCloseTo(304.8, 9);
  });
  test('that is in no table is a problem at its place', () => {
    expect(found('location: { zip: "00000" }', zipLookup)).toEqual([['zip-unknown', 4]]);
  });
  test.each([['constructor'], ['__proto__']])('%s is no code of the table', (zip) => {
    expect(zipLookup(zip)).toBeNull();
  });
  test('without a table says so', () => {
    expect(found('location: { zip: "43004" }')).toEqual([['zip-no-table', 4]]);
  });
  test.each([['43004'], ['"4300"'], ['"430045"'], ['north']])('%s is not five digits in quotes', (zip) => {
    expect(found(`location: { zip: ${zip} }`, zipLookup)).toEqual([['wrong-type', 4]]);
  });
  test('beside coordinates is one too many', () => {
    expect(found('location: { zip: "43004", latitude: 39 }', zipLookup)).toEqual([['unknown-key', 4]]);
  });
  test('is known to check', async () => {
    const cwd = folderWith({ 'lawn.yaml': at('location: { zip: "00000" }') });
    const { code, stdout } = await soilclock(cwd, ['check', 'lawn.yaml', '--json']);
    expect([code, stdout.includes('zip-unknown')]).toEqual([1, true]);
  });
});

test.each([
  ['weather: { service: openmeteo }', 'unknown-word'],
  ['weather: { forecast: ncei }', 'unknown-word'],
  ['weather: { station: x }', 'wrong-type'],
])('%s is %s', (weather, code) => {
  const text = lawnText().replace('weather: { files: [weather.csv] }', weather);
  expect(readLawn(text, 'lawn.yaml').problems.map((one) => one.code)).toEqual([code]);
});
