import type { Day } from '../../base/day.ts';
import type { Trace } from '../../climate/trace.ts';
import type { Climate } from '../../climate/traces.ts';

/** What half of the traces say counts: where the weather is known, all of them say the same. */
const HALF = 0.5;

/** Whether something holds on a day in at least half of the traces. */
export function likely({ traces }: Climate, holds: (trace: Trace) => boolean): boolean {
  return traces.length > 0 && traces.filter(holds).length >= HALF * traces.length;
}

/** Whether the weather of a day was seen or is forecast, and so the same in every trace. */
export const isKnown = ({ observedThrough, forecastThrough }: Climate, day: Day): boolean =>
  day <= (forecastThrough ?? observedThrough ?? Number.NEGATIVE_INFINITY);
