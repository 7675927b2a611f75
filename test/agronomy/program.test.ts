/** Each rule of agronomy on programs: it fires in its place, and is silent at its boundary. */
import { describe, expect, test } from 'vitest';
import { feed, found, only, step } from './kit.ts';

describe('nitrogen-at-once: at most 1.0 lb N/1000 ft² (Purdue, UC IPM, Illinois), or what the program says', () => {
  const at = (N: string, extra = '', more = '') =>
    only('nitrogen-at-once', found(feed('a', '09-10', '09-30', N, more), { extra }));
  test('fires above', () => expect(at('1.01')).toHaveLength(1));
  test('in its place', () => expect(at('1.01')).toEqual(['nitrogen-at-once at 1.01 lb/1000 sqft']));
  test('is silent at it', () => expect(at('1.0')).toEqual([]));
  test('takes 2.0 of mostly slow-release nitrogen (UF/IFAS EP353)', () => {
    expect(at('2.0', '', ', prefer: { slow-share: 65% }')).toEqual([]);
    expect(at('2.1', '', ', prefer: { slow-share: 65% }')).toHaveLength(1);
  });
  test("the program's own limit is the lower one", () => {
    const own = 'nitrogen: { single: { total: 0.9 lb/1000 sqft } }\n';
    expect([at('0.9', own).length, at('0.95', own).length]).toEqual([0, 1]);
  });
});

describe('nitrogen-a-year and nitrogen-little: the widest range that anybody prints for the grass', () => {
  const year = (code: string, pounds: readonly string[], grass: string, climate: string) =>
    only(
      code,
      found(pounds.map((N, i) => feed(`f${i}`, `0${4 + i}-10`, `0${4 + i}-20`, N)).join(''), { grass, climate }),
    ).length;
  test('centipedegrass: 0.5 (Clemson) to 3 (Florida)', () => {
    expect(year('nitrogen-a-year', ['1', '1', '1'], 'centipedegrass', 'warm-humid')).toBe(0);
    expect(year('nitrogen-a-year', ['1', '1', '1', '0.1'], 'centipedegrass', 'warm-humid')).toBe(1);
    expect(year('nitrogen-little', ['0.5'], 'centipedegrass', 'warm-humid')).toBe(0);
    expect(year('nitrogen-little', ['0.4'], 'centipedegrass', 'warm-humid')).toBe(1);
  });
  test('tall fescue: 2 (Virginia) to 4 (Illinois)', () => {
    expect(year('nitrogen-a-year', ['1', '1', '1', '1'], 'tall-fescue', 'transition')).toBe(0);
    expect(year('nitrogen-a-year', ['1', '1', '1', '1', '0.1'], 'tall-fescue', 'transition')).toBe(1);
    expect(year('nitrogen-little', ['0.9', '1'], 'tall-fescue', 'transition')).toBe(1);
  });
  test('a feed for some lawns only does not count against the most', () => {
    const optional = feed('x', '10-01', '10-20', '1').replace(' }\n', ', only-if: { lawn: { weak: true } } }\n');
    const four = ['04', '05', '06', '09'].map((month) => feed(`f${month}`, `${month}-10`, `${month}-20`, '1')).join('');
    expect(only('nitrogen-a-year', found(four + optional))).toEqual([]);
  });
});

describe('nitrogen-close: a pound not more often than monthly (Purdue), or the spacing of the program', () => {
  const waiting = (wait: string, N: string, extra = '') =>
    only(
      'nitrogen-close',
      found(
        feed('a', '09-01', '09-05', N) +
          step(
            'b',
            'spread',
            `{ opens: { after: { step: a, wait: ${wait} } } }`,
            `, apply: { nutrient: { N: ${N} lb/1000 sqft } }`,
          ),
        { extra },
      ),
    );
  test('fires in its place', () => expect(waiting('27 d', '1')).toEqual(['nitrogen-close at 27 d']));
  test('is silent at four weeks, and for less than a pound', () => {
    expect(waiting('4 weeks', '1')).toEqual([]);
    expect(waiting('2 weeks', '0.5')).toEqual([]);
  });
  test('takes the spacing of the program', () =>
    expect(waiting('5 weeks', '0.5', 'nitrogen: { spacing: 6 weeks }\n')).toHaveLength(1));
});

describe('nitrogen-dormant: below 50 °F at 4 in warm-season grass sleeps, below 40 °F cool-season (NC Turf Council)', () => {
  const dormant = (opens: string, closes: string, grass: string) =>
    only('nitrogen-dormant', found(feed('a', opens, closes, '0.5'), { grass, climate: 'transition' }));
  test('fires in winter, in its place', () => {
    expect(dormant('01-10', '01-20', 'tall-fescue')).toEqual(['nitrogen-dormant at { date: 01-10 }']);
    expect(dormant('03-01', '03-10', 'bermudagrass')).toHaveLength(1);
  });
  test('is silent once the soil is warm', () => {
    expect(dormant('04-20', '05-10', 'tall-fescue')).toEqual([]);
    expect(dormant('05-20', '06-10', 'bermudagrass')).toEqual([]);
  });
});

describe('nitrogen-late: warm-season grass gets none within four weeks of the first frost (Arizona, Georgia)', () => {
  const closing = (trigger: string) =>
    only(
      'nitrogen-late',
      found(
        step(
          'a',
          'spread',
          `{ opens: { date: 08-01 }, closes: ${trigger} }`,
          ', apply: { nutrient: { N: 0.5 lb/1000 sqft } }',
        ),
        {
          grass: 'bermudagrass',
        },
      ),
    );
  test('fires a day too late', () =>
    expect(closing('{ frost: { first: 32 F, chance: 50%, before: 27 d } }')).toEqual([
      'nitrogen-late at { frost: { first: 32 F, chance: 50%, before: 27 d } }',
    ]));
  test('is silent four weeks before', () =>
    expect(closing('{ frost: { first: 32 F, chance: 50%, before: 28 d } }')).toEqual([]));
});

