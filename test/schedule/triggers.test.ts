/** One test for each sentence on triggers of the program language; see DEVELOPERS.md, "What a trigger means". */
import { describe, expect, test } from 'vitest';
import { type Day, formatDay, parseDay } from '../../src/base/day.ts';
import { type DailySeries, seriesOf } from '../../src/base/series.ts';
import { dayLengthOn } from '../../src/climate/day-length.ts';
import { type SiteDays, siteDays } from '../../src/climate/site-days.ts';
import type { Trace } from '../../src/climate/trace.ts';
import type { Program } from '../../src/model/program.ts';
import type { Trigger } from '../../src/model/trigger.ts';
import { readProgram } from '../../src/read/program.ts';
import type { SeasonYear } from '../../src/schedule/season-year.ts';
import { resolveTrigger } from '../../src/schedule/triggers.ts';
import { noFrost, programText } from '../kit.ts';

const day = (text: string): Day => parseDay(text) as Day;
const season: SeasonYear = { year: 2027, start: day('2027-01-01'), end: day('2027-12-31') };

/** A trace whose temperatures on each day are given as functions of the day; by default 0 °C all year. */
function traceOf(air: (d: Day) => number, soil: (d: Day, depth: number) => number = air, range = 10): Trace {
  const of = (value: (d: Day) => number): DailySeries => seriesOf(day('2025-11-01'), day('2028-06-01'), value);
  return {
    label: 'test',
    tmin: of((d) => air(d) - range / 2),
    tmax: of((d) => air(d) + range / 2),
    precip: of(() => 0),
    soil: (depth) => of((d) => soil(d, depth)),
  };
}

/** A trigger as it stands in a program's window. */
function trigger(yaml: string, edge: 'opens' | 'closes' = 'opens'): Trigger {
  const window = edge === 'opens' ? `{ opens: ${yaml} }` : `{ opens: { date: 01-01 }, closes: ${yaml} }`;
  const { value, problems } = readProgram(
    programText(
      `  - { id: a, name: A, work: other, window: ${window} }\n  - { id: b, name: B, work: other, window: { opens: { date: 02-01 } } }\n`,
    ),
    'p.yaml',
  );
  if (!value) throw new Error(JSON.stringify(problems));
  return (value as Program).steps[0]?.window[edge] as Trigger;
}

/** Hours of daylight at 40° north. */
const dayLengths = seriesOf(day('2025-11-01'), day('2028-06-01'), (d) => dayLengthOn(d, 40));

interface Where {
  readonly trace?: Trace;
  readonly site?: SiteDays;
  readonly opening?: string;
  readonly reference?: string | null;
  readonly in?: SeasonYear;
}

function resolved(yaml: string, where: Where = {}): string | null {
  const opening = where.opening === undefined ? null : day(where.opening);
  const found = resolveTrigger(trigger(yaml, opening === null ? 'opens' : 'closes'), {
    trace: where.trace ?? traceOf(() => 0),
    site: where.site ?? noFrost(dayLengths),
    season: where.in ?? season,
    opening,
    referenceDay: () => (where.reference ? day(where.reference) : null),
  });
  return found === null ? null : formatDay(found);
}

const codesOf = (yaml: string, edge: 'opens' | 'closes' = 'opens'): string[] =>
  readProgram(
    programText(
      `  - { id: a, name: A, work: other, window: { ${edge === 'opens' ? '' : 'opens: { date: 01-01 }, '}${edge}: ${yaml} } }\n`,
    ),
    'p.yaml',
  ).problems.map(({ code }) => code);

/** Soil that is `warm` on these days of 2027 and `cold` on all others. */
const warmOn = (warm: number, cold: number, ...spans: readonly [string, string][]) =>
  traceOf(
    () => 0,
    (d) => (spans.some(([from, to]) => d >= day(from) && d <= day(to)) ? warm : cold),
  );

