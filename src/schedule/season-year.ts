import { addMonths, type Day, firstOnOrAfter, latestOnOrBefore, type MonthDay, yearOf } from '../base/day.ts';
import type { Program, Step } from '../model/program.ts';
import type { Trigger } from '../model/trigger.ts';

/** A season: its first and last day, named by the year it begins in. */
export interface SeasonYear {
  readonly year: number;
  readonly start: Day;
  readonly end: Day;
}

/** Before the end of a season, the next one is planned as well from this many days on. */
const NEXT_FROM = 60;

const beginning = (program: Program, southern: boolean): MonthDay => {
  if (!program.season) return southern ? { month: 7, day: 1 } : { month: 1, day: 1 };
  return southern ? addMonths(program.season.from, 6) : program.season.from;
};

function seasonAt(start: Day, from: MonthDay): SeasonYear {
  return { year: yearOf(start), start, end: firstOnOrAfter(from, start + 1) - 1 };
}

/** The season of the as-of day and, from 60 days before its end, the next as well. */
export function seasonsOf(program: Program, southern: boolean, asOf: Day): readonly [SeasonYear, ...SeasonYear[]] {
  const from = beginning(program, southern);
  const season = seasonAt(latestOnOrBefore(from, asOf), from);
  return asOf > season.end - NEXT_FROM ? [season, seasonAt(season.end + 1, from)] : [season];
}

/** A northern program's steps on a southern lawn: every month-day moves six calendar months, clipped to the month's end. */
export function southernSteps(steps: readonly Step[]): readonly Step[] {
  return steps.map((step) => {
    const { opens, best, closes } = step.window;
    const window = {
      opens: movedTrigger(opens),
      ...(best && { best: movedTrigger(best) }),
      ...(closes && { closes: movedTrigger(closes) }),
    };
    return { ...step, window };
  });
}

function movedTrigger(trigger: Trigger): Trigger {
  const moved = (monthDay: MonthDay) => addMonths(monthDay, 6);
  switch (trigger.kind) {
    case 'date':
      return { ...trigger, on: moved(trigger.on) };
    case 'soil':
    case 'air':
    case 'growth':
    case 'day-length':
      return trigger.from ? { ...trigger, from: moved(trigger.from) } : trigger;
    case 'degree-days':
      return { ...trigger, from: moved(trigger.from) };
    case 'frost':
      return trigger;
    case 'after':
      return trigger.otherwise ? { ...trigger, otherwise: movedTrigger(trigger.otherwise) } : trigger;
    case 'any-of':
    case 'all-of':
      return { ...trigger, of: trigger.of.map(movedTrigger) };
  }
}
