import type { Dose } from '../../amounts/product.ts';
import type { Testable } from '../../amounts/soil-test/asked.ts';
import type { Day } from '../../base/day.ts';
import type { SquareMetres } from '../../base/units.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { WHOLE } from '../caps.ts';
import { doneOn } from '../done.ts';
import type { Ground } from '../ground.ts';
import type { PlacedStep } from '../placed.ts';
import { shareToCome } from '../to-come.ts';
import type { DosedStep } from '../within-caps.ts';
import { bringsOf, isLime } from './tested.ts';

/** What counts on an area: a nutrient, from the test or the season's start to the season's end. */
export interface Counted {
  readonly area: string;
  readonly what: Testable;
  readonly from: Day;
  readonly to: Day;
}

/** Whether a dose is of what is counted. For lime that is lime alone, be its neutralising value written or not. */
const counts = (dose: Dose, what: Testable, own: string | undefined): boolean =>
  dose.product !== null && (what !== 'lime' || isLime(dose.product) || dose.product.id === own);

/** What the journal has put on an area [g/m²], by what was used, or as planned where an entry does not say. */
export function broughtBefore(
  { area, what, from, to }: Counted,
  one: PlacedStep,
  placed: readonly PlacedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): number {
  // What was done of the step itself belongs to it, where its area is done or half done.
  const { areasDone, firstPasses, entries } = one.progress;
  const own: readonly JournalEntry[] = areasDone.includes(area) || firstPasses.has(area) ? entries : [];
  return doneOn(area, placed, ground, sizes).reduce((sum, { entry, use }) => {
    if (!use || entry.date < from || entry.date > to || own.includes(entry)) return sum;
    return counts(use.dose, what, one.dose?.product?.id) ? sum + bringsOf(use.dose, what) : sum;
  }, 0);
}

/** What other steps are planned to put on an area [g/m²]. @param before Whether a step counts beside this one. */
export function broughtBeside(
  { area, what, from, to }: Counted,
  one: PlacedStep,
  others: readonly DosedStep[],
  ground: Ground,
): number {
  return others.reduce((sum, other) => {
    const { dose, choice, areas, progress, program, shares } = other;
    const planned = choice && areas.includes(area) && !progress.areasDone.includes(area);
    if (!planned || !dose?.rate || program !== ground.programOf(area)) return sum;
    if (choice.day < from || choice.day > to || !counts(dose, what, one.dose?.product?.id)) return sum;
    return sum + shareToCome(other, area, shares.get(area) ?? WHOLE) * bringsOf(dose, what);
  }, 0);
}
