/**
 * Properties over random programs, lawns and weather. The rules are worked out here a second time, from the files alone:
 * nothing of the planner's own arithmetic judges it.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatDay, parseDay, weekday } from '../../src/base/day.ts';
import { compile } from '../../src/compile.ts';
import type { Ledger } from '../../src/model/ledger.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { LONG, programText, runs } from '../kit.ts';

const AS_OF = parseDay('2027-04-02') as number;
const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const PER_1000_SQFT = 4.88243; // g/m² in 1 lb/1000 sqft
const AREAS = ['front', 'back', 'side'];

/** A wet, a dry and a late year after the same nine. */
const WEATHERS = [0, 4, -4].map((shift) =>
  inventedWeather('2018-01-01', '2027-04-20', (d) => (d > AS_OF - 60 ? shift : 0)),
);

interface Feed {
  readonly rate: number;
  readonly month: number;
  readonly days: number;
}
interface Lawn {
  readonly feeds: readonly Feed[];
  readonly singles: { readonly total: number; readonly yearly: number; readonly spacingWeeks: number };
  readonly working: readonly number[];
  readonly jobs: number;
  readonly away: { readonly from: number; readonly days: number };
  readonly ban: { readonly month: number; readonly days: number };
  readonly law: { readonly yearly: number; readonly single: number };
  readonly seedMonth: number;
  readonly barrierMonth: number;
  readonly seedWeeks: number;
  readonly done: readonly { readonly before: number; readonly lb: number; readonly area: number | null }[];
  readonly own: readonly (number | null)[];
  readonly irrigated: boolean;
  readonly weather: number;
}

const cases: fc.Arbitrary<Lawn> = fc.record({
  feeds: fc.array(
    fc.record({
      rate: fc.integer({ min: 2, max: 15 }).map((n) => n / 10),
      month: fc.integer({ min: 3, max: 10 }),
      days: fc.integer({ min: 0, max: 60 }),
    }),
    { minLength: 1, maxLength: 6 },
  ),
  singles: fc.record({
    total: fc.constantFrom(0.5, 0.9, 2),
    yearly: fc.constantFrom(1, 2.5, 6),
    spacingWeeks: fc.integer({ min: 1, max: 8 }),
  }),
  working: fc.uniqueArray(fc.integer({ min: 0, max: 6 }), { minLength: 1 }),
  jobs: fc.integer({ min: 1, max: 3 }),
  away: fc.record({ from: fc.integer({ min: 0, max: 200 }), days: fc.integer({ min: 0, max: 40 }) }),
  ban: fc.record({ month: fc.integer({ min: 1, max: 12 }), days: fc.integer({ min: 1, max: 27 }) }),
  law: fc.record({ yearly: fc.constantFrom(1.2, 3, 9), single: fc.constantFrom(0.4, 0.7, 3) }),
  seedMonth: fc.integer({ min: 4, max: 10 }),
  barrierMonth: fc.integer({ min: 3, max: 10 }),
  seedWeeks: fc.integer({ min: 2, max: 20 }),
  done: fc.array(
    fc.record({
      before: fc.integer({ min: 1, max: 80 }),
      lb: fc.integer({ min: 1, max: 5 }),
      area: fc.option(fc.integer({ min: 0, max: 2 })),
    }),
    { maxLength: 3 },
  ),
  own: fc.array(fc.option(fc.integer({ min: 0, max: 2 })), { minLength: 6, maxLength: 6 }),
  irrigated: fc.boolean(),
  weather: fc.integer({ min: 0, max: WEATHERS.length - 1 }),
});

const monthDay = (month: number, day: number) => `${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
const window = (month: number, days: number) => {
  const opens = parseDay(`2027-${monthDay(month, 1)}`) as number;
  return `{ opens: { date: ${formatDay(opens).slice(5)} }, closes: { date: ${formatDay(opens + days).slice(5)} } }`;
};

function program({ feeds, singles, seedMonth, barrierMonth }: Lawn): string {
  const steps = feeds.map(
    ({ rate, month, days }, i) =>
      `  - { id: feed-${i}, name: Feed ${i}, work: spread, window: ${window(month, days)}, apply: { nutrient: { N: ${rate} lb/1000 sqft } } }\n`,
  );
  const guards = `nitrogen: { yearly: { to: ${singles.yearly} lb/1000 sqft }, single: { total: ${singles.total} lb/1000 sqft }, spacing: ${singles.spacingWeeks} weeks }\n`;
  return programText(
    `${steps.join('')}  - { id: sow, name: Sow, work: seed, window: ${window(seedMonth, 50)}, apply: { seed: seed, rate: 6 lb/1000 sqft } }
  - id: barrier
    name: Barrier
    work: spread
    window:
      opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 50 F, from: 02-01 }, not-before: ${monthDay(barrierMonth, 1)} }
      closes: { after: { opening: true, wait: 40 d } }
    apply: { pesticide: pre-emergent }
