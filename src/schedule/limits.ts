import type { Display } from '../base/display.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import { type Limit, limitInWords } from '../model/limit.ts';
import type { Use } from './caps.ts';
import { broughtBy, type Counted, measureOf } from './counted.ts';
import type { Ground } from './ground.ts';
import { labelProblems, uncounted } from './label-problems.ts';
import { inPeriod } from './rules/local.ts';
import { type DosedStep, usesOf } from './within-caps.ts';

const HAIR = 1e-9;

const rounded = (value: number): number => Number(value.toFixed(9));

/** Rates in the reader's units: feeds on 1000 sqft, actives on an acre, as labels print them. @param value g/m² or mL/m². */
export function limitRate(value: number, counted: Counted, display: Display): string {
  if (measureOf(counted) === 'volume') return display.volumeRate(value / 1e6);
  return counted.kind === 'active' ? display.activeRate(value / 1000) : display.massRate(value / 1000);
}

/** The yearly limits for each area: planned, done, allowed and left, by programs, rules of the place and labels. */
export function limitsOf(
  placed: readonly DosedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): Limit[] {
  return usesOf(placed, ground, sizes).flatMap(({ area, caps, planned, done }) =>
    caps
      .filter(({ per }) => per === 'year')
      .map((cap): Limit => {
        const { counted } = cap;
        const counts = ({ day, dose }: Use) => (inPeriod(day, cap.between) ? broughtBy(dose, counted) : 0);
        const inPlan = rounded(
          planned.reduce((sum, { step, use }) => sum + shareOf(step as DosedStep, area) * counts(use), 0),
        );
        const inJournal = rounded(done.reduce((sum, use) => sum + counts(use), 0));
        const left = rounded(Math.max(0, cap.limit - inPlan - inJournal));
        const [g, mL] = measureOf(counted) === 'mass' ? [(x: number) => x, none] : [none, (x: number) => x];
        return {
          name: cap.name,
          by: cap.by,
          of: {
            nutrient: counted.kind === 'nutrient' ? counted.nutrient : null,
            active: counted.kind === 'active' ? counted.active : null,
            product: counted.kind === 'product' ? counted.product : null,
          },
          area,
          plannedGPerM2: g(inPlan),
          doneGPerM2: g(inJournal),
          limitGPerM2: g(cap.limit),
          leftGPerM2: g(left),
          plannedMlPerM2: mL(inPlan),
          doneMlPerM2: mL(inJournal),
          limitMlPerM2: mL(cap.limit),
          leftMlPerM2: mL(left),
          source: cap.source,
          ok: inPlan + inJournal <= cap.limit + 1e-6,
        };
      }),
  );
}

const none = (): null => null;

const shareOf = ({ shares }: DosedStep, area: string): number => shares.get(area)?.share ?? 0;

/** What limits hold back, what went over them, and labels that say otherwise. */
export function limitProblems(
  placed: readonly DosedStep[],
  limits: readonly Limit[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
  display: Display,
): Problem[] {
  const reduced = placed.flatMap((one) =>
    [...one.shares].flatMap(([area, { share, cap }]) => {
      if (!cap || !one.dose) return [];
      const perM2 = (value: number) => limitRate(value, cap.counted, display);
      const whole = broughtBy(one.dose, cap.counted);
      const args = {
        step: one.id,
        area,
        planned: perM2(whole),
        held: perM2(share * whole),
        limit: perM2(cap.limit),
        cap: cap.name,
      };
      return [problem('rate-held', args, null)];
    }),
  );
  const yearly = limits
    .filter(({ ok }) => !ok)
    .map((limit) => {
      const { planned, done, limit: most } = limitInWords(limit, display);
      return problem('over-yearly', { area: limit.area, planned, done, limit: most, what: limit.name }, null);
    });
  return [
    ...reduced,
    ...yearly,
    ...underYearly(limits, ground, display),
    ...labelProblems(placed, ground),
    ...uncounted(placed, ground, sizes),
  ];
}

/** Areas that get less nitrogen than the grass's range begins with. */
function underYearly(limits: readonly Limit[], ground: Ground, display: Display): Problem[] {
  const perM2 = (grams: number) => display.massRate(grams / 1000);
  return limits.flatMap(({ name, area, plannedGPerM2, doneGPerM2 }) => {
    const least = ground.programOf(area).nitrogen?.yearly?.from;
    const sum = (plannedGPerM2 ?? 0) + (doneGPerM2 ?? 0);
    if (name !== 'nitrogen-yearly' || least === undefined || sum >= 1000 * least - HAIR) return [];
    return [problem('under-yearly', { area, planned: perM2(sum), least: perM2(1000 * least) }, null)];
  });
}
