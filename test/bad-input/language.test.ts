/** Faults in what programs extend, in frost and growth, and in what a lawn says of areas, turf and the rules of its place. */
import { describe, test } from 'vitest';
import { type Case, inLawn, inProgram, lawn, MISSING, program, refuses } from './lawn-folder.ts';

const OPENS = '{ date: 09-01 }';
const opens = (trigger: string) => inProgram(OPENS, trigger);
const rule = (text: string) => ({ 'lawn.yaml': `${lawn}local-rules: [${text}]\n` });
const add = (text: string) => ({ 'lawn.yaml': `${lawn}${text}\n` });
const child = (more = '') => `kind: program\nversion: 1\nid: child\nextends: base.yaml\n${more}`;

describe('triggers', () => {
  test.each<Case>([
    ['a chance above 100 %', opens('{ frost: { first: 28 F, chance: 150% } }'), 1, ['out-of-range program.yaml:10:54']],
    ['a frost without a chance', opens('{ frost: { first: 28 F } }'), 1, ['missing-key program.yaml:10:31']],
    [
      'the first frost and the last',
      opens('{ frost: { first: 28 F, last: 28 F, chance: 50% } }'),
      1,
      ['trigger-frost program.yaml:10:31'],
    ],
    ['a growth above 1', opens('{ growth: { grass: cool, rises-to: 5 } }'), 1, ['out-of-range program.yaml:10:57']],
    ['a growth of no grass', opens('{ growth: { rises-to: 0.5 } }'), 1, ['missing-key program.yaml:10:32']],
    ['a day of 30 hours', opens('{ day-length: { rises-to: 30 h } }'), 1, ['out-of-range program.yaml:10:48']],
    [
      'degree days without a base',
      opens('{ degree-days: { from: 01-01, reaches: 99 } }'),
      1,
      ['missing-key program.yaml:10:37'],
    ],
    [
      'an id missing',
      { 'program.yaml': program.replace('id: autumn-feed', 'lean: late') },
      1,
      ['missing-key program.yaml:7:5'],
    ],
  ])('%s', (...one) => refuses(one));
});

describe('programs that extend', () => {
  const files = (base: string, own = child()) => ({ 'program.yaml': own, 'base.yaml': base });
  test.each<Case>([
    ['one that is not there', { ...files(''), 'base.yaml': MISSING }, 2, ['file-missing program.yaml:4:10']],
    [
      'themselves',
      files(child(), child().replace('base.yaml', 'program.yaml')),
      1,
      ['extends-circle program.yaml:4:10'],
    ],
    ['a lawn', files(lawn), 2, ['wrong-kind base.yaml:1:7']],
    [
      'and drop what is not there',
      files(program, child('steps: [{ id: nothing, drop: true }]\n')),
      1,
      ['unknown-step program.yaml:5:15'],
    ],
    ['a fault in the other file', files(program.replace('09-01', '09-31')), 1, ['not-a-date base.yaml:10:30']],
    [
      'a fault in a step of their own',
      files(program, child('steps: [{ id: autumn-feed, work: rake }]\n')),
      1,
      ['unknown-word program.yaml:5:34'],
    ],
  ])('%s', (...one) => refuses(one));
});

describe('what a lawn says', () => {
  test.each<Case>([
    ['a limit without a rate', rule('{ limit: N }'), 1, ['local-rule lawn.yaml:11:15']],
    ['a limit on nothing known', rule('{ limit: K, yearly: 1 lb/1000 sqft }'), 1, ['unknown-word lawn.yaml:11:24']],
    ['a substance that nothing is called', rule('{ forbid: [phosphorous] }'), 1, ['unknown-word lawn.yaml:11:26']],
    ['a share above 100 %', rule('{ require: { slow-share: 120% } }'), 1, ['out-of-range lawn.yaml:11:40']],
    [
      'turf both seeded and sodded',
      add('turf: { seeded: 2027-03-01, sodded: 2027-03-01 }'),
      1,
      ['turf-both lawn.yaml:11:7'],
    ],
    ['a reason of dormancy that is none', add('turf: { dormant: winter }'), 1, ['unknown-word lawn.yaml:11:18']],
    [
      'a step for an area that is not there',
      add('steps: { autumn-feed: { areas: [frunt] } }'),
      1,
      ['unknown-area lawn.yaml:11:33'],
    ],
    [
      'a soil test of an area that is not there',
      add('soil: { tests: [{ date: 2027-01-01, area: frunt }] }'),
      1,
      ['unknown-area lawn.yaml:11:43'],
    ],
    [
      'a level that no laboratory gives',
      add('soil: { tests: [{ date: 2027-01-01, phosphorus: some }] }'),
      1,
      ['unknown-word lawn.yaml:11:49'],
    ],
    [
      'a forecast that is not there',
      inLawn('files: [weather.csv]', 'files: [weather.csv], forecast: ahead.csv'),
      2,
      ['file-missing lawn.yaml:8:44'],
    ],
    [
      'a forecast service that is none',
      inLawn('files: [weather.csv]', 'files: [weather.csv], forecast: sky'),
      1,
      ['unknown-word lawn.yaml:8:44'],
    ],
  ])('%s', (...one) => refuses(one));
});
