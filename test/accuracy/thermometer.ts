/** What six readings of a lawn's thermometer in spring are worth for the rest of the year, and for the next. */
import { civil, type Day, yearOf } from '../../src/base/day.ts';
import { normal, type Random, seeded } from '../../src/base/random.ts';
import { at, type DailySeries } from '../../src/base/series.ts';
import { type Modelled, temperature } from './predict.ts';
import { mean, median, scoreOf } from './score.ts';
import { type Depth, isEast, type Station } from './stations.ts';

/** Updates a site's offset by readings. @param model Soil temperature without an offset; depths in metres [°C]. */
export type Update = (
  readings: readonly { readonly day: Day; readonly depth: number; readonly value: number }[],
  model: (day: Day, depth: number) => number,
) => { readonly offset: number; readonly sd: number };

const READINGS = 6;
/** Standard deviation of a reading's error [°C]. */
const NOISE = 0.5;
/** How often the six days are drawn anew. */
const DRAWS = 20;

/** Days of February to May on which the ground is not frozen, neither measured nor modelled. */
function thawed(measured: DailySeries, predicted: DailySeries, year: number): Day[] {
  const days: Day[] = [];
  for (let day = civil(year, 2, 1); day < civil(year, 6, 1); day++)
    if (at(measured, day) > 0.5 && at(predicted, day) > 1) days.push(day);
  return days;
}

/** Some of the days, each as likely as another. */
function drawn(days: readonly Day[], random: Random): Day[] {
  const left = [...days];
  return Array.from({ length: READINGS }, () => left.splice(Math.floor(random() * left.length), 1)[0] as Day);
}

interface Case {
  readonly station: Station;
  readonly run: Modelled;
  readonly depth: Depth;
  readonly year: number;
  /** Days that are scored. */
  counts(day: Day): boolean;
}

export interface CaseResult {
  readonly name: string;
  readonly year: number;
  /** RMSE without the readings, and with them, the mean over the draws [°C]. */
  readonly without: number;
  readonly with: number;
  readonly offset: number;
}

function resultOf({ station, run, depth, year, counts }: Case, update: Update, seed: number): CaseResult | null {
  const measured = station.soil[depth] as DailySeries;
  const predicted = temperature(run, depth);
  const days = thawed(measured, predicted, year);
  const { rmse: without, n } = scoreOf(predicted, measured, counts);
  if (days.length < READINGS || n < 100) return null;
  const random = seeded(seed);
  const tries = Array.from({ length: DRAWS }, () => {
    const readings = drawn(days, random).map((day) => ({
      day,
      depth: depth / 100,
      value: at(measured, day) + NOISE * normal(random),
    }));
    const { offset } = update(readings, (day) => at(predicted, day));
    return { offset, rmse: scoreOf(temperature(run, depth, offset), measured, counts).rmse };
  });
  return {
    name: station.name,
    year,
    without,
    with: mean(tries.map(({ rmse }) => rmse)),
    offset: mean(tries.map(({ offset }) => offset)),
  };
}

export interface ThermometerResult {
  readonly label: string;
  readonly cases: readonly CaseResult[];
  /** RMSE of the median case [°C]; each mean over all cases; how many cases got better. */
  readonly medianWithout: number;
  readonly medianWith: number;
  readonly meanWithout: number;
  readonly meanWith: number;
  readonly better: number;
}

function together(label: string, all: readonly (CaseResult | null)[]): ThermometerResult {
  const cases = all.filter((one) => one !== null);
  return {
    label,
    cases,
    medianWithout: median(cases.map(({ without }) => without)),
    medianWith: median(cases.map((one) => one.with)),
    meanWithout: mean(cases.map(({ without }) => without)),
    meanWith: mean(cases.map((one) => one.with)),
    better: cases.filter((one) => one.with < one.without).length,
  };
}

/** @param run The model at a station; as shipped, or fitted without it. */
export function thermometer(
  stations: readonly Station[],
  run: (station: Station) => Modelled,
  update: Update,
): ThermometerResult[] {
  const home = stations.filter(({ soil }) => soil[5]);
  const season = (station: Station, depth: Depth, i: number) =>
    resultOf({ station, run: run(station), depth, year: 2020, counts: (day) => day >= civil(2020, 6, 1) }, update, i);
  const abroad = stations.filter(({ soil }) => !soil[5]);
  const next = abroad.flatMap((station) => {
    const modelled = run(station);
    return Array.from({ length: 18 }, (_, i) => 2004 + i).map((year) =>
      resultOf({ station, run: modelled, depth: 10, year, counts: (day) => yearOf(day) === year + 1 }, update, year),
    );
  });
  const inDepth = (depth: Depth) => home.map((station, i) => ({ station, result: season(station, depth, i) }));
  const [at5, at10] = [inDepth(5), inDepth(10)];
  const east = (all: typeof at5) => all.flatMap(({ station, result }) => (isEast(station) ? [result] : []));
  return [
    together('east, 5 cm, June to December', east(at5)),
    together('east, 10 cm, June to December', east(at10)),
    together(
      'all 50, 5 cm, June to December',
      at5.map(({ result }) => result),
    ),
    together('Phoenix Park, 10 cm, the next year', next),
  ];
}
