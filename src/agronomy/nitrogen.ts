import { factorOf } from '../base/units.ts';
import type { Program, Step } from '../model/program.ts';
import { type Finding, finding, nitrogenAsked } from './finding.ts';
import { widest } from './nitrogen-ranges.ts';

/** 1 lb/1000 ft² [kg/m²]. */
const POUND = factorOf('lb') / (1000 * factorOf('sqft'));
const HAIR = 1e-9;
const pounds = (kgPerM2: number): string => `${Number((kgPerM2 / POUND).toFixed(2))} lb/1000 sqft`;

/**
 * At most 1.0 lb N/1000 ft² at once. Source: Purdue University, fertilizer recommendations for turf; UC IPM, healthy lawns;
 * University of Illinois (1995). Florida allows 2.0 of mostly controlled-release nitrogen (UF/IFAS EP353).
 */
const MOST_AT_ONCE = { quick: 1, slow: 2, slowShare: 0.65 } as const;

/** More nitrogen at once than the program's own limit, or than publications give. */
export function tooMuchAtOnce({ steps, nitrogen }: Program): Finding[] {
  return steps.flatMap((step, i) => {
    const asked = nitrogenAsked(step);
    const slow = step.apply?.kind === 'nutrient' && (step.apply.prefer?.slowShare ?? 0) >= MOST_AT_ONCE.slowShare;
    const own = nitrogen?.single?.total;
    const most = (slow ? MOST_AT_ONCE.slow : MOST_AT_ONCE.quick) * POUND;
    const limit = Math.min(own ?? most, most);
    if (asked <= limit + HAIR) return [];
    const by = own !== undefined && own <= most ? 'the program' : 'Purdue, UC IPM and Illinois';
    const args = { step: step.id, asked: pounds(asked), limit: pounds(limit), by };
    return [finding('nitrogen-at-once', args, ['steps', i, 'apply', 'nutrient', 'N'])];
  });
}

/** Whether a step is for every lawn. */
const always = ({ onlyIf }: Step): boolean => onlyIf === undefined;

/** More nitrogen in a year than anybody prints for the grass, or than the program's own range; less than anybody prints. */
export function yearlyNitrogen({ steps, nitrogen, grass }: Program): Finding[] {
  const sum = (of: readonly Step[]) => of.reduce((total, step) => total + nitrogenAsked(step), 0);
  const [least, most] = [sum(steps.filter(always)), sum(steps)];
  const path = nitrogen?.yearly ? ['nitrogen', 'yearly'] : ['steps'];
  return grass.flatMap((one) => {
    const range = widest(one);
    const own = nitrogen?.yearly?.to;
    const limit = Math.min(own ?? Number.POSITIVE_INFINITY, range.most.to * POUND);
    const by = own !== undefined && own <= range.most.to * POUND ? 'the program' : range.most.source;
    if (least > limit + HAIR)
      return [finding('nitrogen-a-year', { grass: one, planned: pounds(least), limit: pounds(limit), by }, path)];
    if (most > 0 && most < range.least.from * POUND - HAIR) {
      const args = {
        grass: one,
        planned: pounds(most),
        least: pounds(range.least.from * POUND),
        by: range.least.source,
      };
      return [finding('nitrogen-little', args, path)];
    }
    return [];
  });
}

/** Feeds of a pound are not given more often than monthly. Source: Purdue University, fertilizer recommendations for turf. */
const MONTH = 28;

/** Feeds closer together than the program's spacing, or than a month, where one waits for the other. */
export function closeFeeds({ steps, nitrogen }: Program): Finding[] {
  return steps.flatMap((step, i) => {
    const { opens } = step.window;
    if (nitrogenAsked(step) === 0 || opens.kind !== 'after' || opens.wait === undefined) return [];
    const before = steps.find(({ id }) => id === opens.step);
    if (!before || nitrogenAsked(before) === 0) return [];
    const whole = nitrogenAsked(before) >= POUND - HAIR;
    const least = Math.max(nitrogen?.spacing ?? 0, whole ? MONTH : 0);
    if (opens.wait >= least) return [];
    const args = { step: step.id, after: before.id, wait: opens.wait, least };
    return [finding('nitrogen-close', args, ['steps', i, 'window', 'opens', 'after', 'wait'])];
  });
}
