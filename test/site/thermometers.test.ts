/**
 * Thermometers and stations that serve what lies near them. Distances by hand: on a sphere of 6371 km a degree of latitude is
 * 6371 π / 180 = 111.19 km, so that 0.1 degrees are 11.119 km.
 */
import { describe, expect, test } from 'vitest';
import { parseDay } from '../../src/base/day.ts';
import { type CompileInput, compile, type SharedNear } from '../../src/compile.ts';
import { linkPublication } from '../../src/link-places.ts';
import { filesForPlace } from '../../src/places.ts';
import { readPublication } from '../../src/read/publication.ts';
import { inventedWeather } from '../invented-weather.ts';
import { LONG, lawnText } from '../kit.ts';
import { program, publication } from './kit.ts';

const SOIL = `kind: program
version: 1
id: fescue
name: By the soil
grass: [tall-fescue]
steps:
  - id: barrier
    name: Barrier
    work: other
    window: { opens: { soil: { depth: 10 cm, mean: 5 d, rises-to: 14 C, holds: 2 d, from: 02-01 } }, closes: { date: 06-30 } }
`;
const COLD = inventedWeather('2016-01-01', '2027-04-01', () => -3);
const FILES: Readonly<Record<string, string>> = {
  'fescue.yaml': SOIL,
  'bluegrass.yaml': program('bluegrass', 'kentucky-bluegrass'),
  'weather.csv': inventedWeather(),
  'station.csv': COLD,
};
const lookup: CompileInput['lookup'] = (ref) => (ref in FILES ? { name: ref, text: FILES[ref] ?? '' } : null);

/** What is linked of thermometers at latitudes along 75 degrees west. */
function linked(
  thermometers: string,
  places = 'places: [{ id: a, name: A, latitude: 39, longitude: -75, grass: tall-fescue }]\n',
) {
  const read = readPublication(publication(`thermometers:\n${thermometers}`, places), 'publish.yaml', lookup);
  const made = linkPublication(read, lookup);
  expect([...read.problems, ...made.problems]).toEqual([]);
  return made;
}
const reading = (latitude: number, reach: string, reads: string) =>
  `  - { latitude: ${latitude}, longitude: -75, reach: ${reach}, readings: [{ date: 2027-03-20, depth: 4 in, reads: ${reads} }] }\n`;
const readsAt = (thermometers: string, latitude: number) =>
  linked(thermometers)
    .near({ latitude, longitude: -75 })
    .readings?.map((one) => Math.round(one.reads));

describe('what is near', () => {
  test.each([
    ['11.12 km from 39.1', '11.2 km', [10]],
    ['11.12 km, reach 11.1 km', '11.1 km', undefined],
    ['11.12 km is 6.909 mi', '6.95 mi', [10]],
    ['11.12 km, reach 6.9 mi', '6.9 mi', undefined],
  ])('%s', (_, reach, found) => expect(readsAt(reading(39.1, reach, '10 C'), 39)).toEqual(found));
  test('the nearest wins, wherever it stands in the list', () =>
    expect(readsAt(reading(39.2, '90 km', '10 C') + reading(38.9, '90 km', '11 C'), 39)).toEqual([11]));
  test('the nearest does not win beyond its reach', () =>
    expect(readsAt(reading(39.2, '90 km', '10 C') + reading(38.9, '9 km', '11 C'), 39)).toEqual([10]));
  test('of two as near the first wins', () =>
    expect(readsAt(reading(39.1, '90 km', '10 C') + reading(39.1, '90 km', '11 C'), 39)).toEqual([10]));
  test('readings and a station are looked for each by itself', () => {
    const station = '  - { latitude: 39.3, longitude: -75, reach: 90 km, weather: station.csv }\n';
    const { near, stations } = linked(reading(39.1, '90 km', '10 C') + station);
    const found = near({ latitude: 39, longitude: -75 });
    expect([found.readings?.length, found.station, stations[found.station ?? 9]?.source]).toEqual([
      1,
      0,
      'station.csv',
    ]);
  });
});

/** When the barrier opens at a lawn with what is shared. */
function openingAt(extra: string, shared: SharedNear | null, weather = 'weather.csv') {
  const text = lawnText(extra, weather).replace('program.yaml', 'fescue.yaml');
  const { season, problems } = compile({
    lawn: { name: 'lawn.yaml', text: weather === '' ? text.replace('weather: { files: [] }\n', '') : text },
    lookup,
    asOf: parseDay('2027-04-02') ?? 0,
    ledger: null,
    revisedAt: '2027-04-02T06:00:00Z',
    detail: 'normal',
    shared: () => shared ?? { readings: null, station: null },
  });
  if (!season) throw new Error(JSON.stringify(problems));
  return season.applications[0]?.window.opens.p50;
}
const DAYS = ['2027-03-10', '2027-03-17', '2027-03-24', '2027-03-31'].map((text) => parseDay(text) ?? 0);
/** A thermometer that reads warm soil on four days. */
const WARM: SharedNear = { readings: DAYS.map((date) => ({ date, depth: 0.1, reads: 9.5 })), station: null };
const OWN = `thermometer: [${['2027-03-10', '2027-03-17', '2027-03-24', '2027-03-31'].map((date) => `{ date: ${date}, depth: 10 cm, reads: 9.5 C }`).join(', ')}]\n`;

describe('a lawn', LONG, () => {
  test('is told by shared readings as by its own', () => {
    expect(openingAt('', WARM)).toBe(openingAt(OWN, null));
    expect(openingAt('', WARM)).not.toBe(openingAt('', null));
  });
  test('with a thermometer of its own takes no other', () =>
    expect(openingAt(OWN, { readings: DAYS.map((date) => ({ date, depth: 0.1, reads: 2 })), station: null })).toBe(
      openingAt(OWN, null),
    ));
  const station = () =>
    linked('  - { latitude: 39, longitude: -75, reach: 9 km, weather: station.csv }\n').stations[0]!;
  test('without weather takes that of the station', () =>
    expect(openingAt('', { readings: null, station: station() }, '')).toBe(openingAt('', null, 'station.csv')));
  test('with weather of its own takes none of the station', () =>
    expect(openingAt('', { readings: null, station: station() })).toBe(openingAt('', null)));
});

describe('a place', LONG, () => {
  const pageWith = (thermometers: string) => {
    const { jobs, programs, stations } = linked(thermometers);
    const made = filesForPlace(
      jobs[0]!,
      {
        publication: { id: 'p', name: 'P', baseUrl: null, embed: false, changelog: [], display: {} },
        programs,
        stations,
        asOf: parseDay('2027-04-02') ?? 0,
        revisedAt: '2027-04-02T00:00:00Z',
      },
      null,
    );
    return made.files.find(({ name }) => name === 'a/a.ics')?.text.replace(/\r\n[ \t]/g, '') ?? '';
  };
  const station = '  - { latitude: 39.05, longitude: -75, reach: 20 km, weather: station.csv }\n';
  const warm = `  - { latitude: 39.05, longitude: -75, reach: 20 km, readings: [${['2027-03-10', '2027-03-17', '2027-03-24', '2027-03-31'].map((date) => `{ date: ${date}, depth: 10 cm, reads: 6.5 C }`).join(', ')}] }\n`;
  test('has the soil of its station', () => expect(pageWith(station)).toContain('Weather observed through 2027-04-01'));
  test('without one has none', () =>
    expect(pageWith(reading(39.9, '9 km', '10 C'))).toContain('No weather of this place was seen'));
  test('has its soil moved to the readings near it', () =>
    expect(pageWith(station + warm)).not.toBe(pageWith(station)));
});
