import { randomInt } from 'node:crypto';
import { closeSync, mkdirSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import path from 'node:path';
import { hasErrors, type Problem, problem } from '../base/problem.ts';
import { appended, type EntryDraft, entryLine } from '../emit/journal-entry.ts';
import { readJournal } from '../read/journal.ts';
import { NotWritten, readText, writeAll } from './files.ts';

/** A lock older than this was left by a run that ended before its time. */
const STALE_SECONDS = 20;
/** Longer than this nobody waits for another run. */
const WAIT_SECONDS = 30;
const PAUSE_MS = 15;

/** What came of writing an entry. */
export type Written = { readonly line: string; readonly id: string } | { readonly problems: readonly Problem[] };

/**
 * Adds an entry to a journal file, or begins one: whole or not at all, whoever else writes at the same time.
 *
 * A lock beside the file keeps other runs out while the text is read, lengthened and put in place of the old one. The new
 * text is read back before it is written: it has to hold one entry more.
 *
 * @param entry Its `id` is added here, unlike every other one in the file.
 */
export function addEntry(file: string, entry: EntryDraft, cwd: string): Written {
  return locked(file, () => {
    const source = readText(file, cwd);
    if (source && 'reason' in source)
      return { problems: [problem('file-unreadable', { ref: file, reason: source.reason }, null)] };
    const text = source?.text ?? '';
    const before = readJournal(text, path.basename(file));
    if (hasErrors(before.problems)) return { problems: before.problems };
    const id = freshId(text);
    const line = entryLine({ id, ...entry });
    const longer = appended(text, line);
    if ('reason' in longer) return { problems: [problem('journal-append', longer, { file })] };
    const after = readJournal(longer.text, path.basename(file));
    if (hasErrors(after.problems) || after.value?.length !== (before.value?.length ?? 0) + 1)
      return { problems: [problem('journal-append', { reason: 'the new entry would not be read back.' }, { file })] };
    try {
      writeAll([{ file, text: longer.text }]);
    } catch (error) {
      if (!(error instanceof NotWritten)) throw error;
      return { problems: [problem('write-failed', { file, reason: error.message }, null)] };
    }
    return { line, id };
  });
}

/** Without those that look alike; digits behind the letters. */
const SIGNS = 'abcdefghijkmnpqrstuvwxyz23456789';
const LETTERS = 24;

/** A short id that stands nowhere in the text: a letter first, so that no reader of YAML takes it for a number. */
function freshId(text: string): string {
  for (let length = 4; ; length++) {
    const id = Array.from({ length }, (_, i) => SIGNS[randomInt(i === 0 ? LETTERS : SIGNS.length)]).join('');
    if (!text.includes(id)) return id;
  }
}

/** Runs with the file's lock held. */
function locked(file: string, run: () => Written): Written {
  const lock = `${file}.lock`;
  const until = Date.now() + 1000 * WAIT_SECONDS;
  mkdirSync(path.dirname(file), { recursive: true });
  for (;;) {
    try {
      const handle = openSync(lock, 'wx');
      writeSync(handle, String(process.pid));
      closeSync(handle);
      break;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EEXIST') {
        rmSync(lock, { force: true });
        return { problems: [problem('write-failed', { file: lock, reason: String(code) }, null)] };
      }
      if (isStale(lock)) setAside(lock);
      else if (Date.now() > until)
        return { problems: [problem('journal-locked', { file: lock, seconds: WAIT_SECONDS }, null)] };
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS);
    }
  }
  try {
    return run();
  } finally {
    rmSync(lock, { force: true });
  }
}

function isStale(lock: string): boolean {
  try {
    return Date.now() - statSync(lock).mtimeMs > 1000 * STALE_SECONDS;
  } catch {
    return false;
  }
}

/** Takes a stale lock away; of several that try, one succeeds, and the others look again. */
function setAside(lock: string): void {
  const aside = `${lock}.${process.pid}`;
  try {
    renameSync(lock, aside);
    rmSync(aside, { force: true });
  } catch {
    // Another run has taken it away.
  }
}
