/** What a lawn's soil and sprayer tests hardly ever say is told, with its line. */
import { describe, expect, test } from 'vitest';
import { problemsOfTests } from '../../src/measures.ts';
import { readLawn } from '../../src/read/lawn.ts';
import { lawnText } from '../kit.ts';

const AREAS = 'areas: { front: { rectangle: [50 ft, 20 ft] } }\n';
const LINES = lawnText(AREAS).split('\n').length;
/** Each code with the column that it points at. */
function told(lawn: string): string[] {
  const parsed = readLawn(lawnText(`${AREAS}${lawn}\n`), 'lawn.yaml');
  expect(parsed.problems).toEqual([]);
  return problemsOfTests(parsed).map(({ code, severity, line, column }) => {
    expect([severity, line]).toEqual(['warning', LINES]);
    return `${code} ${lawn
      .slice((column ?? 1) - 1)
      .split(/[,}]/)[0]
      ?.trim()}`;
  });
}

describe('a soil test', () => {
  const soil = (more: string) => told(`soil: { tests: [{ date: 2027-02-20, ${more} }] }`);
  test.each([
    ['pH: 5.6, lime: 85 lb/1000 sqft', []],
    ['pH: 7.6', []],
    ['pH: 7.6, lime: 85 lb/1000 sqft', ['soil-test-lime 7.6']],
    ['pH: 7.6, lime: 0 lb/1000 sqft', []],
    ['pH: 6.6, goal: 6.5, acidity: 5', ['soil-test-lime 6.6']],
    ['pH: 6.4, goal: 6.5, acidity: 5', []],
    ['pH: 5.6, lime: 600 lb/1000 sqft', []],
    ['pH: 5.6, lime: 850 lb/1000 sqft', ['soil-test-much 850 lb/1000 sqft']],
    ['K2O: 5 lb/1000 sqft', []],
    ['K2O: 13 lb/1000 sqft', ['soil-test-much 13 lb/1000 sqft']],
    ['P2O5: 13 lb/1000 sqft', ['soil-test-much 13 lb/1000 sqft']],
  ])('with %s', (more, codes) => expect(soil(more)).toEqual(codes));
});

describe('a sprayer', () => {
  const sprayer = (more: string) =>
    told(`equipment: { sprayer: { tank: 4 gal, ${more} } }`).map((one) => one.split(' ')[0]);
  const course = (caught: string) => `catch-test: { course: [18.5 ft, 18.5 ft], caught: ${caught} }`;
  test.each([
    [course('40 floz'), []],
    [course('40 gal'), ['sprayer-odd']],
    [course('1 floz'), ['sprayer-odd']],
    ['output: 1 gal/1000 sqft', []],
    ['output: 5 gal/1000 sqft', []],
    ['output: 50 gal/1000 sqft', ['sprayer-odd']],
  ])('with %s', (more, codes) => expect(sprayer(more)).toEqual(codes));
});
