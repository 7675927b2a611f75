import { describe, expect, test } from 'vitest';
import { type Case, FOLDER, inLawn, inProgram, lawn, MISSING, products, program, refuses, run } from './lawn-folder.ts';

const AREA = '{ rectangle: [50 ft, 20 ft] }';
const OPENS = '{ date: 09-01 }';
const opens = (trigger: string) => inProgram(OPENS, trigger);
const without = (text: string, line: RegExp) => text.replace(line, '');

describe('words and measures', () => {
  test.each<Case>([
    ['an unknown key', inLawn('timezone:', 'timezon:'), 1, ['unknown-key lawn.yaml:5:1']],
    [
      'an unknown key in a step',
      inProgram('work:', 'werk:'),
      1,
      ['missing-key program.yaml:7:5', 'unknown-key program.yaml:9:5'],
    ],
    [
      'an unknown key in a product',
      { 'products.yaml': products.replace('form', 'from') },
      1,
      ['missing-key products.yaml:4:16', 'unknown-key products.yaml:4:30'],
    ],
    ['a misspelt unit', inProgram('lb/1000 sqft', 'lbz/1000 sqft'), 1, ['unknown-unit program.yaml:11:29']],
    ['a misspelt unit of area', inProgram('lb/1000 sqft', 'lb/1000 sqftt'), 1, ['unknown-unit program.yaml:11:29']],
    ['a weight for a rate', inProgram('0.9 lb/1000 sqft', '0.9 lb'), 1, ['wrong-measure program.yaml:11:29']],
    ['a temperature for a length', inLawn('50 ft', '50 F'), 1, ['wrong-measure lawn.yaml:9:31']],
    ['a number without a unit', inLawn('50 ft', '50'), 1, ['wrong-type lawn.yaml:9:31']],
    ['a rate on no area', inProgram('lb/1000 sqft', 'lb/0 sqft'), 1, ['wrong-type program.yaml:11:29']],
    ['a misspelt grass', inLawn('tall-fescue', 'tall-fescu'), 1, ['unknown-word lawn.yaml:6:8']],
    [
      'a language without words',
      { 'lawn.yaml': `${lawn}display: { language: fr-FR }\n` },
      1,
      ['unknown-word lawn.yaml:11:22'],
    ],
    ['a misspelt zone', inLawn('America/New_York', 'America/NewYork'), 1, ['unknown-word lawn.yaml:5:11']],
    ['a latitude beyond every lawn', inLawn('latitude: 39', 'latitude: 139'), 1, ['out-of-range lawn.yaml:4:23']],
    ['a day that does not exist', inProgram('10-01', '02-30'), 1, ['not-a-date program.yaml:10:55']],
    ['an id in capitals', inProgram('id: autumn-feed', 'id: Autumn Feed'), 1, ['wrong-type program.yaml:7:9']],
  ])('%s is refused in its place', (...one) => refuses(one));

  test.each([
    ['a key', inLawn('timezone:', 'timezon:'), 'timezone'],
    ['a unit', inProgram('lb/1000 sqft', 'lbz/1000 sqft'), 'lb'],
    ['a word', inLawn('tall-fescue', 'tall-fescu'), 'tall-fescue'],
    ['a step', opens('{ after: { step: autum-feed, wait: 3 d } }'), 'autumn-feed'],
    ['a source', inProgram('common-practice', 'comon-practice'), 'common-practice'],
    ['a product on the shelf', { 'lawn.yaml': `${lawn}shelf: { feed-16-4-9: 3 lb }\n` }, 'feed-16-4-8'],
    ['an id', { 'products.yaml': products.replace('form', 'actives: { "2,4-D": 10% }, form') }, '2-4-d'],
    ['a pinned step', { 'lawn.yaml': `${lawn}steps: { autumn-fed: skip }\n` }, 'autumn-feed'],
  ])('the nearest word to %s is named', async (_, spoilt, word) => {
    expect((await run(spoilt)).problems[0]?.message).toContain(`"${word}"`);
  });
});

