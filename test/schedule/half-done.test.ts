/** Work of which the journal has the first of two passes: it stays open, and what is down counts once with what is to come. */
import { describe, expect, test } from 'vitest';
import { application, plan } from './plan-kit.ts';

const LB = 0.45359237;
const AREAS = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
const GEAR = 'equipment: { spreader: { kind: rotary, swath: 4 ft, dial: { from: 1, to: 15, step: 0.25 } } }\n';
const PRODUCTS = `products:
  - { id: feeder, form: granular, analysis: 20-0-0, package: { size: 4 lb, price: 1 } }
  - { id: barrier, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }, label: { rate: 4 lb/1000 sqft, per-year: 4 lb/1000 sqft } }
  - { id: lime, form: amendment, neutralising: 100% }
shelf: { counted: 2027-02-01, feeder: 10 lb }
`;
const span = 'window: { opens: { date: 04-01 }, closes: { date: 05-20 } }';
/** Five pounds of feed on each area, four of the barrier. */
const STEPS = `  - { id: feed, name: Feed, work: spread, ${span}, apply: { nutrient: { N: 1 lb/1000 sqft } } }
  - { id: barrier, name: Barrier, work: spread, ${span}, apply: { pesticide: pre-emergent } }
  - { id: next, name: Next, work: other, window: { opens: { after: { step: feed, wait: 30 d } }, closes: { date: 10-01 } } }
`;
const season = (journal: string, more: { lawn?: string; asOf?: string; steps?: string } = {}) =>
  plan({
    steps: more.steps ?? STEPS,
    program: 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n',
    lawn: GEAR + AREAS + PRODUCTS + (more.lawn ?? ''),
    asOf: more.asOf ?? '2027-04-20',
    files: journal === '' ? {} : { 'lawn.journal.yaml': journal },
  });
const done = (step: string, rest: string) => `- { date: 2027-04-10, step: ${step}, ${rest} }\n`;
const feed = async (rest: string, more = {}) => application(await season(done('feed', rest), more), 'feed');

describe('after the first pass', () => {
  test('a step is open, and the other half is to come', async () => {
    const half = await feed('pass: 1, used: 5 lb');
    expect(half.status).not.toBe('done');
    expect(half.areasDone).toEqual([]);
    expect(half.secondPasses.map(({ id }) => id)).toEqual(['front', 'back']);
    expect(half.totals[0]?.amountKg).toBeCloseTo(5 * LB, 6);
    expect(half.secondPasses.flatMap(({ passes }) => passes.map(({ direction }) => direction))).toEqual([
      'crosswise',
      'crosswise',
    ]);
  });
  test('its areas still say the whole', async () =>
    expect((await feed('pass: 1, used: 5 lb')).areas[0]?.amountKg).toBeCloseTo(5 * LB, 6));
  test('what it has left is to come', async () =>
    expect((await feed('pass: 1, used: 4 lb')).totals[0]?.amountKg).toBeCloseTo(6 * LB, 6));
  test('without an amount it counts as half of the plan', async () =>
    expect((await feed('pass: 1')).totals[0]?.amountKg).toBeCloseTo(5 * LB, 6));
  test('on one area alone the other has both passes to come', async () => {
    const half = await feed('pass: 1, areas: [front], used: 2.5 lb');
    expect(half.secondPasses.map(({ id }) => id)).toEqual(['front']);
    expect(half.totals[0]?.amountKg).toBeCloseTo(7.5 * LB, 6);
  });
  test('the work takes half as long', async () => {
    const minutes = ({ start, end }: { start: string | null; end: string | null }) =>
      (Date.parse(end ?? '') - Date.parse(start ?? '')) / 60_000;
    const lawn = AREAS.replaceAll('[50 ft, 20 ft]', '[300 ft, 200 ft]');
    const of = async (journal: string) =>
      application(
        await plan({
          steps: STEPS,
          lawn: GEAR + lawn + PRODUCTS,
          asOf: '2027-04-20',
          files: { 'lawn.journal.yaml': journal },
        }),
        'feed',
      );
    const [both, one] = [minutes(await of('[]\n')), minutes(await of(done('feed', 'pass: 1')))];
    expect(one - 15).toBeGreaterThan(0.4 * (both - 15));
    expect(one - 15).toBeLessThan(0.6 * (both - 15));
  });
  test('the plan says what is left, which way, and at what setting', async () => {
    const { how } = await feed('pass: 1, used: 5 lb, setting: 6.5');
    expect(how.join('\n')).toMatch(/front .*2\.5 lb.*second pass, crosswise/);
    expect(how.join('\n')).toMatch(/Second pass: keep the dial at 6\.5/);
    expect(how.join('\n')).not.toMatch(/half one way/);
  });
  test.each([
    ['barrier', 'product: barrier, pass: 1, used: 4 lb'],
    ['lime', 'pass: 1, used: 20 lb'],
  ])('a waiting time between applications of %s does not keep the second pass away', async (id, entry) => {
    const lawn = GEAR + AREAS + PRODUCTS.replace('per-year:', 'interval: 60 d, per-year:');
    const test = 'soil: { tests: [{ date: 2027-02-01, pH: 5.5, lime: 20 lb/1000 sqft }] }\n';
    const lime = `  - { id: lime, name: Lime, work: spread, ${span}, apply: { product: lime, rate: 40 lb/1000 sqft, by: soil-test, spacing: 26 weeks } }\n`;
    const files = { 'lawn.journal.yaml': done(id, entry) };
    const planned = await plan({ steps: STEPS + lime, lawn: lawn + test, asOf: '2027-04-20', files });
    expect(application(planned, id).date).toMatch(/^2027-0[45]/);
  });
  test('the product that it was begun with is gone on with', async () => {
    const other = PRODUCTS.replace('products:\n', 'products:\n  - { id: weaker, form: granular, analysis: 10-0-0 }\n');
    const half = await plan({
      steps: STEPS,
      lawn: GEAR + AREAS + other,
      asOf: '2027-04-20',
      files: { 'lawn.journal.yaml': done('feed', 'pass: 1, product: weaker, used: 10 lb') },
    });
    expect(application(half, 'feed').totals[0]).toMatchObject({ product: 'weaker' });
    expect(application(half, 'feed').totals[0]?.amountKg).toBeCloseTo(10 * LB, 6);
  });
});

