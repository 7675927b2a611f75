/** Limits of labels: for a product, and for an active across all products that hold it; per area, planned and done. */
import { describe, expect, test } from 'vitest';
import { missingLimits } from '../../src/schedule/label-caps.ts';
import { application, feed, plan, work } from './plan-kit.ts';

const share = (value: number) => ({ by: 'mass', value }) as const;
const AREAS = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
const barrier = (id: string, product: string, opens: string, closes: string) =>
  work(id, 'spread', opens, closes, `, apply: { bag-rate: ${product} }`);
const TWO = barrier('a', 'granule', '05-01', '05-20') + barrier('b', 'spray', '08-01', '08-20');

/** A granule of 0.4 % and a spray of 4 lb/gal, both of prodiamine. 4 lb/1000 sqft of the granule bring 0.697 lb/acre of it. */
const products = (granule = '', spray = '') => `products:
  - id: granule
    form: granular
    pesticide: pre-emergent
    actives: { prodiamine: 0.4% }
    label: { rate: 4 lb/1000 sqft${granule} }
  - id: spray
    form: liquid
    pesticide: pre-emergent
    actives: { prodiamine: 4 lb/gal }
    label: { rate: 0.5 floz/1000 sqft${spray} }
`;
const season = (lawn: string, steps = TWO, journal = '') =>
  plan({ steps, lawn, files: journal === '' ? {} : { 'lawn.journal.yaml': journal } });
const PER_ACRE = 453.59237 / 4046.8564224; // g/m² in 1 lb/acre

describe('the yearly limit of a product', () => {
  const steps = barrier('a', 'granule', '05-01', '05-20') + barrier('b', 'granule', '08-01', '08-20');
  test('drops what does not fit whole: less than the rate of the label may do nothing', async () => {
    const planned = await season(products(', per-year: 7.9 lb/1000 sqft'), steps);
    expect(application(planned, 'a').date).toBe('2027-05-01');
    expect(application(planned, 'b')).toMatchObject({ status: 'dropped', date: null });
  });
  test('lets through what fits', async () =>
    expect(application(await season(products(', per-year: 8 lb/1000 sqft'), steps), 'b').date).toBe('2027-08-01'));
  test('counts what was done, area by area', async () => {
    const done = '- { date: 2027-03-20, work: spread, product: granule, used: 5 lb, areas: [front] }\n';
    const planned = await season(
      products(', per-year: 8 lb/1000 sqft') + AREAS,
      barrier('a', 'granule', '05-01', '05-20'),
      done,
    );
    const amounts = application(planned, 'a').areas.map(({ id, amountKg }) => [id, (amountKg ?? 0) > 0]);
    expect(amounts).toEqual([
      ['front', false],
      ['back', true],
    ]);
  });
  test('stands in the plan with what is planned, done and left', async () => {
    const done = '- { date: 2027-03-20, work: spread, product: granule, used: 1 lb }\n';
    const planned = await season(
      products(', per-year: 9 lb/1000 sqft'),
      barrier('a', 'granule', '05-01', '05-20'),
      done,
    );
    const [limit] = planned.limits;
    const pounds = [limit?.plannedGPerM2, limit?.doneGPerM2, limit?.limitGPerM2, limit?.leftGPerM2];
    expect(pounds.map((grams) => Number(((grams ?? 0) / 4.88243).toFixed(4)))).toEqual([4, 1, 9, 4]);
    expect(limit).toMatchObject({ by: 'label', of: { product: 'granule' }, ok: true });
  });
  test('by volume is counted by volume', async () => {
    const planned = await season(products('', ', per-year: 2 floz/1000 sqft'));
    const [limit] = planned.limits.filter(({ of }) => of.product === 'spray');
    expect(limit).toMatchObject({ limitGPerM2: null, ok: true });
    expect((limit?.leftMlPerM2 ?? 0) / (limit?.limitMlPerM2 ?? 1)).toBeCloseTo(0.75, 6);
  });
});

