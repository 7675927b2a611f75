import { cleaned } from './text.ts';
import { type ProblemCode, type WordingArgs, wording } from './wording.ts';

export type Severity = 'error' | 'warning' | 'note';

/** A place in a file. Lines and columns count from 1, columns in UTF-16 units. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** How many characters the place covers on its line; at least 1. */
  readonly length: number;
}

/** A diagnostic: what is, what was expected, what to do, and where. */
export interface Problem {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly message: string;
  readonly file: string | null;
  readonly line: number | null;
  readonly column: number | null;
  readonly length: number | null;
}

/**
 * Makes a problem: the severity and the words come from the one table in `wording.ts`.
 *
 * @param place Where it is; null when it concerns no file, a place without a line when it concerns a file as a whole.
 * @example problem('file-empty', { what: 'program' }, { file: 'a.yaml', line: 1, column: 1, length: 1 })
 */
export function problem<C extends ProblemCode>(
  code: C,
  args: WordingArgs<C>,
  place: Place | { readonly file: string } | null,
): Problem {
  const { severity, text } = wording[code];
  return {
    code,
    severity,
    message: cleaned((text as (args: WordingArgs<C>) => string)(args)),
    file: place?.file ?? null,
    line: place && 'line' in place ? place.line : null,
    column: place && 'line' in place ? place.column : null,
    length: place && 'line' in place ? place.length : null,
  };
}

export const hasErrors = (problems: readonly Problem[]): boolean =>
  problems.some(({ severity }) => severity === 'error');

/** Problems in reading order: by file, then by place. Those without a place come last. */
export function inOrder(problems: readonly Problem[]): Problem[] {
  const key = (p: Problem) => [p.line ?? Number.MAX_SAFE_INTEGER, p.column ?? 0] as const;
  return [...problems].sort((a, b) => {
    if (a.file !== b.file) return (a.file ?? '\uffff') < (b.file ?? '\uffff') ? -1 : 1;
    return key(a)[0] - key(b)[0] || key(a)[1] - key(b)[1];
  });
}

/** A text without tabs, line ends and what else a terminal would act on: a stranger's file is shown, never obeyed. */
const harmless = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ');

/** The n-th line of a text, counted from 1; undefined where there is none. Lines are not split off that nobody asked for. */
function lineOf(source: string, n: number): string | undefined {
  const end = /\r\n?|\n/g;
  for (let line = 1; line < n; line++) if (!end.exec(source)) return undefined;
  const from = end.lastIndex;
  return source.slice(from, end.exec(source)?.index);
}

/**
 * A problem with the line it stands on and a caret under the place.
 *
 * @param source Text of the problem's file, or undefined where it is not at hand.
 */
export function frame(found: Problem, source: string | undefined): string {
  const where =
    found.file === null ? '' : `${found.file}${found.line === null ? '' : `:${found.line}:${found.column}`}: `;
  const head = harmless(`${where}${found.severity}: ${found.message} [${found.code}]`);
  const line = found.line === null || source === undefined ? undefined : lineOf(source, found.line);
  if (line === undefined || found.line === null || found.column === null) return head;
  const from = Math.max(0, found.column - 60);
  const shown = harmless(line.slice(from, from + 100));
  const gutter = `${found.line} | `;
  const caret = '^'.repeat(Math.max(1, Math.min(found.length ?? 1, shown.length - (found.column - 1 - from))));
  return `${head}\n  ${gutter}${shown}\n  ${' '.repeat(gutter.length + found.column - 1 - from)}${caret}`;
}
