import { civil, type Day, latestOnOrBefore } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import { quantile } from '../base/quantile.ts';
import { trailingMean } from '../base/series.ts';
import { growthPotential } from '../climate/growth.ts';
import { heatBetween } from '../climate/heat.ts';
import { airMean, type Trace } from '../climate/trace.ts';
import type { Trigger } from '../model/trigger.ts';
import type { Words } from '../words/words.ts';
import type { Ground } from './ground.ts';
import { percent } from './in-words/triggers.ts';
import type { PlacedStep } from './placed.ts';

/** Median over traces of a value, without those where it is missing; null where it is nowhere. */
export function median(traces: readonly Trace[], reading: (trace: Trace) => number): number | null {
  const values = traces.map(reading).filter((value) => !Number.isNaN(value));
  return quantile(values, values.length, 0.5);
}

/** What a trigger looks at, on a day, in a trace. */
function valueOn(trigger: Trigger, day: Day): ((trace: Trace) => number) | null {
  switch (trigger.kind) {
    case 'soil':
      return (trace) => trailingMean(trace.soil(trigger.depth), day, trigger.mean);
    case 'air':
      return (trace) =>
        trailingMean(
          trigger.stat === 'min' ? trace.tmin : trigger.stat === 'max' ? trace.tmax : airMean(trace),
          day,
          trigger.mean,
        );
    case 'growth':
      return (trace) => growthPotential(trailingMean(airMean(trace), day, trigger.mean), trigger.grass);
    case 'degree-days': {
      const from = latestOnOrBefore(trigger.from, day);
      return (trace) => heatBetween(trace, trigger, from, day);
    }
    default:
      return null;
  }
}

/** The value today of what a trigger looks at, beside what is usual for the day; null for a trigger that looks at nothing. */
export function readingOf(
  trigger: Trigger,
  { season }: PlacedStep,
  { climate, asOf }: Ground,
  display: Display,
  words: Words,
): string | null {
  const day = climate.observedThrough;
  if (day === null) return null;
  const value = valueOn(trigger, day);
  if (!value || day < season.start || asOf < season.start) return null;
  const now = value(climate.modelled);
  if (Number.isNaN(now)) return null;
  const usual = median(climate.past(season.start, season.end), value);
  const print =
    trigger.kind === 'degree-days' ? display.heat : trigger.kind === 'growth' ? percent : display.temperature;
  return words.readings.valueToday(
    naming(trigger, display, words),
    print(now),
    usual === null ? null : print(usual),
    display.shortDay(day),
  );
}

function naming(trigger: Trigger, display: Display, words: Words): string {
  switch (trigger.kind) {
    case 'soil':
      return words.readings.soilAt(display.soilDepth(trigger.depth), trigger.mean);
    case 'degree-days':
      return words.readings.heatSince(
        display.temperature(trigger.base),
        display.shortDay(civil(2027, trigger.from.month, Math.min(trigger.from.day, 28))),
        trigger.method,
      );
    case 'growth':
      return words.readings.growth(trigger.grass, trigger.mean);
    default:
      return words.readings.air('mean' in trigger ? trigger.mean : 1);
  }
}
