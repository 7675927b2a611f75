import { type Day, firstOnOrAfter } from '../base/day.ts';
import type { SiteDays } from '../climate/site-days.ts';
import { triggersIn } from '../model/program.ts';
import type { Trigger } from '../model/trigger.ts';
import { resolveTrigger } from '../schedule/triggers.ts';
import { LEAST_CHANCE } from '../schedule/windows.ts';
import { type Finding, finding, stepsOf, type Tried, type TriedStep } from './finding.ts';

/** More than half of the years: there a trigger says nothing. */
const MOST = 0.5;

const EDGES = ['opens', 'best', 'closes'] as const;

type Crossing = Extract<Trigger, { kind: 'soil' | 'air' | 'growth' }>;
const isCrossing = (trigger: Trigger): trigger is Crossing =>
  trigger.kind === 'soil' || trigger.kind === 'air' || trigger.kind === 'growth';

/** A trigger that is met on the day it begins to look in most years: it says no more than that date. */
export function metOnFrom(tried: Tried): Finding[] {
  const { climate } = tried.season.ground;
  return stepsOf(tried).flatMap(({ step, index, placed, years, windows }) =>
    EDGES.flatMap((edge) => {
      const whole = placed.step.window[edge];
      if (!whole) return [];
      return triggersIn(whole).flatMap((trigger) => {
        if (!isCrossing(trigger) || !trigger.from) return [];
        const from = firstOnOrAfter(trigger.from, placed.season.start);
        const met = years.filter((trace, i) => {
          const opening = windows[i]?.opens ?? null;
          const context = { trace, site: climate, season: placed.season, opening, referenceDay: () => null };
          return resolveTrigger(trigger, context) === from;
        }).length;
        if (met <= MOST * years.length) return [];
        const args = {
          step: step.id,
          kind: trigger.kind,
          share: Math.round((100 * met) / years.length),
          at: [tried.at],
        };
        return [
          finding('trigger-on-from', args, [
            ...pathTo(step.window[edge], trigger.kind, ['steps', index, 'window', edge]),
            'from',
          ]),
        ];
      });
    }),
  );
}

/** The keys to the first trigger of a kind below an edge, as they stand in the file. */
function pathTo(
  trigger: Trigger | undefined,
  kind: string,
  path: readonly (string | number)[],
): readonly (string | number)[] {
  if (!trigger) return path;
  if (trigger.kind === kind) return [...path, kind];
  if (trigger.kind === 'any-of' || trigger.kind === 'all-of') {
    // `not-before` and `not-after` are written beside the kind and read as a list of two.
    const written = trigger.of.length === 2 && trigger.of[1]?.kind === 'date';
    for (const [i, inner] of trigger.of.entries())
      if (triggersIn(inner).some((one) => one.kind === kind))
        return pathTo(inner, kind, written ? path : [...path, trigger.kind, i]);
  }
  return path;
}

/** A step that has a window in fewer than half of the years at a place that the program claims. */
export function rarelyReached(tried: Tried): Finding[] {
  return stepsOf(tried).flatMap(({ step, index, chance, placed: { dropped } }) =>
    chance === 0 || chance >= LEAST_CHANCE || dropped
      ? []
      : [finding('step-rare', { step: step.id, share: Math.round(100 * chance), at: [tried.at] }, opening(index))],
  );
}

/** A step that never happens: a warning where that is so wherever it was tried, a note where it is so at some places. */
export function neverReached(tried: readonly Tried[]): Finding[] {
  return stepsEverywhere(tried).flatMap(({ id, index, there }) => {
    const never = there.filter(({ one: { chance, placed } }) => chance === 0 && !placed.dropped);
    if (never.length === 0) return [];
    const code = never.length === there.length ? 'step-never' : 'step-not-there';
    return [finding(code, { step: id, at: never.map(({ at }) => at) }, opening(index))];
  });
}

/** `best` outside the window more often than not: it is clipped to an edge and says nothing. */
export function bestOutside(tried: readonly Tried[]): Finding[] {
  return stepsEverywhere(tried).flatMap(({ id, index, there }) => {
    const counts = there.map(({ one, site }) => outsideOf(one, site));
    const [outside, windows] = [sum(counts.map((count) => count.outside)), sum(counts.map((count) => count.windows))];
    if (windows === 0 || outside <= MOST * windows) return [];
    const args = { step: id, share: Math.round((100 * outside) / windows), at: there.map(({ at }) => at) };
    return [finding('best-outside', args, ['steps', index, 'window', 'best'])];
  });
}

const opening = (index: number) => ['steps', index, 'window', 'opens'] as const;
const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);

/** Each step of the program with the places that want it. */
function stepsEverywhere(tried: readonly Tried[]) {
  const [first] = tried;
  return (first?.program.steps ?? []).map(({ id }, index) => ({
    id,
    index,
    there: tried.flatMap((one) => {
      const found = stepsOf(one).find((step) => step.index === index);
      return found ? [{ at: one.at, site: one.season.ground.climate, one: found }] : [];
    }),
  }));
}

/** How many windows a step has over the runs of weather, and in how many of them `best` lies outside. */
function outsideOf(
  { placed, years, windows }: TriedStep,
  site: SiteDays,
): { readonly outside: number; readonly windows: number } {
  const { best } = placed.step.window;
  // One that counts from another step's day is judged where that day is known, in the placed windows alone.
  if (!best || triggersIn(best).some((one) => one.kind === 'after' && one.step !== undefined))
    return { outside: 0, windows: 0 };
  const inYears = years.flatMap((trace, i) => {
    const window = windows[i];
    if (!window) return [];
    const context = { trace, site, season: placed.season, opening: window.opens, referenceDay: () => null };
    const day: Day | null = resolveTrigger(best, context);
    return [day !== null && (day < window.opens || day > window.closes)];
  });
  return { outside: inYears.filter((outside) => outside).length, windows: inYears.length };
}
