import { openTerminal, type Terminal } from './terminal.ts';

/** What a command may touch: its streams, its folder, the clock, the width of the terminal. */
export interface Io {
  stdout(text: string): void;
  stderr(text: string): void;
  readonly cwd: string;
  /** Milliseconds since 1970-01-01T00:00:00Z. */
  now(): number;
  readonly columns: number;
  /** Whether what goes to stderr is seen on a screen, where a line can be written over. */
  readonly hasScreen?: boolean;
  /** Opens the terminal to ask at; absent where nobody sits at one. */
  readonly openTerminal?: () => Terminal;
}

/** The real one. A reader that has gone (`| head`) is no fault: what is left is said to nobody. */
export function processIo(): Io {
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  return {
    stdout: (text) => void process.stdout.write(text),
    stderr: (text) => void process.stderr.write(text),
    cwd: process.cwd(),
    now: () => Date.now(),
    columns: Math.min(Math.max(process.stdout.columns ?? 100, 60), 100),
    hasScreen: process.stderr.isTTY === true,
    ...(process.stdin.isTTY && { openTerminal: () => openTerminal(process.stdin, process.stderr) }),
  };
}
