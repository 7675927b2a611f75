import type { Io } from '../io.ts';

/** What a command runs with. */
export interface Run {
  readonly io: Io;
  readonly argv: readonly string[];
  /** Takes the exit code. */
  readonly ended: (code: number) => void;
}

// Arguments and options that several commands have.
export const aLawn = ['[lawn]', 'a lawn file; lawn.yaml here, or else the demo lawn'] as const;
export const asOf = ['--as-of <day>', 'as of this day instead of today (YYYY-MM-DD)'] as const;
export const json = ['--json', 'print JSON'] as const;
export const strict = ['--strict', 'let warnings count as errors'] as const;

/** An option that may be repeated. */
export const collect = (value: string, before: readonly string[] | undefined): string[] => [...(before ?? []), value];

/** The arguments that were given. */
export const given = (...words: readonly (string | undefined)[]): string[] =>
  words.filter((word) => word !== undefined);
