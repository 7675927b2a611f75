/** What a step puts down, from the lawn's own products: one test for each sentence on products and pesticides. */
import { describe, expect, test } from 'vitest';
import { application, feed, plan, work } from './plan-kit.ts';

const LB = 4.88243; // g/m² in 1 lb/1000 sqft
const GRANULE = '{ id: granule, form: granular, pesticide: pre-emergent, actives: { prodiamine: 0.4% }';
const barrier = work(
  'a',
  'spread',
  '05-01',
  '05-20',
  ', apply: { pesticide: pre-emergent, actives: { prodiamine: { compare: 0.75 lb/acre } } }',
);
const season = (steps: string, products: string, more = '', program = '', files: Record<string, string> = {}) =>
  plan({ steps, lawn: `products:\n${products}${more}`, program, files });
const codes = (planned: Awaited<ReturnType<typeof season>>) => planned.problems.map(({ code }) => code);
const on = (planned: Awaited<ReturnType<typeof season>>) => application(planned, 'a').areas[0];

describe('a pesticide', () => {
  test("takes its rate from the lawn's label entry", async () => {
    const planned = await season(barrier, `  - ${GRANULE}, label: { rate: 4 lb/1000 sqft } }\n`);
    expect(on(planned)).toMatchObject({ product: 'granule', amount: '4 lb' });
  });
  test('a rate of the program is passed over, and that is said', async () => {
    const step = work('a', 'spread', '05-01', '05-20', ', apply: { product: granule, rate: 9 lb/1000 sqft }');
    const planned = await season(step, `  - ${GRANULE}, label: { rate: 4 lb/1000 sqft } }\n`);
    expect(on(planned)?.amount).toBe('4 lb');
    expect(codes(planned)).toContain('pesticide-rate');
  });
  test('without such a product the dates are planned and the amount reads "from your label"', async () => {
    const planned = await season(barrier, '  - { id: urea, form: granular, analysis: 46-0-0 }\n');
    expect(application(planned, 'a').date).toBe('2027-05-01');
    expect(on(planned)).toMatchObject({ product: null, amountKg: null, amount: 'from your label' });
    expect(codes(planned)).toContain('no-label');
  });
  test('water-in and re-entry are the ones of the label', async () => {
    const label = 'label: { rate: 4 lb/1000 sqft, water-in: { depth: 0.3 in, within: 2 d }, re-entry: Off until dry. }';
    const planned = await season(
      barrier.replace(' }\n', ', water-in: { depth: 1 in, within: 9 d } }\n'),
      `  - ${GRANULE}, ${label} }\n`,
    );
    const how = application(planned, 'a').how.join(' ');
    expect(how).toContain('0.3 in within 2 days');
    expect(how).not.toContain('9 days');
    expect(how).toContain('Off until dry.');
  });
  test('is rounded downward', async () => {
    const planned = await season(barrier, `  - ${GRANULE}, label: { rate: 4.999 lb/1000 sqft } }\n`);
    expect(on(planned)?.amount).toBe('4 lb 15.5 oz');
  });
  test('tells what it brings of its active beside the published rate, and which limits its entry leaves out', async () => {
    // 4 lb/1000 sqft × 0.4 % × 43.56 = 0.697 lb/acre.
    const planned = await season(barrier, `  - ${GRANULE}, label: { rate: 4 lb/1000 sqft, interval: 60 d } }\n`);
    const how = application(planned, 'a').how.join(' ');
    expect(how).toContain('0.697 lb/acre of prodiamine, beside 0.75 lb/acre');
    expect(how).toContain('does not say per-application, per-year:');
  });
  // 8 lb/1000 sqft × 0.4 % × 43.56 = 1.39 lb/acre, 1.9 times 0.75; 6 lb are 1.05, 1.4 times.
  test.each([
    ['8', true],
    ['6', false],
  ])('%s lb/1000 sqft being far above the published rate is %s', async (rate, is) => {
    const planned = await season(barrier, `  - ${GRANULE}, label: { rate: ${rate} lb/1000 sqft } }\n`);
    expect(codes(planned).includes('active-far-above')).toBe(is);
  });
  test('a grass that the label does not name is an error', async () => {
    const other = 'label: { rate: 4 lb/1000 sqft, grasses: [bermudagrass] }';
    await expect(season(barrier, `  - ${GRANULE}, ${other} }\n`)).rejects.toThrow('label-grass');
  });
});

