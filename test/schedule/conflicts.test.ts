/** What keeps two pieces of work apart, and what is said where nothing is left. */
import { describe, expect, test } from 'vitest';
import { application, feed, PRODUCTS, plan, work } from './plan-kit.ts';

const SEED = ', apply: { seed: seed, rate: 6 lb/1000 sqft }';
const BARRIER = ', apply: { pesticide: pre-emergent }';
const seeding = (opens: string, closes: string) => work('sow', 'seed', opens, closes, SEED);
const barrier = (id: string, opens: string, closes: string) => work(id, 'spread', opens, closes, BARRIER);
const dates = async (steps: string, lawn = '', files: Record<string, string> = {}) => {
  const season = await plan({ steps, lawn: PRODUCTS + lawn, files });
  return { season, date: (id: string) => application(season, id).date };
};

describe('seed and pre-emergents, by the label', () => {
  test('a seeding date shuts out pre-emergents for the time before it', async () => {
    // 12 weeks before 1 September is 9 June: on the 9th itself the waiting time has just run.
    const { date } = await dates(`${seeding('09-01', '09-01')}${barrier('b', '06-01', '11-20')}`);
    expect(date('b')).toBe('2027-06-01');
    const late = await dates(`${seeding('09-01', '09-01')}${barrier('b', '06-20', '11-20')}`);
    expect(late.date('b')).toBe('2027-10-27');
  });
  test('and after it, for eight weeks', async () => {
    const { date } = await dates(`${seeding('09-01', '09-01')}${barrier('b', '09-10', '11-20')}`);
    expect(date('b')).toBe('2027-10-27');
  });
  test('a pre-emergent shuts out seed for its interval', async () => {
    const { date } = await dates(`${barrier('b', '05-01', '05-01')}${seeding('06-01', '11-20')}`);
    expect(date('sow')).toBe('2027-07-24');
  });
  test('seed keeps clear of a pre-emergent that is planned after it, too', async () => {
    // Eight weeks before 1 November is 6 September; the pre-emergent, which closes sooner, is placed first.
    const { date } = await dates(`${barrier('b', '11-01', '11-01')}${seeding('09-20', '11-20')}`);
    expect(date('sow')).toBe(null);
    expect((await dates(`${barrier('b', '11-01', '11-01')}${seeding('09-05', '11-20')}`)).date('sow')).toBe(
      '2027-09-05',
    );
  });
  test('work of the journal counts as planned work does', async () => {
    const journal = '- { date: 2027-04-01, work: spread, product: barrier }\n';
    const { date } = await dates(seeding('06-01', '11-20'), '', { 'lawn.journal.yaml': journal });
    expect(date('sow')).toBe('2027-06-24');
  });
  test('so does seed that the lawn file names', async () => {
    const { date } = await dates(barrier('b', '04-02', '09-20'), 'turf: { seeded: 2027-03-20, mowings: 9 }\n');
    expect(date('b')).toBe('2027-05-15');
  });
  test('other areas do not', async () => {
    const areas = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }\n';
    const own = 'steps: { b: { areas: [front] }, sow: { areas: [back] } }\n';
    const { date } = await dates(`${barrier('b', '05-01', '05-01')}${seeding('06-01', '11-20')}`, areas + own);
    expect(date('sow')).toBe('2027-06-01');
  });
});

test('two uses of one active keep the interval of the label', async () => {
  const { date } = await dates(`${barrier('a', '04-10', '04-10')}${barrier('b', '04-20', '09-20')}`);
  expect(date('b')).toBe('2027-06-09');
});

describe('a set of steps that cannot be', () => {
  test('the two rules that cannot both hold are named', async () => {
    const working = 'working: { days: [sat], away: [[2027-05-08, 2027-05-08]] }\n';
    const { season } = await dates(feed('a', '05-03', '05-09'), working);
    const why = application(season, 'a').why.join(' ');
    expect(why).toContain('working days');
    expect(why).toContain('away');
    expect(season.problems.find(({ code }) => code === 'no-working-day')?.message).toContain('away');
  });
  test('one rule that forbids every day is named alone', async () => {
    const working = 'working: { days: [sat], away: [[2027-05-01, 2027-05-31]] }\n';
    const { season } = await dates(feed('a', '05-03', '05-19'), working);
    const [why] = application(season, 'a').why.filter((line) => line.startsWith('No day'));
    expect(why).toContain('away');
    expect(why).not.toContain('working days');
  });
  test('the other step is named where it is in the way', async () => {
    const { season } = await dates(`${seeding('09-01', '09-01')}${barrier('b', '08-01', '09-30')}`);
    expect(application(season, 'b').date).toBe(null);
    expect(application(season, 'b').why.join(' ')).toContain('seed sow');
  });
});