describe('the map', () => {
  test('a trigger has exactly one kind key', () => {
    expect(codesOf('{ date: 03-01, soil: { depth: 5 cm, rises-to: 10 C } }')).toEqual(['trigger-kind']);
    expect(codesOf('{ not-before: 03-01 }')).toEqual(['trigger-kind']);
  });
  test('not-before is all-of with that date', () => {
    expect(resolved('{ date: 03-01, not-before: 03-10 }')).toBe('2027-03-10');
    expect(resolved('{ date: 03-20, not-before: 03-10 }')).toBe('2027-03-20');
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C }, not-before: 03-10 }')).toBe(null);
  });
  test('not-after is any-of with that date', () => {
    expect(resolved('{ date: 03-20, not-after: 03-10 }')).toBe('2027-03-10');
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C }, not-after: 03-10 }')).toBe('2027-03-10');
  });
  test('any trigger may carry a source, inside or beside its kind', () => {
    expect(trigger('{ date: 03-01, source: common-practice }').source).toBe('common-practice');
    expect(trigger('{ soil: { depth: 5 cm, rises-to: 10 C, source: from-memory } }').source).toBe('from-memory');
  });
});

describe('date', () => {
  test('is that day', () => expect(resolved('{ date: 04-15 }')).toBe('2027-04-15'));
  test('02-29 is 02-28 in other years', () => {
    expect(resolved('{ date: 02-29 }')).toBe('2027-02-28');
    const leap = { year: 2028, start: day('2028-01-01'), end: day('2028-12-31') };
    expect(resolved('{ date: 02-29 }', { in: leap })).toBe('2028-02-29');
  });
});

describe('soil', () => {
  test('the mean is the trailing mean of daily means ending on the day', () => {
    // 0 °C, then 10 °C from 1 March: the 5-day mean is 2, 4, 6, 8, 10 on 1 to 5 March.
    const trace = warmOn(10, 0, ['2027-03-01', '2027-12-31']);
    expect(resolved('{ soil: { depth: 5 cm, mean: 5 d, rises-to: 6 C } }', { trace })).toBe('2027-03-03');
    expect(resolved('{ soil: { depth: 5 cm, mean: 5 d, rises-to: 10 C } }', { trace })).toBe('2027-03-05');
  });
  test('the day is the last day of the hold', () => {
    const trace = warmOn(10, 0, ['2027-03-01', '2027-12-31']);
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C, holds: 3 d } }', { trace })).toBe('2027-03-03');
  });
  test('a hold that breaks begins again', () => {
    const trace = warmOn(10, 0, ['2027-03-01', '2027-03-02'], ['2027-03-10', '2027-12-31']);
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C, holds: 3 d } }', { trace })).toBe('2027-03-12');
  });
  test('a condition that already holds on `from`, its hold complete, gives `from`', () => {
    const trace = warmOn(10, 0, ['2027-01-20', '2027-12-31']);
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C, holds: 3 d, from: 02-01 } }', { trace })).toBe(
      '2027-02-01',
    );
  });
  test('a hold that is unbroken but not complete on `from` ends after it', () => {
    const trace = warmOn(10, 0, ['2027-01-31', '2027-12-31']);
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C, holds: 3 d, from: 02-01 } }', { trace })).toBe(
      '2027-02-02',
    );
  });
  test('a crossing before `from` that has ended by `from` does not count', () => {
    const trace = warmOn(10, 0, ['2027-01-10', '2027-01-31'], ['2027-03-20', '2027-12-31']);
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C, from: 02-01 } }', { trace })).toBe('2027-03-20');
  });
  test('falls-to looks from `from` on', () => {
    const trace = warmOn(20, 5, ['2027-05-01', '2027-10-09']);
    expect(resolved('{ soil: { depth: 5 cm, falls-to: 10 C, from: 08-15 } }', { trace })).toBe('2027-10-10');
  });
  test('falls-to needs `from` in opens, not in closes', () => {
    expect(codesOf('{ soil: { depth: 5 cm, falls-to: 10 C } }')).toEqual(['trigger-from']);
    expect(codesOf('{ soil: { depth: 5 cm, falls-to: 10 C } }', 'closes')).toEqual([]);
  });
  test('falls-to in closes without `from` looks from the opening on', () => {
    const trace = warmOn(20, 5, ['2027-05-01', '2027-10-09']);
    expect(resolved('{ soil: { depth: 5 cm, falls-to: 10 C } }', { trace, opening: '2027-06-01' })).toBe('2027-10-10');
  });
  test('exactly on the threshold is reached, in °F too', () => {
    const trace = warmOn(10, 0, ['2027-03-01', '2027-12-31']);
    expect(resolved('{ soil: { depth: 2 in, rises-to: 50 F } }', { trace })).toBe('2027-03-01');
  });
  test('the depth named is the depth read', () => {
    const trace = traceOf(
      () => 0,
      (d, depth) => (d >= day(depth < 0.06 ? '2027-03-01' : '2027-03-09') ? 10 : 0),
    );
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C } }', { trace })).toBe('2027-03-01');
    expect(resolved('{ soil: { depth: 10 cm, rises-to: 10 C } }', { trace })).toBe('2027-03-09');
  });
  test('a depth above 5 cm is refused', () =>
    expect(codesOf('{ soil: { depth: 2 cm, rises-to: 10 C } }')).toEqual(['soil-depth']));
  test('exactly one direction', () => {
    expect(codesOf('{ soil: { depth: 5 cm } }')).toEqual(['trigger-direction']);
    expect(codesOf('{ soil: { depth: 5 cm, rises-to: 10 C, falls-to: 12 C, from: 01-01 } }')).toEqual([
      'trigger-direction',
    ]);
  });
  test('a temperature that never comes gives none', () =>
    expect(resolved('{ soil: { depth: 5 cm, rises-to: 10 C } }')).toBe(null));
});

