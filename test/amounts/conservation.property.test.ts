/**
 * Nothing is lost or made on the way from rates to bags, over random lawns: areas × rates are the totals, passes add to them,
 * packages cover the need, limits hold the sums. And a lawn told in metric units has the same plan as told in U.S. ones.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { compile } from '../../src/compile.ts';
import type { Season } from '../../src/model/season.ts';
import { LONG, programText, runs } from '../kit.ts';
import { LB, LB_PER_1000_SQFT, SQFT } from '../published/pounds.ts';

const near = (found: number, wanted: number): void =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));

/** How a file writes its figures. */
interface Units {
  readonly length: (feet: number) => string;
  readonly mass: (pounds: number) => string;
  readonly rate: (poundsOn1000: number) => string;
  readonly area: (sqft: number) => string;
}
const US: Units = {
  length: (feet) => `${feet} ft`,
  mass: (pounds) => `${pounds} lb`,
  rate: (pounds) => `${pounds} lb/1000 sqft`,
  area: (sqft) => `${sqft} sqft`,
};
const METRIC: Units = {
  length: (feet) => `${(feet * 0.3048).toFixed(12)} m`,
  mass: (pounds) => `${(pounds * LB).toFixed(14)} kg`,
  rate: (pounds) => `${(pounds * LB_PER_1000_SQFT).toFixed(14)} g/m2`,
  area: (sqft) => `${(sqft * SQFT).toFixed(12)} m2`,
};

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const lawns = fc.record({
  sides: fc.array(fc.tuple(tenths(5, 120), tenths(5, 120)), { minLength: 1, maxLength: 4 }),
  radius: tenths(1, 2),
  analysis: fc.tuple(fc.integer({ min: 5, max: 46 }), fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 30 })),
  nitrogen: fc.array(tenths(0.2, 1.5), { minLength: 1, maxLength: 4 }),
  seed: tenths(0.5, 8),
  bag: fc.integer({ min: 5, max: 50 }),
  small: fc.integer({ min: 1, max: 4 }),
  priced: fc.boolean(),
  shelf: fc.integer({ min: 0, max: 60 }),
  yearly: tenths(0.5, 6),
});
type Lawn = typeof lawns extends fc.Arbitrary<infer T> ? T : never;

const feedStep = (id: number, rate: string) => {
  const month = String(3 + 2 * id).padStart(2, '0');
  return `  - { id: feed-${id}, name: Feed, work: spread, window: { opens: { date: ${month}-01 }, closes: { date: ${month}-28 } }, apply: { nutrient: { N: ${rate} } } }\n`;
};