`,
    guards,
  );
}

function lawn(one: Lawn): string {
  const { away, ban, law, own, feeds } = one;
  const awayFrom = AS_OF + away.from;
  const chosen = feeds.flatMap((_, i) => {
    const area = own[i];
    return area == null ? [] : [`feed-${i}: { areas: [${AREAS[area]}] }`];
  });
  return `kind: lawn
version: 1
id: random-lawn
location: { latitude: 39, longitude: -84, elevation: 270 m }
timezone: America/New_York
grass: tall-fescue
program: program.yaml
weather: { files: [weather.csv] }
facts: { irrigated: ${one.irrigated} }
areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 40 ft] }, side: { circle: { radius: 9 ft } } }
products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - { id: seed, form: seed }
  - id: barrier
    form: granular
    pesticide: pre-emergent
    actives: { prodiamine: 0.4% }
    label: { rate: 4 lb/1000 sqft, seed-safe: { after: ${one.seedWeeks} weeks, before: ${one.seedWeeks} weeks } }
working: { days: [${one.working.map((d) => WEEKDAYS[d]).join(', ')}], jobs-per-day: ${one.jobs}, away: [[${formatDay(awayFrom)}, ${formatDay(awayFrom + away.days)}]] }
local-rules:
  - { forbid: [fertilizer], between: [${monthDay(ban.month, 1)}, ${monthDay(ban.month, ban.days)}] }
  - { limit: N, yearly: ${law.yearly} lb/1000 sqft, single: ${law.single} lb/1000 sqft }
