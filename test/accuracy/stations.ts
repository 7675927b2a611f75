/** The stations that the soil model is measured against, with gaps placed by date. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type Day, parseDay } from '../../src/base/day.ts';
import type { DailySeries } from '../../src/base/series.ts';
import { type Climatology, climatologyOf } from '../../src/climate/climatology.ts';
import { filled } from '../../src/climate/record.ts';
import type { Site } from '../../src/climate/surface.ts';
import { type WeatherSeries, weatherEnd } from '../../src/model/weather.ts';

/** Depths that are scored [cm]. */
export const DEPTHS = [5, 10] as const;
export type Depth = (typeof DEPTHS)[number];

/** A measured site, its weather mended as a lawn's would be. */
export interface Station {
  readonly id: string;
  readonly name: string;
  readonly region: string;
  readonly longitude: number;
  readonly site: Site;
  /** Without holes. */
  readonly weather: WeatherSeries;
  readonly climatology: Climatology;
  /** Mid-range air temperature [°C]. */
  readonly air: DailySeries;
  /** Measured soil temperature [°C], NaN where missing. */
  readonly soil: Readonly<Partial<Record<Depth, DailySeries>>>;
  /** How many stations it counts for in a fit. */
  readonly weight: number;
}

/** States by region. Texas and Montana lie in two; each is taken whole. */
export const REGIONS: Readonly<Record<string, readonly string[]>> = {
  Northeast: ['ME', 'NH', 'NY', 'PA', 'RI'],
  Southeast: ['AL', 'GA', 'KY', 'NC', 'SC', 'VA'],
  Midwest: ['IA', 'MN', 'MO'],
  Plains: ['ND', 'OK', 'SD', 'TX'],
  'Mountain and arid West': ['AZ', 'CO', 'ID', 'MT', 'NV', 'WY'],
  Pacific: ['CA', 'OR', 'WA'],
  Ireland: ['IE'],
};

/** East of the 100th meridian, in North America. */
export const isEast = ({ longitude }: Station): boolean => longitude > -100 && longitude < -50;

/** The file leaves these blank: by its coordinates a place in the Oklahoma panhandle, where the ground lies at about 1000 m (from memory). */
const BLANKS: Readonly<Record<string, { readonly name: string; readonly state: string; readonly elevationM: number }>> =
  { '53182': { name: '(unnamed, panhandle)', state: 'OK', elevationM: 1000 } };

/** Met Éireann's station; elevation as the project's reference place has it. */
const PHOENIX_PARK = { id: 'phoenix-park', name: 'PHOENIX PARK', state: 'IE', latitude: 53.36, longitude: -6.35 };
const PHOENIX_PARK_ELEVATION = 48;
const PHOENIX_PARK_WEIGHT = 8;

type Row = Readonly<Record<string, string>>;

function rowsOf(file: string): Row[] {
  const [head = '', ...lines] = readFileSync(file, 'utf8').replaceAll('\r', '').trim().split('\n');
  const names = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, i) => [name, (cells[i] ?? '').trim()]));
  });
}

const number = (cell: string | undefined): number => (cell === undefined || cell === '' ? Number.NaN : Number(cell));

/** A column of dated rows as a series without a day left out. */
function column(rows: readonly Row[], name: string): DailySeries {
  const days = rows.map((row) => parseDay(row.date ?? '') as Day);
  const start = Math.min(...days);
  const values = new Float64Array(Math.max(...days) - start + 1).fill(Number.NaN);
  for (const [i, row] of rows.entries()) values[(days[i] as Day) - start] = number(row[name]);
  return { start, values };
}

interface About {
  readonly id: string;
  readonly name: string;
  readonly state: string;
  readonly latitude: number;
  readonly longitude: number;
}

function station(
  about: About,
  elevationM: number,
  rows: readonly Row[],
  soil: Station['soil'],
  weight: number,
): Station {
  const { id, name, state, latitude, longitude } = about;
  const site = { latitude, elevationM, irrigated: false };
  const { start, values: tmin } = column(rows, 'tmin_c');
  const raw: WeatherSeries = {
    source: name,
    start,
    tmin,
    tmax: column(rows, 'tmax_c').values,
    precip: column(rows, 'precip_mm').values,
  };
  const end = weatherEnd(raw);
  const climatology = climatologyOf(raw, site, end);
  const { weather } = filled(raw, climatology.usual, end, () => ({ file: name }));
  const region = Object.entries(REGIONS).find(([, states]) => states.includes(state))?.[0];
  if (region === undefined) throw new Error(`${name}: state "${state}" is in no region`);
  const air = { start, values: weather.tmin.map((low, i) => (low + (weather.tmax[i] as number)) / 2) };
  return { id, name: `${name} ${state}`, region, longitude, site, weather, climatology, air, soil, weight };
}

/** All stations of a data folder: 50 of the U.S. Climate Reference Network, then Phoenix Park. */
export function stationsIn(folder: string): readonly Station[] {
  const file = (name: string) => path.join(folder, 'soil', name);
  const rowsBy = new Map<string, Row[]>();
  for (const row of rowsOf(file('uscrn-2020.csv'))) {
    const id = row.wban ?? '';
    const rows = rowsBy.get(id) ?? [];
    rows.push(row);
    rowsBy.set(id, rows);
  }
  const uscrn = rowsOf(file('uscrn-2020-stations.csv')).map((about) => {
    const id = about.wban ?? '';
    const blank = BLANKS[id];
    const rows = rowsBy.get(id) ?? [];
    const place = {
      id,
      name: about.name || (blank?.name ?? id),
      state: about.state || (blank?.state ?? ''),
      latitude: number(about.latitude),
      longitude: number(about.longitude),
    };
    const elevation = about.elevation_m ? number(about.elevation_m) : (blank?.elevationM ?? Number.NaN);
    return station(place, elevation, rows, { 5: column(rows, 'soil5_c'), 10: column(rows, 'soil10_c') }, 1);
  });
  const rows = rowsOf(file('phoenix-park-ie.csv'));
  const soil = { 10: column(rows, 'soil10_c') };
  return [...uscrn, station(PHOENIX_PARK, PHOENIX_PARK_ELEVATION, rows, soil, PHOENIX_PARK_WEIGHT)];
}

/** The same with rain counted wherever it is known, for parameters that are fitted with rain; without it the program asks for nine days in ten. */
export const withRain = (station: Station): Station => ({
  ...station,
  climatology: { ...station.climatology, rainKnown: 1 },
});
