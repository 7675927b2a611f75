import type { Day } from '../../base/day.ts';
import type { AreaAmount } from '../../model/season.ts';
import { factsOf } from '../condition.ts';
import type { Writing } from '../reasons.ts';
import type { DosedStep } from '../within-caps.ts';
import { isHot } from './hot.ts';
import { asText, hoursOn } from './hours-on.ts';
import { minutesFor } from './lasting.ts';
import { rightHours } from './right-hours.ts';

/** The hours of a step on its day, which later jobs of that day then find taken. */
export function hoursFor(
  placed: DosedStep,
  day: Day,
  areas: readonly AreaAmount[],
  { ground, walks, zone, takenOn }: Writing,
): { readonly start: string; readonly end: string } {
  const { step, season } = placed;
  const taken = takenOn.get(day) ?? [];
  const right = rightHours(placed);
  const hours = hoursOn(day, ground.lawn, zone, {
    right,
    minutes: minutesFor(step.work === 'spread' || step.work === 'seed', areas, walks),
    hot: right === 'cool' && isHot(ground.climate, season, day),
    byItself: step.work === 'water' && placed.areas.every((area) => factsOf(ground.lawn, area).irrigated ?? false),
    taken,
  });
  takenOn.set(day, [...taken, hours]);
  return asText(hours);
}
