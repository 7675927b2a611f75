import { formatDay } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import { isPesticide, type Product } from '../model/product.ts';
import { unknownActives } from './counted.ts';
import type { Ground } from './ground.ts';
import { missingLimits } from './label-caps.ts';
import { grassOf } from './rules/turf.ts';
import { measured } from './shelf.ts';
import { type AreaUse, type DosedStep, productOf, usesOf } from './within-caps.ts';

const HAIR = 1e-9;

/** Labels with a rate above their own limit, that do not name the grass, or that leave a limit out: said, never guessed. */
export function labelProblems(placed: readonly DosedStep[], { lawn }: Ground): Problem[] {
  const silent = new Set<Product>();
  const problems = placed.flatMap(({ id, areas, dose, choice }) => {
    if (!dose?.rate || !isPesticide(dose.product) || !dose.product.label || !choice) return [];
    silent.add(dose.product);
    const { id: product, label } = dose.product;
    const most = label.perApplication;
    const rate = most && measured(dose.rate, most.by, dose.product);
    const over = most && rate != null && rate > most.value * (1 + HAIR);
    const grasses = [...new Set(areas.map((area) => grassOf(lawn, area)))];
    const unnamed = grasses.filter((grass) => label.grasses && !label.grasses.includes(grass));
    return [
      ...(over ? [problem('label-rate', { step: id, product }, null)] : []),
      ...unnamed.map((grass) =>
        problem('label-grass', { step: id, product, grass, grasses: label.grasses ?? [] }, null),
      ),
    ];
  });
  const missing = [...silent].flatMap((product) => {
    const limits = missingLimits(product);
    return limits.length > 0 ? [problem('label-limit-missing', { product: product.id, missing: limits }, null)] : [];
  });
  return [...problems, ...missing];
}

/** What limits cannot count: work of unknown amount, actives and measures that cannot be compared. */
export function uncounted(
  placed: readonly DosedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): Problem[] {
  const seen = new Map<string, Problem>();
  for (const use of usesOf(placed, ground, sizes))
    for (const one of incomparable(use)) seen.set(`${one.code} ${one.message}`, one);
  return [...seen.values(), ...unknownAmounts(placed, ground)];
}

/** Products whose label limits cannot be held against what is used. */
function incomparable({ planned, done, caps }: AreaUse): Problem[] {
  const doses = [...planned.map(({ use }) => use), ...done].map(({ dose }) => dose);
  return doses.flatMap((dose) => {
    if (!dose.rate || !isPesticide(dose.product)) return [];
    const { rate, product } = dose;
    const actives = unknownActives(dose);
    const year = caps.some(
      ({ counted }) =>
        counted.kind === 'product' && counted.product === product.id && measured(rate, counted.by, product) === null,
    );
    return [
      ...(actives.length > 0 ? [problem('active-unknown', { product: product.id, actives }, null)] : []),
      ...(year ? [problem('label-year-measure', { product: product.id }, null)] : []),
    ];
  });
}

/** Entries of a pesticide in the plan's seasons that do not say how much was used, nor could the plan say it for them. */
function unknownAmounts(placed: readonly DosedStep[], { journal, products }: Ground): Problem[] {
  return journal.flatMap((entry) => {
    const season = placed.find((one) => one.season.start <= entry.date && entry.date <= one.season.end)?.season;
    if (!season || entry.used) return [];
    const step = placed.find((one) => one.id === entry.step && one.season === season);
    const product = productOf(entry, step, products);
    const counts = step?.dose?.rate && step.dose.product === product;
    if (!product || !isPesticide(product) || counts) return [];
    return [problem('use-unknown', { product: product.id, day: formatDay(entry.date) }, null)];
  });
}
