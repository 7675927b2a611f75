import { frame, inOrder, type Problem } from '../base/problem.ts';
import { folded } from '../emit/table.ts';
import { readText } from './files.ts';
import type { Io } from './io.ts';

/** Exit codes: fine, a problem in what was asked, bad usage or unreadable input. */
export const EXIT = { fine: 0, problem: 1, usage: 2 } as const;

/** Problems of input that could not be read at all. */
const UNREADABLE =
  /^(file-|yaml-|wrong-kind|no-lawn|as-of|plan-step|calendar-for-lawn|calendar-option|compare-file|weather-none|weather-header|serve-option|serve-folder|program-)/;

/** The exit code of a command with these problems. With `strict`, warnings count. */
export function exitCode(problems: readonly Problem[], strict: boolean): number {
  const counted = problems.filter(({ severity }) => severity === 'error' || (strict && severity === 'warning'));
  if (counted.some(({ code, severity }) => severity === 'error' && UNREADABLE.test(code))) return EXIT.usage;
  return counted.length > 0 ? EXIT.problem : EXIT.fine;
}

/** A file of the wrong sort can bring a problem a line; nobody reads on after so many. */
const MOST_SHOWN = 100;

/** Prints problems to stderr, each with its line and a caret, and a count at the end. */
export function printProblems(problems: readonly Problem[], io: Io): void {
  if (problems.length === 0) return;
  const texts = new Map<string, string | undefined>();
  const textOf = (file: string | null): string | undefined => {
    if (file === null) return undefined;
    if (!texts.has(file)) {
      const source = readText(file, io.cwd);
      texts.set(file, source && 'text' in source ? source.text : undefined);
    }
    return texts.get(file);
  };
  for (const one of inOrder(problems).slice(0, MOST_SHOWN)) {
    const [head = '', ...shown] = frame(one, textOf(one.file)).split('\n');
    io.stderr(`${[...folded(head, io.columns), ...shown].join('\n')}\n`);
  }
  if (problems.length > MOST_SHOWN) io.stderr(`The first ${MOST_SHOWN} are shown; --json prints all of them.\n`);
  const count = (severity: Problem['severity']) => problems.filter((one) => one.severity === severity).length;
  const words = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const n = count(severity);
    return n === 0 ? [] : [`${n} ${severity}${n === 1 ? '' : 's'}`];
  });
  io.stderr(`${words.join(', ')}\n`);
}

/** Prints problems, to a program that asked for JSON as such too. */
export function tellProblems(problems: readonly Problem[], json: boolean | undefined, io: Io): void {
  if (json) io.stdout(`${JSON.stringify({ kind: 'problems', version: 1, problems }, null, 2)}\n`);
  printProblems(problems, io);
}

/** The end of a command that cannot go on: tells its problems and gives the exit code. */
export const failing =
  ({ json, strict }: { readonly json?: boolean; readonly strict?: boolean }, io: Io) =>
  (problems: readonly Problem[]): number => {
    tellProblems(problems, json, io);
    return exitCode(problems, strict ?? false);
  };
