import { createInterface } from 'node:readline';

/** Somebody who answers. */
export interface Terminal {
  /** Shows a prompt and waits for a line; null once there is none any more: Ctrl-C, or the end of the input. */
  ask(prompt: string): Promise<string | null>;
  close(): void;
}

/**
 * A terminal to ask at. Questions go where messages go, so that a printed answer can be piped on.
 *
 * Lines that come before they are asked for, from a paste, wait for their question.
 */
export function openTerminal(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Terminal {
  const lines: string[] = [];
  let waiting: ((line: string | null) => void) | null = null;
  let closed = false;
  const reader = createInterface({ input, output });
  const give = (line: string | null): void => {
    const taker = waiting;
    waiting = null;
    if (taker) taker(line);
    else if (line !== null) lines.push(line);
  };
  reader.on('line', give);
  reader.on('close', () => {
    closed = true;
    give(null);
  });
  // Without a listener readline only pauses, and the process would end with nothing said.
  reader.on('SIGINT', () => {
    output.write('^C\n');
    lines.length = 0;
    reader.close();
  });
  return {
    ask(prompt) {
      const line = lines.shift();
      if (line !== undefined) {
        output.write(`${prompt}${line}\n`);
        return Promise.resolve(line);
      }
      if (closed) return Promise.resolve(null);
      reader.setPrompt(prompt);
      reader.prompt();
      return new Promise((resolve) => {
        waiting = resolve;
      });
    },
    close: () => reader.close(),
  };
}
