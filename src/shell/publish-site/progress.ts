import type { Io } from '../io.ts';

/** Cells of the bar. */
const WIDTH = 30;
/** Nothing is shown of work that is over sooner than anybody wonders [ms]. */
const QUIET_MS = 1500;
/** Between two looks of the bar [ms]. */
const EVERY_MS = 200;

/**
 * Shows how far long work has come, on stderr: a bar that grows in its line where somebody sits at a terminal, else a line every
 * tenth.
 *
 * @returns Takes how many are done.
 */
export function progressOf(what: string, all: number, io: Io): (done: number) => void {
  const began = io.now();
  let [shownAt, tenth] = [began, 0];
  return (done) => {
    const now = io.now();
    const seconds = Math.round((now - began) / 1000);
    const isLast = done === all;
    const text = `${done} of ${all} ${what}, ${seconds} s`;
    if (io.hasScreen === true) {
      if (now - began < QUIET_MS || (!isLast && now - shownAt < EVERY_MS)) return;
      shownAt = now;
      const filled = Math.round((WIDTH * done) / all);
      io.stderr(`\r[${'#'.repeat(filled)}${'.'.repeat(WIDTH - filled)}] ${text}${isLast ? '\n' : ''}`);
      return;
    }
    const reached = Math.floor((10 * done) / all);
    if (reached === tenth || all < 10 * WIDTH) return;
    tenth = reached;
    io.stderr(`${text}\n`);
  };
}
