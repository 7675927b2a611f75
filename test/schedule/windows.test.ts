/** One test for each sentence on seasons, windows per trace, and spreads; see DEVELOPERS.md, "What a trigger means". */
import { describe, expect, test } from 'vitest';
import { type Day, formatDay, parseDay } from '../../src/base/day.ts';
import { seriesOf } from '../../src/base/series.ts';
import type { Trace } from '../../src/climate/trace.ts';
import type { Program, Step } from '../../src/model/program.ts';
import { readProgram } from '../../src/read/program.ts';
import { chooseDay } from '../../src/schedule/choose.ts';
import type { Forbidden } from '../../src/schedule/rules/forbidden.ts';
import { seasonsOf, southernSteps } from '../../src/schedule/season-year.ts';
import {
  chanceOf,
  type Edge,
  shareHolding,
  spreadOf,
  type Window,
  type Windows,
  windowIn,
} from '../../src/schedule/windows.ts';
import { noFrost, programText } from '../kit.ts';

const day = (text: string): Day => parseDay(text) as Day;
const season = { year: 2027, start: day('2027-01-01'), end: day('2027-12-31') };

function programOf(window: string, extra = ''): Program {
  const { value, problems } = readProgram(
    programText(`  - { id: a, name: A, work: other, window: ${window} }\n`, extra),
    'p.yaml',
  );
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}
const stepOf = (window: string): Step => programOf(window).steps[0] as Step;

const flat = (value: number): Trace => {
  const series = seriesOf(day('2025-11-01'), day('2028-06-01'), () => value);
  return { label: 'flat', tmin: series, tmax: series, precip: series, soil: () => series };
};

function windowOf(yaml: string): Record<Edge, string> | null {
  const window = windowIn(stepOf(yaml), {
    trace: flat(0),
    site: noFrost(flat(0).tmin),
    season,
    referenceDay: () => null,
  });
  return window && { opens: formatDay(window.opens), best: formatDay(window.best), closes: formatDay(window.closes) };
}

describe('a window in one trace', () => {
  test('`closes` is its last good day', () => {
    const windows: Windows = { ofTraces: [{ opens: 10, best: 10, closes: 12, late: null }], ofPastYears: [] };
    expect([9, 10, 12, 13].map((d) => shareHolding(windows, d))).toEqual([0, 1, 1, 0]);
  });
  test('a close before the opening is no window', () => {
    const never = '{ soil: { depth: 5 cm, rises-to: 0 C } }'; // holds on 1 January already
    expect(windowOf(`{ opens: { date: 03-01 }, closes: ${never} }`)).toBe(null);
  });
  test('no opening is no window', () =>
    expect(windowOf('{ opens: { soil: { depth: 5 cm, rises-to: 9 C } } }')).toBe(null));
  test('no close is the end of the season', () => {
    expect(windowOf('{ opens: { date: 03-01 } }')?.closes).toBe('2027-12-31');
    expect(windowOf('{ opens: { date: 03-01 }, closes: { soil: { depth: 5 cm, rises-to: 9 C } } }')?.closes).toBe(
      '2027-12-31',
    );
  });
  test('`best` is clipped to the window', () => {
    expect(windowOf('{ opens: { date: 03-01 }, best: { date: 03-05 }, closes: { date: 03-10 } }')?.best).toBe(
      '2027-03-05',
    );
    expect(
      windowOf('{ opens: { date: 03-01 }, best: { after: { opening: true, wait: 30 d } }, closes: { date: 03-10 } }')
        ?.best,
    ).toBe('2027-03-10');
  });
  test('it belongs to the season in which it opens and may end in the next', () => {
    expect(windowOf('{ opens: { date: 12-20 }, closes: { date: 01-10 } }')?.closes).toBe('2028-01-10');
  });
});

describe('seasons', () => {
  const program = programOf('{ opens: { date: 03-01 } }');
  const shown = (southern: boolean, asOf: string, of = program) =>
    seasonsOf(of, southern, day(asOf)).map(({ year, start, end }) => [year, formatDay(start), formatDay(end)]);
  test('1 January to 31 December in the north', () =>
    expect(shown(false, '2027-04-02')).toEqual([[2027, '2027-01-01', '2027-12-31']]));
  test('1 July to 30 June in the south, named by the year it begins in', () => {
    expect(shown(true, '2027-04-02')).toEqual([[2026, '2026-07-01', '2027-06-30']]);
  });
  test('`season.from` begins it', () => {
    const own = programOf('{ opens: { date: 10-10 } }', 'season: { from: 10-01 }\n');
    expect(shown(false, '2027-04-02', own)).toEqual([[2026, '2026-10-01', '2027-09-30']]);
  });
  test('from 60 days before its end the next one is planned as well', () => {
    expect(shown(false, '2027-11-01')).toHaveLength(1);
    expect(shown(false, '2027-11-02').map(([year]) => year)).toEqual([2027, 2028]);
  });
  test("on a southern lawn every month-day moves six calendar months, clipped to the month's end", () => {
    const [step] = southernSteps(
      programOf(
        '{ opens: { soil: { depth: 5 cm, falls-to: 10 C, from: 08-15 }, not-before: 08-31 }, closes: { any-of: [{ date: 10-10 }, { degree-days: { base: 10 C, from: 01-01, reaches: 9 } }] } }',
      ).steps,
    );
    expect(step?.window.opens).toMatchObject({ of: [{ from: { month: 2, day: 15 } }, { on: { month: 2, day: 29 } }] });
    expect(step?.window.closes).toMatchObject({ of: [{ on: { month: 4, day: 10 } }, { from: { month: 7, day: 1 } }] });
  });
});

