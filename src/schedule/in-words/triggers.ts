import { civil, type MonthDay } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import type { Crossing } from '../../model/crossing.ts';
import type { HeatRule } from '../../model/heat.ts';
import type { Trigger } from '../../model/trigger.ts';
import { wordsOf } from '../../words/words.ts';

/** A month-day as the reader writes it. */
const on = ({ month, day }: MonthDay, display: Display): string =>
  display.shortDay(civil(2027, month, Math.min(day, month === 2 ? 28 : 31)));

function crossing(what: string, rule: Crossing, print: (threshold: number) => string, display: Display): string {
  const { crosses } = wordsOf(display.language).trigger;
  return crosses(what, rule.direction, print(rule.threshold), rule.holds, rule.from ? on(rule.from, display) : null);
}

const heat = ({ reaches, base, method }: HeatRule, display: Display): string =>
  wordsOf(display.language).trigger.heat(display.heat(reaches), display.temperature(base), method);

/** A share, to whole percent; every language writes it alike. */
export const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** A trigger in words that follow "opens when" or "closes when". @param stepName The name of a step by its id. */
export function triggerInWords(trigger: Trigger, display: Display, stepName: (id: string) => string): string {
  const words = wordsOf(display.language).trigger;
  const inner = (one: Trigger) => triggerInWords(one, display, stepName);
  const parts = (of: readonly Trigger[], ofDate: (day: string) => string) =>
    of.map((one) => (one.kind === 'date' ? ofDate(on(one.on, display)) : inner(one)));
  switch (trigger.kind) {
    case 'date':
      return words.on(on(trigger.on, display));
    case 'soil':
      return crossing(
        words.soil(display.soilDepth(trigger.depth), trigger.mean),
        trigger,
        display.temperature,
        display,
      );
    case 'air':
      return crossing(words.air(trigger.stat, trigger.mean), trigger, display.temperature, display);
    case 'degree-days':
      return words.gathered(trigger.of === 'soil' ? 'soil' : 'air', heat(trigger, display), on(trigger.from, display));
    case 'growth':
      return crossing(words.growth(trigger.grass, trigger.mean), trigger, percent, display);
    case 'day-length': {
      const print = (hours: number) => `${display.number(Number(hours.toFixed(1)))} h`;
      return crossing(words.dayLength(trigger.mean), trigger, print, display);
    }
    case 'frost': {
      const { which, chance, threshold, shift } = trigger;
      return words.frost(which, percent(chance), display.temperature(threshold), shift);
    }
    case 'after': {
      const wait = trigger.heat ? heat(trigger.heat, display) : (trigger.wait ?? 0) || null;
      const step = trigger.step === undefined ? null : stepName(trigger.step);
      return words.after(step, wait, trigger.otherwise ? inner(trigger.otherwise) : null);
    }
    case 'any-of':
      return words.any(parts(trigger.of, words.notAfter));
    case 'all-of':
      return words.all(parts(trigger.of, words.notBefore));
  }
}
