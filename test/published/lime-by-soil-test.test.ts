/**
 * Lime by a soil test: the table of Penn State and the rules of Maryland and Purdue, by function and by `plan --json`.
 * Within ±0.5 % of the exact value.
 */
import { describe, expect, test } from 'vitest';
import { limeByAcidity } from '../../src/amounts/soil-test/lime-table.ts';
import type { Application } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';
import { LB, LB_PER_1000_SQFT } from './pounds.ts';

/** Invented years up to the day of the plan; only dates hang on them, not amounts. */
const weather = inventedWeather('2015-01-01', '2028-01-31');

/**
 * read: Penn State Agricultural Analytical Services Laboratory, lime recommendations for turf (agsci.psu.edu/aasl): lb of
 * calcium carbonate on 1000 ft² by exchangeable acidity of the Mehlich buffer, for goals of pH 7.0 / 6.5 / 6.0. At 21.9 the
 * goal 6.5 goes from 410 to 460, as printed.
 */
const PRINTED = `2.0: 50/50/50 | 2.6: 70/50/50 | 3.3: 70/50/50 | 3.9: 90/70/50 | 4.6: 110/70/50 | 5.2: 110/90/50 | 5.8: 140/90/50
 | 6.5: 160/110/70 | 7.1: 160/110/90 | 7.8: 180/140/90 | 8.4: 180/140/110 | 9.0: 210/160/110 | 9.7: 230/180/140
 | 10.3: 230/180/140 | 11.0: 250/210/160 | 11.6: 280/210/160 | 12.3: 280/230/180 | 12.9: 300/250/180 | 13.5: 320/250/210
 | 14.2: 320/280/210 | 14.8: 340/280/230 | 15.5: 370/300/230 | 16.1: 370/320/250 | 16.8: 390/320/250 | 17.4: 390/340/280
 | 18.0: 410/340/280 | 18.7: 440/370/300 | 19.3: 440/390/300 | 20.0: 460/390/320 | 20.6: 480/410/320 | 21.2: 480/410/340
 | 21.9: 510/460/340 | 22.5: 530/460/370 | 23.2: 530/460/370 | 23.8: 550/480/390 | 24.5: 570/480/390 | 25.1: 570/510/410
 | 25.7: 600/530/410`;
const GOALS = [7, 6.5, 6];
const cells = PRINTED.split('|').flatMap((row) => {
  const [acidity = '', amounts = ''] = row.split(':');
  return amounts.split('/').map((lb, i) => ({ acidity: Number(acidity), goal: GOALS[i] as number, lb: Number(lb) }));
});
const off = (value: number, exact: number) => Math.abs(value / exact - 1);

test('the table has 38 rows for three goals', () => expect(cells).toHaveLength(114));

describe('limeByAcidity', () => {
  test.each(cells)('$acidity meq/100 g to pH $goal: $lb lb/1000 ft²', ({ acidity, goal, lb }) => {
    expect(off((1000 * (limeByAcidity(acidity, goal) ?? Number.NaN)) / LB_PER_1000_SQFT, lb)).toBeLessThan(0.005);
  });
  test('takes the straight line between rows (the table does not say; common practice)', () => {
    // Half way from 5.2 (90) to 5.8 (90) and from 12.3 (230) to 12.9 (250).
    const lb = (acidity: number) => (1000 * (limeByAcidity(acidity, 6.5) ?? Number.NaN)) / LB_PER_1000_SQFT;
    expect(lb(5.5)).toBeCloseTo(90, 6);
    expect(lb(12.6)).toBeCloseTo(240, 6);
  });
  test.each([
    [1.9, 6.5],
    [25.8, 6.5],
    [7.1, 6.2],
  ])('says nothing of %d meq/100 g to pH %d, which the table does not hold', (acidity, goal) =>
    expect(limeByAcidity(acidity, goal)).toBeNull(),
  );
});

interface Case {
  readonly areas: string;
  readonly tests: string;
  readonly apply: string;
  readonly neutralising?: string;
  readonly journal?: string;
  readonly asOf?: string;
}

/** The lime step that `plan --json` prints, on areas of 1000 ft² each. */
async function lime({ areas, tests, apply, neutralising = '100%', journal, asOf = '2027-02-01' }: Case) {
  const step = `  - { id: lime, name: Lime, work: spread, window: { opens: { date: 04-15 }, closes: { date: 05-31 } }, apply: ${apply} }\n`;
  const cwd = folderWith({
    'program.yaml': programText(step),
    'lawn.yaml': lawnText(
      `products: [{ id: limestone, form: amendment, neutralising: ${neutralising} }]\nareas: { ${areas} }\nsoil: { tests: [${tests}] }\n`,
    ),
    'weather.csv': weather,
    ...(journal === undefined ? {} : { 'lawn.journal.yaml': journal }),
  });
  const { stdout, stderr } = await soilclock(cwd, ['plan', 'lawn.yaml', '--json', '--as-of', asOf, '--dry-run']);
  const [application] = (JSON.parse(stdout).applications ?? []) as readonly Application[];
  if (!application) throw new Error(stderr || stdout);
  return application;
}
const pounds = ({ areas }: Application, i = 0) => (areas[i]?.amountKg ?? Number.NaN) / LB;
const FRONT = 'front: { measured: 1000 sqft }';
const BY_TEST = '{ amendment: limestone, rate: 50 lb/1000 sqft, by: soil-test, spacing: 26 weeks }';