describe('air', () => {
  const trace = traceOf((d) => (d >= day('2027-04-01') ? 12 : 2));
  test('the same over the mean air temperature', () => {
    expect(resolved('{ air: { stat: mean, mean: 2 d, rises-to: 12 C, holds: 2 d } }', { trace })).toBe('2027-04-03');
  });
  test('over the minimum, the maximum', () => {
    expect(resolved('{ air: { stat: min, rises-to: 7 C } }', { trace })).toBe('2027-04-01');
    expect(resolved('{ air: { stat: min, rises-to: 8 C } }', { trace })).toBe(null);
    expect(resolved('{ air: { stat: max, rises-to: 17 C } }', { trace })).toBe('2027-04-01');
  });
});

describe('degree-days', () => {
  // Each day from 1 March on brings 10 °C·d (18 °F·d) above 10 °C, by any method.
  const trace = traceOf((d) => (d >= day('2027-03-01') ? 20 : 0), undefined, 4);
  test('the day is the first on which the sum is reached', () => {
    expect(resolved('{ degree-days: { base: 10 C, from: 01-01, reaches: 100 } }', { trace })).toBe('2027-03-10');
    expect(resolved('{ degree-days: { base: 10 C, from: 01-01, reaches: 101 } }', { trace })).toBe('2027-03-11');
  });
  test("`reaches` is in the base's unit × days", () => {
    expect(resolved('{ degree-days: { base: 50 F, from: 01-01, reaches: 180 } }', { trace })).toBe('2027-03-10');
    expect(resolved('{ degree-days: { base: 50 F, from: 01-01, reaches: 100 } }', { trace })).toBe('2027-03-06');
  });
  test('`from` is the latest such day on or before the day asked about', () => {
    // Heat of 2026 counts from November on, since 1 November 2026 is the latest before a day in March 2027.
    const early = traceOf(
      (d) => (d >= day('2026-12-01') && d <= day('2026-12-05') ? 20 : d >= day('2027-03-01') ? 20 : 0),
      undefined,
      4,
    );
    expect(resolved('{ degree-days: { base: 10 C, from: 11-01, reaches: 100 } }', { trace: early })).toBe('2027-03-05');
  });
  test('a sum that was reached in an earlier season is not reached again by standing still', () => {
    expect(
      resolved('{ degree-days: { base: 10 C, from: 03-01, reaches: 100 } }', {
        trace: traceOf((d) => (d < day('2026-06-01') ? 20 : 0), undefined, 4),
      }),
    ).toBe(null);
  });
  test('days before `from` add nothing', () => {
    const warm = (d: Day) => (d >= day('2026-05-01') && d < day('2026-09-01')) || d >= day('2027-03-01');
    const twoYears = traceOf((d) => (warm(d) ? 20 : 0), undefined, 4);
    expect(resolved('{ degree-days: { base: 10 C, from: 03-11, reaches: 100 } }', { trace: twoYears })).toBe(
      '2027-03-20',
    );
  });
  test('an upper threshold caps what a day brings', () => {
    expect(resolved('{ degree-days: { base: 10 C, upper: 15 C, from: 01-01, reaches: 100 } }', { trace })).toBe(
      '2027-03-20',
    );
  });
  test('single-sine counts the warm hours of a day whose mean is below the base', () => {
    const mild = traceOf((d) => (d >= day('2027-03-01') ? 9 : 0), undefined, 10);
    expect(
      resolved('{ degree-days: { base: 10 C, method: average, from: 01-01, reaches: 10 } }', { trace: mild }),
    ).toBe(null);
    expect(
      resolved('{ degree-days: { base: 10 C, method: single-sine, from: 01-01, reaches: 10 } }', { trace: mild }),
    ).toMatch(/^2027-03/);
  });
  test('an upper threshold at or below the base is refused', () => {
    expect(codesOf('{ degree-days: { base: 10 C, upper: 10 C, from: 01-01, reaches: 10 } }')).toEqual([
      'degree-days-upper',
    ]);
  });
});