function plan(one: Lawn, units: Units): Season {
  const { sides, radius, analysis, nitrogen, seed, bag, small, priced, shelf, yearly } = one;
  const steps = `${nitrogen.map((rate, i) => feedStep(i, units.rate(rate))).join('')}  - { id: sow, name: Sow, work: seed, window: { opens: { date: 09-01 }, closes: { date: 09-28 } }, apply: { seed: seed, rate: ${units.rate(seed)} } }\n`;
  const price = (amount: number) => (priced ? `, price: ${amount}` : '');
  const areas = sides.map(
    ([a, b], i) =>
      `area-${i}: { rectangle: [${units.length(a)}, ${units.length(b)}], less: [{ circle: { radius: ${units.length(radius)} } }] }`,
  );
  const lawn = `kind: lawn
version: 1
id: lawn
location: { latitude: 39, longitude: -84, elevation: 270 m }
timezone: America/New_York
grass: tall-fescue
program: program.yaml
display: { units: us }
areas: { ${areas.join(', ')} }
products:
  - id: feed
    form: granular
    analysis: ${analysis.join('-')}
    packages: [{ size: ${units.mass(bag)}${price(bag)} }, { size: ${units.mass(small)}${price(small * 1.3)} }]
  - { id: seed, form: seed, package: { size: ${units.mass(5)} } }
local-rules: [{ limit: N, yearly: ${units.rate(yearly)} }]
shelf: { feed: ${units.mass(shelf + 0.25)} }
`;
  const { season, problems } = compile({
    lawn: { name: 'lawn.yaml', text: lawn },
    lookup: (ref) => (ref === 'program.yaml' ? { name: ref, text: programText(steps) } : null),
    asOf: civil(2027, 1, 5),
    ledger: null,
    revisedAt: '2027-01-05T06:00:00Z',
    detail: 'quiet',
  });
  if (!season) throw new Error(problems.map(({ message }) => message).join('\n'));
  return season;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const RUNS = { numRuns: runs(25), seed: 27 };

describe('random lawns', LONG, () => {
  test('areas × rates are the totals, and passes add to the load', () =>
    fc.assert(
      fc.property(lawns, (one) => {
        for (const { id, status, areas, totals } of plan(one, US).applications) {
          if (status === 'dropped') continue;
          near(totals[0]?.amountKg ?? Number.NaN, sum(areas.map(({ amountKg }) => amountKg ?? 0)));
          for (const { areaM2, amountKg, passes } of areas) {
            near(sum(passes.map((pass) => pass.amountKg)), amountKg ?? Number.NaN);
            if (id === 'sow') near(amountKg ?? Number.NaN, (one.seed * LB_PER_1000_SQFT * areaM2) / 1000);
          }
        }
      }),
      RUNS,
    ));
  test('the nitrogen is what was asked for, or what the limit leaves of it, on every area', () =>
    fc.assert(
      fc.property(lawns, (one) => {
        const season = plan(one, US);
        let left = one.yearly * LB_PER_1000_SQFT;
        for (const [i, rate] of one.nitrogen.entries()) {
          const application = season.applications.find(({ id }) => id === `feed-${i}`);
          const wanted = Math.min(left, rate * LB_PER_1000_SQFT);
          left -= wanted;
          for (const { amountKg, areaM2 } of application?.areas ?? []) {
            const brought = application?.status === 'dropped' ? 0 : ((amountKg ?? 0) * 10 * one.analysis[0]) / areaM2;
            near(brought, wanted < 1e-9 ? 0 : wanted);
          }
        }
        for (const limit of season.limits)
          near((limit.plannedGPerM2 ?? 0) + (limit.leftGPerM2 ?? 0), one.yearly * LB_PER_1000_SQFT);
      }),
      RUNS,
    ));
  test('packages and the shelf cover the need, and what is left adds up', () =>
    fc.assert(
      fc.property(lawns, (one) => {
        const { shopping, applications } = plan(one, US);
        for (const { product, needKg, shelfKg, packages, leftKg } of shopping) {
          const used = applications.flatMap(({ totals }) => totals.filter((total) => total.product === product));
          near(needKg ?? Number.NaN, sum(used.map(({ amountKg }) => amountKg ?? 0)));
          const bought = sum(packages.map(({ size, count }) => Number.parseFloat(size) * LB * count));
          expect((shelfKg ?? 0) + bought).toBeGreaterThanOrEqual((needKg ?? 0) - 1e-9);
          near(leftKg ?? Number.NaN, (shelfKg ?? 0) + bought - (needKg ?? 0));
          // The rest is less than the smallest package that was bought: no bag too many.
          if (!one.priced)
            for (const { size } of packages) expect((leftKg ?? 0) - Number.parseFloat(size) * LB).toBeLessThan(1e-9);
        }
      }),
      RUNS,
    ));
  test('a lawn told in metric units has the same plan', () =>
    fc.assert(
      fc.property(lawns, (one) => alike(plan(one, METRIC), plan(one, US), 'season')),
      RUNS,
    ));
});

/** Two plans that agree in everything; numbers to 1e-9. Texts hold rounded figures and are compared as they stand. */
function alike(found: unknown, wanted: unknown, at: string): void {
  if (typeof found === 'number' && typeof wanted === 'number') near(found, wanted);
  else if (found !== null && typeof found === 'object' && wanted !== null && typeof wanted === 'object') {
    expect(Object.keys(found), at).toEqual(Object.keys(wanted));
    for (const key of Object.keys(found))
      alike((found as Record<string, unknown>)[key], (wanted as Record<string, unknown>)[key], `${at}.${key}`);
  } else expect(found, at).toBe(wanted);
}
