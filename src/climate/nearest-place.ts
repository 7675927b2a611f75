import { type Problem, problem } from '../base/problem.ts';
import type { MonthlyNormals } from '../model/normals.ts';
import { REFERENCE_PLACES } from './places/all.ts';
import type { ReferencePlace } from './places/table.ts';

/** Mean radius of the Earth [km]. IUGG: (2a + b) / 3 of the reference ellipsoid. */
const EARTH_RADIUS_KM = 6371.0;

/**
 * Fall of temperature with height [°C per m]: ICAO (1993), Manual of the ICAO Standard Atmosphere, Doc 7488, 6.5 °C/km.
 * Real monthly means fall more slowly, above all minima in winter and in valleys (3 to 5 °C/km are common there).
 */
const LAPSE_RATE = 0.0065;

/** A metre of height counts like this many kilometres, so that the two limits below weigh the same. */
const KM_PER_M = 0.5;

/** Beyond this distance or height it is said. */
const FAR_KM = 150;
const FAR_M = 300;
/** Beyond this distance the usual weather of the other place says too little. */
const TOO_FAR_KM = 400;

/** The reference place that stands for a lawn, and the lawn's normals made from it. */
export interface NearestPlace {
  readonly place: ReferencePlace;
  readonly distanceKm: number;
  /** Height of the lawn less that of the place [m]; null where the lawn's is not known. */
  readonly heightDifferenceM: number | null;
  /** The place's normals at the lawn's height. */
  readonly normals: MonthlyNormals;
}

/**
 * Distance along the great circle [km], by the haversine on a sphere (at most 0.6 % off the ellipsoid).
 * Source: Sinnott (1984), Virtues of the haversine, Sky and Telescope 68(2):159.
 */
export function greatCircleKm(latitude1: number, longitude1: number, latitude2: number, longitude2: number): number {
  const radians = Math.PI / 180;
  const sine = (degrees: number) => Math.sin((degrees * radians) / 2) ** 2;
  const a =
    sine(latitude2 - latitude1) +
    Math.cos(latitude1 * radians) * Math.cos(latitude2 * radians) * sine(longitude2 - longitude1);
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(a)));
}

/**
 * The reference climate for a place without a weather file: the one with the least distance, 100 m of height counting
 * like 50 km, its temperatures brought to the place's height.
 *
 * @param elevationM Height of the place [m]; where it is not known, height neither chooses nor corrects.
 * @returns The nearest place with exactly one problem that names it: a note, a warning beyond 150 km or 300 m, or an
 * error beyond 400 km, which leaves the value out.
 */
export function nearestPlace(
  latitude: number,
  longitude: number,
  elevationM: number | null,
): { readonly value?: NearestPlace; readonly problems: readonly Problem[] } {
  let best: NearestPlace | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const place of REFERENCE_PLACES) {
    const distanceKm = greatCircleKm(latitude, longitude, place.latitude, place.longitude);
    const heightDifferenceM = elevationM === null ? null : elevationM - place.elevationM;
    const cost = distanceKm + KM_PER_M * Math.abs(heightDifferenceM ?? 0);
    if (!(cost < least)) continue;
    least = cost;
    best = { place, distanceKm, heightDifferenceM, normals: place.normals };
  }
  if (best === null) throw new RangeError('A latitude and a longitude are needed.');
  const { place, distanceKm, heightDifferenceM } = best;
  const args = {
    place: `${place.name}, ${place.region}`,
    km: Math.round(distanceKm),
    heightM: heightDifferenceM === null ? null : Math.round(heightDifferenceM),
    origin: place.origin,
  };
  if (distanceKm > TOO_FAR_KM) return { problems: [problem('climate-too-far', args, null)] };
  const far = distanceKm > FAR_KM || Math.abs(heightDifferenceM ?? 0) > FAR_M;
  return {
    value: { ...best, normals: atHeight(place.normals, heightDifferenceM ?? 0) },
    problems: [problem(far ? 'climate-far' : 'climate-near', args, null)],
  };
}

/** Normals brought to another height; rain and variability stay. */
function atHeight(normals: MonthlyNormals, higherM: number): MonthlyNormals {
  const lowered = (t: number) => t - LAPSE_RATE * higherM;
  return { ...normals, tmin: normals.tmin.map(lowered), tmax: normals.tmax.map(lowered) };
}
