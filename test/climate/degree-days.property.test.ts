/** What holds for degree days whatever the weather. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DegreeDayRule, degreeDays, takesCutoff } from '../../src/climate/degree-days.ts';
import { CUTOFFS, METHODS } from '../../src/model/heat.ts';

type Kind = Pick<DegreeDayRule, 'method' | 'cutoff'>;

const averages = METHODS.filter((method) => !takesCutoff(method));
const curves = METHODS.filter(takesCutoff);
const doubles = curves.filter((method) => method.startsWith('double'));
/** Every method with every cutoff that it takes, and without one. */
const kinds: readonly Kind[] = METHODS.flatMap((method): Kind[] => [
  { method },
  ...(takesCutoff(method) ? CUTOFFS.map((cutoff) => ({ method, cutoff })) : []),
]);
/** Where warmth above the upper threshold takes nothing away. */
const rising = kinds.filter(({ cutoff }) => cutoff !== 'vertical' && cutoff !== 'intermediate');
const nameOf = ({ method, cutoff }: Kind) => (cutoff ? `${method}, ${cutoff}` : method);
const named = (some: readonly Kind[]) => some.map((kind): [string, Kind] => [nameOf(kind), kind]);

const temperature = fc.double({ min: -60, max: 130, noNaN: true });
const day = fc
  .tuple(temperature, temperature, temperature)
  .map(([a, b, nextTmin]) => ({ tmin: Math.min(a, b), tmax: Math.max(a, b), nextTmin }));
const rise = fc.double({ min: 0, max: 30, noNaN: true });
interface Limits {
  readonly lower: number;
  readonly above?: number;
}
const thresholds: fc.Arbitrary<Limits> = fc.record(
  { lower: fc.double({ min: -20, max: 70, noNaN: true }), above: fc.double({ min: 0.1, max: 60, noNaN: true }) },
  { requiredKeys: ['lower'] },
);
const ruleOf = (kind: Kind, { lower, above }: Limits): DegreeDayRule => ({
  ...kind,
  lower,
  ...(above === undefined ? {} : { upper: lower + above }),
});
/** Room for rounding in sums of temperatures up to 200 [degrees]. */
const ROUNDING = 1e-9;

test('METHODS and CUTOFFS make 23 kinds', () => expect(kinds).toHaveLength(3 + 4 * 5));

describe.each(named(kinds))('%s', (_, kind) => {
  test('is never below 0', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, limits) => {
        expect(degreeDays(extremes, ruleOf(kind, limits))).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  test('is the same in °F as in °C, times 1.8', () => {
    const fahrenheit = (celsius: number) => celsius * 1.8 + 32;
    fc.assert(
      fc.property(day, thresholds, ({ tmin, tmax, nextTmin }, limits) => {
        const rule = ruleOf(kind, limits);
        const { upper, lower } = rule;
        // Where an extreme is a hair from the upper threshold, the share of the day above it is not the same in both scales.
        const nearest = Math.min(...[tmin, tmax, nextTmin].map((t) => Math.abs(t - (upper ?? 1000))));
        fc.pre(rising.includes(kind) || nearest > 1e-6);
        const inF = degreeDays(
          { tmin: fahrenheit(tmin), tmax: fahrenheit(tmax), nextTmin: fahrenheit(nextTmin) },
          { ...kind, lower: fahrenheit(lower), ...(upper === undefined ? {} : { upper: fahrenheit(upper) }) },
        );
        expect(Math.abs(inF - 1.8 * degreeDays({ tmin, tmax, nextTmin }, rule))).toBeLessThan(1e-6);
      }),
    );
  });
  test.each([
    { tmin: Number.NaN, tmax: 20 },
    { tmin: 10, tmax: Number.NaN },
    { tmin: Number.NaN, tmax: Number.NaN },
  ])('is NaN where an extreme is: $tmin, $tmax', (extremes) => {
    expect(degreeDays(extremes, { ...kind, lower: 10, upper: 30 })).toBeNaN();
  });
  test('refuses an upper threshold that is not above the lower', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, { lower, above = 0 }) => {
        expect(() => degreeDays(extremes, { ...kind, lower, upper: lower - above })).toThrow(RangeError);
      }),
    );
  });
  test('refuses a minimum above the maximum', () => {
    expect(() => degreeDays({ tmin: 12, tmax: 11 }, { ...kind, lower: 10 })).toThrow(RangeError);
  });
});

