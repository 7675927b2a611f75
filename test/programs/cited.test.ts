/** The figures of every shipped program against the publications, and what the comparison finds. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { programText, root } from '../kit.ts';
import { type Cited, citedFaults, type Figure, figuresOf, isUsual, whyUnpublished } from './cited.ts';
import { COMMON_PRACTICE } from './common-practice.ts';
import { PROGRAMS } from './plan-program.ts';

const text = (name: string) => readFileSync(path.join(PROGRAMS, `${name}.yaml`), 'utf8');
const names = readdirSync(path.join(root, 'test/programs/cited')).map((name) => name.replace('.ts', ''));
const programs = readdirSync(PROGRAMS)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.replace('.yaml', ''))
  .filter((name) => /^kind: program$/m.test(text(name)));

test('every program has its figures typed a second time, and every such file its program', () =>
  expect(names.toSorted()).toEqual(programs.toSorted()));

test.each(names)('%s agrees with the publications', async (name) => {
  const { cited } = (await import(/* @vite-ignore */ `./cited/${name}.ts`)) as { cited: Cited };
  expect(cited.figures.length).toBeGreaterThan(10);
  expect(citedFaults(text(name), cited, `${name}.yaml`)).toEqual([]);
});

test('what is called usual is usual somewhere', async () => {
  const unpublished = await Promise.all(
    names.map(async (name) => {
      const { cited } = (await import(/* @vite-ignore */ `./cited/${name}.ts`)) as { cited: Cited };
      return figuresOf(parse(text(name))).filter(({ at }) => whyUnpublished(cited, at) !== null);
    }),
  );
  const answers = (figure: Figure) => COMMON_PRACTICE.find(({ at }) => at.test(figure.at));
  const idle = COMMON_PRACTICE.flatMap((practice) => {
    const figures = unpublished.flat().filter((figure) => answers(figure) === practice);
    return practice.usual
      .filter((usual) => !figures.some(({ value }) => isUsual(value, usual)))
      .map((usual) => `${practice.at} ${usual}`);
  });
  expect(idle).toEqual([]);
});

describe('What is wrong', () => {
  const program = programText(
    `  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 05-01, source: book } }
    apply: { nutrient: { N: 0.5 lb/1000 sqft }, source: common-practice }
`,
    'sources: { book: A book }\n',
  );
  const opens = ['feed', 'window.opens.date', '05-01', 'book', 'early May'] as const;
  const rate = ['feed', 'apply.nutrient.N', 'half of the usual pound'] as const;
  const faults = (cited: Partial<Cited>) =>
    citedFaults(program, { figures: [opens], unpublished: [rate], ...cited }).map((fault) => fault.replace(/:.*/, ''));

  test('is nothing where all agree', () => expect(faults({})).toEqual([]));
  test('is a value that differs', () =>
    expect(faults({ figures: [['feed', 'window.opens.date', '05-02', 'book', 'May']] })).toEqual([
      'feed.window.opens.date',
    ]));
  test('is a source that differs', () =>
    expect(faults({ figures: [['feed', 'window.opens.date', '05-01', 'other', 'May']] })).toHaveLength(1));
  test('is a figure that is listed nowhere', () =>
    expect(faults({ unpublished: [] })).toEqual(['feed.apply.nutrient.N']));
  test('is a figure that is listed twice', () =>
    expect(faults({ unpublished: [rate, ['feed', 'window.opens.date', 'again']] })).toEqual([
      'feed.window.opens.date',
    ]));
  test('is a line that points at nothing', () =>
    expect(faults({ unpublished: [rate, ['feed', 'window.closes.date', 'none']] })).toEqual([
      'feed.window.closes.date',
    ]));
  test('is a value outside a published range, not one inside it', () => {
    const listed = (from: string, to: string) =>
      faults({ within: [['feed', 'apply.nutrient.N', [from, to], 'book', 'so much']], unpublished: [] });
    expect(listed('0.4 lb/1000 sqft', '3 g/m2')).toEqual([]);
    expect(listed('0.6 lb/1000 sqft', '1 lb/1000 sqft')).toEqual(['feed.apply.nutrient.N']);
    const dated = (from: string, to: string) =>
      faults({ within: [['feed', 'window.opens.date', [from, to], 'book', 'then']], figures: [] });
    expect([dated('04-15', '05-15'), dated('11-01', '05-15'), dated('05-02', '05-15')]).toEqual([
      [],
      [],
      ['feed.window.opens.date'],
    ]);
  });
  test('is a range from a source that the program does not tell of', () =>
    expect(
      faults({
        within: [['feed', 'apply.nutrient.N', ['0.4 lb/1000 sqft', '1 lb/1000 sqft'], 'other', 'so much']],
        unpublished: [],
      }),
    ).toEqual(['feed.apply.nutrient.N']));
  test('is an unpublished figure unlike what is usual, and not one that is', () => {
    const spaced = (weeks: number) =>
      citedFaults(`${program}nitrogen: { spacing: ${weeks} weeks, source: common-practice }\n`, {
        figures: [opens],
        unpublished: [rate, ['nitrogen', 'spacing', 'monthly']],
      });
    expect(spaced(4)).toEqual([]);
    expect(spaced(5)).toHaveLength(1);
  });
  test('is not the same rate in another unit', () =>
    expect(
      faults({
        figures: [
          opens,
          ['feed', 'apply.nutrient.N', ['0.5 lb/1000 sqft', '1 lb/1000 sqft'], 'common-practice', 'range'],
        ],
        unpublished: [],
      }),
    ).toEqual([]));
  test('is a value that is neither end of its range', () =>
    expect(
      faults({
        figures: [
          opens,
          ['feed', 'apply.nutrient.N', ['0.4 lb/1000 sqft', '1 lb/1000 sqft'], 'common-practice', 'range'],
        ],
        unpublished: [],
      }),
    ).toEqual(['feed.apply.nutrient.N']));
});
