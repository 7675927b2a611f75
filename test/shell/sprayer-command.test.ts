import { describe, expect, test } from 'vitest';
import type { Application, SprayerPlan } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const weather = inventedWeather('2015-01-01', '2027-01-31');

/** A lawn with two areas of 5,000 and 2,500 ft², a liquid feed with a density, and a step that sprays it. */
const LIQUID = 'products: [{ id: tonic, form: liquid, analysis: 10-0-0, density: 1.2 kg/L }]\n';
const AREAS = 'areas: { front: { measured: 5000 sqft }, back: { measured: 2500 sqft } }\n';
const SPRAY = '{ product: tonic, rate: 6 fl oz/1000 sqft }';

interface Case {
  readonly sprayer?: string;
  readonly apply?: string;
  readonly lawn?: string;
  readonly journal?: string;
}

function folder({ sprayer, apply = SPRAY, lawn = LIQUID + AREAS, journal }: Case): string {
  const step = (id: string, work: string, applied: string) =>
    `  - { id: ${id}, name: ${id}, work: ${work}, window: { opens: { date: 05-01 }, closes: { date: 05-31 } }${applied} }\n`;
  return folderWith({
    'program.yaml': programText(step('spray', 'spray', `, apply: ${apply}`) + step('look', 'scout', '')),
    'lawn.yaml': lawnText(lawn + (sprayer === undefined ? '' : `equipment: { sprayer: ${sprayer} }\n`)),
    'weather.csv': weather,
    ...(journal === undefined ? {} : { 'lawn.journal.yaml': journal }),
  });
}

interface Printed {
  readonly sprayer: SprayerPlan;
  readonly steps: readonly Application[];
  readonly problems: readonly { readonly code: string }[];
}

async function sprayer(one: Case, ...words: string[]) {
  const { code, stdout } = await soilclock(folder(one), [
    ...['sprayer', 'lawn.yaml', ...words],
    ...['--json', '--as-of', '2027-02-01'],
  ]);
  return { code, ...(JSON.parse(stdout) as Printed) };
}

const FOUR = '{ tank: 4 gal, output: 1 gal/1000 sqft }';
const L_PER_GAL = 3.785411784;
const L_PER_FLOZ = L_PER_GAL / 128;

