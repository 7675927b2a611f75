import type { Dose } from '../amounts/product.ts';
import type { Display } from '../base/display.ts';
import { type Problem, problem } from '../base/problem.ts';
import { isPesticide } from '../model/product.ts';
import type { Step } from '../model/program.ts';
import type { PlacedStep } from './placed.ts';
import { LEAST_CHANCE } from './windows.ts';
import { forbiddenInWords } from './words/rules-en.ts';

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

/** What a step lacks: a product, a label, a working day. */
export function stepProblems(placed: readonly PlacedStep[], display: Display): Problem[] {
  return placed.flatMap(({ id, step, season, dose, choice, status, chance, blocked, pinned }) => {
    const problems: Problem[] = [];
    if (status === 'done' || status === 'skipped' || status === 'dropped' || status === 'missed') return problems;
    if (dose?.rate === null) problems.push(missingProblem({ ...step, id }, dose));
    if (dose?.product && step.apply && 'rate' in step.apply && isPesticide(dose.product)) {
      problems.push(problem('pesticide-rate', { step: id, product: dose.product.id }, null));
    }
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
