/** Published examples of spreaders: swath, courses, calibration, half passes; through the functions and the command. */
import { describe, expect, test } from 'vitest';
import { courseLength, deliveredRate, keepsSetting, passesAcross } from '../../src/amounts/spreader/calibration.ts';
import { effectiveSwath } from '../../src/amounts/spreader/swath-test.ts';
import { LB, LB_PER_1000_SQFT, SQFT } from './pounds.ts';
import { spreaderJob } from './spreader-job.ts';

const FT = 0.3048;
const MPH = (5280 * FT) / 3600;
/** Allowed against the exact value. */
const within = (value: number, exact: number) => expect(Math.abs(value / exact - 1)).toBeLessThanOrEqual(0.005);

// read: Ohio State Univ. Extension, Bulletin 817, ohioline.osu.edu/b817/b817_13.html: 4 in the centre and 2 at 6 ft on
// either side is a swath of 12 ft; passes lie 12 ft apart.
describe('effective swath (Ohio State, Bulletin 817)', () => {
  /** Pans 1 ft apart whose catch falls off straight from 4 in the middle by a third of one a foot. */
  const PANS = Array.from({ length: 21 }, (_, i) => 4 - Math.abs(i - 10) / 3);
  test('of pans 1 ft apart, half of the centre at 6 ft', () => {
    within(effectiveSwath({ spacing: FT, catches: PANS }).swath ?? 0, 12 * FT);
  });
  test('of three pans 6 ft apart', () => {
    within(effectiveSwath({ spacing: 6 * FT, catches: [2, 4, 2] }).swath ?? 0, 12 * FT);
  });
  test('by the command, from pans in the lawn file', async () => {
    const catches = PANS.map((one) => one.toFixed(3)).join(', ');
    const { spreader } = await spreaderJob({ spreader: `{ pans: { spacing: 1 ft, catches: [${catches}] } }` });
    within(spreader.swathM, 12 * FT);
    expect(spreader.swathFrom).toBe('pans');
  });
  test('passes lie 12 ft apart, by the command', async () => {
    const { areas } = await spreaderJob({
      spreader: '{ pans: { spacing: 6 ft, catches: [2, 4, 2] } }',
      area: '{ rectangle: [120 ft, 72 ft] }',
    });
    for (const { apartM } of areas[0]?.passes ?? []) within(apartM ?? 0, 12 * FT);
  });
});

// read: UMass, ag.umass.edu, rotary spreader fact sheet: 20-5-10 at 1.0 lb N is 5.00 lb/1000 ft², 2.5 in each of two passes;
// a delivered 4.75 to 5.25 for 5.00 is near enough.
describe('half passes and tolerance (UMass, rotary spreader)', () => {
  test('each of two passes puts down 2.5 lb/1000 ft², by the command', async () => {
    const { areas, settings } = await spreaderJob({ spreader: '{ swath: 10 ft }', analysis: '20-5-10' });
    for (const { amountKg } of areas[0]?.passes ?? []) within(amountKg ?? 0, 2.5 * LB);
    within(settings[0]?.passGPerM2 ?? 0, 2.5 * LB_PER_1000_SQFT);
  });
  test.each([
    [4.75, true],
    [5.25, true],
    [4.7, false],
    [5.3, false],
  ])('%f lb for 5.00 keeps the setting: %s', (delivered, keeps) => {
    expect(keepsSetting(delivered, 5)).toBe(keeps);
  });
  test('of a pass of 5.00 lb/1000 ft² the command keeps 4.75 to 5.25', async () => {
    const { settings } = await spreaderJob({ spreader: '{ swath: 10 ft }', analysis: '10-0-0' });
    const { course } = settings[0]!;
    within(course.deliversKg ?? 0, 5 * LB);
    within(course.leastKg ?? 0, 4.75 * LB);
    within(course.mostKg ?? 0, 5.25 * LB);
  });
});

describe('two half-rate passes, where the sources differ', () => {
  const AREA = '{ rectangle: [120 ft, 80 ft] }';
  // read: UMass; Univ. of Minnesota SULIS; Univ. of Illinois: at a right angle to one another.
  test('across one another (UMass, Minnesota, Illinois)', async () => {
    const { areas } = await spreaderJob({ spreader: '{ swath: 10 ft, passes: crossing }', area: AREA });
    expect(areas[0]?.passes.map(({ direction, lines }) => [direction, lines])).toEqual([
      ['lengthwise', 6],
      ['crosswise', 10],
    ]);
  });
  // read: Ohio State, Bulletin 817, b817_14 (research at LSU): half the rate at half the swath in parallel is better than a
  // right angle where the pattern is poor. The second way then lies between the lines of the first.
  test('parallel at half the swath (Ohio State, Bulletin 817)', async () => {
    const { areas } = await spreaderJob({ spreader: '{ swath: 10 ft, passes: parallel }', area: AREA });
    expect(areas[0]?.passes.map(({ direction, lines }) => [direction, lines])).toEqual([
      ['lengthwise', 6],
      ['between', 7],
    ]);
  });
});

