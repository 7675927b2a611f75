import type { Day } from '../base/day.ts';
import { formatDay } from '../base/day.ts';
import { at } from '../base/series.ts';
import type { WaterIn } from '../model/around-work.ts';
import { factsOf } from './condition.ts';
import type { Ground } from './ground.ts';
import type { DosedStep } from './within-caps.ts';

/** What a step is to be watered in with: as its label entry says, else as the program does. */
export const waterInOf = ({ step, dose }: DosedStep) => dose?.product?.label?.waterIn ?? step.waterIn;

/** Watering in as data. @param day The done day, else the chosen one; null where there is none. */
export function wateringIn(placed: DosedStep, day: Day | null, { lawn, climate, asOf }: Ground): WaterIn | null {
  const asked = waterInOf(placed);
  if (!asked) return null;
  const within = asked.within === undefined ? null : Math.floor(asked.within);
  const by = day === null || within === null ? null : day + within;
  const done = placed.progress.doneOn;
  const seen = Math.min(climate.observedThrough ?? asOf, by ?? asOf, asOf);
  return {
    depthMm: asked.depth === undefined ? null : Number((1000 * asked.depth).toFixed(2)),
    withinDays: within,
    by: by === null ? null : formatDay(by),
    fallenMm: done === null || climate.observedThrough === null || seen <= done ? null : rainAfter(climate, done, seen),
    irrigated: placed.areas.every((area) => factsOf(lawn, area).irrigated ?? false),
  };
}

/** Observed rain after a day [mm]. The day itself is left out: its sum does not tell whether it fell before or after. */
function rainAfter({ modelled, provenance }: Ground['climate'], day: Day, to: Day): number {
  let fallen = 0;
  for (let one = day + 1; one <= to; one++) if (provenance(one) === 'observed') fallen += at(modelled.precip, one) || 0;
  return Number(fallen.toFixed(1));
}