describe('degree-days, more ways to sum', () => {
  const warm = traceOf(
    () => 0,
    (d) => (d >= day('2027-03-01') ? 20 : 0),
  );
  test('of the soil, from its daily means at a depth', () => {
    expect(
      resolved('{ degree-days: { of: soil, depth: 5 cm, base: 10 C, from: 01-01, reaches: 100 } }', { trace: warm }),
    ).toBe('2027-03-10');
  });
  test('soil takes the average, air no depth', () => {
    expect(codesOf('{ degree-days: { of: soil, method: single-sine, base: 10 C, from: 01-01, reaches: 9 } }')).toEqual([
      'degree-days-soil',
    ]);
    expect(codesOf('{ degree-days: { depth: 5 cm, base: 10 C, from: 01-01, reaches: 9 } }')).toEqual([
      'degree-days-soil',
    ]);
  });
  test('a cutoff belongs to sines and triangles', () => {
    expect(codesOf('{ degree-days: { cutoff: vertical, upper: 30 C, base: 10 C, from: 01-01, reaches: 9 } }')).toEqual([
      'degree-days-cutoff',
    ]);
  });
  test('a sum that was derived with another method is told', () => {
    expect(codesOf('{ degree-days: { derived-with: single-sine, base: 10 C, from: 01-01, reaches: 9 } }')).toEqual([
      'method-mismatch',
    ]);
    expect(codesOf('{ degree-days: { derived-with: average, base: 10 C, from: 01-01, reaches: 9 } }')).toEqual([]);
  });
  test('a start across New Year sums on', () => {
    const mild = traceOf((d) => (d >= day('2026-12-29') && d <= day('2027-01-05') ? 20 : 0), undefined, 4);
    expect(resolved('{ degree-days: { base: 10 C, from: 11-01, reaches: 50 } }', { trace: mild })).toBe('2027-01-02');
  });
});

