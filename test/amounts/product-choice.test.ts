/** Which product brings a nutrient where several could, and that the plan says why. */
import { describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { compile } from '../../src/compile.ts';
import { programText } from '../kit.ts';

const LAWN = `kind: lawn
version: 1
id: lawn
location: { latitude: 39, longitude: -84, elevation: 270 m }
grass: tall-fescue
program: program.yaml
`;
const ONE = '{ front: { measured: 1000 sqft } }';
const SOME = `products:
  - { id: garden, form: granular, analysis: 10-10-10 }
  - { id: feed, form: granular, analysis: 24-0-6 }
  - { id: potash, form: granular, analysis: 0-0-50 }
`;

interface Case {
  readonly nutrient?: string;
  /** More of the lawn, as YAML at the top level. */
  readonly more?: string;
  /** The lawn's products, a list entry each. */
  readonly products?: readonly string[];
  readonly program?: string;
  readonly areas?: string;
}

/** The one application of a lawn with one step. */
function applicationOf(one: Case) {
  const { nutrient = '{ N: 1 lb/1000 sqft }', more = '', products, program = '', areas = ONE } = one;
  const steps = `  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 05-01 }, closes: { date: 05-31 } }
    apply: { nutrient: ${nutrient} }
`;
  const listed = products ? `products:\n${products.map((one) => `  - { ${one} }\n`).join('')}` : SOME;
  const { season } = compile({
    lawn: { name: 'lawn.yaml', text: `${LAWN}areas: ${areas}\n${listed}${more}` },
    lookup: (ref) => (ref === 'program.yaml' ? { name: ref, text: programText(steps, program) } : null),
    asOf: civil(2027, 1, 5),
    ledger: null,
    revisedAt: '2027-01-05T06:00:00Z',
    detail: 'quiet',
  });
  return season?.applications[0];
}

const chosen = (one: Case): string | null | undefined => applicationOf(one)?.areas[0]?.product;
const why = (one: Case): string => applicationOf(one)?.why.join('\n') ?? '';

describe('The product that brings a nutrient', () => {
  test('is without nitrogen where only potash was asked for', () =>
    expect(chosen({ nutrient: '{ K2O: 1 lb/1000 sqft }' })).toBe('potash'));
  test('is so even where a feed stands on the shelf', () =>
    expect(chosen({ nutrient: '{ K2O: 1 lb/1000 sqft }', more: 'shelf: { feed: 50 lb }\n' })).toBe('potash'));
  test('has little phosphate that nobody asked for', () => expect(chosen({})).toBe('feed'));
  test('stands on the shelf, before it has little of that', () =>
    expect(chosen({ more: 'shelf: { garden: 50 lb }\n' })).toBe('garden'));
  test('brings the nitrogen exactly, whichever it is', () => {
    for (const shelf of ['', 'shelf: { garden: 50 lb }\n'])
      expect(applicationOf({ more: shelf })?.nutrientsGPerM2.N).toBeCloseTo(4.88243, 4);
  });
});

describe('The soil test', () => {
  const report = (levels: string) => `soil: { tests: [{ date: 2026-09-01, ${levels} }] }\n`;
  const plain = 'id: plain, form: granular, analysis: 20-0-0';
  const complete = 'id: complete, form: granular, analysis: 20-10-0';
  const potassic = 'id: potassic, form: granular, analysis: 20-0-10';
  const shelf = 'shelf: { plain: 50 lb }\n';
  test('that is low in phosphorus takes one with phosphate, before the shelf', () =>
    expect(chosen({ products: [plain, complete], more: shelf + report('phosphorus: low') })).toBe('complete'));
  test('that is high in phosphorus takes one without, before the shelf', () =>
    expect(
      chosen({ products: [plain, complete], more: `shelf: { complete: 50 lb }\n${report('phosphorus: high')}` }),
    ).toBe('plain'));
  test('that is low in potassium takes one with potash', () =>
    expect(chosen({ products: [plain, potassic], more: shelf + report('potassium: low') })).toBe('potassic'));
  test('that is medium asks nothing', () =>
    expect(chosen({ products: [plain, potassic], more: shelf + report('potassium: medium') })).toBe('plain'));
  test('with an amount for the year takes the product nearest to its share of nitrogen', () => {
    const listed = [plain, complete, potassic, 'id: near, form: granular, analysis: 20-4-8'];
    const year = report('P2O5: 0.2 lb/1000 sqft, K2O: 0.4 lb/1000 sqft');
    expect(chosen({ products: listed, more: shelf + year })).toBe('near');
  });
  test('with an amount of nothing asks for none', () =>
    expect(
      chosen({ products: [complete, plain], more: `shelf: { complete: 50 lb }\n${report('P2O5: 0 lb/1000 sqft')}` }),
    ).toBe('plain'));
  test('of one area alone does not speak for both', () => {
    const one = report('area: front, potassium: low');
    const more = `${shelf}${one}`;
    expect(chosen({ products: [potassic, plain], more })).toBe('potassic');
    expect(
      chosen({
        products: [potassic, plain],
        more,
        areas: '{ front: { measured: 1 sqft }, back: { measured: 1 sqft } }',
      }),
    ).toBe('plain');
  });
  test('gives way to a rate of the step: the nearest to it is taken', () => {
    const heavy = 'id: heavy, form: granular, analysis: 20-20-0';
    const nutrient = '{ N: 1 lb/1000 sqft, P2O5: 0.5 lb/1000 sqft }';
    expect(chosen({ nutrient, products: [heavy, plain, complete], more: report('phosphorus: high') })).toBe('complete');
  });
});

describe('Packages and prices', () => {
  const dear = 'id: dear, form: granular, analysis: 20-0-0, package: { size: 10 lb, price: 20 }';
  const small = 'id: small, form: granular, analysis: 20-0-0, package: { size: 2 lb, price: 1 }';
  const cheap = 'id: cheap, form: granular, analysis: 20-0-0, package: { size: 10 lb, price: 15 }';
  test('fewer new packages are better', () => expect(chosen({ products: [small, dear] })).toBe('dear'));
  test('then the lower cost', () => expect(chosen({ products: [dear, cheap] })).toBe('cheap'));
  test('then the order of the products', () =>
    expect(chosen({ products: [cheap.replace('id: cheap', 'id: first'), cheap] })).toBe('first'));
});

describe('Why this one', () => {
  const quick = 'id: quick, form: granular, analysis: 20-0-0';
  const slow = 'id: slow, form: granular, analysis: 20-0-0, slow-share: 50%';
  test('is said with the next best', () =>
    expect(why({})).toContain('feed rather than garden: it brings less phosphate'));
  test('is said of the shelf', () =>
    expect(why({ more: 'shelf: { garden: 5 lb }\n' })).toContain('it is on the shelf'));
  test('is said of a limit of quick nitrogen, of the program or of the place', () => {
    const program = 'nitrogen: { single: { quick: 0.7 lb/1000 sqft } }\n';
    const place = 'local-rules: [{ limit: quick-N, single: 0.7 lb/1000 sqft }]\n';
    expect(why({ products: [quick, slow], program })).toContain('slow rather than quick: it stays inside the limit');
    expect(why({ products: [quick, slow], more: place })).toContain(
      'slow rather than quick: it stays inside the limit',
    );
  });
  test('is said where there is no choice', () =>
    expect(why({ products: [quick] })).toContain('quick: no other of your products'));
});
