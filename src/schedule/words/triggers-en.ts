import { civil, type MonthDay } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import type { DegreeDayMethod, HeatRule } from '../../model/heat.ts';
import type { Crossing, Trigger } from '../../model/trigger.ts';

/** A month-day as the reader writes it. */
const on = ({ month, day }: MonthDay, display: Display): string =>
  display.shortDay(civil(2027, month, Math.min(day, month === 2 ? 28 : 31)));

export const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);

const mean = (count: number): string => (count === 1 ? '' : `${count}-day mean of `);

function crossing(what: string, rule: Crossing, display: Display): string {
  const verb = rule.direction === 'rises' ? 'rises to' : 'falls to';
  const hold = rule.holds === 1 ? '' : ` and holds ${days(rule.holds)}`;
  const from = rule.from ? `, from ${on(rule.from, display)} on` : '';
  return `the ${mean(rule.mean)}${what} ${verb} ${display.temperature(rule.threshold)}${hold}${from}`;
}

/** How a method takes the day's heat. */
export const HEAT_BY: Record<DegreeDayMethod, string> = {
  average: "by the day's mean",
  'average-clamped': 'by the mean of raised extremes',
  modified: 'by the mean of clamped extremes',
  'single-sine': 'by a sine through the day',
  'double-sine': 'by a sine through each half of the day',
  'single-triangle': 'by a triangle through the day',
  'double-triangle': 'by a triangle through each half of the day',
};

const heat = (rule: HeatRule, display: Display): string =>
  `${display.heat(rule.reaches)} above ${display.temperature(rule.base)} (${HEAT_BY[rule.method]})`;

/** A trigger in words that follow "opens when" or "closes when". @param stepName The name of a step by its id. */
export function triggerInWords(trigger: Trigger, display: Display, stepName: (id: string) => string): string {
  const inner = (one: Trigger) => triggerInWords(one, display, stepName);
  switch (trigger.kind) {
    case 'date':
      return `it is ${on(trigger.on, display)}`;
    case 'soil':
      return crossing(`soil temperature at ${display.soilDepth(trigger.depth)}`, trigger, display);
    case 'air':
      return crossing(
        { min: 'lowest', mean: 'mean', max: 'highest' }[trigger.stat].concat(' air temperature of the day'),
        trigger,
        display,
      );
    case 'degree-days':
      return `the ${trigger.of === 'soil' ? 'soil' : 'air'} has gathered ${heat(trigger, display)} since ${on(trigger.from, display)}`;
    case 'after': {
      const base = trigger.step === undefined ? 'the window opened' : `"${stepName(trigger.step)}"`;
      const wait = trigger.heat ? heat(trigger.heat, display) : trigger.wait === 0 ? '' : days(trigger.wait ?? 0);
      const otherwise = trigger.otherwise ? `, or else ${inner(trigger.otherwise)}` : '';
      return wait === '' ? `${base}${otherwise}` : `${wait} have passed since ${base}${otherwise}`;
    }
    case 'any-of':
      return trigger.of
        .map((one) => (one.kind === 'date' ? `at the latest on ${on(one.on, display)}` : inner(one)))
        .join(', or ');
    case 'all-of':
      return trigger.of
        .map((one) => (one.kind === 'date' ? `not before ${on(one.on, display)}` : inner(one)))
        .join(', ');
  }
}
