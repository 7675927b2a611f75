import { inMeasure } from '../amounts/in-measure.ts';
import type { Dose } from '../amounts/product.ts';
import { formatDay } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import { isPesticide, type Product } from '../model/product.ts';
import { broughtBy, type Counted, isUnknown, unknownActives } from './counted.ts';
import type { Ground } from './ground.ts';
import { missingLimits } from './label-caps.ts';
import { grassOf } from './rules/turf.ts';
import { isWithin } from './spans.ts';
import { type AreaUse, type DosedStep, usesOf } from './within-caps.ts';

/** Labels that do not name the grass, or that leave a limit out: said, never guessed. */
export function labelProblems(placed: readonly DosedStep[], { lawn }: Ground): Problem[] {
  const silent = new Set<Product>();
  const problems = placed.flatMap(({ id, areas, dose, choice }) => {
    if (!dose?.rate || !isPesticide(dose.product) || !dose.product.label || !choice) return [];
    silent.add(dose.product);
    const { id: product, label } = dose.product;
    const most = label.perApplication;
    const incomparable = most && inMeasure(dose.rate, most.by, dose.product) === null;
    const grasses = [...new Set(areas.map((area) => grassOf(lawn, area)))];
    const unnamed = grasses.filter((grass) => label.grasses && !label.grasses.includes(grass));
    return [
      ...(incomparable ? [problem('label-measure', { product, limit: 'per-application' }, null)] : []),
      ...unnamed.map((grass) =>
        problem('label-grass', { step: id, product, grass, grasses: label.grasses ?? [] }, null),
      ),
    ];
  });
  const missing = [...silent].flatMap((product) => {
    const limits = missingLimits(product).map(({ key, active }) => (active === null ? key : `${key} of ${active}`));
    return limits.length > 0 ? [problem('label-limit-missing', { product: product.id, missing: limits }, null)] : [];
  });
  return [...problems, ...missing];
}

/** What limits cannot count: work of unknown amount, nutrients, actives and measures that cannot be compared. */
export function uncounted(
  placed: readonly DosedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): Problem[] {
  const seen = new Map<string, Problem>();
  for (const use of usesOf(placed, ground, sizes))
    for (const one of [...incomparable(use), ...unknownAmounts(use)]) seen.set(`${one.code} ${one.message}`, one);
  return [...seen.values()];
}

/** Doses of which a limit cannot know what they bring. */
function incomparable({ planned, done, caps }: AreaUse): Problem[] {
  const uses = [...planned.map(({ use }) => use), ...done];
  return uses.flatMap((use) => {
    const { dose } = use;
    if (!dose.rate) return [];
    const product = dose.product.id;
    const actives = unknownActives(dose);
    const kinds = new Set(
      caps
        .filter(({ counted, span }) => isWithin(use, span) && isUnknown(dose, counted))
        .map(({ counted: { kind } }) => kind),
    );
    return [
      ...(actives.length > 0 ? [problem('active-unknown', { product, actives }, null)] : []),
      ...(kinds.has('product') ? [problem('label-measure', { product, limit: 'per-year' }, null)] : []),
      ...(kinds.has('nutrient') ? [problem('nutrients-unknown', { product }, null)] : []),
    ];
  });
}

/** Entries that do not say how much was used, nor could the plan say it for them, of something that is limited. */
function unknownAmounts({ unknown, caps }: AreaUse): Problem[] {
  return unknown.flatMap(({ entry, season, product }) => {
    // Any amount would do: the question is whether a limit counts the product.
    const dose = { product, rate: { by: 'mass', value: 1 } } as const;
    const limited = caps.some(
      ({ counted, span }) => isWithin({ day: entry.date, season }, span) && mayBring(dose, counted),
    );
    const counts = limited || (season !== null && isPesticide(product));
    return counts ? [problem('use-unknown', { product: product.id, day: formatDay(entry.date) }, null)] : [];
  });
}

const mayBring = (dose: Dose, counted: Counted): boolean => isUnknown(dose, counted) || broughtBy(dose, counted) > 0;