describe('areas', () => {
  test.each<Case>([
    [
      'crossing edges',
      inLawn(AREA, '{ polygon: [[0, 0], [10, 10], [10, 0], [0, 20]], in: m }'),
      1,
      ['area-crossing lawn.yaml:9:28'],
    ],
    [
      'a bow tie whose halves cancel',
      inLawn(AREA, '{ polygon: [[0, 0], [10, 10], [10, 0], [0, 10]], in: m }'),
      1,
      ['area-crossing lawn.yaml:9:28'],
    ],
    [
      'corners on one line',
      inLawn(AREA, '{ polygon: [[0, 0], [5, 5], [10, 10]], in: m }'),
      1,
      ['area-corners lawn.yaml:9:28'],
    ],
    ['two corners', inLawn(AREA, '{ polygon: [[0, 0], [5, 5]], in: m }'), 1, ['area-corners lawn.yaml:9:28']],
    [
      'a polygon without its unit',
      inLawn(AREA, '{ polygon: [[0, 0], [5, 5], [5, 0]] }'),
      1,
      ['missing-key lawn.yaml:9:17'],
    ],
    ['two shapes', inLawn(AREA, '{ rectangle: [5 m, 5 m], measured: 25 m2 }'), 1, ['area-shape lawn.yaml:9:17']],
    ['no shape', inLawn(AREA, '{}'), 1, ['area-shape lawn.yaml:9:17']],
    [
      'sides that do not close',
      inLawn(AREA, '{ triangle: { sides: [1 m, 2 m, 9 m] } }'),
      1,
      ['area-triangle lawn.yaml:9:29'],
    ],
    [
      'more taken off than is there',
      inLawn(AREA, '{ rectangle: [5 m, 5 m], less: [{ measured: 30 m2 }] }'),
      1,
      ['area-empty lawn.yaml:9:17'],
    ],
    ['a side of nothing', inLawn('50 ft', '0 ft'), 1, ['out-of-range lawn.yaml:9:31']],
  ])('%s', (...one) => refuses(one));
});