describe('an active in several products', () => {
  // 0.697 lb/acre of the granule and 4 × 0.5/128 × 43.56 = 0.681 of the spray.
  test('counts across all of them against a limit that one label states', async () => {
    const planned = await season(products(', active-per-year: { prodiamine: 1.3 lb/acre }'));
    expect(application(planned, 'b').status).toBe('dropped');
    expect(
      (await season(products(', active-per-year: { prodiamine: 1.4 lb/acre }'))).applications[1]?.date,
    ).not.toBeNull();
  });
  test('of two labels the strictest holds', async () => {
    const planned = await season(
      products(', active-per-year: { prodiamine: 1.5 lb/acre }', ', active-per-year: { prodiamine: 1.3 lb/acre }'),
    );
    expect(application(planned, 'b').status).toBe('dropped');
  });
  test('a limit on one product limits the active in the other by its content', async () => {
    expect(application(await season(products(', per-year: 7.8 lb/1000 sqft')), 'b').status).toBe('dropped');
    expect(application(await season(products(', per-year: 8 lb/1000 sqft')), 'b').date).toBe('2027-08-01');
  });
  test('stands in the plan in what it brings', async () => {
    const planned = await season(products(', active-per-year: { prodiamine: 1.5 lb/acre }'));
    const [limit] = planned.limits.filter(({ of }) => of.active === 'prodiamine');
    expect((limit?.plannedGPerM2 ?? 0) / PER_ACRE).toBeCloseTo(4 * 0.004 * 43.56 + ((4 * 0.5) / 128) * 43.56, 4);
    expect((limit?.leftGPerM2 ?? 0) / PER_ACRE).toBeCloseTo(1.5 - 1.3776, 3);
  });
  test('that the label limits at once, drops what goes over', async () => {
    const planned = await season(products(', active-per-application: { prodiamine: 0.69 lb/acre }'));
    expect(application(planned, 'a').status).toBe('dropped');
    expect(application(planned, 'b').status).toBe('expected');
  });
  test('keeps the interval of either label between them', async () => {
    const close = barrier('a', 'granule', '05-01', '05-20') + barrier('b', 'spray', '05-10', '08-20');
    expect(application(await season(products(', interval: 60 d'), close), 'b').date).toBe('2027-06-30');
  });
});

describe('what a label entry does not say', () => {
  const codes = ({ problems }: Awaited<ReturnType<typeof season>>) => problems.map(({ code }) => code);
  const one = barrier('a', 'granule', '05-01', '05-20');
  test('is said, not guessed', async () => {
    const planned = await season(products(', per-year: 8 lb/1000 sqft'), one);
    const [said] = planned.problems.filter(({ code }) => code === 'label-limit-missing');
    expect(said).toMatchObject({ severity: 'note' });
    expect(said?.message).toMatch(/per-application, interval/);
    expect(said?.message).not.toContain('per-year');
  });
  test('nothing is said where all of it stands there', async () => {
    const all = ', per-application: 4 lb/1000 sqft, per-year: 8 lb/1000 sqft, interval: 60 d';
    expect(codes(await season(products(all), one))).not.toContain('label-limit-missing');
  });
  test('an active by share in a liquid without density cannot be counted', async () => {
    const thin = products().replace('4 lb/gal', '40%');
    expect(codes(await season(thin))).toContain('active-unknown');
    expect(codes(await season(products()))).not.toContain('active-unknown');
  });
});

describe('limits that a label entry lacks', () => {
  const label = {
    rate: { by: 'mass', value: 0.01 },
    interval: 60,
    perApplication: { by: 'mass', value: 0.01 },
  } as const;
  const product = { id: 'p', form: 'granular', actives: { a: share(0.1), b: share(0.2) } } as const;
  const yearly = (activePerYear: Record<string, number>, more = {}) =>
    missingLimits({ ...product, ...more, label: { ...label, activePerYear } });
  test('are told of the active of two that is not limited', () => {
    expect(yearly({ a: 0.001 })).toEqual([{ key: 'per-year', active: 'b' }]);
    expect(yearly({ a: 0.001, b: 0.001 })).toEqual([]);
    expect(yearly({})).toEqual([{ key: 'per-year', active: null }]);
  });
  test('are told where an active is limited that the product does not name', () =>
    expect(yearly({ c: 0.001 }, { actives: undefined, pesticide: 'insecticide' })).toEqual([
      { key: 'per-year', active: null },
    ]));
});

describe('what cannot be counted is said', () => {
  const codes = ({ problems }: Awaited<ReturnType<typeof season>>) => problems.map(({ code }) => code);
  const one = barrier('a', 'granule', '05-01', '05-20');
  test('an application by volume of what is used by weight', async () => {
    const label = products(', per-application: 70 floz/1000 sqft');
    expect(codes(await season(label, one))).toContain('label-measure');
    const dense = label.replace('    actives: { prod', '    density: 8 lb/gal\n    actives: { prod');
    expect(codes(await season(dense, one))).not.toContain('label-measure');
    expect(codes(await season(products(', per-application: 4 lb/1000 sqft'), one))).not.toContain('label-measure');
  });
  test('a year by volume of what is used by weight', async () => {
    const label = products(', per-year: 40 floz/1000 sqft');
    expect(codes(await season(label, one))).toContain('label-measure');
    const dense = label.replace(
      '    actives: { prodiamine: 0.4% }',
      '    density: 8 lb/gal\n    actives: { prodiamine: 0.4% }',
    );
    expect(codes(await season(dense, one))).not.toContain('label-measure');
  });
  test('and with a density it is held: 40 fl oz at 8 lb/gal are 2.5 lb, 4 are put down at once', async () => {
    const dense = products(', per-year: 40 floz/1000 sqft').replace(
      '    actives',
      '    density: 8 lb/gal\n    actives',
    );
    expect(application(await season(dense, one), 'a').status).toBe('dropped');
  });
  test('work of unknown amount, outside the program or with another product', async () => {
    const entries = ['work: spread', 'step: a, product: spray'];
    for (const entry of entries) {
      const text = `- { date: 2027-03-20, ${entry}, product: spray }\n`.replace('product: spray, product', 'product');
      expect(codes(await season(products(), one, text))).toContain('use-unknown');
    }
  });
  test('work that the plan knows the amount of counts as planned', async () => {
    const planned = await season(products(', per-year: 8 lb/1000 sqft'), one, '- { date: 2027-03-20, step: a }\n');
    expect(codes(planned)).not.toContain('use-unknown');
    expect((planned.limits[0]?.doneGPerM2 ?? 0) / 4.88243).toBeCloseTo(4, 4);
  });
});

