import type { SquareMetres } from '../base/units.ts';
import type { JournalEntry } from '../model/journal.ts';
import { isPesticide, type Product } from '../model/product.ts';
import { byTestOf } from '../model/program.ts';
import { type Cap, cappedShares, capsOf, type Share, type Use } from './caps.ts';
import type { Ground } from './ground.ts';
import { labelCaps } from './label-caps.ts';
import type { PlacedStep } from './placed.ts';
import type { SeasonYear } from './season-year.ts';

/** A placed step with what each of its areas gets of the dose. */
export interface DosedStep extends PlacedStep {
  readonly shares: ReadonlyMap<string, Share>;
}

/** A dose with a rate, on an area that is still to be done, on a chosen day. */
function planned(one: PlacedStep, area: string): Use | null {
  const { step, dose, choice, areas, progress } = one;
  if (!dose?.rate || !choice || !areas.includes(area) || progress.areasDone.includes(area)) return null;
  return { day: choice.day, dose, tested: byTestOf(step) !== null };
}

/**
 * What the journal has put on an area in a season, work outside the program too: by what was used, or as planned where an
 * entry does not say.
 */
function doneOn(
  area: string,
  season: SeasonYear,
  placed: readonly PlacedStep[],
  { journal, products }: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): Use[] {
  return journal.flatMap((entry): Use[] => {
    const step = placed.find(({ id, season: own }) => id === entry.step && own === season);
    const covered = entry.areas ?? step?.areas ?? [...sizes.keys()];
    if (entry.date < season.start || entry.date > season.end || !covered.includes(area)) return [];
    const product = productOf(entry, step, products);
    const square = covered.reduce((sum, id) => sum + (sizes.get(id) ?? 0), 0);
    const rate = entry.used && { by: entry.used.by, value: entry.used.value / square };
    if (rate && product) return [{ day: entry.date, dose: { product, rate } }];
    // A pesticide other than the planned one, of unknown amount, cannot be counted: `uncounted` tells of it.
    const asPlanned = !product || !isPesticide(product) || step?.dose?.product === product;
    return step?.dose?.rate && asPlanned ? [{ day: entry.date, dose: step.dose }] : [];
  });
}

/** The product of an entry: its own, else its step's. */
export const productOf = (
  { product }: JournalEntry,
  step: PlacedStep | undefined,
  products: Ground['products'],
): Product | null => (product === undefined ? step?.dose?.product : products.get(product)) ?? null;

/** The caps of an area in a season, with what is planned and done there. */
export interface AreaUse {
  readonly area: string;
  readonly season: SeasonYear;
  readonly caps: readonly Cap[];
  readonly planned: readonly { readonly step: PlacedStep; readonly use: Use }[];
  readonly done: readonly Use[];
}

/** Every area's use in every season: nothing of one area counts on another. */
export function usesOf(
  placed: readonly PlacedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): AreaUse[] {
  const seasons = new Set(placed.map(({ season }) => season));
  return [...seasons].flatMap((season) =>
    [...sizes.keys()].flatMap((area) => {
      const steps = placed.filter((one) => one.season === season);
      const own = ground.programOf(area);
      if (!steps.some(({ program }) => program === own)) return [];
      const uses = steps.flatMap((step) => {
        const use = step.program === own ? planned(step, area) : null;
        return use ? [{ step, use }] : [];
      });
      const done = doneOn(area, season, steps, ground, sizes);
      const products = new Set([...uses.map(({ use }) => use), ...done].flatMap(({ dose }) => dose.product ?? []));
      const caps = [...capsOf(own, ground.lawn), ...labelCaps([...products])];
      return [{ area, season, caps, planned: uses, done }];
    }),
  );
}

/** Holds every planned use inside the caps of its area; a step of which nothing is left is dropped with the cap that held it. */
export function withinCaps(
  placed: readonly PlacedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): DosedStep[] {
  const shares = new Map<PlacedStep, Map<string, Share>>();
  for (const { area, caps, planned: uses, done } of usesOf(placed, ground, sizes)) {
    const held = cappedShares(
      uses.map(({ use }) => use),
      done,
      caps,
    );
    for (const [i, { step }] of uses.entries()) {
      const ofStep = shares.get(step) ?? new Map<string, Share>();
      shares.set(step, ofStep.set(area, held[i] as Share));
    }
  }
  return placed.map((one): DosedStep => {
    const own = shares.get(one) ?? new Map<string, Share>();
    const left = [...own.values()].some(({ share }) => share > 0);
    const cap = [...own.values()].find((held) => held.cap)?.cap;
    if (left || !cap) return { ...one, shares: own };
    return {
      ...one,
      shares: own,
      status: 'dropped',
      choice: null,
      dropped: { because: 'limit', cap: cap.name, whole: cap.whole },
    };
  });
}
