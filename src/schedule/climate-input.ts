import type { Day } from '../base/day.ts';
import { nearestPlace } from '../climate/nearest-place.ts';
import type { ClimateInput } from '../climate/traces.ts';
import type { Lawn } from '../model/lawn.ts';

/** What a lawn says of its climate: place, height, soil, thermometer. A height that is not known is the nearest known place's. */
export function climateInputOf(
  lawn: Lawn,
  weather: Pick<ClimateInput, 'observed' | 'history' | 'forecast' | 'ofFiles'>,
  span: { readonly asOf: Day; readonly from: Day; readonly to: Day },
): ClimateInput {
  const { latitude, longitude, elevation } = lawn.location;
  const elevationM = elevation ?? nearestPlace(latitude, longitude, null).value?.place.elevationM ?? 0;
  return {
    ...weather,
    ...span,
    site: { latitude, elevationM, irrigated: lawn.facts?.irrigated ?? false },
    position: { longitude, elevationM: elevation ?? null },
    texture: lawn.soil?.texture,
    readings: lawn.thermometer?.map(({ date, depth, reads }) => ({ day: date, depth, value: reads })),
  };
}