describe('a feed that cannot be counted is told', () => {
  const tonic =
    'products: [{ id: tonic, form: liquid, analysis: 12-0-0 }, { id: urea, form: granular, analysis: 46-0-0 }]\n';
  const limit = 'local-rules: [{ limit: N, yearly: 3 lb/1000 sqft }]\n';
  const codes = async (lawn: string, entry: string) =>
    (await season(lawn, feed('a', '05-01', '05-20'), `- { date: 2027-03-20, work: spread, ${entry} }\n`)).problems.map(
      ({ code }) => code,
    );
  test('a liquid without a density', async () => {
    expect(await codes(tonic + limit, 'product: tonic, used: 5 gal')).toContain('nutrients-unknown');
    const dense = tonic.replace('12-0-0', '12-0-0, density: 10 lb/gal');
    expect(await codes(dense + limit, 'product: tonic, used: 5 gal')).not.toContain('nutrients-unknown');
  });
  test('one of which nobody wrote how much, where something limits it', async () => {
    expect(await codes(tonic + limit, 'product: urea')).toContain('use-unknown');
    expect(await codes(tonic, 'product: urea')).not.toContain('use-unknown');
  });
});

describe('passes of which nobody wrote how much', () => {
  const steps = barrier('a', 'granule', '03-01', '05-20');
  const pounds = async (...passes: number[]) => {
    const entries = passes.map((pass) => `- { date: 2027-03-20, step: a, pass: ${pass} }\n`);
    const { limits } = await season(products(', per-year: 8 lb/1000 sqft'), steps, entries.join(''));
    return (limits[0]?.doneGPerM2 ?? 0) / 4.88243;
  };
  test('are each half of the plan', async () => expect(await pounds(1)).toBeCloseTo(2, 4));
  test('are together the whole of it', async () => expect(await pounds(1, 2)).toBeCloseTo(4, 4));
  test('are no more than that', async () => expect(await pounds(1, 1, 2)).toBeCloseTo(4, 4));
});

describe('a period across New Year', () => {
  const urea = 'products: [{ id: urea, form: granular, analysis: 46-0-0 }]\n';
  const rule = 'local-rules: [{ limit: N, yearly: 0.5 lb/1000 sqft, between: [12-01, 03-31] }]\n';
  const spring = feed('a', '03-14', '03-20');
  const autumn = feed('b', '12-05', '12-20');
  // 2 lb of urea on 1000 sq ft bring 0.92 lb of nitrogen.
  const winter = (date: string) => `- { date: ${date}, work: spread, product: urea, used: 2 lb }\n`;
  const asOf = '2027-02-01';
  const planned = (steps: string, journal: string) =>
    plan({ steps, lawn: urea + rule, asOf, files: { 'lawn.journal.yaml': journal } });
  test('is one, however the season is cut', async () => {
    const { limits, applications } = await planned(spring, winter('2026-12-20'));
    expect(applications[0]?.status).toBe('dropped');
    expect(limits[0]).toMatchObject({ from: '2026-12-01', to: '2027-03-31', ok: false });
    expect((limits[0]?.doneGPerM2 ?? 0) / 4.88243).toBeCloseTo(0.92, 4);
  });
  test('counts nothing of the winter before', async () =>
    expect(application(await planned(spring, winter('2026-03-20')), 'a').status).toBe('expected'));
  test('does not count with the next winter of the same season', async () => {
    const season = await planned(spring + autumn, '');
    expect(season.applications.map(({ nutrientsGPerM2: { N } }) => (N / 4.88243).toFixed(2))).toEqual(['0.50', '0.50']);
    expect(season.limits.map(({ from, plannedGPerM2 }) => [from, ((plannedGPerM2 ?? 0) / 4.88243).toFixed(2)])).toEqual(
      [
        ['2026-12-01', '0.50'],
        ['2027-12-01', '0.50'],
      ],
    );
  });
});

test('a cap in a period counts the days of the period alone', async () => {
  const urea = 'products: [{ id: urea, form: granular, analysis: 46-0-0 }]\n';
  const rule = 'local-rules: [{ limit: N, yearly: 1 lb/1000 sqft, between: [06-01, 09-30] }]\n';
  const steps = ['05-01', '07-01'].map((day, i) =>
    work(`f${i}`, 'spread', day, `${day.slice(0, 2)}-10`, ', apply: { nutrient: { N: 0.8 lb/1000 sqft } }'),
  );
  const { limits } = await season(urea + rule, steps.join(''));
  expect((limits[0]?.plannedGPerM2 ?? 0) / 4.88243).toBeCloseTo(0.8, 4);
});