describe.each(named(rising))('%s', (_, kind) => {
  test('does not fall when the maximum rises', () => {
    fc.assert(
      fc.property(day, rise, thresholds, (extremes, warmer, limits) => {
        const rule = ruleOf(kind, limits);
        const after = degreeDays({ ...extremes, tmax: extremes.tmax + warmer }, rule);
        expect(after).toBeGreaterThanOrEqual(degreeDays(extremes, rule) - ROUNDING);
      }),
    );
  });
  test('does not fall when the minimum rises', () => {
    fc.assert(
      fc.property(day, fc.double({ min: 0, max: 1, noNaN: true }), thresholds, (extremes, share, limits) => {
        const rule = ruleOf(kind, limits);
        const tmin = Math.min(extremes.tmax, extremes.tmin + share * (extremes.tmax - extremes.tmin));
        expect(degreeDays({ ...extremes, tmin }, rule)).toBeGreaterThanOrEqual(degreeDays(extremes, rule) - ROUNDING);
      }),
    );
  });
  test("does not fall when the next day's minimum rises", () => {
    fc.assert(
      fc.property(day, rise, thresholds, (extremes, warmer, limits) => {
        const rule = ruleOf(kind, limits);
        const after = degreeDays({ ...extremes, nextTmin: extremes.nextTmin + warmer }, rule);
        expect(after).toBeGreaterThanOrEqual(degreeDays(extremes, rule) - ROUNDING);
      }),
    );
  });
});

describe.each(named(kinds.filter(({ cutoff }) => cutoff !== 'none')))('%s', (_, kind) => {
  test('is never above the gap between the thresholds', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, { lower, above = 40 }) => {
        const found = degreeDays(extremes, ruleOf(kind, { lower, above }));
        expect(found).toBeLessThanOrEqual(above + ROUNDING);
      }),
    );
  });
});

describe.each(curves)('%s', (method) => {
  const by = (cutoff: DegreeDayRule['cutoff'], limits: Limits) => ruleOf({ method, ...(cutoff && { cutoff }) }, limits);

  test('none ≥ horizontal ≥ intermediate ≥ vertical', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, limits) => {
        const found = (['none', 'horizontal', 'intermediate', 'vertical'] as const).map((cutoff) =>
          degreeDays(extremes, by(cutoff, limits)),
        );
        for (const [i, value] of found.slice(1).entries()) expect(value).toBeLessThanOrEqual(found[i]! + ROUNDING);
      }),
    );
  });
  test('all cutoffs agree on a day that stays below the upper threshold, or has none', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, { lower }) => {
        const upper = Math.max(lower, extremes.tmax, extremes.nextTmin) + 1;
        const none = degreeDays(extremes, { method, lower });
        for (const cutoff of CUTOFFS) {
          expect(degreeDays(extremes, { method, lower, upper, cutoff })).toBe(none);
          expect(degreeDays(extremes, { method, lower, cutoff })).toBe(none);
        }
      }),
    );
  });
  test('a cutoff that is not named is horizontal', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, limits) => {
        expect(degreeDays(extremes, by(undefined, limits))).toBe(degreeDays(extremes, by('horizontal', limits)));
      }),
    );
  });
  test('adds up over the thresholds: what lies below the upper and what lies above it are all there is', () => {
    fc.assert(
      fc.property(day, thresholds, (extremes, { lower, above = 10 }) => {
        const below = degreeDays(extremes, { method, lower, upper: lower + above, cutoff: 'horizontal' });
        const beyond = degreeDays(extremes, { method, lower: lower + above });
        expect(Math.abs(below + beyond - degreeDays(extremes, { method, lower }))).toBeLessThan(ROUNDING);
      }),
    );
  });
  test('has at least the heat of the mean where nothing is cut', () => {
    fc.assert(
      fc.property(day, thresholds, ({ tmin, tmax }, { lower }) => {
        const mean = degreeDays({ tmin, tmax }, { method: 'average', lower });
        expect(degreeDays({ tmin, tmax }, { method, lower })).toBeGreaterThanOrEqual(mean - ROUNDING);
      }),
    );
  });
  test('and at most the heat of the extremes, each raised to the threshold', () => {
    fc.assert(
      fc.property(day, thresholds, ({ tmin, tmax }, { lower }) => {
        const raised = degreeDays({ tmin, tmax }, { method: 'average-clamped', lower });
        expect(degreeDays({ tmin, tmax }, { method, lower })).toBeLessThanOrEqual(raised + ROUNDING);
      }),
    );
  });
  test('is the mean less the lower threshold on a day wholly between the two', () => {
    const mild = fc.double({ min: 10, max: 30, noNaN: true });
    fc.assert(
      fc.property(mild, mild, (a, b) => {
        const found = degreeDays(
          { tmin: Math.min(a, b), tmax: Math.max(a, b) },
          { method, lower: 10, upper: 30, cutoff: 'vertical' },
        );
        expect(Math.abs(found - ((a + b) / 2 - 10))).toBeLessThan(ROUNDING);
      }),
    );
  });
  test('refuses a cutoff that there is not', () => {
    const cutoff = 'diagonal' as unknown as 'none';
    expect(() => degreeDays({ tmin: 5, tmax: 20 }, { method, lower: 10, cutoff })).toThrow(RangeError);
  });
});