describe('nitrogen-hot: cool-season grass is fed once the highs have left the 90s F (Purdue)', () => {
  const hot = (opens: string, closes: string, more = '') =>
    only('nitrogen-hot', found(feed('a', opens, closes, '0.5', more), { climate: 'cool-arid' }));
  test('fires in the heat, in its place', () =>
    expect(hot('07-10', '07-25')).toEqual(['nitrogen-hot at { date: 07-10 }']));
  test('is silent in September, and for slow-release nitrogen', () => {
    expect(hot('09-20', '09-30')).toEqual([]);
    expect(hot('07-10', '07-25', ', prefer: { slow-share: 50% }')).toEqual([]);
  });
});

describe('seed-on-barrier: no seed within eight weeks of a pre-emergent (common practice)', () => {
  const barrier = (day: string, more = '') =>
    step(
      'b',
      'spread',
      `{ opens: { date: ${day} }, closes: { date: ${day} } }`,
      `, apply: { pesticide: pre-emergent }${more}`,
    );
  const sowing = (more = '') =>
    step(
      's',
      'seed',
      '{ opens: { date: 09-10 }, closes: { date: 09-20 } }',
      `, apply: { seed: fescue, rate: 6 lb/1000 sqft }${more}`,
    );
  test('fires in its place', () =>
    expect(only('seed-on-barrier', found(barrier('08-01') + sowing()))).toEqual([
      'seed-on-barrier at { date: 09-10 }',
    ]));
  test('is silent eight weeks after, and where a fact shuts them out', () => {
    expect(only('seed-on-barrier', found(barrier('07-16') + sowing()))).toEqual([]);
    const apart =
      barrier('08-01', ', unless: { lawn: { thin: true } }') + sowing(', only-if: { lawn: { thin: true } }');
    expect(only('seed-on-barrier', found(apart))).toEqual([]);
  });
});

describe('triggers', () => {
  const opening = (trigger: string) => step('a', 'scout', `{ opens: ${trigger} }`);
  test('trigger-on-from: met on its first day in most years', () => {
    expect(only('trigger-on-from', found(opening('{ soil: { depth: 5 cm, rises-to: 50 F, from: 06-01 } }')))).toEqual([
      'trigger-on-from at 06-01',
    ]);
    expect(only('trigger-on-from', found(opening('{ soil: { depth: 5 cm, rises-to: 50 F, from: 02-01 } }')))).toEqual(
      [],
    );
  });
  test('it is found below not-before and any-of', () => {
    const below = '{ any-of: [{ date: 12-01 }, { soil: { depth: 5 cm, rises-to: 50 F, from: 06-01 } }] }';
    expect(only('trigger-on-from', found(opening(below)))).toEqual(['trigger-on-from at 06-01']);
    const limited = '{ soil: { depth: 5 cm, rises-to: 50 F, from: 06-01 }, not-before: 05-01 }';
    expect(only('trigger-on-from', found(opening(limited)))).toEqual(['trigger-on-from at 06-01']);
  });
  test('step-rare: reached in fewer than half of the years at a climate it claims', () => {
    expect(only('step-rare', found(opening('{ air: { stat: max, rises-to: 102 F } }')))).toEqual([
      'step-rare at { air: { stat: max, rises-to: 102 F } }',
    ]);
    expect(only('step-rare', found(opening('{ air: { stat: max, rises-to: 95 F } }')))).toEqual([]);
  });
  test('step-never: no window anywhere', () => {
    expect(only('step-never', found(opening('{ soil: { depth: 5 cm, rises-to: 130 F } }')))).toEqual([
      'step-never at { soil: { depth: 5 cm, rises-to: 130 F } }',
    ]);
    const shut = step(
      'a',
      'scout',
      '{ opens: { soil: { depth: 5 cm, rises-to: 60 F } }, closes: { soil: { depth: 5 cm, rises-to: 50 F } } }',
    );
    expect(only('step-never', found(shut))).toHaveLength(1);
  });
  test('best-outside: outside the window more often than not', () => {
    const best = (days: string) =>
      step(
        'a',
        'scout',
        `{ opens: { date: 05-01 }, best: { after: { opening: true, wait: ${days} } }, closes: { date: 05-10 } }`,
      );
    expect(only('best-outside', found(best('20 d')))).toEqual([
      'best-outside at { after: { opening: true, wait: 20 d } }',
    ]);
    expect(only('best-outside', found(best('9 d')))).toEqual([]);
  });
});

describe('sources', () => {
  const bare = '  - { id: a, name: A, work: scout, window: { opens: { date: 05-01 } } }\n';
  test('no-source: a rule that nobody answers for', () => {
    expect(only('no-source', found(bare))).toEqual(['no-source at { date: 05-01 }']);
    expect(only('no-source', found(bare.replace('05-01', '05-01, source: common-practice')))).toEqual([]);
  });
  test('phosphorus-untested: no soil test asked for it', () => {
    const P = (more = '') =>
      step('a', 'spread', '{ opens: { date: 05-01 } }', `, apply: { nutrient: { P2O5: 1 lb/1000 sqft } }${more}`);
    expect(only('phosphorus-untested', found(P()))).toEqual(['phosphorus-untested at 1 lb/1000 sqft']);
    expect(only('phosphorus-untested', found(P(', only-if: { soil-test: { phosphorus: [low] } }')))).toEqual([]);
  });
});
