/** Odds and middle days stay as published while they are about right, and not longer. */
import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger } from '../../src/model/ledger.ts';
import type { Detail } from '../../src/model/reader.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { demoCopy, tidy } from '../kit.ts';
import { AS_OF, changed, planned } from './feed.ts';

const STEP = 'summer-height';
const { cwd, lawn } = demoCopy();
const { season } = await planned(cwd, lawn, AS_OF);
tidy();
const own = season.applications.find(({ id }) => id === STEP) as Application;
/** A window that opens on a day, as the runs of weather have it between two others. */
const opens = (p50: string, p10 = p50, p90 = p50): Partial<Application> => ({
  window: { ...own.window, opens: { ...own.window.opens, p10, p50, p90 } },
});
const SOON: Partial<Application> = { date: '2027-04-09' };
const [BASE, LATER] = ['2027-04-02T06:00:00Z', '2027-04-03T06:00:00Z'];
const publish = (one: Season, ledger = emptyLedger, revisedAt = BASE, detail: Detail = 'normal') =>
  calendarOf(one, { ledger, revisedAt, detail });

/** Kinds of the step's events that are revised when a plan follows another, each as a change of the same season. */
function revised(
  first: Partial<Application>,
  then: Partial<Application>,
  asOf: string = AS_OF,
  detail: Detail = 'normal',
): string[] {
  const { ledger } = publish(changed(season, STEP, first), emptyLedger, BASE, detail);
  const { changes } = publish({ ...changed(season, STEP, then), asOf }, ledger, LATER, detail);
  return changes.flatMap(({ after }) => (after?.step === STEP ? [after.kind] : []));
}

describe('the odds of a job', () => {
  test('hold over the edge of a rounding', () => expect(revised({ inWindow: 0.84 }, { inWindow: 0.86 })).toEqual([]));
  test('hold twelve points away', () => expect(revised({ inWindow: 0.8 }, { inWindow: 0.92 })).toEqual([]));
  test('are revised thirteen points away', () =>
    expect(revised({ inWindow: 0.8 }, { inWindow: 0.93 })).toEqual(['job']));
  test('hold eight points away in the week before', () =>
    expect(revised({ ...SOON, inWindow: 0.8 }, { ...SOON, inWindow: 0.88 })).toEqual([]));
  test('are revised nine points away in the week before', () =>
    expect(revised({ ...SOON, inWindow: 0.8 }, { ...SOON, inWindow: 0.89 })).toEqual(['job']));
  test('are measured from what is published, not from the plan before', () => {
    const first = publish(changed(season, STEP, { inWindow: 0.8 })).ledger;
    const second = publish(changed(season, STEP, { inWindow: 0.9 }), first, LATER).ledger;
    const third = publish(changed(season, STEP, { inWindow: 1 }), second, LATER);
    expect(third.changes.map(({ after }) => after?.sequence)).toEqual([1]);
  });
  test('are revised where they are no longer known', () =>
    expect(revised({ inWindow: 0.8 }, { inWindow: null })).toEqual(['job']));
  test('do not hold another change back', () =>
    expect(revised({ inWindow: 0.84 }, { inWindow: 0.86, cautions: ['Another.'] })).toEqual(['job']));
});

describe('the days of a window', () => {
  const wide = (first: string, then: string) =>
    revised(opens(first, '2027-05-10', '2027-05-30'), opens(then, '2027-05-10', '2027-05-30'));
  test('hold three days off where they are far', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-23'))).toEqual([]));
  test('are revised four days off', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-24'))).toEqual(['window']));
  test('hold as far as a quarter of the days from p10 to p90', () =>
    expect(wide('2027-05-20', '2027-05-25')).toEqual([]));
  test('are revised a day farther', () => expect(wide('2027-05-20', '2027-05-26')).toEqual(['window']));
  test('hold one day off where they are near', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-21'), '2027-05-14')).toEqual([]));
  test('are revised two days off where they are near', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-22'), '2027-05-14')).toContain('window'));
});

describe('a soil check', () => {
  const soilChecks = [{ depthM: 0.05, rule: 'it is warm' }];
  /** Whether the check is revised where a window opens later than it did; it stands a week before the first opening, 13 May. */
  const moved = (then: string, asOf?: string) => {
    const checked = (day: string) => ({ ...opens(day), soilChecks });
    return revised(checked('2027-05-20'), checked(then), asOf, 'full').includes('soil-check');
  };
  test('stands three days before the opening', () => expect(moved('2027-05-16')).toBe(false));
  test('is revised two days before it', () => expect(moved('2027-05-15')).toBe(true));
  test('stands two weeks before the opening', () => expect(moved('2027-05-27')).toBe(false));
  test('is revised more than two weeks before it', () => expect(moved('2027-05-28')).toBe(true));
  test('stands once its day is over', () => expect(moved('2027-05-24', '2027-05-17')).toBe(false));
  test('is revised where its depth changes', () =>
    expect(
      revised(
        { ...opens('2027-05-20'), soilChecks },
        { ...opens('2027-05-20'), soilChecks: [{ ...soilChecks[0]!, depthM: 0.1 }] },
        AS_OF,
        'full',
      ),
    ).toContain('soil-check'));
});

describe('watering in', () => {
  const waterIn = { depthMm: 12.7, withinDays: 14, by: '2027-05-20', fallenMm: 0, irrigated: true };
  const rained = (from: number, to: number) => {
    const fallen = (fallenMm: number): Partial<Application> => ({
      date: '2027-05-10',
      waterIn: { ...waterIn, fallenMm },
    });
    return revised(fallen(from), fallen(to)).includes('water');
  };
  test('stands where less than a tenth of an inch fell', () => expect(rained(0, 2.5)).toBe(false));
  test('is revised at a tenth of an inch', () => expect(rained(0, 2.54)).toBe(true));
  test('is revised at once where nothing is left', () => expect(rained(12.6, 12.7)).toBe(true));
});

describe('the day of a job', () => {
  test('never holds', () => expect(revised({ date: '2027-06-05' }, { date: '2027-06-06' })).toEqual(['job']));
});
