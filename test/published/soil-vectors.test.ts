/**
 * Eight runs of the soil model against its reference implementation. Source: shared/reference/soil-model.md §8 (derived:
 * the project's own model, solved there by an independent dense matrix that agrees to 5e-5). All nodes start at one
 * temperature; a run has no leap day. F is the surface forcing, X5 the deepest node. Four digits printed.
 */
import { describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { conduction, uniform } from '../../src/climate/conduction.ts';
import { depthSeries, run, type Soil, type SoilRun } from '../../src/climate/soil.ts';
import { BY_CLIMATE } from '../../src/climate/soil-parameters.ts';
import {
  dayForcing,
  ema60,
  placeOf,
  rainRatio,
  surfaceTemperature,
  wetnessByClimate,
  wetnessByRain,
} from '../../src/climate/surface.ts';

type Extremes = readonly [tmin: number, tmax: number];

interface Vector {
  readonly id: number;
  readonly latitude: number;
  readonly elevationM: number;
  readonly firstDay: number;
  readonly days: number;
  readonly start: number;
  readonly air: (i: number) => Extremes;
  /** What decides how wet the ground is: watered, the climate's vapour pressure deficit [kPa], or rain with it. */
  readonly wet: 'watered' | { readonly deficit: number; readonly byRain: boolean };
  readonly printed: readonly [
    F: number,
    T5: number,
    mid: number,
    last: number,
    T10: number,
    last10: number,
    X5: number,
  ];
}

const always =
  (tmin: number, tmax: number) =>
  (_: number): Extremes => [tmin, tmax];
const place = (latitude: number, elevationM: number, firstDay: number, days: number, start: number) => ({
  latitude,
  elevationM,
  firstDay,
  days,
  start,
});

const vectors: readonly Vector[] = [
  {
    id: 1,
    ...place(40, 200, 100, 30, 10),
    air: always(8, 20),
    wet: 'watered',
    printed: [16.5205, 12.1616, 15.6091, 16.4637, 11.5923, 16.2242, 11.0117],
  },
  {
    id: 2,
    ...place(43, 205, 60, 60, 2),
    air: (i) => [-5 + 0.25 * i + 2 * Math.sin(i), 5 + 0.3 * i + 3 * Math.cos(i / 2)],
    wet: 'watered',
    printed: [1.8118, 1.9376, 7.5713, 15.5531, 1.954, 14.9417, 4.429],
  },
  {
    id: 3,
    ...place(48, 257, 1, 40, 1),
    air: always(-20, -9),
    wet: 'watered',
    printed: [-16.17, -0.8445, -2.3328, -2.5088, -0.5747, -2.4351, -2.7446],
  },
  {
    id: 4,
    ...place(53.4, 70, 150, 45, 13),
    air: always(9, 17),
    wet: 'watered',
    printed: [16.5303, 14.1703, 16.1041, 16.1368, 13.8621, 16.0694, 13.9457],
  },
  {
    id: 5,
    ...place(32.2, 833, 160, 45, 28),
    air: always(20, 38),
    wet: { deficit: 1.1, byRain: false },
    printed: [37.8105, 31.2522, 36.0607, 36.3249, 30.3957, 36.1314, 30.4891],
  },
  {
    id: 6,
    ...place(-37.8, 30, 60, 60, 20),
    air: (i) => [14 - 0.1 * i, 26 - 0.15 * i],
    wet: 'watered',
    printed: [22.2376, 20.7418, 18.1204, 13.7935, 20.5464, 14.1002, 19.2617],
  },
  {
    id: 7,
    ...place(39, 50, 75, 40, 9),
    air: (i) => (i < 10 ? [6, 17] : i < 20 ? [-6, 3] : [8, 20]),
    wet: 'watered',
    printed: [12.8494, 10.2761, 8.9048, 15.4345, 9.94, 15.0999, 9.3782],
  },
  {
    id: 8,
    ...place(35, 300, 170, 60, 24),
    air: always(18, 32),
    wet: { deficit: 0.75, byRain: true },
    printed: [28.501, 25.4921, 28.0871, 28.5567, 25.0991, 28.4588, 25.7157],
  },
];

/** Rain of vector 8 [mm]; the others have none that counts. */
const rainOn = (i: number): number => (i === 0 || i === 10 ? 8 : 0);
/** 60-day means of rain and reference evapotranspiration before the first day [mm/d]. */
const BEFORE = { rain: 2, demand: 3 };

function soilOf({ wet, latitude, elevationM }: Vector): Soil {
  const watered = wet === 'watered';
  const site = { latitude, elevationM, irrigated: watered };
  const model = { place: placeOf(site), parameters: BY_CLIMATE, conduct: conduction(BY_CLIMATE.D, BY_CLIMATE.h) };
  return watered ? { ...model, deficit: 0, byRain: false } : { ...model, ...wet };
}

/** Surface forcing of the first day. */
function firstForcing(vector: Vector): number {
  const { place, deficit, byRain } = soilOf(vector);
  const forcing = dayForcing(place, vector.firstDay, ...vector.air(0));
  const ratio = rainRatio(ema60(BEFORE.rain, rainOn(0)), ema60(BEFORE.demand, forcing.referenceEt));
  const wetness = byRain ? wetnessByRain(BY_CLIMATE, deficit, ratio) : wetnessByClimate(BY_CLIMATE, deficit);
  return surfaceTemperature(BY_CLIMATE, forcing, place.irrigated ? 1 : wetness, 0);
}

function runOf(vector: Vector): SoilRun {
  const days = Array.from({ length: vector.days }, (_, i) => vector.air(i));
  const weather = {
    source: 'vector',
    // A common year, and the next one too.
    start: civil(2025, 1, 1) + vector.firstDay - 1,
    tmin: Float64Array.from(days, ([tmin]) => tmin),
    tmax: Float64Array.from(days, ([, tmax]) => tmax),
    precip: Float64Array.from(days, (_, i) => rainOn(i)),
  };
  return run(soilOf(vector), { column: uniform(vector.start), ...BEFORE, snow: 0 }, weather);
}

describe.each(vectors)('vector $id', (vector) => {
  const soil = runOf(vector);
  const at = (i: number, depth: number) => depthSeries(soil, depth, soilOf(vector)).values.at(i) as number;
  const [F, T5, mid, last, T10, last10, X5] = vector.printed;
  test.each([
    { name: 'F on day 1', found: firstForcing(vector), printed: F },
    { name: '5 cm on day 1', found: at(0, 0.05), printed: T5 },
    { name: '5 cm at half time', found: at(Math.floor(vector.days / 2), 0.05), printed: mid },
    { name: '5 cm on the last day', found: at(-1, 0.05), printed: last },
    { name: '10 cm on day 1', found: at(0, 0.1), printed: T10 },
    { name: '10 cm on the last day', found: at(-1, 0.1), printed: last10 },
    { name: 'X5 on the last day', found: soil.end.column[4] as number, printed: X5 },
  ])('$name: $printed °C', ({ found, printed }) => {
    expect(Math.abs(found - printed)).toBeLessThan(1e-4);
  });
});
