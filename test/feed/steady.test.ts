/** Odds and middle days stay as published while they are about right, and not longer. */
import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger } from '../../src/model/ledger.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { demoCopy, tidy } from '../kit.ts';
import { AS_OF, changed, planned } from './feed.ts';

const STEP = 'summer-height';
const { cwd, lawn } = demoCopy();
const { season } = await planned(cwd, lawn, AS_OF);
tidy();
const own = season.applications.find(({ id }) => id === STEP) as Application;
const opens = (day: string): Partial<Application> => ({
  window: { ...own.window, opens: { ...own.window.opens, p50: day } },
});
const [BASE, LATER] = ['2027-04-02T06:00:00Z', '2027-04-03T06:00:00Z'];
const publish = (one: Season, ledger = emptyLedger, revisedAt = BASE) =>
  calendarOf(one, { ledger, revisedAt, detail: 'normal' });

/** Kinds of the step's events that are revised when a plan follows another, each as a change of the same season. */
function revised(first: Partial<Application>, then: Partial<Application>, asOf: string = AS_OF): string[] {
  const { ledger } = publish(changed(season, STEP, first));
  const { changes } = publish({ ...changed(season, STEP, then), asOf }, ledger, LATER);
  return changes.flatMap(({ after }) => (after?.step === STEP ? [after.kind] : []));
}

describe('the odds of a job', () => {
  test('hold over the edge of a rounding', () => expect(revised({ inWindow: 0.84 }, { inWindow: 0.86 })).toEqual([]));
  test('hold eight points away', () => expect(revised({ inWindow: 0.8 }, { inWindow: 0.88 })).toEqual([]));
  test('are revised nine points away', () => expect(revised({ inWindow: 0.8 }, { inWindow: 0.89 })).toEqual(['job']));
  test('are measured from what is published, not from the plan before', () => {
    const first = publish(changed(season, STEP, { inWindow: 0.8 })).ledger;
    const second = publish(changed(season, STEP, { inWindow: 0.87 }), first, LATER).ledger;
    const third = publish(changed(season, STEP, { inWindow: 0.94 }), second, LATER);
    expect(third.changes.map(({ after }) => after?.sequence)).toEqual([1]);
  });
  test('are revised where they are no longer known', () =>
    expect(revised({ inWindow: 0.8 }, { inWindow: null })).toEqual(['job']));
  test('do not hold another change back', () =>
    expect(revised({ inWindow: 0.84 }, { inWindow: 0.86, cautions: ['Another.'] })).toEqual(['job']));
});

describe('the days of a window', () => {
  test('hold three days off where they are far', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-23'))).toEqual([]));
  test('are revised four days off', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-24'))).toEqual(['window']));
  test('hold one day off where they are near', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-21'), '2027-05-14')).toEqual([]));
  test('are revised two days off where they are near', () =>
    expect(revised(opens('2027-05-20'), opens('2027-05-22'), '2027-05-14')).toContain('window'));
});

describe('the day of a job', () => {
  test('never holds', () => expect(revised({ date: '2027-06-05' }, { date: '2027-06-06' })).toEqual(['job']));
});
