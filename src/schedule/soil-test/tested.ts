import { inMeasure } from '../../amounts/in-measure.ts';
import type { Dose } from '../../amounts/product.ts';
import { nutrientsOf } from '../../amounts/product.ts';
import type { AskedBy, Testable } from '../../amounts/soil-test/asked.ts';
import type { Day } from '../../base/day.ts';
import type { Product } from '../../model/product.ts';
import type { ByTest } from '../../model/program.ts';
import type { DosedStep } from '../within-caps.ts';

/** What a soil test asks for on an area, and what a step puts down of it. Grams on each square metre; lime as calcium carbonate. */
export interface TestedArea {
  readonly area: string;
  readonly what: Testable;
  /** The day of the test; null where there is none. */
  readonly test: Day | null;
  readonly by: AskedBy | 'no-test';
  /** In all; null where the test names no amount. */
  readonly asked: number | null;
  /** Put down since by the journal. */
  readonly done: number;
  /** Planned by other steps. */
  readonly others: number;
  /** Of this step. */
  readonly now: number;
  /** What then is still to come. */
  readonly left: number;
  /** Acidity that the test names, of which the table gave no amount. */
  readonly acidity: number | null;
}

/** A dosed step, with what soil tests ask of it; nothing where it does not go by them. */
export interface TestedStep extends DosedStep {
  readonly tested: readonly TestedArea[];
}

/** Whether a product is lime. */
export const isLime = (product: Product): boolean => product.neutralising !== undefined;

/** What the soil test is asked for. */
export function testable(apply: ByTest, product: Product | null): Testable {
  if (apply.kind === 'amendment' || (product && isLime(product))) return 'lime';
  if (apply.kind === 'nutrient') return apply.rates.K2O === undefined ? 'P2O5' : 'K2O';
  const { P2O5 = 0, K2O = 0 } = product?.analysis ?? {};
  return P2O5 > K2O ? 'P2O5' : 'K2O';
}

/** What a dose brings of it [g/m²]; nothing where it cannot be known, as the plan's problems tell. Lime without a neutralising value counts as pure. */
export function bringsOf(dose: Dose, what: Testable): number {
  if (!dose.rate) return 0;
  if (what !== 'lime') return nutrientsOf(dose)?.[what] ?? 0;
  const { rate, product } = dose;
  return 1000 * (inMeasure(rate, 'mass', product) ?? 0) * (product.neutralising ?? 1);
}
