import type { Day } from '../../base/day.ts';
import { at } from '../../base/series.ts';
import type { Trace } from '../../climate/trace.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { isKnown, likely } from './shares.ts';

/** More rain than the step bears in the time after it: any run of so many days that begins on the day or on the next. */
export function rain({ ground: { climate }, assigned: { step } }: RuleInput): DayRule | null {
  const limit = step.weather?.rainBelow;
  if (!limit) return null;
  const days = Math.max(1, Math.ceil(limit.in));
  const fallen = (trace: Trace, from: Day): number => {
    let sum = 0;
    for (let day = from; day < from + days; day++) sum += at(trace.precip, day);
    return sum / 1000;
  };
  return (day) => {
    const wet = (trace: Trace) => Math.max(fallen(trace, day), fallen(trace, day + 1)) >= limit.depth;
    return likely(climate, wet) ? { rule: 'rain', depth: limit.depth, known: isKnown(climate, day) } : null;
  };
}

/** Even the warmest hour is too cold. */
export function tooCold({ ground: { climate }, assigned: { step } }: RuleInput): DayRule | null {
  const limit = step.weather?.air?.from;
  if (limit === undefined) return null;
  return (day) =>
    likely(climate, (trace) => at(trace.tmax, day) < limit)
      ? { rule: 'cold', limit, known: isKnown(climate, day) }
      : null;
}

/** Most of the day is too hot: its mean is above the limit, so that few hours are left. */
export function tooHot({ ground: { climate }, assigned: { step } }: RuleInput): DayRule | null {
  const limit = step.weather?.air?.to;
  if (limit === undefined) return null;
  return (day) =>
    likely(climate, (trace) => (at(trace.tmin, day) + at(trace.tmax, day)) / 2 > limit)
      ? { rule: 'hot', limit, known: isKnown(climate, day) }
      : null;
}
