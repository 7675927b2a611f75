import { formatDay, inYear, weekday, yearOf } from '../base/day.ts';
import { isPesticide } from '../model/product.ts';
import { soilTestOf } from '../schedule/condition.ts';
import { LEAST_CHANCE, type Window } from '../schedule/windows.ts';
import { type Finding, finding, stepsOf, type Tried } from './finding.ts';

/** A fault in this share of the past years is worth telling. */
const TOO_OFTEN = 0.1;

/** Windows that are empty, or hold no working day, in more than a tenth of the past years. */
export function shortWindows(tried: Tried): Finding[] {
  const working = tried.season.ground.lawn.working?.days;
  /** By the weekdays of the year itself: a past window stands moved to this season's days. */
  const noWorkingDay = ({ opens, closes }: Window, year: number): boolean => {
    if (!working) return false;
    const back = opens - inYear(opens, year);
    for (let day = opens; day <= closes; day++) if (working.includes(weekday(day - back))) return false;
    return true;
  };
  return stepsOf(tried).flatMap(({ step, index, chance, years, windows: past }) => {
    if (chance < LEAST_CHANCE) return [];
    const share = (test: (window: Window | null, i: number) => boolean) => past.filter(test).length / past.length;
    const empty = share((window) => window === null);
    const idle = share((window, i) => window !== null && noWorkingDay(window, Number(years[i]?.label)));
    const path = ['steps', index, 'window', step.window.closes ? 'closes' : 'opens'];
    const told = (code: 'window-empty' | 'window-idle', of: number) =>
      of > TOO_OFTEN ? [finding(code, { step: step.id, share: Math.round(100 * of) }, path)] : [];
    return [...told('window-empty', empty), ...told('window-idle', idle)];
  });
}

/** Pesticides whose label entry was not compared this year. In the products' own file. */
export function labels({ season }: Tried): { readonly product: string; readonly finding: Finding }[] {
  const { products, asOf } = season.ground;
  const year = yearOf(asOf);
  return [...products.values()].filter(isPesticide).flatMap((product) => {
    const { id, label } = product;
    if (!label || (label.checked !== undefined && yearOf(label.checked) >= year)) return [];
    const checked = label.checked === undefined ? null : formatDay(label.checked);
    return [{ product: id, finding: finding('label-old', { product: id, checked, year }, []) }];
  });
}

/** Steps for which the lawn has no product with a label: the plan will say "from your label". */
export const unlabelled = (tried: Tried): Finding[] =>
  stepsOf(tried).flatMap(({ step, index, placed }) =>
    placed.dose?.rate === null && placed.dose.missing === 'label' && step.apply?.kind === 'pesticide'
      ? [finding('label-none', { product: step.apply.pesticide }, ['steps', index, 'apply'])]
      : [],
  );

/** A rule of the place that only a low soil test lifts, and no test of phosphorus in the file. */
export function missingTest({ season }: Tried): Finding[] {
  const { lawn } = season.ground;
  return (lawn.localRules ?? []).flatMap((rule, i) => {
    if (!('forbid' in rule) || rule.unless === undefined || !rule.forbid.includes('phosphorus')) return [];
    const tested = Object.keys(lawn.areas).some(
      (area) => soilTestOf(lawn, area, 'phosphorus')?.phosphorus !== undefined,
    );
    return tested ? [] : [finding('phosphorus-no-test', { found: 'none' }, ['local-rules', i])];
  });
}
