import { randomUUID } from 'node:crypto';
import { linkSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { type Problem, problem } from '../base/problem.ts';
import { makeFolder, NotWritten } from './files.ts';

/** A lock older than this was left by a run that ended before its time, wherever that ran. */
const STALE_SECONDS = 20;
/** Longer than this nobody waits for another run. */
const WAIT_SECONDS = 30;
const PAUSE_MS = 15;

/** The lock was taken over while its holder slept. */
class LockLost extends Error {}

/**
 * Runs with the file's lock held: a file beside it that only one run can make.
 *
 * A lock whose run has ended is taken over at once on the same machine, else after 20 s. Its holder may only have slept:
 * right before it writes it calls `stillHeld`, and begins anew where the lock is no longer its own. Each call makes the lock
 * young again.
 *
 * @returns What the run gave; NotWritten where nothing can be written there; a problem after 30 s of waiting.
 */
export function withLock<T>(
  file: string,
  run: (stillHeld: () => void) => T,
): T | NotWritten | { readonly problems: readonly Problem[] } {
  const lock = `${file}.lock`;
  const until = Date.now() + 1000 * WAIT_SECONDS;
  while (Date.now() <= until) {
    const mine = `${process.pid} ${hostname()} ${randomUUID()}`;
    try {
      if (!taken(lock, mine)) {
        if (!takeOverStale(lock)) sleep(PAUSE_MS * (0.5 + Math.random()));
        continue;
      }
      return run(() => {
        if (textOf(lock) !== mine || !renewed(lock)) throw new LockLost();
      });
    } catch (error) {
      if (error instanceof NotWritten) return error;
      if (!(error instanceof LockLost)) throw error;
    } finally {
      if (textOf(lock) === mine) rmSync(lock, { force: true });
    }
  }
  return { problems: [problem('write-locked', { file: lock, seconds: WAIT_SECONDS }, null)] };
}

const sleep = (ms: number): void => void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);

/** Makes the lock. @returns Whether it is ours now. @throws NotWritten where none can be made. */
function taken(lock: string, mine: string): boolean {
  try {
    makeFolder(path.dirname(lock));
    writeFileSync(lock, mine, { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    // What a full disk has cut short names nobody, and others would wait until it is stale.
    const left = textOf(lock);
    if (left !== null && mine.startsWith(left)) rmSync(lock, { force: true });
    throw new NotWritten(lock, error);
  }
}

/** Takes away a lock that nobody holds any more. @returns Whether there was one. */
function takeOverStale(lock: string): boolean {
  const found = textOf(lock);
  if (found === null || !isStale(lock, found)) return false;
  const aside = `${lock}.${process.pid}`;
  try {
    renameSync(lock, aside);
    // Another run may have taken it over in between: then this is a fresh one, and goes back.
    if (textOf(aside) !== found) linkSync(aside, lock);
    return true;
  } catch {
    return false;
  } finally {
    rmSync(aside, { force: true });
  }
}

function isStale(lock: string, found: string): boolean {
  const [pid, host] = found.split(' ');
  if (host === hostname() && !isRunning(Number(pid))) return true;
  try {
    return Date.now() - statSync(lock).mtimeMs > 1000 * STALE_SECONDS;
  } catch {
    return false;
  }
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function renewed(lock: string): boolean {
  const now = new Date();
  try {
    utimesSync(lock, now, now);
    return true;
  } catch {
    return false;
  }
}

function textOf(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}
