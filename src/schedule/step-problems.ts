import type { Dose } from '../amounts/product.ts';
import { type Display, significant } from '../base/display.ts';
import { type Problem, problem } from '../base/problem.ts';
import { isPesticide, type Product } from '../model/product.ts';
import type { Step } from '../model/program.ts';
import { activeOn } from './counted.ts';
import { forbiddenInWords } from './in-words/rules.ts';
import type { PlacedStep } from './placed.ts';
import { LEAST_CHANCE } from './windows.ts';

/** Why a step's amount is left open. */
function missingProblem({ id, apply }: Step, dose: Extract<Dose, { rate: null }>): Problem {
  const need =
    apply?.kind === 'nutrient'
      ? Object.keys(apply.rates).join(', ')
      : apply?.kind === 'pesticide'
        ? apply.pesticide
        : (dose.product?.id ?? (apply && 'product' in apply ? apply.product : ''));
  switch (dose.missing) {
    case 'label':
      return problem('no-label', { step: id, need }, null);
    case 'product':
      return problem('no-product', { step: id, need }, null);
    case 'bag-rate':
      return problem('no-bag-rate', { step: id, product: need }, null);
    case 'density':
      return problem('no-density', { step: id, product: dose.product?.id ?? need }, null);
  }
}

/** Above this share of the published rate a label entry is likely mistyped. Common practice: labels differ, but not by half. */
const FAR_ABOVE = 1.5;

/** Actives of which a label entry brings far more than the published rate that the program compares. */
function farAbove({ id, apply }: Step, { product, rate }: Extract<Dose, { product: Product }>, display: Display) {
  if (apply?.kind !== 'pesticide' || !rate) return [];
  return Object.entries(apply.actives ?? {}).flatMap(([active, { compare }]) => {
    const brought = compare === undefined ? null : activeOn(product, rate, active);
    if (compare === undefined || brought === null || brought <= FAR_ABOVE * compare) return [];
    const args = { product: product.id, active, times: significant(brought / compare, 2) };
    return [
      problem(
        'active-far-above',
        { step: id, ...args, rate: display.activeRate(brought), compare: display.activeRate(compare) },
        null,
      ),
    ];
  });
}

/** What a step lacks: a product, a label, a working day. */
export function stepProblems(placed: readonly PlacedStep[], display: Display): Problem[] {
  return placed.flatMap(({ id, step, season, dose, choice, status, chance, blocked, pinned }) => {
    const problems: Problem[] = [];
    if (status === 'done' || status === 'skipped' || status === 'dropped' || status === 'missed') return problems;
    if (dose?.rate === null) problems.push(missingProblem({ ...step, id }, dose));
    if (dose?.product && step.apply && 'rate' in step.apply && isPesticide(dose.product)) {
      problems.push(problem('pesticide-rate', { step: id, product: dose.product.id }, null));
    }
    if (dose?.rate && isPesticide(dose.product)) problems.push(...farAbove({ ...step, id }, dose, display));
    if (pinned && blocked.length > 0) {
      const reasons = blocked.map((rule) => forbiddenInWords(rule, display));
      problems.push(problem('pinned-against', { step: id, reasons }, null));
    }
    if (!choice && chance >= LEAST_CHANCE) {
      const reasons = blocked.map((rule) => forbiddenInWords(rule, display));
      problems.push(problem('no-working-day', { step: id, season: season.year, reasons }, null));
    }
    return problems;
  });
}