${chosen.length === 0 ? '' : `steps: { ${chosen.join(', ')} }\n`}`;
}

const journal = ({ done }: Lawn): string =>
  done
    .map(
      ({ before, lb, area }) =>
        `- { date: ${formatDay(AS_OF - before)}, work: spread, product: urea, used: ${lb} lb${area === null ? '' : `, areas: [${AREAS[area]}]`} }\n`,
    )
    .join('');

function plan(one: Lawn, asOf = AS_OF, ledger: Ledger | null = null, entries = journal(one)) {
  const files: Record<string, string> = {
    'program.yaml': program(one),
    'weather.csv': WEATHERS[one.weather] as string,
    ...(entries === '' ? {} : { 'lawn.journal.yaml': entries }),
  };
  const compiled = compile({
    lawn: { name: 'lawn.yaml', text: lawn(one) },
    lookup: (ref) => (ref in files ? { name: ref, text: files[ref] as string } : null),
    asOf,
    ledger,
    revisedAt: `${formatDay(asOf)}T00:00:00Z`,
    detail: 'normal',
  });
  if (!compiled.season) throw new Error(compiled.problems.map(({ message }) => message).join('\n'));
  return { ...compiled, season: compiled.season };
}

const dated = (season: Season) =>
  season.applications.flatMap((application) =>
    application.date === null || application.status === 'done'
      ? []
      : [{ application, day: parseDay(application.date) as number }],
  );
const isFeed = ({ id }: Application) => id.startsWith('feed');
const nitrogenOn = ({ areas }: Application, id: string): number => {
  const area = areas.find((one) => one.id === id);
  return area ? ((area.amountKg ?? 0) * 1000 * 0.46) / area.areaM2 : 0;
};
const shared = (a: Application, b: Application) => a.areas.some(({ id }) => b.areas.some((other) => other.id === id));
/** Nitrogen that the journal has put on an area this year [g/m²]. */
const doneOn = (one: Lawn, season: Season, id: string): number => {
  const size = new Map(season.limits.map(({ area }) => [area, 0]));
  for (const { areas } of season.applications) for (const area of areas) size.set(area.id, area.areaM2);
  return one.done
    .filter(({ before }) => formatDay(AS_OF - before) >= '2027')
    .reduce((sum, { lb, area }) => {
      const on = area === null ? AREAS : [AREAS[area] as string];
      const square = on.reduce((total, each) => total + (size.get(each) ?? 0), 0);
      return on.includes(id) ? sum + (lb * 453.59237 * 0.46) / square : sum;
    }, 0);
};

/** No application is on a forbidden day, before the as-of day, or outside every window. */
function allowedDays(one: Lawn, season: Season): void {
  for (const { application, day } of dated(season)) {
    expect(day).toBeGreaterThanOrEqual(AS_OF);
    expect(one.working).toContain(weekday(day));
    expect(day < AS_OF + one.away.from || day > AS_OF + one.away.from + one.away.days).toBe(true);
    expect(application.inWindow).toBeGreaterThan(0);
    const [, month, date] = formatDay(day).split('-').map(Number);
    if (isFeed(application)) expect(month === one.ban.month && (date as number) <= one.ban.days).toBe(false);
  }
}

/** Spacing, the waiting times of labels and the jobs of a day are kept. */
function keptApart(one: Lawn, season: Season): void {
  const all = dated(season);
  const days = new Map<number, number>();
  for (const { day } of all) days.set(day, (days.get(day) ?? 0) + 1);
  expect(Math.max(0, ...days.values())).toBeLessThanOrEqual(one.jobs);
  for (const a of all)
    for (const b of all) {
      if (a === b || !shared(a.application, b.application)) continue;
      const apart = Math.abs(a.day - b.day);
      if (isFeed(a.application) && isFeed(b.application))
        expect(apart).toBeGreaterThanOrEqual(7 * one.singles.spacingWeeks);
      if (a.application.id === 'sow' && b.application.id === 'barrier')
        expect(apart).toBeGreaterThanOrEqual(7 * one.seedWeeks);
    }
  for (const { before, area } of one.done)
    for (const { application, day } of all.filter((each) => isFeed(each.application))) {
      const on = area === null || application.areas.some(({ id }) => id === AREAS[area]);
      if (on) expect(day - (AS_OF - before)).toBeGreaterThanOrEqual(7 * one.singles.spacingWeeks);
    }
}

/** No rate is above a single limit, no sum above a yearly one. */
function insideLimits(one: Lawn, season: Season): void {
  const feeds = dated(season).filter(({ application }) => isFeed(application));
  const single = Math.min(one.singles.total, one.law.single) * PER_1000_SQFT;
  const yearly = Math.min(one.singles.yearly, one.law.yearly) * PER_1000_SQFT;
  for (const id of AREAS) {
    const planned = feeds.map(({ application }) => nitrogenOn(application, id));
    for (const each of planned) expect(each).toBeLessThanOrEqual(single * (1 + 1e-6));
    const sum = planned.reduce((total, each) => total + each, 0);
    if (sum > 0) expect(sum + doneOn(one, season, id)).toBeLessThanOrEqual(yearly * (1 + 1e-6));
  }
}

const RUNS = { numRuns: runs(30), seed: 27 };

describe('random programs, lawns and weather', LONG, () => {
  test('days are allowed, work is kept apart, amounts stay inside every limit', () =>
    fc.assert(
      fc.property(cases, (one) => {
        const { season } = plan(one);
        allowedDays(one, season);
        keptApart(one, season);
        insideLimits(one, season);
      }),
      RUNS,
    ));
  test('planning again on the same inputs changes nothing', () =>
    fc.assert(
      fc.property(cases, (one) => {
        const first = plan(one);
        expect(plan(one).feed).toBe(first.feed);
        const again = plan(one, AS_OF, first.ledger);
        expect(again.feed).toBe(first.feed);
        expect(again.season.applications.map(({ date }) => date)).toEqual(
          first.season.applications.map(({ date }) => date),
        );
      }),
      { ...RUNS, numRuns: runs(10) },
    ));
  test('more observed weather never changes what was done', () =>
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 18 }), (one, later) => {
        const entries = `${journal(one)}- { date: ${formatDay(AS_OF - 1)}, step: feed-0, product: urea, used: 1 lb }\n`;
        const [now, then] = [plan(one, AS_OF, null, entries), plan(one, AS_OF + later, null, entries)];
        const done = ({ season }: { season: Season }) =>
          season.applications
            .filter(({ status }) => status === 'done')
            .map(({ id, date, used, areas }) => ({ id, date, used, areas: areas.map((area) => area.id) }));
        const limits = ({ season }: { season: Season }) => season.limits.map(({ doneGPerM2 }) => doneGPerM2);
        expect(done(now).length).toBeGreaterThan(0);
        expect(done(then)).toEqual(done(now));
        expect(limits(then)).toEqual(limits(now));
      }),
      { ...RUNS, numRuns: runs(10) },
    ));
});