describe('a step is done', () => {
  test('after the second pass', async () =>
    expect(
      application(await season(done('feed', 'pass: 1, used: 5 lb') + done('feed', 'pass: 2, used: 5 lb')), 'feed'),
    ).toMatchObject({ status: 'done', secondPasses: [] }));
  test('where the first pass has put down the whole, and others count from its day', async () => {
    const planned = await season(done('feed', 'pass: 1, used: 9.8 lb'));
    expect(application(planned, 'feed')).toMatchObject({ status: 'done', date: '2027-04-10' });
    expect(application(planned, 'next').window.opens.p50).toBe('2027-05-10');
  });
  test('where the first pass has put down all that a limit leaves', async () => {
    const lawn = 'local-rules: [{ limit: N, single: 0.5 lb/1000 sqft, because: "a rule" }]\n';
    expect((await feed('pass: 1, used: 4.9 lb', { lawn })).status).toBe('done');
    expect((await feed('pass: 1, used: 2.5 lb', { lawn })).totals[0]?.amountKg).toBeCloseTo(2.5 * LB, 6);
  });
});

describe('what is down and what is to come count once', () => {
  const JOURNAL = done('feed', 'pass: 1, used: 5 lb');
  test('in the limits', async () => {
    const { limits } = await season(JOURNAL);
    const nitrogen = limits.find(({ name, area }) => name === 'nitrogen-yearly' && area === 'front');
    expect(nitrogen?.doneGPerM2).toBeCloseTo(nitrogen?.plannedGPerM2 ?? 0, 6);
    // 1 lb/1000 sq ft.
    expect((nitrogen?.doneGPerM2 ?? 0) + (nitrogen?.plannedGPerM2 ?? 0)).toBeCloseTo(4.88243, 4);
  });
  test('in the shopping and on the shelf', async () => {
    const { shelf, shopping } = await season(JOURNAL);
    expect(shelf.find(({ product }) => product === 'feeder')?.kg).toBeCloseTo(5 * LB, 6);
    expect(shopping.find(({ product }) => product === 'feeder')).toMatchObject({ packages: [] });
  });
  test('in a yearly limit of a label that leaves room for the plan alone', async () => {
    const planned = await season(done('barrier', 'pass: 1, used: 4.1 lb'));
    const barrier = application(planned, 'barrier');
    expect(barrier.totals[0]?.amountKg).toBeCloseTo(3.9 * LB, 6);
    expect(planned.problems.map(({ code }) => code)).not.toContain('rate-held');
    expect(planned.limits.every(({ ok }) => ok)).toBe(true);
  });
  test('for what comes later in the year', async () => {
    const steps = `${STEPS}  - { id: last, name: Last, work: spread, window: { opens: { date: 09-01 }, closes: { date: 10-01 } }, apply: { nutrient: { N: 2.5 lb/1000 sqft } } }\n`;
    const planned = await season(done('feed', 'pass: 1, used: 14 lb'), { steps });
    // 1.4 of 3 lb/1000 sq ft are down: 1.6 are left.
    const front = application(planned, 'last').areas[0];
    expect(front?.amountKg).toBeCloseTo(8 * LB, 6);
  });
  test('in what a soil test asks for', async () => {
    const steps = `  - { id: lime, name: Lime, work: spread, ${span}, apply: { product: lime, rate: 40 lb/1000 sqft, by: soil-test } }\n`;
    const lawn = 'soil: { tests: [{ date: 2027-02-01, pH: 5.5, lime: 20 lb/1000 sqft }] }\n';
    const bare = application(await season('', { lawn, steps }), 'lime');
    const half = application(await season(done('lime', 'pass: 1, used: 20 lb'), { lawn, steps }), 'lime');
    expect(bare.totals[0]?.amountKg).toBeCloseTo(40 * LB, 5);
    expect(half.totals[0]?.amountKg).toBeCloseTo(20 * LB, 5);
    expect(half.soilTest[0]?.doneGPerM2).toBeCloseTo(half.soilTest[0]?.nowGPerM2 ?? 0, 6);
    expect(half.soilTest[0]?.leftGPerM2).toBeCloseTo(0, 6);
  });
});
