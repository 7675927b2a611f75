/**
 * What a sprayer puts down: the worked examples of extension services.
 * By the functions and by `soilclock sprayer --json`.
 * Within ±0.5 % of the exact value; where a source prints a rounded one, the printed one stands beside it.
 */
import { describe, expect, test } from 'vitest';
import { outputByCourse, outputByNozzle, speedOver } from '../../src/amounts/sprayer/output.ts';
import { factorOf } from '../../src/base/units.ts';
import type { Application, SprayerPlan } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

/** Twelve invented years up to the day of the plan; only dates hang on them, not amounts. */
const weather = inventedWeather('2015-01-01', '2027-01-31');

const GAL = factorOf('gal');
const FLOZ = factorOf('floz');
const INCH = 0.0254;
const FOOT = 0.3048;
/** The course on which ounces caught are gallons per acre. */
const COURSE = factorOf('acre') / 128;
const GPA = GAL / factorOf('acre');
const SECOND = 1 / 86_400;
const MPH = 0.44704;
const within = (value: number, exact: number) => expect(Math.abs(value / exact - 1)).toBeLessThan(0.005);

describe('the 1/128-acre method', () => {
  test('a course is 340.3125 ft² (Larimer Co. CO, Albany Co. WY print 340)', () => {
    expect(COURSE / FOOT ** 2).toBeCloseTo(340.3125, 9);
  });
  // read: extension slides (slidegur 5284). The sides are 340 and 342 ft², 0.1 and 0.6 % off the exact course.
  test('10 × 34 ft is a course', () => {
    within(outputByCourse({ course: 10 * 34 * FOOT ** 2, caught: 40 * FLOZ }) / GPA, 40);
  });
  test.each([
    [18.5, 18.5],
    [1.5, 228],
  ])('%d × %d ft, as printed, is a course to 0.6 %%', (length, width) => {
    const output = outputByCourse({ course: length * width * FOOT ** 2, caught: 40 * FLOZ });
    expect(Math.abs(output / GPA / 40 - 1)).toBeLessThan(0.006);
  });
  test('40 fl oz caught are 40 gal/acre (read: extension slides, slidegur 5284)', () => {
    within(outputByCourse({ course: COURSE, caught: 40 * FLOZ }) / GPA, 40);
  });
  test('the ounces caught in the same 51 s do not hang on the time (read: slidegur 5284)', () => {
    const time = 51 * SECOND;
    within(outputByCourse({ course: COURSE, caught: 40 * FLOZ, time, caughtIn: time }) / GPA, 40);
  });
  test('a bucket held for half of the time counts twice (arithmetic)', () => {
    const held = { course: COURSE, caught: 20 * FLOZ, time: 51 * SECOND, caughtIn: 25.5 * SECOND };
    within(outputByCourse(held) / GPA, 40);
  });
  test('at 40 gal/acre a gallon covers 1/40 acre, 1089 ft² (read: slidegur 5284; 1089 derived)', () => {
    within(GAL / (40 * GPA) / FOOT ** 2, 1089);
  });
});

describe('the 5940 method', () => {
  // GPA = 5940 × GPM / (MPH × W). Read: UF/IFAS Marion County (2017); Albany County WY.
  test.each([
    { ozPerMin: 16, mph: 3, inches: 20, gpa: (5940 * 0.125) / (3 * 20) },
    { ozPerMin: 32, mph: 2, inches: 18, gpa: (5940 * 0.25) / (2 * 18) },
    { ozPerMin: 64, mph: 4, inches: 30, gpa: (5940 * 0.5) / (4 * 30) },
  ])('$ozPerMin fl oz/min at $mph mph and $inches in are $gpa gal/acre', ({ ozPerMin, mph, inches, gpa }) => {
    const run = 88 * FOOT;
    const time = (run / (mph * MPH)) * SECOND;
    const output = outputByNozzle({ caught: ozPerMin * FLOZ, in: 60 * SECOND, spacing: inches * INCH, run, time });
    within(output / GPA, gpa);
  });
  test('16 fl oz a minute are 0.125 gal a minute (read: UF/IFAS Marion County 2017)', () => {
    within((16 * FLOZ) / GAL, 0.125);
  });
  test('the metric form is 60,000 × L/min / (km/h × cm) in L/ha (the same identity)', () => {
    const run = 30;
    const time = (run / (4.8 / 3.6)) * SECOND;
    const output = outputByNozzle({ caught: 0.5e-3, in: 60 * SECOND, spacing: 0.5, run, time });
    within(output * 1e7, (60_000 * 0.5) / (4.8 * 50));
  });
  test.each([
    { ft: 88, s: 20, mph: 3 },
    { ft: 176, s: 60, mph: 2 },
    { ft: 200, s: 34, mph: (200 * 60) / (34 * 88) },
  ])('$ft ft in $s s are $mph mph: ft × 60 / (s × 88) (read: UF/IFAS Marion County 2017)', ({ ft, s, mph }) => {
    within(speedOver(ft * FOOT, s * SECOND) / MPH, mph);
  });
});

