/** A step without a product at hand tells the rate that the program asks for. */
import { describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

/** How a step with this `apply` is put down on a lawn that has no products. */
async function how(apply: string, work = 'spread', units = 'us'): Promise<readonly string[]> {
  const cwd = folderWith({
    'lawn.yaml': lawnText(`display: { units: ${units} }\n`),
    'program.yaml': programText(`  - id: autumn-work
    name: Autumn work
    work: ${work}
    window: { opens: { date: 09-01 }, closes: { date: 10-01 } }
    apply: ${apply}
`),
    'weather.csv': inventedWeather(),
  });
  const { stdout, stderr } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-04-02', '--json']);
  if (stdout === '') throw new Error(stderr);
  return (JSON.parse(stdout) as Season).applications[0]!.how;
}

const NITROGEN = '{ nutrient: { N: 0.9 lb/1000 sqft }, source: common-practice }';

describe('the rate', () => {
  test('of a nutrient, on a thousand square feet', async () =>
    expect(await how(NITROGEN)).toEqual(['0.9 lb of nitrogen per 1,000 sq ft.']));
  // 0.9 lb is 408.2 g, and 1000 sq ft are 92.9 m²: 4.39 g/m².
  test('of a nutrient, on a square metre', async () =>
    expect(await how(NITROGEN, 'spread', 'metric')).toEqual(['4.4 g of nitrogen per m².']));
  test('of each nutrient that is asked for', async () =>
    expect(await how('{ nutrient: { N: 0.5 lb/1000 sqft, K2O: 1 lb/1000 sqft }, source: common-practice }')).toEqual([
      '0.5 lb of nitrogen per 1,000 sq ft.',
      '1 lb of potash (K2O) per 1,000 sq ft.',
    ]));
  test('of seed', async () =>
    expect(await how('{ seed: tall-fescue-seed, rate: 4 lb/1000 sqft, source: common-practice }', 'seed')).toEqual([
      '4 lb of tall fescue seed per 1,000 sq ft.',
    ]));
  test('of what is measured by volume', async () =>
    expect(await how('{ product: iron, rate: 3 floz/1000 sqft, source: common-practice }', 'spray')).toEqual([
      '3 fl oz of iron per 1,000 sq ft.',
    ]));
  test("of a pesticide is the label's, never a number", async () => {
    const [line = ''] = await how(
      '{ pesticide: pre-emergent, actives: { prodiamine: { compare: 0.75 lb/acre, source: common-practice } } }',
    );
    expect(line).toContain('from your label');
    expect(line).not.toMatch(/\d/);
  });
  test('with the share of slow release that is preferred', async () =>
    expect(
      await how('{ nutrient: { N: 0.9 lb/1000 sqft }, prefer: { slow-share: 30% }, source: common-practice }'),
    ).toHaveLength(2));
});
