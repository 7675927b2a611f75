import { type Day, formatDay } from '../base/day.ts';
import { quantile } from '../base/quantile.ts';
import type { Step } from '../model/program.ts';
import type { Spread } from '../model/season.ts';
import { resolveTrigger, type TriggerContext } from './triggers.ts';

/** The days in which a step is right, in one trace. */
export interface Window {
  readonly opens: Day;
  readonly best: Day;
  /** The last good day. */
  readonly closes: Day;
  /** The last day on which missed work may still be made good; null where the step says none. */
  readonly late: Day | null;
}

/** A step's windows over all traces; null in a trace without one. */
export interface Windows {
  readonly ofTraces: readonly (Window | null)[];
  readonly ofPastYears: readonly (Window | null)[];
}

/**
 * The window of a step in one trace.
 *
 * No opening in the season, or a close before it: no window. No close: the season's end. `best` is clipped to the
 * window and is the opening where the step names none.
 */
export function windowIn(step: Step, context: Omit<TriggerContext, 'opening'>): Window | null {
  const { season } = context;
  const opens = resolveTrigger(step.window.opens, { ...context, opening: null });
  if (opens === null || opens < season.start || opens > season.end) return null;
  const later = { ...context, opening: opens };
  const closes = (step.window.closes && resolveTrigger(step.window.closes, later)) ?? season.end;
  if (closes < opens) return null;
  const best = (step.window.best && resolveTrigger(step.window.best, later)) ?? opens;
  const until = step.ifMissed && step.ifMissed !== 'skip' ? step.ifMissed.until : undefined;
  const late = until ? resolveTrigger(until, later) : null;
  return { opens, best: Math.min(Math.max(best, opens), closes), closes, late };
}

/** A day of a window that every window has. */
export type Edge = 'opens' | 'best' | 'closes';

const present = (windows: readonly (Window | null)[]): Window[] => windows.filter((window) => window !== null);

/** Share of all traces that have a window. */
export const chanceOf = ({ ofTraces }: Windows): number => present(ofTraces).length / Math.max(ofTraces.length, 1);

/** Share of all traces whose window holds a day. */
export const shareHolding = ({ ofTraces }: Windows, day: Day): number =>
  present(ofTraces).filter(({ opens, closes }) => opens <= day && day <= closes).length / Math.max(ofTraces.length, 1);

/** Share of all traces in which something has come by a day. */
export const shareBy = ({ ofTraces }: Windows, edge: Edge, day: Day): number =>
  present(ofTraces).filter((window) => window[edge] <= day).length / Math.max(ofTraces.length, 1);

/** A quantile of an edge over all traces as a whole day; null where it falls on a trace without a window. */
export function edgeDay(windows: readonly (Window | null)[], edge: Edge, share: number): Day | null {
  const days = present(windows).map((window) => window[edge]);
  const day = quantile(days, windows.length, share);
  return day === null ? null : Math.round(day);
}

/** Below this chance there is no median day and nothing is chosen. */
export const LEAST_CHANCE = 0.5;

/** The spread of an edge over the traces, and its usual day over the past years. */
export function spreadOf(windows: Windows, edge: Edge): Spread {
  const day = (of: readonly (Window | null)[], share: number) => {
    const found = edgeDay(of, edge, share);
    return found === null ? null : formatDay(found);
  };
  const likely = chanceOf(windows) >= LEAST_CHANCE;
  return {
    p10: day(windows.ofTraces, 0.1),
    p50: likely ? day(windows.ofTraces, 0.5) : null,
    p90: day(windows.ofTraces, 0.9),
    usual: day(windows.ofPastYears, 0.5),
  };
}
