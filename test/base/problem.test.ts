import { describe, expect, test } from 'vitest';
import { frame, hasErrors, inOrder, type Problem, problem } from '../../src/base/problem.ts';

const at = (line: number | null, column: number | null, length: number | null = 1, file: string | null = 'a.yaml') =>
  ({ code: 'wrong-type', severity: 'error', message: 'Wrong.', file, line, column, length }) satisfies Problem;

/** What stands above the carets. */
function marked(shown: string): string {
  const [, line = '', carets = ''] = shown.split('\n');
  return line.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1);
}

describe('frame', () => {
  test('shows the place, the line and carets under the place', () => {
    expect(frame(at(2, 8, 3), 'kind: lawn\ngrass: odd\n')).toBe(
      'a.yaml:2:8: error: Wrong. [wrong-type]\n  2 | grass: odd\n             ^^^',
    );
  });
  test.each([
    ['the first column', 1, 4, 'kind'],
    ['the last column', 10, 1, 'n'],
    ['the whole line', 1, 10, 'kind: lawn'],
    ['a length beyond the line', 7, 99, 'lawn'],
  ])('marks %s', (_, column, length, text) => {
    expect(marked(frame(at(1, column, length), 'kind: lawn'))).toBe(text);
  });
  test('marks one place just after the line', () => {
    expect(frame(at(1, 6, 1), 'kind:')).toBe('a.yaml:1:6: error: Wrong. [wrong-type]\n  1 | kind:\n           ^');
  });
  test('marks an empty line', () => {
    expect(frame(at(2, 1, 1), 'a\n\nb')).toBe('a.yaml:2:1: error: Wrong. [wrong-type]\n  2 | \n      ^');
  });
  test('cuts a long line so that the place is seen', () => {
    const line = `${'x'.repeat(500)}HERE${'y'.repeat(500)}`;
    const shown = frame(at(1, 501, 4), line);
    expect(marked(shown)).toBe('HERE');
    expect(shown.split('\n')[1]).toHaveLength('  1 | '.length + 100);
  });
  test.each([1, 59, 60, 61, 99, 100, 101, 400])('marks column %i of a long line', (column) => {
    const line = `${'x'.repeat(column - 1)}H${'y'.repeat(300)}`;
    expect(marked(frame(at(1, column, 1), line))).toBe('H');
  });
  test('shows a tab as one space, so that the caret stands right', () => {
    expect(marked(frame(at(1, 3, 3), '\t\todd\tx'))).toBe('odd');
  });
  test.each(['\n', '\r\n', '\r'])('counts lines that end in %j', (end) => {
    expect(marked(frame(at(3, 1, 3), ['one', 'two', 'odd', 'four'].join(end)))).toBe('odd');
  });
  test('shows no control character of the line', () => {
    expect(frame(at(1, 1, 1), '\u001b[2J\u009b\u2028x').replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Zl}]/u);
  });
  test('shows no control character of the message', () => {
    const found = { ...at(1, 1), message: 'a\n    at b (c:1:1)\u001b[0m' };
    expect(frame(found, undefined)).not.toMatch(/\p{Cc}/u);
  });
  test.each([
    ['without a line', at(null, null), 'text', 'a.yaml: error: Wrong. [wrong-type]'],
    ['without a file', at(null, null, null, null), undefined, 'error: Wrong. [wrong-type]'],
    ['without its text', at(2, 8), undefined, 'a.yaml:2:8: error: Wrong. [wrong-type]'],
    ['beyond the text', at(9, 1), 'one\ntwo', 'a.yaml:9:1: error: Wrong. [wrong-type]'],
  ])('%s is its head alone', (_, found, source, head) => expect(frame(found, source)).toBe(head));
  test('finds a line far down soon', () => {
    const source = 'a\n'.repeat(1_000_000);
    const before = process.cpuUsage();
    for (let i = 0; i < 3; i++) frame(at(1_000_000, 1), source);
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(1);
  });
});

describe('inOrder', () => {
  const places = (problems: readonly Problem[]) => problems.map(({ file, line, column }) => [file, line, column]);

  test('is by file, line and column, without a place last', () => {
    const given = [
      at(null, null, null, null),
      at(2, 1, 1, 'b'),
      at(null, null, null, 'a'),
      at(9, 1, 1, 'a'),
      at(2, 9, 1, 'a'),
      at(2, 1, 1, 'a'),
    ];
    expect(places(inOrder(given))).toEqual([
      ['a', 2, 1],
      ['a', 2, 9],
      ['a', 9, 1],
      ['a', null, null],
      ['b', 2, 1],
      [null, null, null],
    ]);
  });
  test('keeps the order of problems in one place', () => {
    const [first, second] = [
      { ...at(1, 1), message: 'first' },
      { ...at(1, 1), message: 'second' },
    ];
    expect(inOrder([first, second])).toEqual([first, second]);
    expect(inOrder([second, first])).toEqual([second, first]);
  });
  test('does not change the list it is given', () => {
    const given = [at(2, 1), at(1, 1)];
    inOrder(given);
    expect(given[0]?.line).toBe(2);
  });
});

describe('problem', () => {
  test('takes its severity from the table', () => {
    expect(problem('file-empty', { what: 'lawn' }, null).severity).toBe('error');
    expect(problem('weather-few-years', { years: 9 }, null).severity).toBe('warning');
    expect(problem('weather-gap-short', { from: '2027-01-01', days: 1 }, null).severity).toBe('note');
  });
  test('of a whole file has no line', () => {
    expect(problem('file-empty', { what: 'lawn' }, { file: 'a.yaml' })).toMatchObject({ file: 'a.yaml', line: null });
  });
  test('of no file has no place', () => {
    expect(problem('file-empty', { what: 'lawn' }, null)).toMatchObject({ file: null, line: null, column: null });
  });
  test('warnings and notes are no errors', () => {
    expect(hasErrors([problem('weather-few-years', { years: 9 }, null)])).toBe(false);
    expect(hasErrors([problem('file-empty', { what: 'lawn' }, null)])).toBe(true);
  });
});
