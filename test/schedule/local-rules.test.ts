/** Rules of the place: products, nutrients, shares and periods; legal caps beside the program's own range. */
import { describe, expect, test } from 'vitest';
import { application, feed, PRODUCTS, plan } from './plan-kit.ts';

const LB = 4.88243; // g/m² in 1 lb/1000 sqft
const TWO = feed('a', '05-01', '05-10', '', '0.9') + feed('b', '07-01', '07-10', '', '0.9');
const season = (lawn: string, steps = TWO, program = '', files: Record<string, string> = {}) =>
  plan({ steps, lawn: PRODUCTS + lawn, program, files });
const nitrogen = (planned: Awaited<ReturnType<typeof plan>>, id: string) =>
  application(planned, id).nutrientsGPerM2.N / LB;

describe('what is forbidden', () => {
  test('all year, by substance: another product is taken', async () => {
    const complete =
      '  - { id: complete, form: granular, analysis: 20-10-10, slow-share: 50% }\nshelf: { complete: 50 lb }\n';
    const planned = await season(`${complete}local-rules: [{ forbid: [phosphorus] }]\n`);
    expect(application(planned, 'a').areas[0]?.product).toBe('urea');
  });
  test('unless a soil test is low', async () => {
    const complete =
      '  - { id: complete, form: granular, analysis: 20-10-10, slow-share: 50% }\nshelf: { complete: 50 lb }\n';
    const tested = 'soil: { tests: [{ date: 2027-02-01, phosphorus: low }] }\n';
    const rule = 'local-rules: [{ forbid: [phosphorus], unless: soil-test-low }]\n';
    expect(application(await season(complete + tested + rule), 'a').areas[0]?.product).toBe('complete');
    expect(application(await season(complete + rule), 'a').areas[0]?.product).toBe('urea');
  });
  describe('phosphorus', () => {
    // Shapes read from New York ECL 17-2103 and Vermont Act 37: only by soil test or on a new lawn; above 0.67 % phosphate.
    const complete = (analysis: string) =>
      `  - { id: complete, form: granular, analysis: ${analysis} }\nshelf: { complete: 50 lb }\n`;
    const rule = 'local-rules: [{ forbid: [phosphorus], above: 0.67%, unless: [soil-test-low, new-lawn] }]\n';
    const taken = async (lawn: string) => application(await season(lawn + rule), 'a').areas[0]?.product;
    test('is let through on a new lawn', async () => {
      expect(await taken(`${complete('20-10-10')}turf: { sodded: 2026-09-01 }\n`)).toBe('complete');
      expect(await taken(`${complete('20-10-10')}turf: { sodded: 2025-09-01 }\n`)).toBe('urea');
    });
    const autumn = feed('a', '09-20', '09-30');
    test('is judged by the day of the work, not by the day of the plan', async () => {
      const lawn = `${complete('20-10-10')}turf: { seeded: 2026-09-15 }\n${rule}`;
      const planned = application(await season(lawn, autumn), 'a');
      expect([planned.areas[0]?.product, planned.date]).toEqual(['urea', '2027-09-20']);
    });
    test('is judged by a pinned day', async () => {
      const pinned = 'steps: { a: { date: 2027-09-12 } }\n';
      const sown = `${complete('20-10-10')}turf: { seeded: 2026-09-15 }\n${rule}`;
      expect(application(await season(sown + pinned, autumn), 'a').areas[0]?.product).toBe('complete');
    });
    test('is let through where the test is low', async () => {
      const low = 'soil: { tests: [{ date: 2027-02-01, phosphorus: low }] }\n';
      expect(await taken(complete('20-10-10') + low)).toBe('complete');
    });
    test('is let through where there is hardly any of it', async () => {
      expect(await taken(complete('20-0.6-0'))).toBe('complete');
      expect(await taken(complete('20-0.7-0'))).toBe('urea');
    });
  });
  test('a product by its id, in a period', async () => {
    const planned = await season('local-rules: [{ forbid: [urea], between: [04-20, 05-05] }]\n');
    expect(application(planned, 'a').date).toBe('2027-05-06');
  });
  test('a slow share that is required', async () => {
    const slow = '  - { id: slow, form: granular, analysis: 20-0-0, slow-share: 40% }\n';
    const planned = await season(`${slow}local-rules: [{ require: { slow-share: 30% } }]\n`);
    expect(application(planned, 'a').areas[0]?.product).toBe('slow');
  });
  test('nothing suits: the amount is left open, never broken', async () => {
    const planned = await season('local-rules: [{ require: { slow-share: 30% } }]\n');
    expect(application(planned, 'a').areas[0]?.product).toBe(null);
    expect(planned.problems.map(({ code }) => code)).toContain('no-product');
  });
});