describe('spreads', () => {
  const at = (opens: number): Window => ({ opens, best: opens, closes: opens + 10, late: null });
  const base = day('2027-03-01');
  const windows = (ofTraces: (Window | null)[], ofPastYears = ofTraces): Windows => ({ ofTraces, ofPastYears });
  test('are quantiles of type 7 over all traces', () => {
    const ten = Array.from({ length: 11 }, (_, i) => at(base + i));
    expect(spreadOf(windows(ten), 'opens')).toEqual({
      p10: '2027-03-02',
      p50: '2027-03-06',
      p90: '2027-03-10',
      usual: '2027-03-06',
    });
  });
  test('a trace without a day counts as later than every date, and a quantile that falls there is null', () => {
    const some = [...Array.from({ length: 8 }, (_, i) => at(base + i)), null, null, null];
    expect(spreadOf(windows(some), 'opens')).toMatchObject({ p10: '2027-03-02', p50: '2027-03-06', p90: null });
  });
  test('`chance` is the share of traces with a window', () =>
    expect(chanceOf(windows([at(1), null, at(2), at(3)]))).toBe(0.75));
  test('under 50 % there is no p50', () => {
    expect(spreadOf(windows([at(base), null, null]), 'opens').p50).toBe(null);
  });
  test('`usual` is the middle over whole past years', () => {
    expect(spreadOf(windows([at(base)], [at(base + 4), at(base + 5), at(base + 9)]), 'opens').usual).toBe('2027-03-06');
  });
});

describe('the chosen day', () => {
  const monday = day('2027-03-01');
  const span = (opens: number, best: number, closes: number): Window => ({
    opens: monday + opens,
    best: monday + best,
    closes: monday + closes,
    late: null,
  });
  const weekend = (d: Day): Forbidden[] => ((d - monday) % 7 >= 5 ? [] : [{ rule: 'not-working' }]);
  const choose = (ofTraces: (Window | null)[], options: Partial<Parameters<typeof chooseDay>[0]> = {}) => {
    const choice = chooseDay({
      windows: { ofTraces, ofPastYears: [] },
      asOf: monday,
      rulesOn: () => [],
      lean: undefined,
      published: null,
      ...options,
    });
    return choice && { ...choice, day: choice.day - monday };
  };
  test('is held by the most traces, within 5 points', () => {
    // Days 4 to 6 lie in both windows, day 0 in one.
    expect(choose([span(0, 0, 6), span(4, 8, 12)])).toMatchObject({ day: 4, inWindow: 1 });
  });
  test('is the one nearest the median best', () => expect(choose([span(0, 7, 20)])?.day).toBe(7));
  test('is an allowed day', () => expect(choose([span(0, 8, 20)], { rulesOn: weekend })?.day).toBe(6));
  test('ties go to the earlier', () =>
    expect(choose([span(0, 8, 20)], { rulesOn: (d) => (d === monday + 8 ? [{ rule: 'full' }] : []) })?.day).toBe(7));
  test('lies on the side that `lean` names', () => {
    expect(choose([span(0, 8, 20)], { rulesOn: weekend, lean: 'late' })?.day).toBe(12);
    expect(choose([span(0, 11, 20)], { rulesOn: weekend, lean: 'early' })?.day).toBe(6);
  });
  test('is none where no day is allowed', () => expect(choose([span(0, 2, 4)], { rulesOn: weekend })).toBe(null));
  test('is never before the as-of day', () => expect(choose([span(-20, -15, 20)])?.day).toBe(0));
  test('a published day stays while no other gains more than 5 points', () => {
    expect(choose([span(0, 7, 20)], { published: monday + 12 })).toMatchObject({ day: 12, insteadOf: monday + 7 });
  });
  test('a published day moves when another gains more than 5 points', () => {
    expect(choose([span(0, 7, 20), span(0, 7, 9)], { published: monday + 12 })).toMatchObject({
      day: 7,
      moved: { from: monday + 12, reason: 'better' },
    });
  });
  test('a published day moves when it has left every window', () => {
    expect(choose([span(0, 7, 10)], { published: monday + 12 })).toMatchObject({
      day: 7,
      moved: { reason: 'left-window' },
    });
  });
  test('a published day moves when a rule forbids it', () => {
    expect(choose([span(0, 7, 20)], { published: monday + 9, rulesOn: weekend })).toMatchObject({
      moved: { from: monday + 9, reason: { rule: 'not-working' } },
    });
  });
});
