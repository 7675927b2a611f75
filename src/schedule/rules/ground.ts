import { at } from '../../base/series.ts';
import { NODES } from '../../climate/conduction.ts';
import type { Trace } from '../../climate/trace.ts';
import type { Step } from '../../model/program.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { likely } from './shares.ts';

/** Rain of two days that leaves the ground too wet to walk on or to take up what is put down [mm]. Common practice. */
const SATURATING = 25;
/** Rain within 24 hours that carries off what was put down: 0.5 in [mm]. Common practice, and a rule of many places. */
const HEAVY = 12.7;

const onGround = ({ work }: Step): boolean => ['spread', 'spray', 'seed', 'aerate'].includes(work);
const putDown = ({ work }: Step): boolean => work === 'spread' || work === 'spray';

/** Nothing goes on frozen ground. */
export function frozen({ ground: { climate }, assigned: { step } }: RuleInput): DayRule | null {
  if (!onGround(step)) return null;
  return (day) => (likely(climate, (trace) => at(trace.soil(NODES[0]), day) <= 0) ? { rule: 'frozen' } : null);
}

/** Nothing goes on ground that is full of water. */
export function saturated({ ground: { climate }, assigned: { step } }: RuleInput): DayRule | null {
  if (!onGround(step)) return null;
  const wet = (trace: Trace, day: number) => at(trace.precip, day - 1) + at(trace.precip, day - 2) >= SATURATING;
  return (day) => (likely(climate, (trace) => wet(trace, day)) ? { rule: 'saturated' } : null);
}

/** Nothing is spread or sprayed before heavy rain. */
export function heavyRain({ ground: { climate }, assigned: { step } }: RuleInput): DayRule | null {
  if (!putDown(step)) return null;
  return (day) => {
    const heavy = (trace: Trace) => Math.max(at(trace.precip, day), at(trace.precip, day + 1)) >= HEAVY;
    return likely(climate, heavy) ? { rule: 'rain', depth: HEAVY / 1000, known: true } : null;
  };
}
