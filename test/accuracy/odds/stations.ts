/** The four stations whose past seasons are planned again: NOAA GHCN-Daily, public domain; places as in `src/climate/places/measured.ts`. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { WeatherSeries } from '../../../src/model/weather.ts';
import { readWeather } from '../../../src/read/weather.ts';

export interface OddsStation {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number;
}

export const ODDS_STATIONS: readonly OddsStation[] = [
  { id: 'milwaukee-wi', name: 'Milwaukee', latitude: 42.96, longitude: -87.9, elevationM: 204 },
  { id: 'philadelphia-pa', name: 'Philadelphia', latitude: 39.87, longitude: -75.23, elevationM: 3 },
  { id: 'seattle-wa', name: 'Seattle', latitude: 47.44, longitude: -122.31, elevationM: 113 },
  { id: 'merced-ca', name: 'Merced', latitude: 37.29, longitude: -120.51, elevationM: 47 },
];

/** The daily record of a station in a data folder; lines that the reader refuses are left out. @throws Error where it cannot be read. */
export function recordOf({ id }: OddsStation, folder: string): WeatherSeries {
  const file = path.join(folder, 'weather', `${id}.csv`);
  const text = readFileSync(file, 'utf8');
  // Merced: two days with crossed extremes (1982, 1992) and one that stands twice (1998).
  const refused = new Set(readWeather(text, file).problems.map(({ line }) => line));
  const kept = text.split('\n').filter((_, i) => !refused.has(i + 1));
  const { value, problems } = readWeather(kept.join('\n'), file);
  if (!value || refused.size > 5) throw new Error(`${file}: ${problems.map(({ message }) => message).join('; ')}`);
  return value;
}
