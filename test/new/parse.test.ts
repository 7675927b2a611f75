/** What an answer becomes: keys of a lawn file, or problems. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { netArea } from '../../src/amounts/area.ts';
import { problem } from '../../src/base/problem.ts';
import type { Draft } from '../../src/model/draft.ts';
import { less } from '../../src/read/answers/area.ts';
import { answer, type World } from '../../src/read/answers/question.ts';
import { QUESTIONS } from '../../src/read/answers/questions.ts';
import { chosen, idOf } from '../../src/read/answers/words.ts';

import { zipLookup } from '../../src/shell/zips.ts';

const world: World = {
  zips: zipLookup,
  programs: [
    { id: 'cool', name: 'Cool', grass: ['tall-fescue', 'fine-fescue'], climate: ['cool-humid'], ref: '../cool.yaml' },
    { id: 'fescue', name: 'Fescue', grass: ['tall-fescue'], climate: ['transition'], ref: '../fescue.yaml' },
  ],
  climatesAt: ({ latitude = 0 }) =>
    latitude === 0 ? [] : latitude > 40 ? ['cool-humid'] : ['transition', 'warm-humid'],
  programAt: (file) =>
    file === 'own.yaml'
      ? { id: 'own', name: 'Own', grass: ['bermudagrass'], climate: [], ref: 'own.yaml' }
      : [problem('file-unreadable', { ref: file, reason: 'no such file' }, null)],
  weatherAt: (file) =>
    file.startsWith('no') ? [problem('file-unreadable', { ref: file, reason: 'no such file' }, null)] : `here/${file}`,
  leavesUnitsOpen: (ref) => ref === 'bare.csv',
  netArea,
};

const question = (id: string) => QUESTIONS.find((one) => one.id === id)!;
const took = (id: string, text: string, draft: Draft = {}) => answer(question(id), text, draft, world);
const keys = (id: string, text: string, draft: Draft = {}) => {
  const answered = took(id, text, draft);
  return 'draft' in answered ? answered.draft : answered.problems.map(({ code }) => code);
};
const codes = (id: string, text: string, draft: Draft = {}) => {
  const answered = took(id, text, draft);
  return 'problems' in answered ? answered.problems.map(({ code, file }) => [code, file]) : answered.draft;
};

describe('the list of questions', () => {
  test('has every id and every flag once', () => {
    const ids = QUESTIONS.map(({ id }) => id);
    const flags = QUESTIONS.flatMap(({ flags }) => flags.map((flag) => flag.split(' ')[0]));
    expect([new Set(ids).size, new Set(flags).size]).toEqual([ids.length, flags.length]);
  });
  const draft: Draft = {
    location: { zip: '43004' },
    grass: 'tall-fescue',
    areas: { back: { measured: '10 m2' } },
    equipment: { spreader: { kind: 'rotary' } },
  };
  test.each(QUESTIONS.flatMap(({ id, examples }) => examples.map((one) => [id, one] as const)))(
    '%s takes its own example %s',
    (id, example) => {
      // Files of its examples are not there.
      const known: World = { ...world, programs: [{ ...world.programs[0]!, id: 'tall-fescue-transition' }] };
      const own = { ...known.programs[0]!, ref: 'my-program.yaml' };
      expect(answer(question(id), example, draft, { ...known, programAt: () => own })).toHaveProperty('draft');
    },
  );
  test.each(QUESTIONS.map(({ id }) => [id]))('%s takes its own default', (id) => {
    const usual = question(id).default(draft, world);
    if (usual === null) expect(['place', 'grass', 'area', 'file-units']).toContain(id);
    else expect(took(id, '', draft)).toEqual(took(id, usual, draft));
  });
});

describe('a place', () => {
  test.each([
    ['43004', { zip: '43004' }],
    ['43004-1234', { zip: '43004-1234' }],
    ['43.04, -87.9', { latitude: 43.04, longitude: -87.9 }],
    ['-33.9 18.4', { latitude: -33.9, longitude: 18.4 }],
    ['lat 43.04, lon -87.9', { latitude: 43.04, longitude: -87.9 }],
  ])('%s', (text, location) => expect(keys('place', text)).toEqual({ location }));
  test.each([
    ['00000', 'zip-unknown'],
    ['4300', 'new-not-answer'],
    ['home', 'new-not-answer'],
    ['91, 10', 'out-of-range'],
    ['', 'new-missing'],
  ])('%j is %s, placed at its flag', (text, code) => expect(codes('place', text)).toEqual([[code, '--place']]));
  test('keeps the elevation', () =>
    expect(keys('place', '43004', { location: { latitude: 1, longitude: 2, elevation: '3 m' } })).toEqual({
      location: { zip: '43004', elevation: '3 m' },
    }));
  test.each([
    ['900', 'wrong-type'],
    ['900 lb', 'wrong-measure'],
    ['9000 m', 'out-of-range'],
  ])('an elevation of %s is %s', (text, code) =>
    expect(codes('elevation', text, { location: { zip: '43004' } })).toEqual([[code, '--elevation']]),
  );
  test.each([
    ['us', 'en-US', { location: { zip: '43004' } }],
    ['metric', 'en-GB', { location: { latitude: 51, longitude: 0 } }],
  ])('is read in %s and %s by default', (units, language, draft: Draft) => {
    const asked = keys('units', '', draft) as Draft;
    expect((keys('language', '', asked) as Draft).display).toEqual({ units, language });
  });
});

describe('an area', () => {
  test.each<[string, string, object]>([
    ['front: rectangle 50 x 40 ft', 'front', { rectangle: ['50 ft', '40 ft'] }],
    ['front: rectangle 50ft by 40 ft', 'front', { rectangle: ['50ft', '40 ft'] }],
    ["front: rectangle 50' × 40'", 'front', { rectangle: ['50 ft', '40 ft'] }],
    ['side: square 5 m', 'side', { rectangle: ['5 m', '5 m'] }],
    ['bed: circle radius 30 ft', 'bed', { circle: { radius: '30 ft' } }],
    ['bed: circle 30 ft', 'bed', { circle: { radius: '30 ft' } }],
    ['bed: circle diameter 6 m', 'bed', { circle: { diameter: '6 m' } }],
    ['wedge: triangle 40 x 30 ft', 'wedge', { triangle: { base: '40 ft', height: '30 ft' } }],
    ['wedge: triangle sides 30, 40, 50 ft', 'wedge', { triangle: { sides: ['30 ft', '40 ft', '50 ft'] } }],
    ['oval: ellipse 60 x 40 ft', 'oval', { ellipse: ['60 ft', '40 ft'] }],
    ['wedge: trapezoid 50 x 70 x 30 ft', 'wedge', { trapezoid: { sides: ['50 ft', '70 ft'], height: '30 ft' } }],
    [
      'side: offsets every 10 widths 12, 14.5, 9 ft',
      'side',
      { offsets: { every: 10, widths: [12, 14.5, 9] }, in: 'ft' },
    ],
    [
      'back: polygon (0,0), (62, 0), (62 48) ft',
      'back',
      {
        polygon: [
          [0, 0],
          [62, 0],
          [62, 48],
        ],
        in: 'ft',
      },
    ],
    ['side offsets every 3 m widths 4, 5 m', 'side', { offsets: { every: 3, widths: [4, 5] }, in: 'm' }],
    ['island: radii 7.1, 8.9, 9.7, 10.9 ft', 'island', { radii: [7.1, 8.9, 9.7, 10.9], in: 'ft' }],
    [
      'back: polygon 0 0, 62 0, -3 48 ft',
      'back',
      {
        polygon: [
          [0, 0],
          [62, 0],
          [-3, 48],
        ],
        in: 'ft',
      },
    ],
    [
      'edge: points 38.4 -72.6, 38.4 -72.5998, 38.4002 -72.5998',
      'edge',
      {
        points: [
          [38.4, -72.6],
          [38.4, -72.5998],
          [38.4002, -72.5998],
        ],
      },
    ],
    ['back: 4200 sqft', 'back', { measured: '4200 sqft' }],
    ['back: 4,200 sqft', 'back', { measured: '4200 sqft' }],
    ['back: measured 0.1 acre', 'back', { measured: '0.1 acre' }],
    ['Back Yard rectangle 5 x 4 m', 'back-yard', { rectangle: ['5 m', '4 m'] }],
    ['4200 sqft', 'area-1', { measured: '4200 sqft' }],
    ['a: b: 4200 sqft', 'a-b', { measured: '4200 sqft' }],
    [
      'front: rectangle 50 x 40 ft less circle radius 6 ft less 20 sqft',
      'front',
      { rectangle: ['50 ft', '40 ft'], less: [{ circle: { radius: '6 ft' } }, { measured: '20 sqft' }] },
    ],
    [
      'front: rectangle 50 x 40 ft less circle radius 6 ft at 20, 15 ft',
      'front',
      { rectangle: ['50 ft', '40 ft'], less: [{ circle: { radius: '6 ft' }, at: ['20 ft', '15 ft'] }] },
    ],
  ])('%s', (text, id, area) => expect(keys('area', text)).toEqual({ areas: { [id]: area } }));

  test.each([
    ['front: rectangel 5 x 4 ft', 'area-shape'],
    ['front: rectangle 50 x 40', 'wrong-type'],
    ['front: rectangle 50 ft', 'wrong-type'],
    ['front: rectangle 50 x 0 ft', 'out-of-range'],
    ['front: rectangle 50 x 40 lb', 'wrong-measure'],
    ['front: triangle sides 1, 2, 9 ft', 'area-triangle'],
    ['front: 4200 ft', 'wrong-measure'],
    ['front: ellipse 50 ft', 'wrong-type'],
    ['front: trapezoid 50 x 70 ft', 'wrong-type'],
    ['front: offsets every 10 ft', 'new-not-answer'],
    ['front: radii 7, 8, 9, 10', 'new-not-answer'],
    ['front: radii 7, 8, x, 10 ft', 'new-not-answer'],
    ['front: polygon 0 0, 2 2, 2 0, 0 2 ft', 'area-crossing'],
    ['front: points 52 5, 52.001 5.001, 52 5.001, 52.001 5', 'area-crossing-at'],
    ['front: 20 sqft less 30 sqft', 'area-empty'],
    ['front:', 'area-shape'],
    ['前: 4200 sqft', 'new-not-answer'],
    ['constructor: 4200 sqft', 'reserved-key'],
  ])('%s is %s', (text, code) => expect(codes('area', text)).toContainEqual([code, '--area']));
  test('of a name that is there already is refused', () =>
    expect(codes('area', 'Front: 4 m2', { areas: { front: { measured: '3 m2' } } })).toEqual([
      ['new-area-twice', '--area'],
    ]));
  test('loses what is taken off it afterwards', () => {
    const areas = { a: { measured: '9 m2' }, b: { measured: '9 m2', less: [{ measured: '1 m2' }] } };
    expect(answer(less, 'circle radius 1 m', { areas }, world)).toEqual({
      draft: { areas: { ...areas, b: { ...areas.b, less: [{ measured: '1 m2' }, { circle: { radius: '1 m' } }] } } },
    });
  });
  test('that loses all is empty', () =>
    expect(answer(less, '9 m2', { areas: { a: { measured: '9 m2' } } }, world)).toMatchObject({
      problems: [{ code: 'area-empty' }],
    }));
});

describe('grass and program', () => {
  test.each([
    ['tall fescue', 'tall-fescue'],
    ['Kentucky', 'kentucky-bluegrass'],
    ['5', 'bermudagrass'],
  ])('%s', (text, grass) => expect(keys('grass', text)).toEqual({ grass }));
  test.each([['b'], ['fescue'], ['11'], ['']])('%j is no grass', (text) =>
    expect(codes('grass', text)).toHaveLength(1),
  );
  test.each([
    ['', '../cool.yaml'],
    ['2', '../fescue.yaml'],
    ['fes', '../fescue.yaml'],
  ])('program %j', (text, program) =>
    expect(keys('program', text, { grass: 'tall-fescue' })).toEqual({ grass: 'tall-fescue', program }),
  );
  test.each([
    [42, '../cool.yaml'],
    [39, '../fescue.yaml'],
  ])('at %i degrees north the default is the one for the climate there', (latitude, program) => {
    const draft = { grass: 'tall-fescue', location: { latitude, longitude: -83 } };
    expect(keys('program', '', draft)).toMatchObject({ program });
  });
  test('one for another climate is offered last, and says so', () => {
    const draft = { grass: 'tall-fescue', location: { latitude: 39, longitude: -83 } };
    expect(question('program').choices?.(draft, world)).toEqual([
      { word: 'fescue', about: 'Fescue' },
      { word: 'cool', about: '(other climate) Cool' },
    ]);
  });
  test('one that is written for another grass is refused', () =>
    expect(codes('program', 'fescue', { grass: 'fine-fescue' })).toEqual([['new-no-program', '--program']]));
  test('one of your own', () =>
    expect(keys('program', 'own.yaml', { grass: 'bermudagrass' })).toMatchObject({ program: 'own.yaml' }));
  test('a file that is not there', () =>
    expect(codes('program', 'x.yaml', { grass: 'bermudagrass' })).toEqual([['file-unreadable', '--program']]));
  test('none that fits is said', () =>
    expect(codes('program', '', { grass: 'zoysiagrass' })).toEqual([['new-none-fits', '--program']]));
});

describe('equipment and hours', () => {
  const equipment = { spreader: { kind: 'rotary' } };
  test('no spreader', () => expect(keys('spreader', 'none')).toEqual({}));
  test.each([
    ['1 to 15 by 0.25', { from: 1, to: 15, step: 0.25 }],
    ['1-10', { from: 1, to: 10, step: 1 }],
    ['0 – 30 step .5', { from: 0, to: 30, step: 0.5 }],
  ])('dial %s', (text, dial) =>
    expect(keys('dial', text, { equipment })).toEqual({ equipment: { spreader: { kind: 'rotary', dial } } }),
  );
  test.each([['15 to 1'], ['A to K'], ['1 to 5 by 9'], ['1 to 5 by 0']])('dial %s is refused', (text) =>
    expect(codes('dial', text, { equipment })).toEqual([['new-not-answer', '--dial']]),
  );
  test.each([
    ['sat, sun', ['sat', 'sun']],
    ['Mondays and Thurs', ['mon', 'thu']],
    ['weekend mon', ['sat', 'sun', 'mon']],
    ['sat sat', ['sat']],
  ])('days %s', (text, days) => expect(keys('days', text)).toEqual({ working: { days } }));
  test.each([['s'], ['someday'], [',']])('days %j are refused', (text) => expect(codes('days', text)).toHaveLength(1));
  test.each([
    ['08:00-18:00', ['08:00', '18:00']],
    ['8 to 18:30', ['08:00', '18:30']],
    ['8am - 6 pm', ['08:00', '18:00']],
    ['12am-12pm', ['00:00', '12:00']],
  ])('hours %s', (text, between) => expect(keys('hours', text)).toEqual({ working: { between } }));
  test.each([['8'], ['18-8'], ['8-25'], ['13am-5pm'], ['dawn to dusk']])('hours %s are refused', (text) =>
    expect(codes('hours', text)).not.toHaveProperty('working'),
  );
  test.each([
    ['3 d, 12 h', ['3 d', '12 h']],
    ['none', []],
  ])('reminders %s', (text, remind) => expect(keys('remind', text)).toEqual({ working: { remind } }));
  test('a reminder without a unit is refused', () =>
    expect(codes('remind', '3')).toEqual([['wrong-type', '--remind']]));
});

describe('weather', () => {
  test.each([
    ['open meteo', 'open-meteo', 'open-meteo'],
    ['ncei', 'ncei', 'nws'],
    ['none', 'none', 'none'],
  ])('of %s brings its forecast', (text, service, forecast) => {
    const past = keys('weather', text) as Draft;
    expect(keys('forecast', '', past)).toEqual({ weather: { service, forecast } });
  });
  test('of files', () =>
    expect(keys('weather', 'a.csv, b.csv')).toEqual({
      weather: { files: ['here/a.csv', 'here/b.csv'], service: 'none' },
    }));
  test.each([
    ['bare.csv', true],
    ['named.csv', false],
  ])('%s: whether its units are asked for is %s', (file, asked) =>
    expect(question('file-units').applies?.({ weather: { files: ['x.csv', file] } }, world)).toBe(asked),
  );
  test('of a file that is not there', () =>
    expect(codes('weather', 'a.csv, none.csv')).toEqual([['file-unreadable', '--weather']]));
  test('of a service that nobody knows', () =>
    expect(codes('weather', 'almanac')).toEqual([['unknown-word', '--weather']]));
});

describe('words', () => {
  test('an id is one, whatever the name, or nothing', () =>
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 100 }), (name) => {
        expect(idOf(name)).toMatch(/^([a-z0-9]+(-[a-z0-9]+)*)?$/);
        expect(idOf(name).length).toBeLessThanOrEqual(64);
      }),
    ));
  test('accents fall away', () => expect(idOf('Süd-Äcker  2')).toBe('sud-acker-2'));
  test('a beginning that two words have is none', () => expect(chosen('f', ['fa', 'fb'])).toBe('f'));
});
