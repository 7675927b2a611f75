import { type Day, formatDay, latestOnOrBefore } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import { quantile } from '../base/quantile.ts';
import { at, type DailySeries } from '../base/series.ts';
import { heatBetween, TOLD_HEAT } from '../climate/heat.ts';
import { airMean, type Trace } from '../climate/trace.ts';
import type { Climate } from '../climate/traces.ts';
import type { Signals, Today } from '../model/signals.ts';
import type { Words } from '../words/words.ts';
import { heatSignals, thresholdsOf } from './awaited.ts';
import type { PlacedStep } from './placed.ts';
import { median } from './readings.ts';
import type { SeasonYear } from './season-year.ts';

const tenth = (value: number | null): number | null =>
  value === null || Number.isNaN(value) ? null : Math.round(value * 10) / 10;

const [SHALLOW, DEEP] = [0.05, 0.1];

/** Soil and heat on the last observed day, beside the usual of the past years. */
export function todayOf(
  climate: Climate,
  season: SeasonYear,
  asOf: Day,
  southern: boolean,
  display: Display,
  words: Words,
): Today {
  const seen = climate.observedThrough;
  const day = seen ?? asOf;
  const past = climate.past(season.start, season.end);
  const from = latestOnOrBefore({ month: southern ? 7 : 1, day: 1 }, day);
  const values = {
    soil5C: (one: Trace) => at(one.soil(SHALLOW), day),
    soil10C: (one: Trace) => at(one.soil(DEEP), day),
    degreeDays10C: (one: Trace) => heatBetween(one, TOLD_HEAT, from, day),
  };
  const now = (reading: (one: Trace) => number) => tenth(seen === null ? null : reading(climate.modelled));
  const usual = (reading: (one: Trace) => number) => tenth(median(past, reading));
  const today = { soil5C: now(values.soil5C), soil10C: now(values.soil10C), degreeDays10C: now(values.degreeDays10C) };
  const usually = {
    soil5C: usual(values.soil5C),
    soil10C: usual(values.soil10C),
    degreeDays10C: usual(values.degreeDays10C),
  };
  const line = (what: string, key: keyof typeof today, print: (value: number) => string) => {
    const [value, other] = [today[key], usually[key]];
    if (value === null)
      return other === null ? [] : [words.readings.usualToday(what, print(other), display.shortDay(day))];
    return [words.readings.valueToday(what, print(value), other === null ? null : print(other), display.shortDay(day))];
  };
  return {
    date: seen === null ? null : formatDay(seen),
    ...today,
    usual: usually,
    title:
      today.soil5C === null && usually.soil5C === null
        ? words.readings.noSoil
        : words.readings.soilTitle(
            display.soilDepth(SHALLOW),
            today.soil5C === null ? null : display.temperature(today.soil5C),
            usually.soil5C === null ? null : display.temperature(usually.soil5C),
          ),
    lines: [
      ...line(words.readings.soilAt(display.soilDepth(SHALLOW), 1), 'soil5C', display.temperature),
      ...line(words.readings.soilAt(display.soilDepth(DEEP), 1), 'soil10C', display.temperature),
      ...line(
        words.readings.heatSince(display.temperature(TOLD_HEAT.base), display.shortDay(from), TOLD_HEAT.method),
        'degreeDays10C',
        display.heat,
      ),
    ],
  };
}

/** Daily soil, air and heat of the season: observed, forecast as far as that goes, usual for all of it; and what steps wait for. */
export function signalsOf(climate: Climate, season: SeasonYear, placed: readonly PlacedStep[]): Signals {
  const past = climate.past(season.start, season.end);
  const through = Math.min(climate.observedThrough ?? season.start - 1, season.end);
  const ahead = Math.min(climate.forecastThrough ?? through, season.end);
  const known = (seriesOf: (one: Trace) => DailySeries, from: Day, to: Day) =>
    days(from, to).map((day) => tenth(at(seriesOf(climate.modelled), day)));
  const usual = (seriesOf: (one: Trace) => DailySeries, of: (values: readonly number[]) => number | null) => {
    const all = past.map(seriesOf);
    return days(season.start, season.end).map((day) => tenth(of(all.map((series) => at(series, day)))));
  };
  const soil = (one: Trace) => one.soil(SHALLOW);
  const share = (part: number) => (values: readonly number[]) => quantile(values, values.length, part);
  return {
    start: formatDay(season.start),
    soil5C: known(soil, season.start, through),
    airMeanC: known(airMean, season.start, through),
    provenance: provenanceRuns(climate, season),
    forecast: { soil5C: known(soil, through + 1, ahead), airMeanC: known(airMean, through + 1, ahead) },
    usual: {
      soil5C: usual(soil, mean),
      airMeanC: usual(airMean, mean),
      soil5CP10: usual(soil, share(0.1)),
      soil5CP90: usual(soil, share(0.9)),
    },
    thresholds: thresholdsOf(placed),
    heat: heatSignals(placed, past, { climate, season, through, ahead }),
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Where the weather of a season's days comes from, as runs of days of one kind. */
function provenanceRuns({ provenance }: Climate, { start, end }: SeasonYear): Signals['provenance'] {
  const runs: { from: string; to: string; kind: ReturnType<Climate['provenance']> }[] = [];
  for (let day = start; day <= end; day++) {
    const [kind, last] = [provenance(day), runs.at(-1)];
    if (last?.kind === kind) last.to = formatDay(day);
    else runs.push({ from: formatDay(day), to: formatDay(day), kind });
  }
  return runs;
}

/** Each day from one through another. */
const days = (from: Day, to: Day): Day[] => Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
