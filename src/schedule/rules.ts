import type { Day } from '../base/day.ts';
import { apart } from './rules/apart.ts';
import { away, full, notWorking, unseen } from './rules/calendar.ts';
import type { Forbidden } from './rules/forbidden.ts';
import { frozen, heavyRain, saturated } from './rules/ground.ts';
import { interval, seedAndHerbicide } from './rules/labels.ts';
import { forbiddenPeriod } from './rules/local.ts';
import type { DayRule, RuleInput } from './rules/rule.ts';
import { rain, tooCold, tooHot } from './rules/sky.ts';
import { spacing } from './rules/spacing.ts';
import { dormant, seedlings, young } from './rules/turf.ts';

/** The rules, each bound to a step in turn; the first one that speaks is the reason given for a day. */
const RULES: readonly ((input: RuleInput) => DayRule | null)[] = [
  notWorking,
  away,
  forbiddenPeriod,
  seedAndHerbicide,
  interval,
  spacing,
  apart,
  young,
  seedlings,
  dormant,
  frozen,
  saturated,
  heavyRain,
  rain,
  tooCold,
  tooHot,
  full,
  unseen,
];

/** Every reason why a day is not allowed for a step; none where it is allowed. */
export function rulesFor(input: RuleInput): (day: Day) => readonly Forbidden[] {
  const bound = RULES.flatMap((rule) => rule(input) ?? []);
  const known = new Map<Day, readonly Forbidden[]>();
  return (day) => {
    const found = known.get(day) ?? bound.flatMap((rule) => rule(day) ?? []);
    known.set(day, found);
    return found;
  };
}
