import { UNIT_AREA } from '../amounts/unit-area.ts';
import type { UnitSystem } from '../base/display.ts';
import { contentHash } from '../base/hash.ts';
import type { Lawn } from '../model/lawn.ts';
import { feedKeyOf, PUBLIC_PLACE } from '../model/reader.ts';
import type { PlanInput } from './placed-season.ts';

/** A tenth of a degree is about 11 km, which tells no garden. */
const toTenth = (degrees: number): number => Math.round(10 * degrees) / 10;
/** Height steers the air by 0.65 °C on these [m]. */
const HEIGHT_STEP = 100;

/**
 * What a season for the public is planned from: the lawn's program and weather at a place that is only about right, on an area
 * of rates. Every key is named, so that nothing that is private now or later is ever in it.
 *
 * @example tellSeason(placeSeason(publicPlace(input, 'us')).value, publicPlace(input, 'us'))
 */
export function publicPlace({ lawn, ...input }: PlanInput, units: UnitSystem): PlanInput {
  const { program, observed, history, forecast, ofFiles = true, asOf } = input;
  return {
    program,
    products: new Map(),
    lawn: placeOf(lawn, units),
    journal: [],
    observed,
    history,
    forecast,
    ofFiles,
    previous: [],
    asOf,
  };
}

function placeOf(lawn: Lawn, units: UnitSystem): Lawn {
  const { latitude, longitude, elevation } = lawn.location;
  return {
    kind: 'lawn',
    version: 1,
    id: PUBLIC_PLACE,
    feed: { key: contentHash(`${feedKeyOf(lawn)} ${PUBLIC_PLACE}`) },
    location: {
      latitude: toTenth(latitude),
      longitude: toTenth(longitude),
      ...(elevation !== undefined && { elevation: HEIGHT_STEP * Math.round(elevation / HEIGHT_STEP) }),
    },
    grass: lawn.grass,
    program: lawn.program,
    weather: {},
    ...(lawn.display && { display: lawn.display }),
    areas: { lawn: { shape: { kind: 'measured', area: UNIT_AREA[units] }, less: [] } },
  };
}