describe('the length of a course', () => {
  test.each([
    // read-2: turf equipment manual; UGA (Reeves): 1000 ft² over the swath; 167 ft at 6 ft.
    ['UGA (Reeves)', 1000, 6, 166.667],
    // read: consumer handbook: a drop spreader covers 100 ft² over 66.7, 50 and 33.3 ft; the catch times 10 is that of 1000 ft².
    ['consumer handbook', 100, 1.5, 66.667],
    ['consumer handbook', 100, 2, 50],
    ['consumer handbook', 100, 3, 33.333],
  ])('%s: %i ft² at %f ft', async (_, sqft, swath, feet) => {
    within(courseLength(sqft * SQFT, swath * FT), feet * FT);
    const kind = sqft === 100 ? 'drop' : 'rotary';
    const { settings } = await spreaderJob({ spreader: `{ kind: ${kind}, swath: ${swath} ft }` });
    const { course } = settings[0]!;
    within(course.areaM2, sqft * SQFT);
    within(course.lengthM, feet * FT);
  });
  test('the catch of 100 ft² times 10 is that of 1000 ft² (consumer handbook)', async () => {
    const drop = await spreaderJob({ spreader: '{ kind: drop, swath: 2 ft }' });
    const rotary = await spreaderJob({ spreader: '{ kind: rotary, swath: 2 ft }' });
    within(10 * (drop.settings[0]?.course.deliversKg ?? 0), rotary.settings[0]?.course.deliversKg ?? 0);
  });
});

describe('delivered rate', () => {
  // read: UGA via archive.gaurbanag.org: start with 10 lb, walk 1000 ft over the swath; 10 less what is left is the rate.
  test.each([5, 6, 12])('10 lb less the remainder, at a swath of %i ft (UGA)', (swath) => {
    const course = courseLength(1000 * SQFT, swath * FT);
    within(deliveredRate((10 - 6.5) * LB, course, swath * FT) * 1000, 3.5 * LB_PER_1000_SQFT);
  });
  // read: Univ. of Arizona, turf tips 4/1999: a hopper of 30 in over 50 ft, edge to edge of the hopper; derived: 125 ft².
  test('a 30-inch hopper over 50 ft covers 125 ft² (Univ. of Arizona)', async () => {
    within(deliveredRate(LB, 50 * FT, (30 / 12) * FT), LB / (125 * SQFT));
    const { settings } = await spreaderJob({ spreader: '{ kind: drop, swath: 30 in }' });
    const { lengthM, areaM2 } = settings[0]!.course;
    within((areaM2 * 50 * FT) / lengthM, 125 * SQFT);
  });
});

// derived: a lawn W wide takes W over the swath passes, rounded up. Going round the edge takes the two outer ones.
describe('passes across a width', () => {
  test.each([
    [40, 10, 4],
    [45, 10, 5],
    [72, 12, 6],
    [50, 6, 9],
  ])('%i ft at %i ft are %i', async (width, swath, count) => {
    expect(passesAcross(width * FT, swath * FT)).toBe(count);
    const area = `{ rectangle: [200 ft, ${width} ft] }`;
    const { areas } = await spreaderJob({ spreader: `{ swath: ${swath} ft }`, area });
    expect((areas[0]?.passes[0]?.lines ?? 0) + 2).toBe(count);
  });
});

// read: Rutgers, snyderfarm.rutgers.edu: under a cap of 0.9 lb N/1000 ft² a half pass brings 0.45.
test('half a pass of a cap of 0.9 lb N brings 0.45 (Rutgers)', async () => {
  const { areas } = await spreaderJob({
    spreader: '{ swath: 10 ft }',
    analysis: '20-0-0',
    apply: '{ nutrient: { N: 1 lb/1000 sqft } }',
    lawn: 'local-rules: [{ limit: N, single: 0.9 lb/1000 sqft, because: "a cap of 0.9 lb" }]\n',
  });
  for (const { amountKg } of areas[0]?.passes ?? []) within(0.2 * (amountKg ?? 0), 0.45 * LB);
});

// read: 88 ft/min for each mph (UF/IFAS); from memory: 3 mph is a walking pace, 264 ft/min.
test('a pace of 3 mph is 264 ft a minute, by the command', async () => {
  const { areas, spreader } = await spreaderJob({ spreader: '{ swath: 10 ft }' });
  within(spreader.speedMps, 3 * MPH);
  for (const { distanceM, walkingMin } of areas[0]?.passes ?? []) within(distanceM / walkingMin, 264 * FT);
});

// read: Landschoot (Penn State), lawnandlandscape.com: a test area of 50 × 100 ft.
test('a test area of 50 × 100 ft takes both halves of its product (Landschoot)', async () => {
  const { amountKg, areas } = await spreaderJob({
    spreader: '{ swath: 10 ft }',
    area: '{ rectangle: [50 ft, 100 ft] }',
    analysis: '20-5-10',
  });
  within(amountKg ?? 0, 25 * LB);
  expect(areas[0]?.passes.map((pass) => Number(((pass.openM * 10 * FT) / (5000 * SQFT)).toFixed(3)))).toEqual([1, 1]);
});

describe('facts of the trade, common practice', () => {
  test('a third of a fifteen-step dial is 5', async () => {
    const { settings } = await spreaderJob({ spreader: '{ dial: { from: 1, to: 15, step: 1 } }' });
    expect(settings.map(({ setting, basis }) => [setting, basis])).toEqual([[5, 'first']]);
  });
  test('an eighth of a pound left of sixteen keeps the setting', () => {
    expect(keepsSetting(16 - 1 / 8, 16)).toBe(true);
  });
  test('a bag over what it covers goes down in halves, each over the whole area at half the bag rate', async () => {
    const { areas, settings } = await spreaderJob({
      spreader: '{ swath: 10 ft }',
      area: '{ rectangle: [80 ft, 50 ft] }',
      apply: '{ bag-rate: full-bag }',
      product: '{ id: full-bag, form: granular, covers: 4000 sqft, package: { size: 16 lb } }',
    });
    expect(areas[0]?.passes).toHaveLength(2);
    for (const { amountKg, openM } of areas[0]?.passes ?? []) {
      within(amountKg ?? 0, 8 * LB);
      within(openM * 10 * FT, 4000 * SQFT);
    }
    within(settings[0]?.passGPerM2 ?? 0, 2 * LB_PER_1000_SQFT);
  });
});
