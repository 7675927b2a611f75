import path from 'node:path';
import { checkProgram } from '../agronomy/check.ts';
import { type Day, parseDay } from '../base/day.ts';
import { hasErrors, inOrder, type Problem, problem } from '../base/problem.ts';
import { dayAt } from '../base/zone.ts';
import { agronomyOf, readAll } from '../compile.ts';
import { kindOf, problemsOf } from '../read/any.ts';
import { readCalendar } from '../read/calendar.ts';
import { listedLawns } from '../read/listed-lawns.ts';
import type { Source } from '../read/lookup.ts';
import { readProgram } from '../read/program.ts';
import { lookupFrom, readText } from './files.ts';
import type { Io } from './io.ts';
import { exitCode, tellProblems } from './report-problems.ts';
import { keptWeather } from './weather/kept-weather.ts';
import { zipLookup } from './zips.ts';

export interface CheckOptions {
  readonly asOf?: string;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Checks files: each by itself and by agronomy, a lawn with everything that it names, a calendar with its lawns. */
export function checkCommand(files: readonly string[], options: CheckOptions, io: Io): number {
  const asOf = options.asOf === undefined ? dayAt(io.now(), 'UTC') : parseDay(options.asOf);
  const unfit = asOf === null ? [problem('as-of', { found: options.asOf ?? '' }, null)] : [];
  const checked = files.map((file) => ({ file, problems: asOf === null ? [] : checkFile(file, asOf, io) }));
  const problems = inOrder([...unfit, ...checked.flatMap((one) => one.problems)]);
  tellProblems(problems, options.json, io);
  if (!options.json && unfit.length === 0)
    for (const one of checked) if (one.problems.length === 0) io.stdout(`${one.file}: nothing wrong\n`);
  return exitCode(problems, options.strict ?? false);
}

function checkFile(file: string, asOf: Day, io: Io): readonly Problem[] {
  const source = readText(file, io.cwd);
  if (source === null) return [problem('file-missing', { ref: file }, null)];
  if ('reason' in source) return [problem('file-unreadable', { ref: file, reason: source.reason }, null)];
  const kind = kindOf(source.text, source.name);
  const lookup = lookupFrom(io.cwd);
  if (kind === 'program') {
    const parsed = readProgram(source.text, source.name, lookup);
    return hasErrors(parsed.problems) ? parsed.problems : [...parsed.problems, ...checkProgram(parsed, asOf)];
  }
  if (kind === 'calendar') return checkCalendar(source, asOf, io);
  if (kind !== 'lawn') return problemsOf(source.text, source.name, kind, lookup, zipLookup);
  const absolute = path.resolve(io.cwd, file);
  const lawn = { ...source, name: path.relative(io.cwd, absolute) };
  const { value, problems, parsed } = readAll({ lawn, lookup, zips: zipLookup });
  if (!value || hasErrors(problems)) return problems;
  const service = keptWeather({ source: lawn, asOf }, io);
  return [...problems, ...agronomyOf(value, parsed, service, asOf)];
}

/** A calendar by itself, then each of its lawns with everything that it names. */
function checkCalendar({ text, name }: Source, asOf: Day, io: Io): readonly Problem[] {
  const parsed = readCalendar(text, name);
  const lawns = listedLawns(parsed, lookupFrom(io.cwd), zipLookup);
  return [
    ...parsed.problems,
    ...lawns.flatMap(({ source, problems }) => [...problems, ...(source ? checkFile(source.name, asOf, io) : [])]),
  ];
}
