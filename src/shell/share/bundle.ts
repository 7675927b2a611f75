import path from 'node:path';
import { type Problem, problem } from '../../base/problem.ts';
import { aboutProgramLines } from '../../emit/program-about.ts';
import { programBundle } from '../../emit/program-bundle.ts';
import type { Program } from '../../model/program.ts';
import { isPlain } from '../../read/extends.ts';
import type { Source } from '../../read/lookup.ts';
import { openYaml, type Parsed, tooLarge } from '../../read/validate.ts';
import { NotWritten, writeAll } from '../files.ts';
import type { Io } from '../io.ts';
import { wholeHash } from './kept-programs.ts';

/**
 * Writes one file of a program and all that it extends. A program that extends nothing is one already: its bundle is its own
 * text, with its comments.
 *
 * @param parsed The program as it was read, without an error.
 * @returns What to tell of it.
 */
export function writeBundle(
  { text, name }: Source,
  { value, data }: Parsed<Program>,
  io: Io,
): { readonly lines: readonly string[]; readonly problems: readonly Problem[] } {
  if (!value || !isPlain(data)) return { lines: [], problems: [] };
  const written = openYaml(text, name, 'program').data;
  const bundle = isPlain(written) && 'extends' in written ? programBundle(data) : text;
  const file = path.join(io.cwd, 'out/bundle', `${value.id}.yaml`);
  const shown = path.relative(io.cwd, file);
  const large = tooLarge(bundle, shown);
  if (large) return { lines: [], problems: [large] };
  try {
    writeAll([{ file, text: bundle }]);
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    return { lines: [], problems: [problem('write-failed', { file: error.file, reason: error.message }, null)] };
  }
  return {
    lines: [
      ...aboutProgramLines(value, null),
      '',
      `All of it is in ${shown}. Once that stands at an https address, a lawn takes it by`,
      '  program:',
      '    from: https://…',
      `    sha256: "${wholeHash(bundle)}"`,
    ],
    problems: [],
  };
}
