import { type Problem, problem } from '../../base/problem.ts';
import type { JournalEntry } from '../../model/journal.ts';
import type { Linked } from '../../read/link.ts';
import { displayFor } from './input.ts';
import { stepsByIdOf } from './step-of.ts';

/** A temperature or a speed that is turned into other units and back. */
const HAIR = 1e-6;

/** Wind and air at the start beyond what the step is for. */
export function weatherProblems(linked: Linked, { step, wind, air }: JournalEntry): Problem[] {
  const limits = stepsByIdOf(linked).get(step ?? '')?.step.weather;
  const display = displayFor(linked);
  const { from, to } = limits?.air ?? {};
  const told = (what: 'wind' | 'cold' | 'warm', found: string, limit: string) =>
    problem('did-weather', { what, found, limit }, null);
  const degrees = (limit: number) => [display.temperature(air as number), display.temperature(limit)] as const;
  return [
    ...(wind !== undefined && limits?.windBelow !== undefined && wind > limits.windBelow + HAIR
      ? [told('wind', display.speed(wind), display.speed(limits.windBelow))]
      : []),
    ...(air !== undefined && from !== undefined && air < from - HAIR ? [told('cold', ...degrees(from))] : []),
    ...(air !== undefined && to !== undefined && air > to + HAIR ? [told('warm', ...degrees(to))] : []),
  ];
}
