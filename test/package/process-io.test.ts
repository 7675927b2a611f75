/** What the command is given of its process. */
import { afterEach, describe, expect, test } from 'vitest';
import { processIo } from '../../src/shell/io.ts';

const { columns } = process.stdout;
afterEach(() => {
  process.stdout.columns = columns;
  for (const stream of [process.stdout, process.stderr]) stream.removeAllListeners('error');
});
const error = (code: string) => Object.assign(new Error(code), { code });

describe('the width', () => {
  test.each([
    [undefined as unknown as number, 100],
    [20, 60],
    [80, 80],
    [250, 100],
  ])('of a terminal of %s columns is %i', (terminal, expected) => {
    process.stdout.columns = terminal;
    expect(processIo().columns).toBe(expected);
  });
});

test('the folder is the one of the process', () => expect(processIo().cwd).toBe(process.cwd()));
test('the clock counts milliseconds since 1970', () => expect(processIo().now()).toBeGreaterThan(Date.UTC(2026, 0, 1)));

describe.each(['stdout', 'stderr'] as const)('%s', (name) => {
  test('bears a reader that has gone', () => {
    processIo();
    expect(() => process[name].emit('error', error('EPIPE'))).not.toThrow();
  });
  test('does not hide a full disk', () => {
    processIo();
    expect(() => process[name].emit('error', error('ENOSPC'))).toThrow('ENOSPC');
  });
});
