import path from 'node:path';
import type { Problem } from '../../base/problem.ts';
import { problem } from '../../base/problem.ts';
import { dayAt } from '../../base/zone.ts';
import { aboutProgramLines, askedFor } from '../../emit/program-about.ts';
import { programChangeLines } from '../../emit/program-changes.ts';
import { folded } from '../../emit/table.ts';
import type { Lawn } from '../../model/lawn.ts';
import { isAddress } from '../../model/program-ref.ts';
import { readLawn } from '../../read/lawn.ts';
import { NotWritten } from '../files.ts';
import type { Io } from '../io.ts';
import { exitCode, printProblems } from '../report-problems.ts';
import { whichLawn } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { type Bringing, type Brought, bringProgram } from './bring-program.ts';
import { type ProgramNetwork, realProgramNetwork } from './fetch-program.ts';
import { keepProgram } from './kept-programs.ts';
import { namedByAddress, pin } from './pins.ts';

export interface ProgramCommandOptions {
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Programs that were asked for: of a lawn file, or by their address alone. */
interface AskedFor {
  readonly refs: readonly string[];
  readonly lawn: { readonly file: string; readonly value: Lawn } | null;
}

/**
 * Brings the programs that a lawn names by address, or the one at an address: judges them, tells of them, keeps them, and pins
 * them in the lawn's file. With `update` what is there now takes the place of what was pinned, and what is other is told.
 */
export async function programCommand(
  bringing: Bringing,
  words: readonly string[],
  options: ProgramCommandOptions,
  io: Io,
  network: ProgramNetwork = realProgramNetwork(io.now),
): Promise<number> {
  const asked = askedPrograms(words, io);
  const problems: Problem[] = 'problems' in asked ? [...asked.problems] : [];
  const brought: Brought[] = [];
  for (const ref of 'problems' in asked ? [] : asked.refs) {
    const one = await bringProgram(ref, bringing, dayAt(io.now(), 'UTC'), { cwd: io.cwd, network });
    problems.push(...one.problems);
    if (!('program' in one)) continue;
    const unkept = options.dryRun ? [] : keep(one, io);
    problems.push(...unkept);
    if (unkept.length === 0) brought.push(one);
  }
  const lawn = 'problems' in asked ? null : asked.lawn;
  const pinned = options.dryRun || lawn === null ? null : pinAll(lawn, brought, io);
  problems.push(...(pinned?.problems ?? []));
  if (options.json) io.stdout(asJson(brought, problems));
  else {
    const lines = brought.flatMap((one) => [
      ...told(one),
      options.dryRun ? '  nothing was taken over: --dry-run' : '',
      '',
    ]);
    if (pinned?.changed && lawn) lines.push(`${path.relative(io.cwd, lawn.file)} names them with their SHA-256 now.`);
    for (const line of lines) io.stdout(`${folded(line, io.columns).join('\n')}\n`);
  }
  printProblems(problems, io);
  return exitCode(problems, options.strict ?? false);
}

function askedPrograms(words: readonly string[], io: Io): AskedFor | { readonly problems: readonly Problem[] } {
  const [first] = words;
  if (first !== undefined && isAddress(first)) return { refs: [first], lawn: null };
  const asked = whichLawn(words, undefined, io);
  if ('problems' in asked) return asked;
  const { value, problems, place } = readLawn(asked.source.text, asked.source.name, zipLookup);
  if (!value) return { problems };
  const refs = [...new Set(namedByAddress(value).map(({ ref }) => ref))];
  if (refs.length === 0)
    return { problems: [problem('program-none', { found: asked.source.name }, place(['program']))] };
  return { refs, lawn: { file: asked.file, value } };
}

function keep({ kept }: Brought, io: Io): Problem[] {
  try {
    keepProgram(kept, io.cwd);
    return [];
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    return [problem('write-failed', { file: error.file, reason: error.message }, null)];
  }
}

const pinAll = ({ file, value }: NonNullable<AskedFor['lawn']>, brought: readonly Brought[], { cwd }: Io) =>
  pin(file, value, new Map(brought.map(({ ref, kept }) => [ref, kept.sha256])), cwd);

function told({ program, kept, from, before, changes }: Brought): readonly string[] {
  const about = aboutProgramLines(program, { address: kept.name, sha256: kept.sha256 });
  if (changes === null)
    return [...about, from === 'cache' ? '  is here already' : '  was fetched; nothing to compare it with'];
  if (before === kept.sha256) return [...about, '  is what it was'];
  const other = changes.length === 0 ? ['  comments and the like; it says the same'] : programChangeLines(changes);
  return [...about, '', `What is other than in SHA-256 ${before}:`, ...other];
}

function asJson(brought: readonly Brought[], problems: readonly Problem[]): string {
  const programs = brought.map(({ program, kept, from, before, changes }) => ({
    address: kept.name,
    sha256: kept.sha256,
    before,
    from,
    id: program.id,
    name: program.name,
    author: program.author ?? null,
    license: program.license ?? null,
    basedOn: program.basedOn ?? [],
    asksFor: askedFor(program),
    changes,
  }));
  return `${JSON.stringify({ kind: 'programs', version: 1, programs, problems }, null, 2)}\n`;
}
