/** What passes delivered, by the journal, and what is left for the second. */
import { describe, expect, test } from 'vitest';
import { dialRecordsOf, plannedBy, withPlanned } from '../../../src/amounts/dial/records.ts';
import { secondPass } from '../../../src/amounts/dial/second-pass.ts';
import { civil } from '../../../src/base/day.ts';
import type { Application } from '../../../src/model/season.ts';
import type { Spreaders } from '../../../src/model/spreader.ts';
import { readJournal } from '../../../src/read/journal.ts';

const AREAS = new Map([
  ['front', 100],
  ['back', 300],
]);
const OWN = { product: 'urea', spreader: null, areas: AREAS };
const journal = (...lines: readonly string[]) =>
  readJournal(lines.map((line) => `- { date: 2027-04-02, ${line} }\n`).join(''), 'lawn.journal.yaml').value ?? [];
const rates = (...lines: readonly string[]) => dialRecordsOf(journal(...lines), OWN).map(({ rate }) => rate);

describe('a record', () => {
  test('is loaded less left, over the areas covered', () =>
    expect(
      dialRecordsOf(journal('product: urea, setting: 5, pass: 1, areas: [front], loaded: 2.5 kg, left: 0.5 kg'), OWN),
    ).toEqual([{ date: civil(2027, 4, 2), setting: 5, rate: 0.02 }]));
  test('of an entry that names no pass is of two', () =>
    expect(rates('product: urea, setting: 5, areas: [front], used: 2 kg')).toEqual([0.01]));
  test('without areas covers all of them', () =>
    expect(rates('product: urea, setting: 5, pass: 2, used: 4 kg')).toEqual([0.01]));
  test('needs a setting, a weight, the product and known areas', () =>
    expect(
      rates(
        'product: urea, used: 2 kg',
        'product: urea, setting: 5',
        'product: urea, setting: 5, used: 2 L',
        'product: other, setting: 5, used: 2 kg',
        'product: urea, setting: 5, used: 2 kg, areas: [gone]',
        'product: urea, setting: 5, loaded: 2 kg, left: 2 kg',
      ),
    ).toEqual([]));
  test('belongs to one spreader', () => {
    const both = journal(
      'product: urea, setting: 5, used: 4 kg',
      'product: urea, setting: 9, used: 8 kg, spreader: drop',
    );
    const settings = (spreader: string | null) => dialRecordsOf(both, { ...OWN, spreader }).map((one) => one.setting);
    expect([settings(null), settings('drop')]).toEqual([[5], [9]]);
  });
  test('that was corrected counts as corrected', () =>
    expect(
      rates(
        'id: a, product: urea, setting: 5, pass: 1, used: 4 kg',
        'id: b, product: urea, setting: 5, pass: 1, used: 8 kg, corrects: a',
      ),
    ).toEqual([0.02]));
});

describe('what an entry leaves out', () => {
  const of = (year: number) =>
    ({
      id: 'feed',
      seasonSpan: { start: `${year}-01-01`, end: `${year}-12-31` },
      areas: [{ id: 'front', product: 'urea' }],
    }) as unknown as Application;
  const filled = (line: string, application = of(2027), equipment: Spreaders = {}, asOf = civil(2027, 4, 2)) =>
    withPlanned(journal(line), { asOf, equipment, plannedFor: plannedBy([application]) });
  const LINE = 'step: feed, setting: 5, pass: 1, used: 1 kg';
  test('is the product and the areas of its step', () =>
    expect(filled(LINE)).toMatchObject([{ product: 'urea', areas: ['front'] }]));
  test('is not what another season has for the step', () =>
    expect(filled(LINE, of(2028))[0]).not.toHaveProperty('product'));
  test('is the spreader where the lawn has but one', () =>
    expect(filled(LINE, of(2027), { spreaders: { main: {} } })[0]?.spreader).toBe('main'));
  test('is not known where the lawn has two spreaders', () =>
    expect(filled(LINE, of(2027), { spreaders: { main: {}, drop: {} } })[0]).not.toHaveProperty('spreader'));
  test('is not filled in after the as-of day: the entry is left out', () =>
    expect(filled(LINE, of(2027), {}, civil(2027, 4, 1))).toEqual([]));
});

describe('the second pass', () => {
  const second = (delivered: number, labelMost: number | null = null, pesticide = false) =>
    secondPass({ whole: 2, delivered, labelMost, pesticide });
  test('is the other half where the first was within 5 %', () => {
    expect(second(0.96).target).toBe(1);
    expect(second(1.05).target).toBe(1);
  });
  test('takes what the first has left', () => {
    expect(second(0.8).target).toBeCloseTo(1.2, 12);
    expect(second(1.3).target).toBeCloseTo(0.7, 12);
  });
  test('is no more than one and a half halves', () => expect(second(0.2).target).toBe(1.5));
  test('there is none where the first has put down the whole', () => {
    expect(second(1.9).target).toBe(0);
    expect(second(2.4).target).toBe(0);
  });
  test('may not exceed what the label leaves', () => {
    expect(second(1.05, 2, true)).toMatchObject({ target: 0.95, most: 0.95 });
    expect(second(2.1, 2, true)).toMatchObject({ target: 0, most: 0 });
  });
  test('of a pesticide has no third after it', () => {
    expect(second(0.2, null, true).third).toBe(false);
    expect(second(0.2).third).toBe(true);
  });
});