describe('plan', () => {
  // Every row of the table as an area of its own, with a report of its own; all of it at once here, to see the whole.
  test.each(GOALS)('spreads what the table asks for to pH %d, on each of 38 areas', async (goal) => {
    const rows = cells.filter((cell) => cell.goal === goal);
    const application = await lime({
      areas: rows.map((_, i) => `a${i}: { measured: 1000 sqft }`).join(', '),
      tests: rows.map(({ acidity }, i) => `{ date: 2026-09-05, area: a${i}, pH: 5.2, acidity: ${acidity} }`).join(', '),
      apply: `{ amendment: limestone, rate: 700 lb/1000 sqft, by: soil-test, goal: ${goal} }`,
    });
    expect(rows.filter(({ lb }, i) => !(off(pounds(application, i), lb) < 0.005))).toEqual([]);
  });
  test('names the table among its sources', async () => {
    const tests = '{ date: 2026-09-05, pH: 5.2, acidity: 7.1, goal: 6.5 }';
    const { sources, soilTest } = await lime({ areas: FRONT, tests, apply: BY_TEST });
    expect(sources.some((source) => source.includes('Penn State'))).toBe(true);
    expect(soilTest[0]?.by).toBe('table');
  });
  test('spreads none where the soil is at the goal already (the rule of the table)', async () => {
    const tests = '{ date: 2026-09-05, pH: 6.5, acidity: 7.1, goal: 6.5 }';
    expect((await lime({ areas: FRONT, tests, apply: BY_TEST })).status).toBe('dropped');
  });
  test('spreads more of a material that neutralises less: the rate over its equivalent (Penn State)', async () => {
    const tests = '{ date: 2026-09-05, pH: 5.8, lime: 45 lb/1000 sqft }';
    const apply = BY_TEST.replace('50 lb', '100 lb');
    expect(off(pounds(await lime({ areas: FRONT, tests, apply, neutralising: '90%' })), 50)).toBeLessThan(0.005);
  });

  // read: University of Maryland Extension, liming a lawn: at most 50 lb at once, 85 as 50 and, six months later, 35.
  const EIGHTY_FIVE = '{ date: 2026-09-05, pH: 5.6, lime: 85 lb/1000 sqft }';
  test('85 lb are 50 now, with 35 left for later (Maryland)', async () => {
    const application = await lime({ areas: FRONT, tests: EIGHTY_FIVE, apply: BY_TEST });
    expect(off(pounds(application), 50)).toBeLessThan(0.005);
    expect(off((application.soilTest[0]?.leftGPerM2 ?? 0) / LB_PER_1000_SQFT, 35)).toBeLessThan(0.005);
  });
  test('35 of 85 lb are spread once 50 are in the journal (Maryland)', async () => {
    const journal = '- { date: 2026-10-20, step: lime, product: limestone, used: 50 lb }\n';
    const application = await lime({ areas: FRONT, tests: EIGHTY_FIVE, apply: BY_TEST, journal });
    expect(off(pounds(application), 35)).toBeLessThan(0.005);
  });
  test('the 35 wait for six months after the 50 (Maryland)', async () => {
    const journal = '- { date: 2026-11-20, step: lime, used: 50 lb }\n';
    const application = await lime({ areas: FRONT, tests: EIGHTY_FIVE, apply: BY_TEST, journal });
    // 182 days after 20 November 2026 are 21 May 2027.
    expect((application.date ?? '') >= '2027-05-21').toBe(true);
  });
  // read in a copy: Purdue University AY-18: at most 100 lb/1000 ft² on higher-cut turf. Against Maryland's 50; the program chooses.
  test('85 lb go down at once where 100 may (Purdue, against Maryland)', async () => {
    const apply = BY_TEST.replace('50 lb', '100 lb');
    expect(off(pounds(await lime({ areas: FRONT, tests: EIGHTY_FIVE, apply })), 85)).toBeLessThan(0.005);
  });
});

describe('lime told by its calcium and magnesium', () => {
  // Factors: Virginia Tech SPES-201NP prints CaCO3 to CaO 0.5603, Ca to CaO 1.3992, Mg to MgO 1.6578.
  test.each([
    ['50% CaO', 0.5 / 0.5603],
    ['35% Ca', (0.35 * 1.3992) / 0.5603],
  ])('of %s as much more is put down as it neutralises less', async (neutralising, share) => {
    const told = await lime({
      areas: 'front: { measured: 1000 sqft }',
      tests: '{ date: 2027-01-10, lime: 40 lb/1000 sqft }',
      apply: '{ amendment: limestone, rate: 60 lb/1000 sqft, by: soil-test }',
      neutralising,
    });
    expect(off(pounds(told), 40 / share)).toBeLessThan(0.005);
  });
  test('magnesium counts as 1.6578 times that of its oxide', async () => {
    const [metal, oxide] = await Promise.all(
      ['30% Ca + 8% Mg', `30% Ca + ${(8 * 1.6578).toFixed(4)}% MgO`].map((neutralising) =>
        lime({
          areas: 'front: { measured: 1000 sqft }',
          tests: '{ date: 2027-01-10, lime: 40 lb/1000 sqft }',
          apply: '{ amendment: limestone, rate: 60 lb/1000 sqft, by: soil-test }',
          neutralising,
        }),
      ),
    );
    expect(off(pounds(metal as Application), pounds(oxide as Application))).toBeLessThan(0.005);
  });
});
