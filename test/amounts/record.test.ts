/** What the applicator's record says of an entry, and what it says is missing. */
import { describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { recordFrom } from '../record-kit.ts';

const first = (entry: string, changed: Parameters<typeof recordFrom>[1] = {}) =>
  recordFrom(`- ${entry}\n`, changed).entries[0];
const whole =
  'date: 2027-04-01, start: "08:10", end: "08:55", step: barrier, product: barrier, used: 6 lb, by: A, licence: B, wind: 4 mph, wind-from: nw, air: 62 F, target: crabgrass, setting: 5, notices: C';

describe('figures', () => {
  test('the rate is what was used over the areas: 6 lb on 1500 sq ft', () =>
    // 4 lb/1000 sq ft; 1 lb = 453.59237 g, 1 ft = 0.3048 m (NIST SP 811, 2008, appendix B.8).
    expect(first(`{ ${whole} }`)?.rateGPerM2).toBeCloseTo((4 * 453.59237) / (1000 * 0.3048 ** 2), 9));
  test('of one area it is over that one', () =>
    expect(first(`{ ${whole}, areas: [back] }`)?.rateGPerM2).toBeCloseTo((12 * 453.59237) / (1000 * 0.3048 ** 2), 9));
  test('of a liquid it is in volume', () =>
    expect(first('{ date: 2027-04-01, work: spray, used: 2 L, areas: [front] }')).toMatchObject({
      usedL: 2,
      usedKg: null,
      rateMlPerM2: 2000 / (1000 * 0.3048 ** 2),
    }));
  test('of an area that the lawn has not, no size and no rate are made up', () =>
    expect(first(`{ ${whole}, areas: [front, attic] }`)).toMatchObject({
      areaM2: null,
      rateGPerM2: null,
      missing: ['areas'],
    }));
  test('what was loaded is no amount', () =>
    expect(first('{ date: 2027-04-01, step: barrier, loaded: 6 lb }')).toMatchObject({
      usedKg: null,
      rateGPerM2: null,
    }));
});

describe('what is missing', () => {
  test('nothing of a whole entry', () => expect(first(`{ ${whole} }`)?.missing).toEqual([]));
  test.each([
    ['start: "08:10", ', 'start'],
    ['end: "08:55", ', 'end'],
    ['used: 6 lb, ', 'used'],
    ['by: A, ', 'by'],
    ['licence: B, ', 'licence'],
    ['wind-from: nw, ', 'wind-from'],
    ['air: 62 F, ', 'air'],
    ['target: crabgrass, ', 'target'],
    ['setting: 5, ', 'equipment'],
    [', notices: C', 'notices'],
    ['product: barrier, ', 'product'],
  ])('without %s it is said', (without, missing) =>
    expect(first(`{ ${whole.replace(without, '')} }`)?.missing).toContain(missing),
  );
  test('a calm comes from nowhere', () =>
    expect(first(`{ ${whole.replace('wind: 4 mph, wind-from: nw', 'wind: 0 mph')} }`)?.missing).toEqual([]));
  test('a pesticide step without a product lacks that and all else', () =>
    expect(first('{ date: 2027-04-01, step: barrier }')?.missing).toHaveLength(14));
  test('a feed lacks no licence', () =>
    expect(first('{ date: 2027-04-01, step: feed, product: urea, used: 2 lb }')?.missing).toEqual([]));
  test('mowing lacks nothing', () => expect(first('{ date: 2027-04-01, work: mow }')?.missing).toEqual([]));
  test('what was taken back lacks nothing', () => {
    const { entries } = recordFrom(
      '- { id: a, date: 2027-04-01, step: barrier }\n- { date: 2027-04-02, corrects: a, undo: true }\n',
    );
    expect(entries.map(({ standing, missing }) => [standing, missing])).toEqual([
      ['taken-back', []],
      ['undo', []],
    ]);
  });
});

describe("the plan's product", () => {
  const areas = [{ id: 'front', product: 'barrier' }];
  const plan = {
    season: { year: 2027, start: '2027-02-01', end: '2028-01-31' },
    applications: [{ id: 'barrier', season: 2027, areas }],
  } as unknown as Season;
  const from = (entry: string) => {
    const { product, productFrom, areas: on } = first(entry, { plan }) ?? {};
    return { product, productFrom, on };
  };
  test('stands, marked, where the entry names none', () =>
    expect(from('{ date: 2027-04-01, step: barrier }')).toEqual({
      product: 'barrier',
      productFrom: 'plan',
      on: ['front'],
    }));
  test('is not taken for another season', () =>
    expect(from('{ date: 2027-01-20, step: barrier }')).toMatchObject({ product: null, productFrom: null }));
  test('gives way to that of the entry', () =>
    expect(from('{ date: 2027-04-01, step: barrier, product: urea }')).toMatchObject({
      product: 'urea',
      productFrom: 'entry',
    }));
});

describe('entries', () => {
  const journal = `- { id: a, date: 2027-04-01, step: feed, used: 2 lb, areas: [back] }
- { id: b, date: 2026-12-31, step: feed }
- { id: c, date: 2027-04-01, start: "07:00", step: feed, corrects: a }
- { id: d, date: 2027-03-01, work: mow }
`;
  test('of the year, by day and time, those that no longer count among them', () =>
    expect(recordFrom(journal).entries.map(({ name, standing }) => `${name} ${standing}`)).toEqual([
      'd in-force',
      'a corrected',
      'c in-force',
    ]));
  test('what corrects one is named at both', () => {
    const [, a, c] = recordFrom(journal).entries;
    expect([a?.replacedBy, c?.corrects]).toEqual([{ name: 'c', date: '2027-04-01' }, 'a']);
  });
  test('whose undo was taken back stand again', () => {
    const undone = `- { id: a, date: 2027-04-01, work: mow }
- { id: b, date: 2027-04-02, corrects: a, undo: true }
- { id: c, date: 2027-04-03, corrects: b, undo: true }
`;
    expect(recordFrom(undone).entries.map(({ standing, replacedBy }) => [standing, replacedBy?.name])).toEqual([
      ['in-force', undefined],
      ['taken-back', 'c'],
      ['undo', undefined],
    ]);
  });
  test('a registration number of the entry goes before that of the product', () =>
    expect([first(`{ ${whole} }`)?.registration, first(`{ ${whole}, registration: X }`)?.registration]).toEqual([
      'IS-4-17',
      'X',
    ]));
});
