/** One lawn whose areas differ in grass, program and facts; steps for some areas only. */
import { describe, expect, test } from 'vitest';
import { programText } from '../kit.ts';
import { application, feed, PRODUCTS, plan, work } from './plan-kit.ts';

const areas = (front = '', back = '') =>
  `areas: { front: { rectangle: [50 ft, 20 ft]${front} }, back: { rectangle: [100 ft, 20 ft]${back} } }\n`;
const ids = (planned: Awaited<ReturnType<typeof plan>>, id: string) =>
  application(planned, id).areas.map((one) => one.id);
const SHADE = programText(feed('a', '06-01', '06-10', '', '0.4')).replace('test-program', 'shade');

describe('a step for some areas', () => {
  test('by a fact of the area', async () => {
    const steps = work('a', 'mow', '05-01', '05-10', ', only-if: { lawn: { shade: true } }');
    const planned = await plan({ steps, lawn: areas('', ', facts: { shade: true }') });
    expect(ids(planned, 'a')).toEqual(['back']);
    expect(application(planned, 'a').why.join(' ')).toContain('shade');
  });
  test('a fact of the area stands over the one of the lawn', async () => {
    const steps = work('a', 'mow', '05-01', '05-10', ', unless: { lawn: { shade: true } }');
    const planned = await plan({ steps, lawn: `${areas(', facts: { shade: false }')}facts: { shade: true }\n` });
    expect(ids(planned, 'a')).toEqual(['front']);
  });
  test('by its size', async () => {
    const steps = work('a', 'mow', '05-01', '05-10', ', only-if: { area: { over: 1500 sqft } }');
    expect(ids(await plan({ steps, lawn: areas() }), 'a')).toEqual(['back']);
  });
  test('by a soil test of its own', async () => {
    const steps = work(
      'a',
      'spread',
      '05-01',
      '05-10',
      ', only-if: { soil-test: { pH: { below: 6 }, phosphorus: [low] } }',
    );
    const tests =
      'soil: { tests: [{ date: 2027-01-01, pH: 6.5, phosphorus: high }, { date: 2027-02-01, area: back, pH: 5.5, phosphorus: low }] }\n';
    expect(ids(await plan({ steps, lawn: areas() + tests }), 'a')).toEqual(['back']);
  });
  test('by what is on the shelf', async () => {
    const steps = work('a', 'spread', '05-01', '05-10', ', only-if: { shelf: [urea] }');
    const status = async (lawn: string) => application(await plan({ steps, lawn: PRODUCTS + lawn }), 'a').status;
    expect(await status('shelf: { urea: 5 lb }\n')).toBe('expected');
    expect(await status('')).toBe('dropped');
  });
  test('by the lawn file', async () => {
    const planned = await plan({
      steps: work('a', 'mow', '05-01', '05-10'),
      lawn: `${areas()}steps: { a: { areas: [back], date: 2027-05-04 } }\n`,
    });
    expect(ids(planned, 'a')).toEqual(['back']);
    expect(application(planned, 'a').date).toBe('2027-05-04');
  });
  test('is done when those areas are', async () => {
    const planned = await plan({
      steps: work('a', 'mow', '03-20', '05-10', ', only-if: { area: { over: 1500 sqft } }'),
      lawn: areas(),
      files: { 'lawn.journal.yaml': '- { date: 2027-03-25, step: a, areas: [back] }\n' },
    });
    expect(application(planned, 'a').status).toBe('done');
  });
});

describe('an area with a program of its own', () => {
  const lawn = `${PRODUCTS}${areas('', ', program: shade.yaml, grass: fine-fescue')}`;
  const both = (more = '', journal = '') =>
    plan({
      steps: feed('a', '05-01', '05-10'),
      program: 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n',
      lawn: lawn + more,
      files: { 'shade.yaml': SHADE, ...(journal === '' ? {} : { 'lawn.journal.yaml': journal }) },
    });
  test('each program on its own areas, the other one behind its id', async () => {
    const planned = await both();
    expect(planned.applications.map(({ id }) => id)).toEqual(['a', 'shade.a']);
    expect([ids(planned, 'a'), ids(planned, 'shade.a')]).toEqual([['front'], ['back']]);
    expect(application(planned, 'shade.a').nutrientsGPerM2.N).toBeCloseTo(0.4 * 4.88243, 3);
  });
  test("the program's limits hold on its own areas", async () =>
    expect((await both()).limits.map(({ area }) => area)).toEqual(['front']));
  test('its steps are pinned and written down by that id', async () => {
    const pinned = await both('steps: { shade.a: { date: 2027-06-03 } }\n');
    expect(application(pinned, 'shade.a').date).toBe('2027-06-03');
    const done = await both('', '- { date: 2027-04-01, step: shade.a }\n');
    expect(application(done, 'shade.a').status).toBe('done');
    expect(application(done, 'a').status).toBe('expected');
  });
  test('a grass that the program is not for is told at the area', async () => {
    const planned = await both();
    expect(planned.problems.filter(({ code }) => code === 'grass-mismatch').map(({ line }) => line)).toHaveLength(1);
  });
  test('days are shared: one job a day', async () => {
    const planned = await plan({
      steps: feed('a', '06-01', '06-02'),
      lawn: `${lawn}working: { jobs-per-day: 1 }\n`,
      files: { 'shade.yaml': SHADE },
    });
    expect([application(planned, 'a').date, application(planned, 'shade.a').date]).toEqual([
      '2027-06-01',
      '2027-06-02',
    ]);
  });
});