describe('soilclock sprayer', () => {
  /** What the command prints of a lawn of one acre whose sprayer has a tank of one gallon. */
  async function told(test: string, rate = '1 fl oz/acre') {
    const step = `  - { id: spray, name: Spray, work: spray, window: { opens: { date: 05-01 } }, apply: { product: tonic, rate: ${rate} } }\n`;
    const cwd = folderWith({
      'program.yaml': programText(step),
      'lawn.yaml': lawnText(
        `products: [{ id: tonic, form: liquid }]\nareas: { front: { measured: 1 acre } }\nequipment: { sprayer: { tank: 1 gal, ${test} } }\n`,
      ),
      'weather.csv': weather,
    });
    const { stdout, stderr } = await soilclock(cwd, ['sprayer', 'lawn.yaml', '--json', '--as-of', '2027-02-01']);
    const { sprayer, steps } = JSON.parse(stdout) as { sprayer: SprayerPlan; steps: readonly Application[] };
    if (!sprayer) throw new Error(stderr);
    return { gpa: sprayer.outputLPerM2 / 1000 / GPA, sprayer, tanks: steps[0]?.tanks ?? [] };
  }
  const CATCH = 'catch-test: { course: 340.3125 sqft, caught: 40 fl oz, time: 51 s }';

  test('40 fl oz caught on 1/128 acre are 40 gal/acre, and a gallon covers 1089 ft² (slidegur 5284)', async () => {
    const { gpa, sprayer } = await told(CATCH);
    within(gpa, 40);
    within(sprayer.coversM2 / FOOT ** 2, 1089);
  });
  test('the pace is that of the course: 51 s for 1/128 acre (slidegur 5284)', async () => {
    const { sprayer } = await told(CATCH);
    within((sprayer.paceSPerM2 ?? 0) * COURSE, 51);
  });
  test('an acre takes 40 tanks of a gallon, each with 0.8 fl oz of 32 fl oz/acre (slidegur 5284; printed about 24 mL, exactly 23.66)', async () => {
    const { tanks } = await told(CATCH, '32 fl oz/acre');
    expect(tanks.map(({ count }) => count)).toEqual([40]);
    within(((tanks[0]?.productL ?? 0) * 1e-3) / FLOZ, 0.8);
    within((tanks[0]?.productL ?? 0) * 1000, 23.6588);
  });
  test('the course by its printed sides 10 × 34 ft gives the same to 0.5 %', async () => {
    within((await told('catch-test: { course: [10 ft, 34 ft], caught: 40 fl oz }')).gpa, 40);
  });
  // The course of 18.5 × 18.5 ft is 342.25 ft²: what is caught on it is worked out by its own size.
  test('the course of 18.5 × 18.5 ft gives its own size, 0.6 % more than 1/128 acre', async () => {
    within((await told('catch-test: { course: [18.5 ft, 18.5 ft], caught: 40 fl oz }')).gpa, (40 * 340.3125) / 342.25);
  });
  test('5940 × 0.125 gal/min / (3 mph × 20 in) is 12.375 gal/acre (UF/IFAS Marion County 2017, Albany County WY)', async () => {
    const nozzle = 'nozzle-test: { caught: 16 fl oz, in: 1 min, spacing: 20 in, run: 88 ft, time: 20 s }';
    const { gpa, sprayer } = await told(nozzle);
    within(gpa, 12.375);
    within((sprayer.speedMps ?? 0) / MPH, 3);
  });
  test('60,000 × 0.5 L/min / (4.5 km/h × 50 cm) is 133.3 L/ha (the metric form of the same)', async () => {
    const nozzle = 'nozzle-test: { caught: 500 mL, in: 60 s, spacing: 50 cm, run: 30 m, time: 24 s }';
    within((await told(nozzle)).sprayer.outputLPerM2 * 10_000, 60_000 / 450);
  });
});
