import { byTestOf, type Program, type Step, triggersIn } from '../model/program.ts';
import type { Trigger } from '../model/trigger.ts';
import { type Finding, finding } from './finding.ts';

const EDGES = ['opens', 'best', 'closes'] as const;

/** A trigger whose figures nobody answers for: the date's limits beside a kind carry their own. */
const uncited = (trigger: Trigger): boolean =>
  triggersIn(trigger).some(({ kind, source }) => kind !== 'any-of' && kind !== 'all-of' && source === undefined);

/** A rule without a source. What is usual in the trade says `common-practice`. */
export function withoutSource({ steps }: Program): Finding[] {
  return steps.flatMap((step: Step, i) => {
    if (step.source !== undefined) return [];
    const at = ['steps', i];
    const edges = EDGES.filter((edge) => step.window[edge] && uncited(step.window[edge]));
    const rated = step.apply && step.apply.kind !== 'pesticide' && step.apply.source === undefined;
    return [
      ...edges.map((edge) => finding('no-source', { step: step.id, key: edge }, [...at, 'window', edge])),
      ...(rated ? [finding('no-source', { step: step.id, key: 'apply' }, [...at, 'apply'])] : []),
      ...(step.weather && step.weather.source === undefined
        ? [finding('no-source', { step: step.id, key: 'weather' }, [...at, 'weather'])]
        : []),
    ];
  });
}

/** Phosphorus that no soil test asked for. Many places forbid it: Maryland, New Jersey and Wisconsin among them. */
export function untestedPhosphorus({ steps }: Program): Finding[] {
  return steps.flatMap((step, i) => {
    const asked = step.apply?.kind === 'nutrient' && (step.apply.rates.P2O5 ?? 0) > 0;
    if (!asked || step.onlyIf?.soilTest?.phosphorus || byTestOf(step)) return [];
    return [finding('phosphorus-untested', { step: step.id }, ['steps', i, 'apply', 'nutrient', 'P2O5'])];
  });
}
