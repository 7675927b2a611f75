import { existsSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { NotWritten, writeAll } from '../../src/shell/files.ts';

/** The device of Linux to which every write fails as on a full disk. */
const FULL = '/dev/full';

test.skipIf(!existsSync(FULL))('a full disk: the file that met it is named, both stay as they were', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'soilclock-full-'));
  const [first, second] = [path.join(folder, 'first'), path.join(folder, 'second')];
  const both = [first, second];
  for (const file of both) writeFileSync(file, 'kept');
  symlinkSync(FULL, `${second}.${process.pid}.part`);
  let thrown: unknown;
  try {
    writeAll(both.map((file) => ({ file, text: 'new' })));
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(NotWritten);
  expect(thrown).toMatchObject({ file: second, message: 'ENOSPC' });
  expect(both.map((file) => readFileSync(file, 'utf8'))).toEqual(['kept', 'kept']);
  expect(readdirSync(folder).toSorted()).toEqual(['first', 'second']);
});
