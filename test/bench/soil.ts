/**
 * How long thirty traces of one year take, two depths, with spin-up: `npm run bench`. On one core, after warm-up, beside a
 * plain exponential filter of air temperature over the same days.
 */
import { civil } from '../../src/base/day.ts';
import { climatologyOf } from '../../src/climate/climatology.ts';
import { generate } from '../../src/climate/generator.ts';
import { nearestPlace } from '../../src/climate/nearest-place.ts';
import { depthSeries, run, soilOf, spunUp } from '../../src/climate/soil.ts';
import { cut } from '../../src/model/weather.ts';

const TRACES = 30;
const YEAR = 365;
const SITE = { latitude: 39, elevationM: 270, irrigated: false };

const normals = nearestPlace(SITE.latitude, -84.5, SITE.elevationM).value?.normals;
if (!normals) throw new Error('no reference climate near the bench site');
const start = civil(1990, 1, 1);
const weather = generate(normals, 1, start, 32 * 366);
const climatology = climatologyOf(weather, SITE, civil(2022, 1, 1));
const soil = soilOf(SITE, climatology);
const years = Array.from({ length: TRACES }, (_, i) => cut(weather, start + i * YEAR, start + (i + 1) * YEAR));

function model(): number {
  const before = spunUp(soil, climatology, start);
  let sum = 0;
  for (const year of years) {
    const columns = run(soil, before, year);
    sum += (depthSeries(columns, 0.05, soil).values[100] ?? 0) + (depthSeries(columns, 0.1, soil).values[100] ?? 0);
  }
  return sum;
}

/** The days of the spin-up and of every trace, each depth with a filter of its own. */
function filter(): number {
  let sum = 0;
  for (const share of [0.15, 0.1]) {
    let t = 10;
    const usual = climatology.weather(start - 730, start);
    for (const { tmin, tmax } of [usual, ...years]) {
      for (let i = 0; i < tmin.length; i++) t += share * (((tmin[i] as number) + (tmax[i] as number)) / 2 - t);
      sum += t;
    }
  }
  return sum;
}

function median(work: () => number): number {
  for (let i = 0; i < 40; i++) work();
  const times = Array.from({ length: 41 }, () => {
    const began = performance.now();
    work();
    return performance.now() - began;
  });
  return times.sort((a, b) => a - b)[20] as number;
}

const [modelled, filtered] = [median(model), median(filter)];
process.stdout.write(
  `${TRACES} traces × ${YEAR} days, 5 and 10 cm, with spin-up: ${modelled.toFixed(2)} ms (median of 41)\n` +
    `plain exponential filter over the same days: ${filtered.toFixed(2)} ms; ratio ${(modelled / filtered).toFixed(1)}\n`,
);
