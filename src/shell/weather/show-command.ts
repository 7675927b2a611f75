import { type Day, formatDay } from '../../base/day.ts';
import { quantile } from '../../base/quantile.ts';
import { at } from '../../base/series.ts';
import { heatBetween, TOLD_HEAT } from '../../climate/heat.ts';
import type { Trace } from '../../climate/trace.ts';
import { weatherReport } from '../../emit/weather-report.ts';
import { signal } from '../../model/weather.ts';
import type { Beside, WeatherReport } from '../../model/weather-report.ts';
import type { Io } from '../io.ts';
import { exitCode, printProblems, tellProblems } from '../report-problems.ts';
import { type LawnClimate, lawnClimate } from './lawn-climate.ts';

export interface WeatherOptions {
  readonly asOf?: string;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** How far back the table goes [d]. */
const SHOWN = 30;

/** Prints today's soil temperature and degree days, and the last 30 days against the usual. */
export function weatherShowCommand(words: readonly string[], options: WeatherOptions, io: Io): number {
  const found = lawnClimate(words, options.asOf, undefined, io);
  const code = exitCode(found.problems, options.strict ?? false);
  if (!('climate' in found)) {
    tellProblems(found.problems, options.json, io);
    return code;
  }
  const report = reportOf(found);
  io.stdout(
    options.json
      ? `${JSON.stringify(report, null, 2)}\n`
      : weatherReport(report, found.display, Math.min(io.columns, 100)),
  );
  if (!options.json) printProblems(found.problems, io);
  return code;
}

export const tenth = (value: number): number | null => (Number.isNaN(value) ? null : Math.round(value * 10) / 10);

function reportOf({ lawn, asOf, from, climate, today, weather, soil, problems }: LawnClimate): WeatherReport {
  const { forecastThrough } = climate;
  const trace = climate.modelled;
  const past = climate.past(from, from + 364);
  const middle = (reading: (one: Trace) => number): number => {
    const values = past.map(reading).filter((value) => !Number.isNaN(value));
    return quantile(values, values.length, 0.5) ?? Number.NaN;
  };
  const beside = (reading: (one: Trace) => number): Beside => ({
    value: trace ? tenth(reading(trace)) : null,
    usual: tenth(middle(reading)),
  });
  const soilAt = (depthM: number, day: Day) => (one: Trace) => at(one.soil(depthM), day);
  const rain = (day: Day): number =>
    weather.map((series) => at(signal(series, 'precip'), day)).findLast((value) => !Number.isNaN(value)) ?? Number.NaN;
  const days = Array.from({ length: SHOWN }, (_, i) => today - SHOWN + 1 + i);
  return {
    kind: 'weather',
    version: 1,
    lawn: lawn.id,
    asOf: formatDay(asOf),
    observedThrough: formatDay(today),
    forecastThrough: forecastThrough === null ? null : formatDay(forecastThrough),
    pastYears: past.length,
    generated: climate.provenance(from + 365) === 'generated',
    sources: [...new Set(weather.map(({ source }) => source))],
    today: {
      date: formatDay(today),
      soil5C: beside(soilAt(0.05, today)),
      soil10C: beside(soilAt(0.1, today)),
      degreeDays10C: beside((one) => heatBetween(one, TOLD_HEAT, from, today)),
      degreeDaysFrom: formatDay(from),
    },
    serviceSoil: soil.flatMap(({ service, depthCm, daily }) => {
      const serviceC = tenth(at(daily, today));
      if (serviceC === null) return [];
      const oursC = trace && depthCm >= 5 && depthCm <= 50 ? tenth(soilAt(depthCm / 100, today)(trace)) : null;
      return [{ service, date: formatDay(today), depthCm, serviceC, oursC }];
    }),
    days: days.map((day) => ({
      date: formatDay(day),
      tminC: beside((one) => at(one.tmin, day)),
      tmaxC: beside((one) => at(one.tmax, day)),
      precipMm: tenth(rain(day)),
      soil5C: beside(soilAt(0.05, day)),
    })),
    problems,
  };
}
