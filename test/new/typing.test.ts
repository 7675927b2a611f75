/** What a terminal makes of the lines, and of their end, that a stream brings. */
import { PassThrough } from 'node:stream';
import { expect, test } from 'vitest';
import { openTerminal } from '../../src/shell/terminal.ts';

function streams() {
  const [input, output] = [new PassThrough(), new PassThrough({ encoding: 'utf8' })];
  return { input, output, terminal: openTerminal(input, output) };
}
const aWhile = () => new Promise((resolve) => setTimeout(resolve, 20));

test('a line answers the question that waits for it', async () => {
  const { input, output, terminal } = streams();
  const answer = terminal.ask('Name: ');
  input.write('Plot 7\n');
  expect([await answer, output.read()]).toEqual(['Plot 7', 'Name: ']);
  terminal.close();
});
test('lines that come early wait for their questions, and are shown beside them', async () => {
  const { input, output, terminal } = streams();
  input.write('one\ntwo\n');
  await aWhile();
  expect([await terminal.ask('A: '), await terminal.ask('B: '), output.read()]).toEqual([
    'one',
    'two',
    'A: one\nB: two\n',
  ]);
  terminal.close();
});
test('the end of the input answers with null, the question that waits and every later one', async () => {
  const { input, terminal } = streams();
  const waiting = terminal.ask('A: ');
  input.end();
  expect([await waiting, await terminal.ask('B: ')]).toEqual([null, null]);
});
test('what came before the end is still an answer', async () => {
  const { input, terminal } = streams();
  input.end('one\n');
  await aWhile();
  expect([await terminal.ask('A: '), await terminal.ask('B: ')]).toEqual(['one', null]);
});
