import { type Day, parseDay } from '../../base/day.ts';
import { inOrder, problem } from '../../base/problem.ts';
import { dayAt } from '../../base/zone.ts';
import { folded } from '../../emit/table.ts';
import type { Io } from '../io.ts';
import { exitCode, tellProblems } from '../report-problems.ts';
import { checkFile } from './check-file.ts';

export interface CheckOptions {
  readonly asOf?: string;
  readonly bundle?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Checks files: each by itself and by agronomy, a lawn with everything that it names, a calendar with its lawns. */
export function checkCommand(files: readonly string[], options: CheckOptions, io: Io): number {
  const asOf = options.asOf === undefined ? dayAt(io.now(), 'UTC') : parseDay(options.asOf);
  const unfit = asOf === null ? [problem('as-of', { found: options.asOf ?? '' }, null)] : [];
  const check = (file: string, day: Day) => ({ file, ...checkFile(file, day, options.bundle ?? false, io) });
  const checked = asOf === null ? [] : files.map((file) => check(file, asOf));
  const problems = inOrder([...unfit, ...checked.flatMap((one) => one.problems)]);
  tellProblems(problems, options.json, io);
  if (options.json) return exitCode(problems, options.strict ?? false);
  for (const { file, lines, problems: own } of checked) {
    for (const line of lines) io.stdout(`${folded(line, io.columns).join('\n')}\n`);
    if (own.length === 0) io.stdout(`${file}: nothing wrong\n`);
  }
  return exitCode(problems, options.strict ?? false);
}
