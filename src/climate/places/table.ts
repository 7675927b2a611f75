import type { Monthly, MonthlyNormals } from '../../model/normals.ts';
import { withVariability } from '../variability.ts';

/**
 * How a figure came here: computed by its publisher or from its daily readings (measured), worked out by this project
 * from daily readings of another period than a normal's or from other figures (derived), or recalled (from memory).
 */
type Origin = 'measured' | 'derived' | 'from memory';

/** A place whose usual weather is carried along, for planning without a weather file. */
export interface ReferencePlace {
  readonly id: string;
  readonly name: string;
  /** U.S. state by its two letters, or country. */
  readonly region: string;
  /** GHCN-Daily station that the figures are of; null where none is named. */
  readonly station: string | null;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number;
  /** Origin of Tmin and Tmax. */
  readonly origin: Origin;
  readonly precipOrigin: Origin;
  readonly period: string;
  readonly source: string;
  /** Tmin, Tmax and precipitation of this origin; their variability is always derived (`variability.ts`). */
  readonly normals: MonthlyNormals;
}

const numbers = (text: string): number[] => text.trim().split(/\s+/).map(Number);

/**
 * Reads a table of places, one a line:
 * `id | name | region | station or - | latitude longitude elevation | 12 Tmin °C | 12 Tmax °C | 12 precipitation mm`,
 * and, where the rows differ in them, `| origin | origin of precipitation | period | source`.
 *
 * @throws RangeError where a row has not the right number of cells or figures: a mistake in our own tables.
 */
export function placesOf(
  table: string,
  all: { readonly origin: Origin; readonly period: string; readonly source: string } | null,
): ReferencePlace[] {
  return table
    .trim()
    .split('\n')
    .map((row) => {
      const [id = '', name = '', region = '', station = '', where = '', low = '', high = '', rain = '', ...own] = row
        .split('|')
        .map((cell) => cell.trim());
      const [latitude = Number.NaN, longitude = Number.NaN, elevationM = Number.NaN] = numbers(where);
      const [tmin, tmax, precip]: [Monthly, Monthly, Monthly] = [numbers(low), numbers(high), numbers(rain)];
      const whole = [latitude, longitude, elevationM, ...tmin, ...tmax, ...precip];
      if (whole.length !== 39 || whole.some(Number.isNaN) || (all ? own.length > 0 : own.length !== 4)) {
        throw new RangeError(`The row of "${id}" is not whole.`);
      }
      return {
        id,
        name,
        region,
        station: station === '-' ? null : station,
        latitude,
        longitude,
        elevationM,
        origin: all?.origin ?? (own[0] as Origin),
        precipOrigin: all?.origin ?? (own[1] as Origin),
        period: all?.period ?? (own[2] as string),
        source: all?.source ?? (own[3] as string),
        normals: withVariability({ tmin, tmax, precip }, latitude, longitude),
      };
    });
}
