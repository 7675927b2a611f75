import { checkProgram } from '../../agronomy/check.ts';
import type { Day } from '../../base/day.ts';
import { hasErrors, type Problem } from '../../base/problem.ts';
import { type ProgramChange, programChanges } from '../../emit/program-changes.ts';
import type { Program } from '../../model/program.ts';
import { partsOfRef } from '../../model/program-ref.ts';
import { readProgram } from '../../read/program.ts';
import { sharedProblems } from '../../read/shared-program.ts';
import type { Parsed } from '../../read/validate.ts';
import { fetchProgram, type ProgramNetwork } from './fetch-program.ts';
import { type KeptProgram, keptProgram } from './kept-programs.ts';

/** What is done with a reference: brought where it is not here yet, or brought anew whatever it is pinned to. */
export type Bringing = 'fetch' | 'update';

/** A program that was brought and may be kept, with what there is to say of it. */
export interface Brought {
  readonly ref: string;
  readonly program: Program;
  readonly kept: KeptProgram;
  readonly from: 'network' | 'cache';
  /** The SHA-256 of the state that was here; null where none was. */
  readonly before: string | null;
  /** What is other than in that state; null where there is none, or where it stays. */
  readonly changes: readonly ProgramChange[] | null;
  readonly problems: readonly Problem[];
}

/**
 * Brings what a reference names and judges it as a stranger's file. Nothing is kept yet, and what is kept stays as it is.
 *
 * @param asOf The day that the program is tried for.
 */
export async function bringProgram(
  ref: string,
  bringing: Bringing,
  asOf: Day,
  { cwd, network }: { readonly cwd: string; readonly network: ProgramNetwork },
): Promise<Brought | { readonly problems: readonly Problem[] }> {
  const before = keptProgram(ref, cwd);
  const asked = bringing === 'fetch' ? ref : partsOfRef(ref).address;
  const kept = bringing === 'fetch' && before ? before : await fetchProgram(asked, network);
  if ('problems' in kept) return kept;
  const parsed = asRead(kept);
  const problems = judged(parsed, asOf);
  if (!parsed.value || hasErrors(problems)) return { problems };
  const changes = bringing === 'update' && before ? programChanges(asRead(before).data, parsed.data) : null;
  const from = kept === before ? 'cache' : 'network';
  return { ref, program: parsed.value, kept, from, before: before?.sha256 ?? null, changes, problems };
}

const asRead = ({ text, name }: KeptProgram): Parsed<Program> => readProgram(text.replace(/^\uFEFF/, ''), name);

/** Every problem of a program by address: in the file, of a stranger's, by agronomy. */
export const judged = (parsed: Parsed<Program>, asOf: Day): readonly Problem[] =>
  hasErrors(parsed.problems)
    ? parsed.problems
    : [...parsed.problems, ...sharedProblems(parsed), ...checkProgram(parsed, asOf)];
