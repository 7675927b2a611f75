/** Phosphorus and potassium as oxides and as elements: both notations mean the same product and the same amounts. */
import { describe, expect, test } from 'vitest';
import { productAmount, readProgram } from '../../src/index.ts';
import { ELEMENT_SHARE, parseAnalysis } from '../../src/model/nutrient.ts';
import { programText } from '../kit.ts';
import { planOneStep } from '../published/one-step-plan.ts';

const area = '{ measured: 1000 sqft }';

describe('an analysis', () => {
  test('in elements is turned into oxides: 20 % P2O5 is 8.73 % P, 10 % K2O 8.30 % K', () => {
    const { P2O5, K2O } = parseAnalysis('10-8.7287-8.3015 elements') ?? { P2O5: 0, K2O: 0 };
    expect(P2O5).toBeCloseTo(0.2, 5);
    expect(K2O).toBeCloseTo(0.1, 5);
  });
  test.each(['10-8 elements', '10-8-3 element', '90-8-3 elements', '10-8-3 oxides'])('%s is none', (written) =>
    expect(parseAnalysis(written)).toBeNull(),
  );
});

describe('a rate', () => {
  test('of an element takes as much product as the rate of its oxide', () => {
    const ofElement = productAmount({ nutrient: 'K', rate: '1 lb/1000 sqft' }, '0-0-50', '1000 sqft');
    const ofOxide = productAmount(
      { nutrient: 'K2O', rate: `${1 / ELEMENT_SHARE.K2O} lb/1000 sqft` },
      '0-0-50',
      '1000 sqft',
    );
    expect(ofElement.kg).toBeCloseTo(ofOxide.kg, 9);
    const phosphorus = productAmount({ nutrient: 'P', rate: '1 lb/1000 sqft' }, '0-46-0', '1000 sqft');
    expect(phosphorus.kg / 0.45359237).toBeCloseTo(1 / (0.46 * 0.43643), 3);
  });
  test('in a program as well, on a product whose label counts elements', async () => {
    const [oxide, element] = await Promise.all([
      planOneStep({ area, analysis: '0-0-50', apply: `{ nutrient: { K2O: ${1 / ELEMENT_SHARE.K2O} lb/1000 sqft } }` }),
      planOneStep({
        area,
        analysis: `0-0-${50 * ELEMENT_SHARE.K2O} elements`,
        apply: '{ nutrient: { K: 1 lb/1000 sqft } }',
      }),
    ]);
    expect(element.areas[0]?.amountKg).toBeCloseTo(oxide.areas[0]?.amountKg ?? Number.NaN, 9);
    expect(element.nutrientsGPerM2.K2O * ELEMENT_SHARE.K2O).toBeCloseTo(4.88243, 4);
  });
  test('may not be asked for twice', () => {
    const step = (nutrient: string) =>
      `  - { id: a, name: A, work: spread, window: { opens: { date: 05-01 } }, apply: { nutrient: ${nutrient} } }\n`;
    const codes = (nutrient: string) =>
      readProgram(programText(step(nutrient)), 'p.yaml').problems.map(({ code }) => code);
    expect(codes('{ P: 1 lb/1000 sqft, P2O5: 1 lb/1000 sqft }')).toEqual(['nutrient-twice']);
    expect(codes('{ P: 1 lb/1000 sqft, K2O: 1 lb/1000 sqft }')).toEqual([]);
  });
});