describe('a nutrient', () => {
  test('an unknown slow share is none: all nitrogen counts as quick', async () => {
    const program = 'nitrogen: { single: { quick: 0.4 lb/1000 sqft } }\n';
    const quick = await season(
      feed('a', '05-01', '05-20', '', '0.8'),
      '  - { id: x, form: granular, analysis: 20-0-0 }\n',
      '',
      program,
    );
    expect(application(quick, 'a').nutrientsGPerM2.N / LB).toBeCloseTo(0.4, 4);
    const half = '  - { id: x, form: granular, analysis: 20-0-0, slow-share: 50% }\n';
    const slow = await season(feed('a', '05-01', '05-20', '', '0.8'), half, '', program);
    expect(application(slow, 'a').nutrientsGPerM2.N / LB).toBeCloseTo(0.8, 4);
  });
  test('a preferred slow share chooses the product', async () => {
    const both =
      '  - { id: quick, form: granular, analysis: 46-0-0 }\n  - { id: slow, form: granular, analysis: 20-0-0, slow-share: 30% }\n';
    const plain = feed('a', '05-01', '05-20');
    const prefers = plain.replace('} } }\n', '}, prefer: { slow-share: 25% } } }\n');
    expect(on(await season(plain, both))?.product).toBe('quick');
    expect(on(await season(prefers, both))?.product).toBe('slow');
  });
  test('a product without it is none for it', async () => {
    const planned = await season(feed('a', '05-01', '05-20'), '  - { id: potash, form: granular, analysis: 0-0-50 }\n');
    expect(on(planned)).toMatchObject({ product: null, amountKg: null });
    expect(codes(planned)).toContain('no-product');
  });
  test('a liquid without density, and a bag rate without a bag, leave the amount open', async () => {
    expect(
      codes(await season(feed('a', '05-01', '05-20'), '  - { id: x, form: liquid, analysis: 12-4-8 }\n')),
    ).toContain('no-density');
    const bag = work('a', 'spread', '05-01', '05-20', ', apply: { bag-rate: x }');
    expect(codes(await season(bag, '  - { id: x, form: granular, analysis: 12-4-8 }\n'))).toContain('no-bag-rate');
  });
  test('the yearly range begins with a note, and what was done above it is a warning', async () => {
    const program = 'nitrogen: { yearly: { from: 2 lb/1000 sqft, to: 3 lb/1000 sqft } }\n';
    const urea = '  - { id: urea, form: granular, analysis: 46-0-0 }\n';
    const under = await season(feed('a', '05-01', '05-20'), urea, '', program);
    expect(under.problems.find(({ code }) => code === 'under-yearly')?.severity).toBe('note');
    const journal = { 'lawn.journal.yaml': '- { date: 2027-03-01, work: spread, product: urea, used: 8 lb }\n' };
    const over = await season(feed('a', '05-01', '05-20'), urea, '', program, journal);
    expect(over.problems.find(({ code }) => code === 'over-yearly')?.severity).toBe('warning');
    expect(application(over, 'a').status).toBe('dropped');
  });
});

test('of two products files the later wins, and the lawn wins over both', async () => {
  const file = (analysis: string) =>
    `kind: products\nversion: 1\nproducts: { feed: { form: granular, analysis: ${analysis} } }\n`;
  const files = { 'one.yaml': file('10-0-0'), 'two.yaml': file('20-0-0') };
  const amount = async (products: string) =>
    on(await plan({ steps: feed('a', '05-01', '05-20'), lawn: `products: [${products}]\n`, files }))?.amount;
  expect(await amount('one.yaml, two.yaml')).toBe('2.5 lb');
  expect(await amount('one.yaml, two.yaml, { id: feed, form: granular, analysis: 50-0-0 }')).toBe('1 lb');
});

test('why: the rule, the value today, the usual, the expected day with its spread, and the limit that held', async () => {
  const step =
    '  - { id: a, name: A, work: spread, window: { opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 15 C, from: 02-01 } } }, apply: { nutrient: { N: 2 lb/1000 sqft } } }\n';
  const planned = await season(
    step,
    '  - { id: urea, form: granular, analysis: 46-0-0 }\n',
    'local-rules: [{ limit: N, single: 0.7 lb/1000 sqft, because: "town law" }]\n',
  );
  const { why } = application(planned, 'a');
  expect(why[0]).toMatch(/^Opens when the 5-day mean of soil temperature at 2 in rises to 59 °F/);
  expect(why[1]).toMatch(/^Soil at 2 in \(5-day mean\), Apr 2: \d+ °F; usual \d+ °F\.$/);
  expect(why[2]).toMatch(/^Expected to open about .* \(8 in 10: .* to .*\), .*usual/);
  expect(why.at(-1)).toMatch(/town law/);
});

describe('the usual cautions fit the form of the product', () => {
  const cautions = async (products: string) =>
    application(await season(feed('a', '05-01', '05-20'), products), 'a').cautions.join(' ');
  const dry = '  - { id: x, form: granular, analysis: 20-0-0 }\n';
  const liquid = '  - { id: x, form: liquid, analysis: 20-0-0, density: 1.2 kg/L }\n';
  test('granules are swept off paving', async () => expect(await cautions(dry)).toMatch(/granules/));
  test('and do not burn as a mix', async () => expect(await cautions(dry)).not.toMatch(/mix/));
  test('a liquid feed burns as a mix', async () => expect(await cautions(liquid)).toMatch(/mix burns/));
  test('and has no granules', async () => expect(await cautions(liquid)).not.toMatch(/granules/));
});