describe('after', () => {
  test('counts from the reference day of the step', () => {
    expect(resolved('{ after: { step: b, wait: 5 weeks } }', { reference: '2027-09-04' })).toBe('2027-10-09');
  });
  test('a step that gives no day gives none, unless `otherwise` stands beside it', () => {
    expect(resolved('{ after: { step: b, wait: 5 weeks } }', { reference: null })).toBe(null);
    expect(resolved('{ after: { step: b, wait: 5 weeks, otherwise: { date: 10-15 } } }', { reference: null })).toBe(
      '2027-10-15',
    );
  });
  test('degree days are summed from the day after it', () => {
    const trace = traceOf(() => 20, undefined, 4);
    expect(
      resolved('{ after: { step: b, degree-days: { base: 0 C, reaches: 200 } } }', { trace, reference: '2027-06-01' }),
    ).toBe('2027-06-11');
  });
  test("`opening: true` counts from the window's own opening in the same trace", () => {
    expect(resolved('{ after: { opening: true, wait: 3 d } }', { opening: '2027-04-02' })).toBe('2027-04-05');
    expect(codesOf('{ after: { opening: true, wait: 3 d } }')).toEqual(['trigger-opening']);
  });
  test('names one of step and opening, and one of wait and degree-days', () => {
    expect(codesOf('{ after: { wait: 3 d } }', 'closes')).toEqual(['trigger-after']);
    expect(codesOf('{ after: { opening: true } }', 'closes')).toEqual(['trigger-after']);
  });
});

describe('any-of and all-of', () => {
  const never = '{ soil: { depth: 5 cm, rises-to: 30 C } }';
  test('any-of is the earliest day that exists', () => {
    expect(resolved(`{ any-of: [{ date: 04-01 }, { date: 03-15 }, ${never}] }`)).toBe('2027-03-15');
    expect(resolved(`{ any-of: [${never}] }`)).toBe(null);
  });
  test('all-of is the latest', () =>
    expect(resolved('{ all-of: [{ date: 04-01 }, { date: 03-15 }] }')).toBe('2027-04-01'));
  test('all-of is none if one is none', () => expect(resolved(`{ all-of: [{ date: 04-01 }, ${never}] }`)).toBe(null));
});

describe('month-days of a window', () => {
  test('a month-day in closes is the first on or after the opening', () => {
    expect(resolved('{ date: 05-15 }', { opening: '2027-04-02' })).toBe('2027-05-15');
    expect(resolved('{ date: 02-15 }', { opening: '2027-11-20' })).toBe('2028-02-15');
    expect(resolved('{ date: 04-02 }', { opening: '2027-04-02' })).toBe('2027-04-02');
  });
});

describe('growth', () => {
  // 10 °C until February, 15 °C in March, 20 °C from April on: cool-season potential 0.19, 0.66 and 1.
  const trace = traceOf((d) => (d < day('2027-03-01') ? 10 : d < day('2027-04-01') ? 15 : 20));
  test('is the temperature growth potential of the grass', () => {
    expect(resolved('{ growth: { grass: cool, rises-to: 0.5 } }', { trace })).toBe('2027-03-01');
    expect(resolved('{ growth: { grass: cool, rises-to: 0.9 } }', { trace })).toBe('2027-04-01');
    expect(resolved('{ growth: { grass: warm, rises-to: 0.5 } }', { trace })).toBe(null);
  });
  test('is that of the mean air temperature, not the mean of potentials', () => {
    // On 3 April the 5-day mean of the air is (2 × 15 + 3 × 20) / 5 = 18 °C: 0.936.
    expect(resolved('{ growth: { grass: cool, mean: 5 d, rises-to: 0.93 } }', { trace })).toBe('2027-04-03');
  });
  test('falls-to needs `from` in opens', () =>
    expect(codesOf('{ growth: { grass: cool, falls-to: 0.5 } }')).toEqual(['trigger-from']));
  test('goes from 0 to 1', () => expect(codesOf('{ growth: { grass: cool, rises-to: 2 } }')).toEqual(['out-of-range']));
});

