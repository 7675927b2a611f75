import type { SquareMetres } from '../base/units.ts';
import type { Product } from '../model/product.ts';
import { byTestOf } from '../model/program.ts';
import { type Cap, cappedShares, legalCaps, programCaps, type Share, type Use } from './caps.ts';
import { type Done, doneOn } from './done.ts';
import type { Ground } from './ground.ts';
import { labelCaps } from './label-caps.ts';
import type { PlacedStep } from './placed.ts';
import { shareInAll } from './to-come.ts';

/** A placed step with what each of its areas gets of the dose. */
export interface DosedStep extends PlacedStep {
  readonly shares: ReadonlyMap<string, Share>;
}

/** A dose with a rate, on an area that is still to be done, on a chosen day. */
function planned(one: PlacedStep, area: string): Use | null {
  const { step, dose, choice, areas, progress } = one;
  if (!dose?.rate || !choice || !areas.includes(area) || progress.areasDone.includes(area)) return null;
  const use = { day: choice.day, season: one.season, dose, tested: byTestOf(step) !== null };
  return progress.firstPasses.has(area) ? { ...use, inAll: (held) => shareInAll(one, area, held) } : use;
}

/** The caps of an area, with what is planned and done there in all seasons of the plan, and before where a period reaches back. */
export interface AreaUse {
  readonly area: string;
  readonly caps: readonly Cap[];
  readonly planned: readonly { readonly step: PlacedStep; readonly use: Use }[];
  readonly done: readonly Use[];
  /** The same without the first passes of what is planned: both passes together are held to what the limits leave. */
  readonly doneBeside: readonly Use[];
  /** Entries of unknown amount. */
  readonly unknown: readonly Done[];
}

/** Every area's use: nothing of one area counts on another. */
export function usesOf(
  placed: readonly PlacedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): AreaUse[] {
  return [...sizes.keys()].flatMap((area) => {
    const own = ground.programOf(area);
    const steps = placed.filter(({ program }) => program === own);
    const uses = steps.flatMap((step) => {
      const use = planned(step, area);
      return use ? [{ step, use }] : [];
    });
    const entries = doneOn(area, placed, ground, sizes);
    const done = entries.flatMap(({ use }) => use ?? []);
    const begun = uses.flatMap(({ step }) => step.progress.firstPasses.get(area) ?? []);
    const doneBeside = entries.flatMap(({ entry, use }) =>
      use && !begun.some((pass) => pass.entry === entry) ? [use] : [],
    );
    const all = [...uses.map(({ use }) => use), ...done];
    const seasons = [...new Set(steps.map(({ season }) => season))];
    const caps = [
      ...seasons.flatMap((season) => [
        ...programCaps(own, ground.lawn, season),
        ...labelCaps(productsOf(all.filter((use) => use.season === season)), season),
      ]),
      ...legalCaps(
        ground.lawn,
        seasons,
        uses.map(({ use }) => use.day),
      ),
    ];
    const unknown = entries.filter(({ use }) => use === null);
    return seasons.length === 0 ? [] : [{ area, caps, planned: uses, done, doneBeside, unknown }];
  });
}

const productsOf = (uses: readonly Use[]): Product[] => [...new Set(uses.flatMap(({ dose }) => dose.product ?? []))];

/** Holds every planned use inside the caps of its area; a step of which nothing is left is dropped with the cap that held it. */
export function withinCaps(
  placed: readonly PlacedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): DosedStep[] {
  const shares = new Map<PlacedStep, Map<string, Share>>();
  for (const { area, caps, planned: uses, doneBeside } of usesOf(placed, ground, sizes)) {
    const held = cappedShares(
      uses.map(({ use }) => use),
      doneBeside,
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
      dropped: { because: 'limit', cap },
    };
  });
}
