import type { Display } from '../base/display.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Limit } from '../model/season.ts';
import { broughtBy } from './caps.ts';
import type { Ground } from './ground.ts';
import { grassOf } from './rules/turf.ts';
import { type DosedStep, usesOf } from './within-caps.ts';

const HAIR = 1e-9;

const rounded = (value: number): number => Number(value.toFixed(6));

/** The yearly limits on nutrients for each area: planned, done and allowed, by the programs and by the rules of the place. */
export function limitsOf(
  placed: readonly DosedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): Limit[] {
  return usesOf(placed, ground, sizes).flatMap(({ area, caps, planned, done }) =>
    caps
      .filter(({ per }) => per === 'year')
      .map(({ name, nutrient, limitGPerM2, source }) => {
        const plannedGPerM2 = rounded(
          planned.reduce(
            (sum, { step, use }) => sum + shareOf(step as DosedStep, area) * broughtBy(use.dose, nutrient),
            0,
          ),
        );
        const doneGPerM2 = rounded(done.reduce((sum, { dose }) => sum + broughtBy(dose, nutrient), 0));
        const ok = plannedGPerM2 + doneGPerM2 <= limitGPerM2 + 1e-6;
        return { name, area, plannedGPerM2, doneGPerM2, limitGPerM2, source, ok };
      }),
  );
}

const shareOf = ({ shares }: DosedStep, area: string): number => shares.get(area)?.share ?? 0;

/** What limits hold back, what went over them, and labels that say otherwise. */
export function limitProblems(
  placed: readonly DosedStep[],
  limits: readonly Limit[],
  ground: Ground,
  display: Display,
): Problem[] {
  const perM2 = (grams: number) => display.massRate(grams / 1000);
  const reduced = placed.flatMap((one) =>
    [...one.shares].flatMap(([area, { share, cap }]) => {
      if (!cap || !one.dose) return [];
      const whole = broughtBy(one.dose, cap.nutrient);
      const args = {
        step: one.id,
        area,
        planned: perM2(whole),
        held: perM2(share * whole),
        limit: perM2(cap.limitGPerM2),
        cap: cap.name,
      };
      return [problem('rate-held', args, null)];
    }),
  );
  const yearly = limits
    .filter(({ ok }) => !ok)
    .map(({ name, area, plannedGPerM2, doneGPerM2, limitGPerM2 }) => {
      const planned = perM2(plannedGPerM2 + doneGPerM2);
      return problem('over-yearly', { area, planned, limit: perM2(limitGPerM2), what: name }, null);
    });
  return [...reduced, ...yearly, ...underYearly(limits, ground, perM2), ...labelProblems(placed, ground)];
}

/** Areas that get less nitrogen than the grass's range begins with. */
function underYearly(limits: readonly Limit[], ground: Ground, perM2: (grams: number) => string): Problem[] {
  return limits.flatMap(({ name, area, plannedGPerM2, doneGPerM2 }) => {
    const least = ground.programOf(area).nitrogen?.yearly?.from;
    const sum = plannedGPerM2 + doneGPerM2;
    if (name !== 'nitrogen-yearly' || least === undefined || sum >= 1000 * least - HAIR) return [];
    return [problem('under-yearly', { area, planned: perM2(sum), least: perM2(1000 * least) }, null)];
  });
}

/** Labels with a rate above their own limit, or that do not name the grass. */
function labelProblems(placed: readonly DosedStep[], { lawn }: Ground): Problem[] {
  return placed.flatMap(({ id, areas, dose, choice }) => {
    const label = dose?.product?.label;
    if (!dose?.rate || !label || !choice) return [];
    const product = dose.product.id;
    const most = label.perApplication;
    const over = most && most.by === dose.rate.by && dose.rate.value > most.value + HAIR;
    const grasses = [...new Set(areas.map((area) => grassOf(lawn, area)))];
    const unnamed = grasses.filter((grass) => label.grasses && !label.grasses.includes(grass));
    return [
      ...(over ? [problem('label-rate', { step: id, product }, null)] : []),
      ...unnamed.map((grass) =>
        problem('label-grass', { step: id, product, grass, grasses: label.grasses ?? [] }, null),
      ),
    ];
  });
}