describe('triggers and references', () => {
  const circle = `  - { id: a, name: A, work: other, window: { opens: { after: { step: c, wait: 3 d } } } }
  - { id: b, name: B, work: other, window: { opens: { after: { step: a, wait: 3 d } } } }
  - { id: c, name: C, work: other, window: { opens: { after: { step: b, wait: 3 d } } } }
`;
  test.each<Case>([
    [
      'two kinds',
      opens('{ date: 09-01, soil: { depth: 5 cm, rises-to: 50 F } }'),
      1,
      ['trigger-kind program.yaml:10:22'],
    ],
    ['no kind', opens('{ not-before: 09-01 }'), 1, ['trigger-kind program.yaml:10:22']],
    ['no direction', opens('{ soil: { depth: 5 cm } }'), 1, ['trigger-direction program.yaml:10:30']],
    [
      'two directions',
      opens('{ air: { rises-to: 50 F, falls-to: 40 F, from: 02-01 } }'),
      1,
      ['trigger-direction program.yaml:10:29'],
    ],
    [
      'falls-to without from',
      opens('{ soil: { depth: 5 cm, falls-to: 50 F } }'),
      1,
      ['trigger-from program.yaml:10:24'],
    ],
    [
      'falls-to without from inside any-of',
      opens('{ any-of: [{ air: { falls-to: 50 F } }] }'),
      1,
      ['trigger-from program.yaml:10:35'],
    ],
    [
      'a depth above the model',
      opens('{ soil: { depth: 2 cm, rises-to: 50 F } }'),
      1,
      ['soil-depth program.yaml:10:39'],
    ],
    [
      'an upper threshold below the base',
      opens('{ degree-days: { base: 50 F, upper: 40 F, from: 01-01, reaches: 9 } }'),
      1,
      ['degree-days-upper program.yaml:10:37'],
    ],
    [
      'opening inside opens',
      opens('{ after: { opening: true, wait: 3 d } }'),
      1,
      ['trigger-opening program.yaml:10:33'],
    ],
    [
      'after with two waits',
      opens('{ after: { step: autumn-feed, wait: 3 d, degree-days: { base: 50 F, reaches: 9 } } }'),
      1,
      ['trigger-after program.yaml:10:31', 'circular-after program.yaml:10:39'],
    ],
    ['an unknown step', opens('{ after: { step: autum-feed, wait: 3 d } }'), 1, ['unknown-step program.yaml:10:39']],
    [
      'an unknown step in if-missed',
      inProgram('apply:', 'if-missed: { until: { after: { step: nix, wait: 3 d } } }\n    apply:'),
      1,
      ['unknown-step program.yaml:11:42'],
    ],
    [
      'a step after itself',
      opens('{ after: { step: autumn-feed, wait: 3 d } }'),
      1,
      ['circular-after program.yaml:10:39'],
    ],
    ['a circle of three', { 'program.yaml': `${program}${circle}` }, 1, ['circular-after program.yaml:13:70']],
    [
      'an id used twice',
      {
        'program.yaml': `${program}  - { id: autumn-feed, name: A, work: other, window: { opens: { date: 05-01 } } }\n`,
      },
      1,
      ['duplicate-id program.yaml:12:11'],
    ],
    ['an unknown source', inProgram('common-practice', 'osu-2023'), 1, ['unknown-source program.yaml:11:57']],
    [
      'a source misspelt in a table that has it',
      inProgram('steps:', 'sources: { osu-2023: Ohio }\nnitrogen: { spacing: 4 weeks, source: osu-2032 }\nsteps:'),
      1,
      ['unknown-source program.yaml:7:39'],
    ],
    [
      'two things to apply',
      inProgram('apply: {', 'apply: { seed: rye, rate: 5 lb/1000 sqft,'),
      1,
      ['apply-one-of program.yaml:11:12'],
    ],
    [
      'a seed without a rate',
      inProgram('nutrient: { N: 0.9 lb/1000 sqft }', 'seed: rye'),
      1,
      ['missing-key program.yaml:11:12'],
    ],
    [
      'a step pinned that is not there',
      { 'lawn.yaml': `${lawn}steps: { overseed: skip }\n` },
      1,
      ['unknown-step lawn.yaml:11:10'],
    ],
    [
      'a product on the shelf that is not there',
      { 'lawn.yaml': `${lawn}shelf: { urea: 3 lb }\n` },
      1,
      ['unknown-product lawn.yaml:11:10'],
    ],
  ])('%s', (...one) => refuses(one));

  test('a circle is told by its path', async () => {
    const { problems } = await run({ 'program.yaml': `${program}${circle}` });
    expect(problems[0]?.message).toContain('a → c → b → a');
  });
  test('a source that is called "source" is one of the table, not a use of it', async () => {
    const spoilt = inProgram('steps:', 'sources: { source: Ohio }\nsteps:');
    expect((await run(spoilt)).code).toBe(0);
  });
});

