import type { KilogramsPerSquareMetre } from '../../base/units.ts';
import type { SoilTest } from '../../model/soil-test.ts';
import { limeByAcidity } from './lime-table.ts';

/** What a soil test tells an amount of. Lime counts in calcium carbonate. */
export type Testable = 'lime' | 'P2O5' | 'K2O';

/**
 * How a soil test comes to its amount: the laboratory's own figure, the table of acidity, a soil that wants none, or no
 * amount at all, in which case `rate` is null.
 */
export type AskedBy = 'laboratory' | 'table' | 'enough' | 'no-amount';

export interface AskedByTest {
  readonly by: AskedBy;
  readonly rate: KilogramsPerSquareMetre | null;
}

const LEVEL_OF = { P2O5: 'phosphorus', K2O: 'potassium' } as const;

/**
 * What a soil test asks for. The laboratory's own figure goes before everything that could be worked out in its place; its
 * words go before any table of levels, on which laboratories differ.
 *
 * @param goal The pH that lime is to bring, where the report names none.
 * @returns Lime in all, or phosphate or potash for a year [kg/m²].
 * @example askedBy({ date, lime: 0.2 }, 'lime', undefined) //=> { by: 'laboratory', rate: 0.2 }
 */
export function askedBy(test: SoilTest, what: Testable, goal: number | undefined): AskedByTest {
  const own = test[what];
  if (own !== undefined) return { by: own > 0 ? 'laboratory' : 'enough', rate: own };
  if (what === 'lime') return limeAsked(test, test.goal ?? goal);
  return test[LEVEL_OF[what]] === 'high' ? { by: 'enough', rate: 0 } : { by: 'no-amount', rate: null };
}

/** Lime by acidity; none where the soil is at the goal already, as the table's own rule says. */
function limeAsked({ pH, acidity }: SoilTest, goal: number | undefined): AskedByTest {
  if (goal !== undefined && pH !== undefined && pH >= goal) return { by: 'enough', rate: 0 };
  const rate = goal === undefined || acidity === undefined ? null : limeByAcidity(acidity, goal);
  return rate === null ? { by: 'no-amount', rate } : { by: 'table', rate };
}
