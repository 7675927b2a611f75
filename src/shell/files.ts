import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import type { Lookup, Source } from '../read/link.ts';

/** No file above this is brought into memory; each kind has its own lower limit. */
const LARGEST = 64 * 1024 * 1024;

/** A file's name as the reader knows it: relative to the folder where the command runs. */
const shownName = (file: string, cwd: string): string => {
  const relative = path.relative(cwd, file);
  return relative.startsWith('..') && !path.isAbsolute(relative) && relative.split('..').length > 4
    ? file
    : relative || file;
};

/** Reads a text file; null where there is none, a reason where it cannot be read. */
export function readText(file: string, cwd: string): Source | null | { readonly reason: string } {
  const absolute = path.resolve(cwd, file);
  try {
    const { size } = statSync(absolute);
    if (size > LARGEST) return { reason: `it has ${Math.round(size / 2 ** 20)} MiB, more than is ever read` };
    return { name: shownName(absolute, cwd), text: readFileSync(absolute, 'utf8') };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    return {
      reason: code === 'EISDIR' ? 'it is a folder' : code === 'EACCES' ? 'permission denied' : String(code ?? error),
    };
  }
}

/** Finds files by the path that stands in another file: relative to that file's folder. */
export const lookupFrom =
  (cwd: string): Lookup =>
  (ref, from) =>
    readText(path.resolve(cwd, path.dirname(from), ref), cwd);

/**
 * Writes a file whole or not at all: beside it first, to the disk, then in its place.
 *
 * @throws The error of the file system, with nothing changed.
 */
export function writeWhole(file: string, text: string): void {
  mkdirSync(path.dirname(file), { recursive: true });
  const beside = `${file}.${process.pid}.part`;
  try {
    const handle = openSync(beside, 'w');
    try {
      writeFileSync(handle, text);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/** Writes a file only where its text changes. @returns Whether it was written. */
export function writeChanged(file: string, text: string): boolean {
  if (existsSync(file) && readFileSync(file, 'utf8') === text) return false;
  writeWhole(file, text);
  return true;
}
