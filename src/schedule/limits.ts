import { formatDay } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { SquareMetres } from '../base/units.ts';
import { type Limit, limitInWords, limitRate } from '../model/limit.ts';
import { type Cap, sumOf } from './caps.ts';
import { broughtBy, measureOf, writtenAs } from './counted.ts';
import type { Ground } from './ground.ts';
import { labelProblems, uncounted } from './label-problems.ts';
import { shareToCome } from './to-come.ts';
import { type DosedStep, usesOf } from './within-caps.ts';

const HAIR = 1e-9;

const rounded = (value: number): number => Number(value.toFixed(9));

/**
 * The yearly limits for each area: planned, done, allowed and left, by programs, rules of the place and labels. A season that
 * has not begun has none of its own yet.
 */
export function limitsOf(
  placed: readonly DosedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): Limit[] {
  const ends = placed.flatMap(({ season }) => (season.start <= ground.asOf ? [season.end] : []));
  const begun = ({ span }: Cap) => (span.season ? span.from <= ground.asOf : span.from <= Math.max(...ends));
  return usesOf(placed, ground, sizes).flatMap(({ area, caps, planned, done }) =>
    caps
      .filter((cap) => cap.per === 'year' && begun(cap))
      .map((cap): Limit => {
        const { counted, span } = cap;
        const inPlan = rounded(
          planned.reduce((sum, { step, use }) => sum + shareOf(step as DosedStep, area) * sumOf([use], cap), 0),
        );
        const inJournal = rounded(sumOf(done, cap));
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
          from: span.season ? null : formatDay(span.from),
          to: span.season ? null : formatDay(span.to),
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

/** The share of a dose that is still to come. */
function shareOf(step: DosedStep, area: string): number {
  const held = step.shares.get(area);
  return held ? shareToCome(step, area, held) : 0;
}

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
      const perM2 = (value: number) => limitRate(value, writtenAs(cap.counted), display);
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