describe('files', () => {
  test.each<Case>([
    ['no lawn', { 'lawn.yaml': MISSING }, 2, ['no-lawn']],
    ['no program', { 'program.yaml': MISSING }, 2, ['file-missing lawn.yaml:7:10']],
    ['no products', { 'products.yaml': MISSING }, 2, ['file-missing lawn.yaml:10:12']],
    ['no weather', { 'weather.csv': MISSING }, 2, ['file-missing lawn.yaml:8:20']],
    ['a folder for a lawn', { 'lawn.yaml': FOLDER }, 2, ['file-unreadable']],
    ['a folder for a program', { 'program.yaml': FOLDER }, 2, ['file-unreadable lawn.yaml:7:10']],
    ['a folder for products', { 'products.yaml': FOLDER }, 2, ['file-unreadable lawn.yaml:10:12']],
    ['a folder for weather', { 'weather.csv': FOLDER }, 2, ['file-unreadable lawn.yaml:8:20']],
    ['a device for weather', inLawn('weather.csv', '/dev/zero'), 2, ['file-unreadable lawn.yaml:8:20']],
    [
      'a path through a file',
      inLawn('program: program.yaml', 'program: weather.csv/program.yaml'),
      2,
      ['file-missing lawn.yaml:7:10'],
    ],
    [
      'products where a program is wanted',
      inLawn('program: program.yaml', 'program: products.yaml'),
      2,
      [
        'missing-key products.yaml:1:1',
        'missing-key products.yaml:1:1',
        'missing-key products.yaml:1:1',
        'missing-key products.yaml:1:1',
        'wrong-kind products.yaml:1:7',
        'unknown-key products.yaml:3:1',
      ],
    ],
    [
      'a program where a lawn is wanted',
      { 'lawn.yaml': lawn.replace('kind: lawn', 'kind: program') },
      2,
      ['wrong-kind lawn.yaml:1:7'],
    ],
    ['a journal that is a map', { 'lawn.journal.yaml': 'date: 2027-03-01\n' }, 1, ['wrong-type lawn.journal.yaml:1:1']],
  ])('%s', (...one) => refuses(one));

  test.each([
    ['missing', MISSING, 'file-missing'],
    ['a folder', FOLDER, 'file-unreadable'],
  ] as const)('check tells of a file that is %s', async (_, put, code) => {
    const result = await run({ 'lawn.yaml': put }, ['check', 'lawn.yaml']);
    expect(result.problems.map((one) => one.code)).toEqual([code]);
    expect(result.code).toBe(2);
  });
  test('a lawn without a kind misses it', () =>
    refuses(['', { 'lawn.yaml': without(lawn, /kind: lawn\n/) }, 1, ['missing-key lawn.yaml:1:1']]));
});

describe('several faults', () => {
  const three = lawn
    .replace('timezone:', 'timezon:')
    .replace('latitude: 39', 'latitude: 139')
    .replace('20 ft', '20 fut');
  const places = ['out-of-range lawn.yaml:4:23', 'unknown-key lawn.yaml:5:1', 'unknown-unit lawn.yaml:9:38'];

  test('of one lawn are told in one go, in the order of the file', () =>
    refuses(['', { 'lawn.yaml': three }, 1, places]));
  test('of one lawn are told by check as well', () =>
    refuses(['', { 'lawn.yaml': three }, 1, places], ['check', 'lawn.yaml']));
  test('of one program are told in one go, references among them', () =>
    refuses([
      '',
      {
        'program.yaml': program
          .replace('work: spread', 'work: spraed')
          .replace(OPENS, '{ after: { step: nix, wait: 3 d } }')
          .replace('common-practice', 'nobody'),
      },
      1,
      ['unknown-word program.yaml:9:11', 'unknown-step program.yaml:10:39', 'unknown-source program.yaml:11:57'],
    ]));
  test('of program, products and weather are told in one go', () =>
    refuses([
      '',
      {
        'program.yaml': program.replace('work:', 'werk:'),
        'products.yaml': products.replace('16-4-8,', '16-4,'),
        'weather.csv': 'date,tmin_c,tmax_c\n2027-01-01,9,4\n',
      },
      1,
      [
        'out-of-range products.yaml:4:56',
        'missing-key program.yaml:7:5',
        'unknown-key program.yaml:9:5',
        'weather-crossed weather.csv:2:12',
      ],
    ]));
  test('beyond a hundred are counted, not printed', async () => {
    const { stderr, problems } = await run({
      'lawn.yaml': lawn + Array.from({ length: 300 }, (_, i) => `key${i}: 1\n`).join(''),
    });
    expect(stderr.match(/\[unknown-key\]/g)).toHaveLength(100);
    expect(stderr).toMatch(/\n300 errors\n/);
    expect(problems).toHaveLength(300);
  });
});
