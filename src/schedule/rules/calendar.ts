import { weekday } from '../../base/day.ts';
import type { DayRule, RuleInput } from './rule.ts';

/** A weekday on which nobody works. */
export function notWorking({ ground: { lawn } }: RuleInput): DayRule | null {
  const days = lawn.working?.days;
  return days ? (day) => (days.includes(weekday(day)) ? null : { rule: 'not-working' }) : null;
}

/** Days away. */
export function away({ ground: { lawn } }: RuleInput): DayRule | null {
  const spans = lawn.working?.away;
  return spans ? (day) => (spans.some(([from, to]) => from <= day && day <= to) ? { rule: 'away' } : null) : null;
}

/** A day that holds as many jobs as it may. */
export function full({ ground: { lawn }, placed }: RuleInput): DayRule | null {
  const most = lawn.working?.jobsPerDay;
  if (most === undefined) return null;
  return (day) => (placed.filter((one) => one.job && one.day === day).length >= most ? { rule: 'full' } : null);
}

/** Days so close that the weather of late, which nobody has told, would decide. */
export const unseen =
  ({ earliest, published }: RuleInput): DayRule =>
  (day) =>
    day < earliest && day !== published ? { rule: 'unseen' } : null;
