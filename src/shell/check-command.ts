import path from 'node:path';
import { inOrder, type Problem, problem } from '../base/problem.ts';
import { readAll } from '../compile.ts';
import { kindOf, problemsOf } from '../read/any.ts';
import { lookupFrom, readText } from './files.ts';
import type { Io } from './io.ts';
import { exitCode, printProblems } from './report-problems.ts';
import { zipLookup } from './zips.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Checks files: each by itself, a lawn with everything that it names. */
export function checkCommand(files: readonly string[], options: CheckOptions, io: Io): number {
  const checked = files.map((file) => ({ file, problems: checkFile(file, io) }));
  const problems = inOrder(checked.flatMap((one) => one.problems));
  if (options.json) io.stdout(`${JSON.stringify({ kind: 'problems', version: 1, problems }, null, 2)}\n`);
  printProblems(problems, io);
  if (!options.json)
    for (const one of checked) if (one.problems.length === 0) io.stdout(`${one.file}: nothing wrong\n`);
  return exitCode(problems, options.strict ?? false);
}

function checkFile(file: string, io: Io): readonly Problem[] {
  const source = readText(file, io.cwd);
  if (source === null) return [problem('file-missing', { ref: file }, null)];
  if ('reason' in source) return [problem('file-unreadable', { ref: file, reason: source.reason }, null)];
  const kind = kindOf(source.text, source.name);
  if (kind !== 'lawn') return problemsOf(source.text, source.name, kind, lookupFrom(io.cwd), zipLookup);
  return readAll({
    lawn: { ...source, name: path.relative(io.cwd, path.resolve(io.cwd, file)) },
    lookup: lookupFrom(io.cwd),
    zips: zipLookup,
  }).problems;
}
