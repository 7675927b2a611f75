/** What is printed is no wider than the terminal. */
import { expect, test } from 'vitest';
import { folded } from '../../src/emit/table.ts';
import { demoCopy, soilclock } from '../kit.ts';

const COLUMNS = 72;
const longest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length));
const printed = async (...argv: string[]) => {
  const { cwd, lawn } = demoCopy();
  return soilclock(cwd, [argv[0] ?? '', lawn, ...argv.slice(1)], undefined, null, COLUMNS);
};

test('a line is cut at spaces, and what goes over set in further', () =>
  expect(folded('a bc d\n  e f', 4)).toEqual(['a bc', '  d', '  e', '    f']));
test.each([
  ['plan', ['plan', '--as-of', '2027-11-20', '--out', 'out/site']],
  ['areas', ['areas', '--out', 'out/some/longer/folder/of/drawings']],
  [
    'did',
    ['did', 'autumn-feed-1', '--areas', 'front', '--used', '9 lb', '--note', 'Dry, with a little wind from the sea'],
  ],
])('what %s tells', async (_, argv) => {
  const { stdout, stderr } = await printed(...argv);
  expect(stdout).not.toBe('');
  expect(longest(`${stdout}\n${stderr}`)).toBeLessThanOrEqual(COLUMNS);
});
