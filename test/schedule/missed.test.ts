/** Missed and late work: said, then `if-missed` followed; what became pointless is dropped with its reason. */
import { describe, expect, test } from 'vitest';
import { application, feed, PRODUCTS, plan, work } from './plan-kit.ts';

const step = (ifMissed: string) => work('a', 'other', '03-01', '03-20', ifMissed);
const late = ', if-missed: { until: { date: 04-30 }, note: "Some seedlings are up." }';
const planned = async (ifMissed: string, asOf = '2027-04-02') =>
  application(await plan({ steps: step(ifMissed), asOf }), 'a');

test('a window that has closed undone is missed', async () =>
  expect(await planned('')).toMatchObject({ status: 'missed', date: null, lateUntil: null }));
test('`skip` leaves it so', async () => expect((await planned(', if-missed: skip')).status).toBe('missed'));
describe('`until`', () => {
  test('it is still planned, soon, and said to be late', async () => {
    const one = await planned(late);
    expect(one).toMatchObject({ status: 'due', date: '2027-04-02', lateUntil: '2027-04-30' });
    expect(one.why[0]).toContain('Some seedlings are up.');
  });
  test('its window stays what it was', async () => expect((await planned(late)).window.closes.p50).toBe('2027-03-20'));
  test('and is missed after that', async () => expect((await planned(late, '2027-05-01')).status).toBe('missed'));
  test('a window that is still open is not late', async () =>
    expect((await planned(late, '2027-03-10')).lateUntil).toBe(null));
});
test('a step that follows one that was missed is dropped, with its reason', async () => {
  const follower = '  - { id: b, name: B, work: other, window: { opens: { after: { step: a, wait: 10 d } } } }\n';
  const season = await plan({ steps: step('') + follower });
  expect(application(season, 'b').status).toBe('dropped');
  expect(application(season, 'b').why[0]).toContain('missed');
});
test('it stands where something else opens it', async () => {
  const follower =
    '  - { id: b, name: B, work: other, window: { opens: { after: { step: a, wait: 10 d, otherwise: { date: 05-01 } } } } }\n';
  expect(application(await plan({ steps: step('') + follower }), 'b').status).toBe('expected');
});
describe('a step that is over gives no orders', () => {
  const closed = { steps: feed('a', '03-01', '03-20', ', water-in: { depth: 0.5 in, within: 7 d }'), lawn: PRODUCTS };
  const toDo = ({ how, tanks, cautions }: ReturnType<typeof application>) => [how, tanks, cautions];
  test('that was missed', async () => {
    const one = application(await plan(closed), 'a');
    expect([one.status, ...toDo(one)]).toEqual(['missed', [], [], []]);
  });
  test('that is skipped', async () => {
    const season = await plan({ ...closed, asOf: '2027-03-02', lawn: `${PRODUCTS}steps: { a: skip }\n` });
    expect(toDo(application(season, 'a'))).toEqual([[], [], []]);
  });
  const done = async (asOf: string) =>
    application(
      await plan({ ...closed, asOf, files: { 'lawn.journal.yaml': '- { date: 2027-03-05, step: a }\n' } }),
      'a',
    );
  test('that is done, but to water it in while there is time', async () =>
    expect((await done('2027-03-12')).how).toHaveLength(1));
  test('and nothing once that is past', async () => expect((await done('2027-03-13')).how).toEqual([]));
});
