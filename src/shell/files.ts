import { isUtf8 } from 'node:buffer';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import type { Source } from '../read/lookup.ts';

/** No file above this is brought into memory; each kind has its own lower limit. */
const LARGEST = 64 * 1024 * 1024;

/** A file's name as the reader knows it: relative to the folder where the command runs. */
const shownName = (file: string, cwd: string): string => {
  const relative = path.relative(cwd, file);
  return relative.startsWith('..') && !path.isAbsolute(relative) && relative.split('..').length > 4
    ? file
    : relative || file;
};

type Read<T> = T | null | { readonly reason: string };

/** Reads a text file, its byte order mark left off; null where there is none, a reason where it cannot be read. */
export function readText(file: string, cwd: string): Read<Source> {
  const read = readBytes(file, cwd);
  if (read === null || 'reason' in read) return read;
  return { name: read.name, text: read.bytes.toString('utf8').replace(/^\uFEFF/, '') };
}

/** Reads a text file to be changed: with its byte order mark, and only where all of it would come back as the same bytes. */
export function readToChange(file: string, cwd: string): Read<Source> {
  const read = readBytes(file, cwd);
  if (read === null || 'reason' in read) return read;
  if (!isUtf8(read.bytes)) return { reason: 'it is not written in UTF-8, so changing it would spoil letters in it' };
  return { name: read.name, text: read.bytes.toString('utf8') };
}

function readBytes(file: string, cwd: string): Read<{ readonly name: string; readonly bytes: Buffer }> {
  const absolute = path.resolve(cwd, file);
  try {
    const found = statSync(absolute);
    const { size } = found;
    if (!found.isFile() && !found.isDirectory()) return { reason: 'it is no regular file' };
    if (size > LARGEST) return { reason: `it has ${Math.round(size / 2 ** 20)} MiB, more than is ever read` };
    return { name: shownName(absolute, cwd), bytes: readFileSync(absolute) };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    return {
      reason: code === 'EISDIR' ? 'it is a folder' : code === 'EACCES' ? 'permission denied' : String(code ?? error),
    };
  }
}

/** A file's next text. */
export interface Writing {
  readonly file: string;
  readonly text: string;
}

/** A file that could not be written, by the name it was to have, also where the file system names none (a full disk). */
export class NotWritten extends Error {
  readonly file: string;

  constructor(file: string, cause: unknown) {
    super((cause as NodeJS.ErrnoException).code ?? String(cause), { cause });
    this.file = file;
  }
}

/**
 * Writes files whole, and all of them or none: each beside its place first, to the disk, then in its place, in the order
 * given. A file whose text stays the same is not touched. A link goes on pointing where it does, and a file that others may
 * not read stays so.
 *
 * @throws NotWritten, with nothing changed.
 */
export function writeAll(writings: readonly Writing[]): void {
  const staged: { readonly file: string; readonly beside: string }[] = [];
  let at = '';
  try {
    for (const { file, text } of writings) {
      at = file;
      if (existsSync(file) && readFileSync(file, 'utf8') === text) continue;
      const place = existsSync(file) ? realpathSync(file) : file;
      const beside = `${place}.${process.pid}.part`;
      staged.push({ file: place, beside });
      writeThrough(beside, text, existsSync(place) ? statSync(place).mode : undefined);
    }
    for (const { file, beside } of staged) {
      at = file;
      renameSync(beside, file);
    }
  } catch (error) {
    throw new NotWritten(at, error);
  } finally {
    for (const { beside } of staged) tidy(beside);
  }
}

/**
 * Makes a folder and those above it. Node's own recursive way never ends where the system says that the folder above, which is
 * there, is not (Linux below /proc).
 */
export function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(path.dirname(folder));
  try {
    mkdirSync(folder);
  } catch (error) {
    // Another run may have made it in between.
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
}

/** Writes a file, and its folder where there is none, down to the disk. */
function writeThrough(file: string, text: string, mode: number | undefined): void {
  makeFolder(path.dirname(file));
  const handle = openSync(file, 'w', mode);
  try {
    writeFileSync(handle, text);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Removes what a failed writing left; where even that fails, the failure before it is the one to tell. */
function tidy(beside: string): void {
  try {
    rmSync(beside, { force: true });
  } catch {
    // The error that led here says more.
  }
}

/** Removes what runs left that were ended while they wrote a file; to be called while its lock is held. */
export function removeLeftParts(file: string): void {
  const [folder, name] = [path.dirname(file), path.basename(file)];
  for (const beside of statSync(folder, { throwIfNoEntry: false })?.isDirectory() ? readdirSync(folder) : [])
    if (beside.startsWith(`${name}.`) && /\.\d+\.part$/.test(beside) && beside !== `${name}.${process.pid}.part`)
      rmSync(path.join(folder, beside), { force: true });
}