describe('caps', () => {
  test("a place's yearly cap holds the later feed back", async () => {
    const planned = await season('local-rules: [{ limit: N, yearly: 1.5 lb/1000 sqft, because: "town law" }]\n');
    expect(nitrogen(planned, 'a')).toBeCloseTo(0.9, 4);
    expect(nitrogen(planned, 'b')).toBeCloseTo(0.6, 4);
    expect(application(planned, 'b').why.join(' ')).toContain('town law');
    expect(planned.limits).toMatchObject([{ name: 'nitrogen-yearly-local', ok: true }]);
  });
  test("a place's single cap holds each", async () => {
    const planned = await season('local-rules: [{ limit: N, single: 0.7 lb/1000 sqft }]\n');
    expect([nitrogen(planned, 'a'), nitrogen(planned, 'b')].map((n) => n.toFixed(3))).toEqual(['0.700', '0.700']);
  });
  test('quick nitrogen has a cap of its own', async () => {
    const planned = await season('local-rules: [{ limit: quick-N, single: 0.5 lb/1000 sqft }]\n');
    expect(nitrogen(planned, 'a')).toBeCloseTo(0.5, 4);
  });
  test('a cap in a period counts that period alone', async () => {
    const planned = await season('local-rules: [{ limit: N, yearly: 0.5 lb/1000 sqft, between: [06-01, 09-30] }]\n');
    expect(nitrogen(planned, 'a')).toBeCloseTo(0.9, 4);
    expect(nitrogen(planned, 'b')).toBeCloseTo(0.5, 4);
  });
  test("the program's range is a guard rail as well", async () => {
    const program = 'nitrogen: { yearly: { to: 1.2 lb/1000 sqft }, single: { total: 0.8 lb/1000 sqft } }\n';
    const planned = await season('', TWO, program);
    expect([nitrogen(planned, 'a'), nitrogen(planned, 'b')].map((n) => n.toFixed(3))).toEqual(['0.800', '0.400']);
    expect(planned.problems.map(({ code }) => code)).toContain('rate-held');
  });
  test('what was done counts, on the areas it was done', async () => {
    const areas = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
    const rule = 'local-rules: [{ limit: N, yearly: 1.5 lb/1000 sqft }]\n';
    // 2 lb of urea on 1000 sqft are 0.92 lb N/1000 sqft.
    const journal = '- { date: 2027-03-01, work: spread, product: urea, used: 2 lb, areas: [front] }\n';
    const planned = await season(areas + rule, TWO, '', { 'lawn.journal.yaml': journal });
    const a = application(planned, 'a').areas.map(({ id, amountKg }) => [
      id,
      (((amountKg ?? 0) * 0.46) / 92.903 / LB) * 1000,
    ]);
    expect(a.map(([id, n]) => [id, Number(n).toFixed(2)])).toEqual([
      ['front', '0.58'],
      ['back', '0.90'],
    ]);
    expect(
      application(planned, 'b').areas.map(({ amountKg }) => Number((((amountKg ?? 0) * 460) / 92.903 / LB).toFixed(2))),
    ).toEqual([0, 0.6]);
  });
  test('a feed of which nothing is left is dropped with the limit that held', async () => {
    const planned = await season('local-rules: [{ limit: N, yearly: 0.9 lb/1000 sqft }]\n');
    expect(application(planned, 'b')).toMatchObject({ status: 'dropped', date: null });
    expect(application(planned, 'b').why.join(' ')).toContain('nitrogen-yearly-local');
  });
});