describe.each(doubles)('%s', (method) => {
  const single = method.replace('double', 'single') as DegreeDayRule['method'];

  test.each(CUTOFFS)('of equal minima is the single one: %s', (cutoff) => {
    fc.assert(
      fc.property(day, thresholds, ({ tmin, tmax }, limits) => {
        const found = degreeDays({ tmin, tmax, nextTmin: tmin }, ruleOf({ method, cutoff }, limits));
        expect(found).toBe(degreeDays({ tmin, tmax }, ruleOf({ method: single, cutoff }, limits)));
      }),
    );
  });
  test.each([undefined, Number.NaN])('takes its own minimum where the next one is %s', (nextTmin) => {
    fc.assert(
      fc.property(day, thresholds, ({ tmin, tmax }, limits) => {
        const found = degreeDays(
          { tmin, tmax, ...(nextTmin === undefined ? {} : { nextTmin }) },
          ruleOf({ method }, limits),
        );
        expect(found).toBe(degreeDays({ tmin, tmax }, ruleOf({ method: single }, limits)));
      }),
    );
  });
  test.each(['none', 'horizontal', 'vertical'] as const)(
    'is the mean of the singles of its half days: %s',
    (cutoff) => {
      fc.assert(
        fc.property(day, thresholds, ({ tmin, tmax, nextTmin }, limits) => {
          const half = (t: number) =>
            degreeDays(
              { tmin: Math.min(t, tmax), tmax: Math.max(t, tmax) },
              ruleOf({ method: single, cutoff }, limits),
            );
          const found = degreeDays({ tmin, tmax, nextTmin }, ruleOf({ method, cutoff }, limits));
          expect(Math.abs(found - (half(tmin) + half(nextTmin)) / 2)).toBeLessThan(ROUNDING);
        }),
      );
    },
  );
  test('of days end to end adds up to singles over the same half days', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(temperature, rise), { minLength: 1, maxLength: 20 }),
        thresholds,
        (days, limits) => {
          const extremes = days.map(([tmin, range], i) => {
            const nextTmin = days[i + 1]?.[0] ?? tmin;
            return { tmin, nextTmin, tmax: Math.max(tmin, nextTmin) + range };
          });
          const sum = (values: number[]) => values.reduce((total, value) => total + value, 0);
          const whole = sum(extremes.map((one) => degreeDays(one, ruleOf({ method }, limits))));
          const halves = extremes.flatMap(({ tmin, nextTmin, tmax }) => [
            degreeDays({ tmin, tmax }, ruleOf({ method: single }, limits)),
            degreeDays({ tmin: nextTmin, tmax }, ruleOf({ method: single }, limits)),
          ]);
          expect(Math.abs(whole - sum(halves) / 2)).toBeLessThan(ROUNDING * 20);
        },
      ),
    );
  });
});

test.each(averages.flatMap((method) => CUTOFFS.map((cutoff): [string, string] => [method, cutoff])))(
  '%s refuses the cutoff %s',
  (method, cutoff) => {
    const rule = { method, cutoff, lower: 10, upper: 30 } as DegreeDayRule;
    expect(() => degreeDays({ tmin: 5, tmax: 20 }, rule)).toThrow(RangeError);
  },
);
test('a method that there is not is refused', () => {
  const method = 'cubic' as unknown as 'average';
  expect(() => degreeDays({ tmin: 5, tmax: 20 }, { method, lower: 10 })).toThrow(RangeError);
});