describe('day-length', () => {
  test('is sun above the horizon', () => {
    // Day and night are equal three to four days before the March and after the September equinox, for refraction and
    // the sun's disc (U.S. Naval Observatory, "The Seasons and the Earth's Orbit"): about 17 March and 26 September at 40° N.
    expect(['2027-03-17', '2027-03-18']).toContain(resolved('{ day-length: { rises-to: 12 h } }'));
    expect(['2027-09-26', '2027-09-27']).toContain(resolved('{ day-length: { falls-to: 12 h, from: 07-01 } }'));
  });
  test('is at most 24 h', () => expect(codesOf('{ day-length: { rises-to: 25 h } }')).toEqual(['out-of-range']));
});

describe('frost', () => {
  /** Past winters of 2001 to 2026: the first 0 °C on 20 October or as told, the last on 5 April, each year. */
  const winters = (latitude = 40, swing = 182, first = '10-20') => {
    const start = day('2001-01-01');
    const tmin = seriesOf(start, day('2027-02-01'), (d) => {
      const at = formatDay(d - (latitude < 0 ? swing : 0)).slice(5);
      return at >= first || at <= '04-05' ? -1 : 9;
    }).values;
    const record = { source: 'test', start, tmin, tmax: tmin, precip: tmin };
    return siteDays(record, new Set(), latitude, { from: start, to: start + 1 });
  };
  const site = winters();
  test('first is the day by which the chance of all years have had one', () =>
    expect(resolved('{ frost: { first: 32 F, chance: 50% } }', { site })).toBe('2027-10-20'));
  test('last is the day after which the chance of all years still have one', () =>
    expect(resolved('{ frost: { last: 0 C, chance: 10% } }', { site })).toBe('2027-04-05'));
  test('before and after shift it', () => {
    expect(resolved('{ frost: { first: 0 C, chance: 50%, before: 6 weeks } }', { site })).toBe('2027-09-08');
    expect(resolved('{ frost: { last: 0 C, chance: 50%, after: 10 d } }', { site })).toBe('2027-04-15');
  });
  test('it is the same in every trace, whatever the weather of the season', () => {
    const [hot, cold] = [traceOf(() => 30), traceOf(() => -30)].map((trace) =>
      resolved('{ frost: { first: 0 C, chance: 50% } }', { trace, site }),
    );
    expect([hot, cold]).toEqual(['2027-10-20', '2027-10-20']);
  });
  test('too few years with frost: none', () => {
    expect(resolved('{ frost: { first: -10 C, chance: 50% } }', { site })).toBe(null);
    expect(resolved('{ frost: { first: 0 C, chance: 50% } }', { site: noFrost(dayLengths) })).toBe(null);
  });
  test('the southern cold season begins in January', () => {
    const south = { year: 2026, start: day('2026-07-01'), end: day('2027-06-30') };
    expect(resolved('{ frost: { first: 0 C, chance: 50% } }', { site: winters(-40), in: south })).toBe('2027-04-20');
    expect(resolved('{ frost: { last: 0 C, chance: 50% } }', { site: winters(-40), in: south })).toBe('2026-10-04');
  });
  test('a first frost late in the year is that of this year, not of the last', () =>
    expect(resolved('{ frost: { first: 0 C, chance: 50% } }', { site: winters(40, 182, '11-20') })).toBe('2027-11-20'));
  test('a season from autumn on has its own first frost', () => {
    const autumn = { year: 2026, start: day('2026-08-01'), end: day('2027-07-31') };
    expect(resolved('{ frost: { first: 0 C, chance: 50% } }', { site, in: autumn })).toBe('2026-10-20');
    expect(resolved('{ frost: { last: 0 C, chance: 50% } }', { site, in: autumn })).toBe('2027-04-05');
  });
  test('names one of first and last, at a chance between 0 and 100 %', () => {
    expect(codesOf('{ frost: { first: 0 C, last: 0 C, chance: 50% } }')).toEqual(['trigger-frost']);
    expect(codesOf('{ frost: { chance: 50% } }')).toEqual(['trigger-frost']);
    expect(codesOf('{ frost: { first: 0 C, chance: 150% } }')).toEqual(['out-of-range']);
    expect(codesOf('{ frost: { first: 0 C, chance: 50%, before: 1 week, after: 1 week } }')).toEqual(['trigger-frost']);
  });
});