describe('soilclock sprayer', () => {
  test('fills full tanks and a last one', async () => {
    const { steps } = await sprayer({ sprayer: FOUR });
    expect(steps[0]?.tanks.map(({ count, sprayL }) => [count, Number((sprayL / L_PER_GAL).toFixed(6))])).toEqual([
      [1, 4],
      [1, 3.5],
    ]);
  });
  test('puts the rate into each tank, and the rest is water', async () => {
    const { steps } = await sprayer({ sprayer: FOUR });
    const [full] = steps[0]?.tanks ?? [];
    expect((full?.productL ?? 0) / L_PER_FLOZ).toBeCloseTo(24, 6);
    expect((full?.waterL ?? 0) / L_PER_FLOZ).toBeCloseTo(4 * 128 - 24, 6);
  });
  test('its tanks add up to what the plan takes for the areas', async () => {
    const { steps } = await sprayer({ sprayer: FOUR });
    const sum = (steps[0]?.tanks ?? []).reduce((total, { count, productL }) => total + count * (productL ?? 0), 0);
    expect(sum / L_PER_FLOZ).toBeCloseTo(7.5 * 6, 9);
  });
  test('fills only for the areas that are still to be done', async () => {
    const journal = '- { date: 2027-02-01, step: spray, areas: [front] }\n';
    const { steps } = await sprayer({ sprayer: FOUR, journal });
    expect(steps[0]?.tanks.map(({ areas }) => areas)).toEqual([['back']]);
  });
  test('has no tanks for a step that is done', async () => {
    const journal = '- { date: 2027-02-01, step: spray }\n';
    const { problems } = await sprayer({ sprayer: FOUR, journal }, 'spray');
    expect(problems.map(({ code }) => code)).toEqual(['step-over']);
  });
  test('says the same of a lawn that is written in metric units', async () => {
    const us = await sprayer({ sprayer: FOUR });
    const m2 = 1000 * 0.3048 ** 2;
    const metric = await sprayer({
      lawn: `${LIQUID}areas: { front: { measured: ${5 * m2} m2 }, back: { measured: ${2.5 * m2} m2 } }\n`,
      apply: `{ product: tonic, rate: ${(6 * L_PER_FLOZ * 1000) / m2} mL/m2 }`,
      sprayer: `{ tank: ${4 * L_PER_GAL} L, output: ${(100 * L_PER_GAL) / m2} L/100 m2 }`,
    });
    const figures = ({ steps }: Printed) =>
      (steps[0]?.tanks ?? []).flatMap(({ count, areaM2, sprayL, waterL, productL }) => [
        ...[count, areaM2, sprayL],
        ...[waterL ?? Number.NaN, productL ?? Number.NaN],
      ]);
    const expected = figures(us);
    const off = figures(metric).map((value, i) => Math.abs(value / (expected[i] ?? Number.NaN) - 1));
    expect(expected).toHaveLength(10);
    expect(Math.max(...off)).toBeLessThan(1e-9);
  });
  test('has no tanks for a product that is spread dry', async () => {
    const dry = 'products: [{ id: tonic, form: granular, analysis: 10-0-0 }]\n';
    const { steps } = await sprayer({
      lawn: dry + AREAS,
      apply: '{ nutrient: { N: 0.5 lb/1000 sqft } }',
      sprayer: FOUR,
    });
    expect(steps).toEqual([]);
  });
  test('mixes apart for areas that get different rates', async () => {
    const limit = 'local-rules: [{ limit: N, yearly: 0.06 lb/1000 sqft }]\n';
    const journal = '- { date: 2027-01-10, areas: [back], work: spray, product: tonic, used: 10 fl oz }\n';
    const { steps } = await sprayer({ lawn: LIQUID + AREAS + limit, sprayer: FOUR, journal });
    const [front, back] = ['front', 'back'].map(
      (id) => steps[0]?.tanks.filter(({ areas }) => areas.includes(id)) ?? [],
    );
    expect(front?.map(({ count }) => count)).toEqual([1, 1]);
    expect(back?.map(({ areas }) => areas)).toEqual([['back']]);
    expect(back?.[0]?.productL ?? 0).toBeLessThan(front?.[0]?.productL ?? 0);
  });
  test('never puts more into a tank than a limit leaves room for', async () => {
    // 6 fl oz bring 0.04694 lb of nitrogen: the limit leaves 5.995 fl oz on 1000 ft², 23.98 in a tank for 4000.
    const lawn = `${LIQUID}${AREAS}local-rules: [{ limit: N, single: 0.0469 lb/1000 sqft }]\n`;
    const { steps } = await sprayer({ sprayer: FOUR, lawn });
    expect(steps[0]?.tanks[0]?.amount).toBe('709 mL (23.9 fl oz)');
  });
  test('says what is wrong with the plan, in words and as data', async () => {
    const one = { lawn: AREAS, apply: '{ pesticide: broadleaf }', sprayer: FOUR };
    expect((await sprayer(one)).problems.map(({ code }) => code)).toContain('no-label');
    const { stderr } = await soilclock(folder(one), ['sprayer', 'lawn.yaml', '--as-of', '2027-02-01']);
    expect(stderr).toContain('[no-label]');
  });
  test('says where the product leaves no room for water', async () => {
    const apply = '{ product: tonic, rate: 2 gal/1000 sqft }';
    const { steps } = await sprayer({ sprayer: FOUR, apply });
    expect(steps[0]?.tanks.map(({ waterL }) => waterL)).toEqual([0, 0]);
  });
  test('tells water alone where the label is missing', async () => {
    const { steps } = await sprayer({ lawn: AREAS, apply: '{ pesticide: broadleaf }', sprayer: FOUR });
    expect(steps[0]?.tanks[0]).toMatchObject({ productKg: null, productL: null, amount: 'from your label' });
  });
  test('a lawn without a sprayer is told how to name one, with exit 1', async () => {
    const { code, problems } = await sprayer({});
    expect([code, problems.map((one) => one.code)]).toEqual([1, ['no-sprayer']]);
  });
  test('a step that is not sprayed is refused, with exit 1', async () => {
    const { code, problems } = await sprayer({ sprayer: FOUR }, 'look');
    expect([code, problems.map((one) => one.code)]).toEqual([1, ['not-sprayed']]);
  });
  test('a step that is not there is refused, with exit 2', async () => {
    const { code, problems } = await sprayer({ sprayer: FOUR }, 'sprya');
    expect([code, problems.map((one) => one.code)]).toEqual([2, ['plan-step']]);
  });
  test.each([
    '{ tank: 4 gal }',
    '{ tank: 4 gal, output: 1 gal/1000 sqft, catch-test: { course: 340 sqft, caught: 40 fl oz } }',
  ])('%s does not say in one way what it puts down', async (one) => {
    const { problems } = await sprayer({ sprayer: one });
    expect(problems.map(({ code }) => code)).toContain('sprayer-output');
  });
  test('a bucket held for another time needs the time of the course', async () => {
    const one = '{ tank: 4 gal, catch-test: { course: 340 sqft, caught: 40 fl oz, caught-in: 30 s } }';
    const { problems } = await sprayer({ sprayer: one });
    expect(problems.map(({ code }) => code)).toContain('sprayer-caught-in');
  });
  test('a step of next year bears its year', async () => {
    const cwd = folder({ sprayer: FOUR });
    const told = (asOf: string) => soilclock(cwd, ['sprayer', 'lawn.yaml', 'spray', '--as-of', asOf]);
    expect((await told('2027-02-01')).stdout).not.toMatch(/May \d+, 2027/);
    expect((await told('2026-12-28')).stdout).toMatch(/May \d+, 2027/);
  });
  test('a step in words carries its tanks, the order of mixing and the cautions', async () => {
    const cwd = folder({ sprayer: FOUR });
    const { stdout } = await soilclock(cwd, ['sprayer', 'lawn.yaml', 'spray', '--as-of', '2027-02-01']);
    for (const part of ['4 gal', '24 fl oz', 'What to do', 'order of mixing', 'Take care'])
      expect(stdout).toContain(part);
  });
  test('the plan of the step tells the same tanks', async () => {
    const cwd = folder({ sprayer: FOUR });
    const { stdout } = await soilclock(cwd, ['plan', 'lawn.yaml', 'spray', '--json', '--as-of', '2027-02-01']);
    const { how, tanks } = JSON.parse(stdout) as Application;
    expect(how).toEqual(expect.arrayContaining(tanks.map(({ line }) => line)));
  });
});
