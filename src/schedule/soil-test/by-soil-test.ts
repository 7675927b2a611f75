import type { Dose } from '../../amounts/product.ts';
import { askedBy } from '../../amounts/soil-test/asked.ts';
import type { SquareMetres } from '../../base/units.ts';
import { type ByTest, byTestOf } from '../../model/program.ts';
import { type Share, WHOLE } from '../caps.ts';
import { soilTestOf } from '../condition.ts';
import type { Ground } from '../ground.ts';
import { halfwayOn } from '../to-come.ts';
import type { DosedStep } from '../within-caps.ts';
import { broughtBefore, broughtBeside } from './brought.ts';
import { bringsOf, type TestedArea, type TestedStep, testable } from './tested.ts';

const HAIR = 1e-9;
const ABOUT = { lime: 'pH', P2O5: 'phosphorus', K2O: 'potassium' } as const;

/**
 * Holds the steps that go by a soil test to what it still asks for on each area, in the order of their days; one of which
 * nothing is asked is dropped. Lime counts since the test, nutrients by the year.
 */
export function bySoilTest(
  placed: readonly DosedStep[],
  ground: Ground,
  sizes: ReadonlyMap<string, SquareMetres>,
): TestedStep[] {
  const settled = new Map<DosedStep, TestedStep>();
  const fixed = placed.filter(({ step }) => byTestOf(step) === null);
  const inTime = placed
    .filter(({ step }) => byTestOf(step) !== null)
    .toSorted((a, b) => (a.choice?.day ?? Number.POSITIVE_INFINITY) - (b.choice?.day ?? Number.POSITIVE_INFINITY));
  for (const one of inTime) {
    const others = [...fixed, ...settled.values()];
    const tested = one.areas.map((area) =>
      testedOn(area, one, byTestOf(one.step) as ByTest, { placed, others, ground, sizes }),
    );
    settled.set(one, heldTo(one, tested));
  }
  return placed.map((one) => settled.get(one) ?? { ...one, tested: [] });
}

interface Surroundings {
  readonly placed: readonly DosedStep[];
  /** Steps whose amounts stand. */
  readonly others: readonly DosedStep[];
  readonly ground: Ground;
  readonly sizes: ReadonlyMap<string, SquareMetres>;
}

/** What the test asks of a step on an area. */
function testedOn(area: string, one: DosedStep, apply: ByTest, around: Surroundings): TestedArea {
  const { placed, others, ground, sizes } = around;
  const { dose, season, choice } = one;
  const what = testable(apply, dose?.product ?? null);
  const test = soilTestOf(ground.lawn, area, ABOUT[what]);
  const base = { area, what, test: test?.date ?? null, acidity: test?.acidity ?? null };
  if (!test) return { ...base, by: 'no-test', asked: 0, done: 0, others: 0, now: 0, left: 0 };
  const { by, rate } = askedBy(test, what, apply.kind === 'amendment' ? apply.goal : undefined);
  const most = dose?.rate ? bringsOf(dose, what) : Number.POSITIVE_INFINITY;
  if (rate === null) return { ...base, by, asked: null, done: 0, others: 0, now: most, left: 0 };
  // Lime lasts, and what comes after this step does not count before it; the nutrients of a year all do.
  const counted =
    what === 'lime'
      ? { area, what, from: test.date, to: choice?.day ?? season.end }
      : { area, what, from: Math.max(test.date, season.start), to: season.end };
  const done = broughtBefore(counted, one, placed, ground, sizes);
  const beside = broughtBeside(counted, one, others, ground);
  const asked = 1000 * rate;
  const open = Math.max(0, asked - done - beside);
  const now = open < HAIR * asked ? 0 : Math.min(open, most);
  return { ...base, by, asked, done, others: beside, now, left: Math.max(0, open - now) };
}

/** A step with no more than its areas are asked for. */
function heldTo(one: DosedStep, tested: readonly TestedArea[]): TestedStep {
  const open = one.status === 'expected' || one.status === 'open' || one.status === 'due';
  if (open && one.areas.length > 0 && tested.every(({ now }) => now === 0))
    return { ...one, tested, status: 'dropped', choice: null, dropped: { because: 'soil-test' } };
  if (!one.dose?.rate) return { ...one, tested };
  const whole = bringsOf(one.dose, tested[0]?.what ?? 'lime');
  if (whole === 0) return { ...one, tested };
  const asked = new Map(tested.map(({ area, now }) => [area, now / whole > 1 - HAIR ? 1 : now / whole]));
  const most = Math.max(...asked.values());
  if (most === 0) return { ...one, tested };
  // The rate of the step becomes that of the area which is asked for most; the others get a share of it.
  const dose: Dose = { ...one.dose, rate: { ...one.dose.rate, value: most * one.dose.rate.value } };
  const shares = new Map(
    one.areas.map((area): [string, Share] => {
      const wanted = asked.get(area) ?? 1;
      const held = one.shares.get(area);
      return [
        area,
        held && held.share < wanted
          ? { ...held, share: held.share / most }
          : { share: wanted / most, cap: null, tight: held?.tight ?? false },
      ];
    }),
  );
  const held = { ...one, dose, shares };
  return { ...held, tested: tested.map((area) => halfDone(area, held)) };
}

/** What a test asks where the first of two passes is done: that counts as put down, the second as what the step puts down. */
function halfDone(one: TestedArea, step: DosedStep): TestedArea {
  const halfway = halfwayOn(step, one.area, step.shares.get(one.area) ?? WHOLE);
  if (!halfway || !step.dose?.rate || one.asked === null) return one;
  const each = bringsOf(step.dose, one.what) / step.dose.rate.value;
  const [done, now] = [one.done + each * halfway.down, each * halfway.target];
  return { ...one, done, now, left: Math.max(0, one.asked - done - one.others - now) };
}
