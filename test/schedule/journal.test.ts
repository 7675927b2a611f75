/** What the journal holds is history: it does not move, and what follows counts from what is in force of it. */
import { describe, expect, test } from 'vitest';
import { application, plan } from './plan-kit.ts';

const AREAS = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
const UREA =
  'products: [{ id: urea, form: granular, analysis: 46-0-0, package: { size: 10 lb } }]\nshelf: { counted: 2027-02-01, urea: 3 lb }\n';
const FEED =
  '  - { id: feed, name: Feed, work: spread, window: { opens: { date: 04-01 }, closes: { date: 05-20 } }, apply: { nutrient: { N: 0.46 lb/1000 sqft }, source: common-practice } }\n';
const NEXT =
  '  - { id: next, name: Next, work: other, window: { opens: { after: { step: feed, wait: 30 d } }, closes: { date: 10-01 } } }\n';
const season = (journal: string, asOf = '2027-04-20') =>
  plan({
    steps: FEED + NEXT,
    lawn: AREAS + UREA,
    asOf,
    files: journal === '' ? {} : { 'lawn.journal.yaml': journal },
  });
const DONE = '- { id: a, date: 2027-04-10, step: feed, used: 2 lb }\n';

describe('done work', () => {
  test.each(['2027-04-10', '2027-06-01', '2027-11-30'])('stays on its day in a plan of %s', async (asOf) => {
    const planned = await season(DONE, asOf);
    expect(application(planned, 'feed')).toMatchObject({ status: 'done', date: '2027-04-10' });
    expect(application(planned, 'next').window.opens.p50).toBe('2027-05-10');
  });
  test('is not known before its day', async () =>
    expect(application(await season(DONE, '2027-04-09'), 'feed').status).not.toBe('done'));
});

describe('an entry that is corrected', () => {
  const undone = `${DONE}- { date: 2027-04-12, corrects: a, undo: true }\n`;
  test('and taken back is as if it had never been written', async () => {
    const [planned, bare] = [await season(undone), await season('')];
    expect(planned.applications).toEqual(bare.applications);
    expect(planned.limits).toEqual(bare.limits);
    expect(planned.shopping).toEqual(bare.shopping);
  });
  test('counts as its correction says', async () => {
    const planned = await season(`${DONE}- { date: 2027-04-14, step: feed, used: 1 lb, corrects: a }\n`);
    expect(application(planned, 'feed').date).toBe('2027-04-14');
    expect(application(planned, 'next').window.opens.p50).toBe('2027-05-14');
    expect(planned.shelf[0]?.kg).toBeCloseTo(2 * 0.45359237, 9);
  });
});

describe('partly done work', () => {
  test('asks only for what is left of it', async () => {
    const planned = await season('- { date: 2027-04-10, step: feed, areas: [front], used: 1 lb }\n');
    const feed = application(planned, 'feed');
    expect([feed.areasDone, feed.status]).toEqual([['front'], 'due']);
    // 0.46 lb of nitrogen on 1000 sq ft are 1 lb of 46-0-0; 2 lb are left on the shelf.
    expect(feed.totals[0]?.amountKg).toBeCloseTo(0.45359237, 6);
    expect(planned.shopping[0]?.needKg).toBeCloseTo(0.45359237, 6);
    expect(planned.shopping[0]?.packages).toEqual([]);
  });
});
