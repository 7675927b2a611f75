import { civil, type MonthDay } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import type { Crossing } from '../../model/crossing.ts';
import type { FrostRule } from '../../model/frost.ts';
import type { DegreeDayMethod, HeatRule } from '../../model/heat.ts';
import type { Trigger } from '../../model/trigger.ts';

/** A month-day as the reader writes it. */
const on = ({ month, day }: MonthDay, display: Display): string =>
  display.shortDay(civil(2027, month, Math.min(day, month === 2 ? 28 : 31)));

export const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);

const mean = (count: number): string => (count === 1 ? '' : `${count}-day mean of `);

function crossing(what: string, rule: Crossing, print: (threshold: number) => string, display: Display): string {
  const verb = rule.direction === 'rises' ? 'rises to' : 'falls to';
  const hold = rule.holds === 1 ? '' : ` and holds ${days(rule.holds)}`;
  const from = rule.from ? `, from ${on(rule.from, display)} on` : '';
  return `the ${mean(rule.mean)}${what} ${verb} ${print(rule.threshold)}${hold}${from}`;
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

export const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The days at which past years have their first or last frost, at a chance. */
function frost({ which, threshold, chance, shift }: FrostRule, display: Display): string {
  const share = percent(chance);
  const day =
    which === 'first'
      ? `the day by which ${share} of past years have had ${display.temperature(threshold)}`
      : `the day after which ${share} of past years still have ${display.temperature(threshold)}`;
  if (shift === 0) return `it is ${day}`;
  return `it is ${days(Math.abs(shift))} ${shift < 0 ? 'before' : 'after'} ${day}`;
}

/** A trigger in words that follow "opens when" or "closes when". @param stepName The name of a step by its id. */
export function triggerInWords(trigger: Trigger, display: Display, stepName: (id: string) => string): string {
  const inner = (one: Trigger) => triggerInWords(one, display, stepName);
  switch (trigger.kind) {
    case 'date':
      return `it is ${on(trigger.on, display)}`;
    case 'soil':
      return crossing(`soil temperature at ${display.soilDepth(trigger.depth)}`, trigger, display.temperature, display);
    case 'air':
      return crossing(
        { min: 'lowest', mean: 'mean', max: 'highest' }[trigger.stat].concat(' air temperature of the day'),
        trigger,
        display.temperature,
        display,
      );
    case 'degree-days':
      return `the ${trigger.of === 'soil' ? 'soil' : 'air'} has gathered ${heat(trigger, display)} since ${on(trigger.from, display)}`;
    case 'growth':
      return crossing(`growth potential of ${trigger.grass}-season grass`, trigger, percent, display);
    case 'day-length':
      return crossing('length of the day', trigger, (hours) => `${Number(hours.toFixed(1))} h`, display);
    case 'frost':
      return frost(trigger, display);
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
