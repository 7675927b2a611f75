import path from 'node:path';
import { checkProgram } from '../../agronomy/check.ts';
import type { Day } from '../../base/day.ts';
import { hasErrors, type Problem, problem } from '../../base/problem.ts';
import { agronomyOf, readAll } from '../../compile.ts';
import { aboutProgramLines } from '../../emit/program-about.ts';
import { isAddress } from '../../model/program-ref.ts';
import { kindOf, problemsOf } from '../../read/any.ts';
import { readCalendar } from '../../read/calendar.ts';
import { listedLawns } from '../../read/listed-lawns.ts';
import { type Source, unfound } from '../../read/lookup.ts';
import { readProgram } from '../../read/program.ts';
import type { Io } from '../io.ts';
import { lookupFrom, readNamed } from '../lookup.ts';
import { judged } from '../share/bring-program.ts';
import { writeBundle } from '../share/bundle.ts';
import { keptProgram } from '../share/kept-programs.ts';
import { namedByAddress } from '../share/pins.ts';
import { keptWeather } from '../weather/kept-weather.ts';
import { zipLookup } from '../zips.ts';

/** What is wrong with a file, and what else there is to say of it. */
interface Checked {
  readonly problems: readonly Problem[];
  readonly lines: readonly string[];
}

/** Checks one file, or one fetched program by its address. @param bundle Whether one file of it and what it extends is written. */
export function checkFile(file: string, asOf: Day, bundle: boolean, io: Io): Checked {
  const source = readNamed(file, io.cwd);
  if (source === null || 'reason' in source) return quiet([unfound(file, source, null)]);
  const kind = isAddress(file) ? 'program' : kindOf(source.text, source.name);
  const unfit =
    bundle && kind !== 'program' ? [problem('bundle-kind', { found: kind ?? 'none' }, { file: source.name })] : [];
  const lookup = lookupFrom(io.cwd);
  if (unfit.length > 0) return quiet(unfit);
  if (isAddress(file)) return checkShared(file, asOf, io);
  if (kind === 'program') return checkOwn(source, asOf, bundle, io);
  if (kind === 'calendar') return checkCalendar(source, asOf, io);
  if (kind !== 'lawn') return quiet(problemsOf(source.text, source.name, kind, lookup, zipLookup));
  const absolute = path.resolve(io.cwd, file);
  const lawn = { ...source, name: path.relative(io.cwd, absolute) };
  const { value, problems, parsed } = readAll({ lawn, lookup, zips: zipLookup });
  if (!value || hasErrors(problems)) return quiet(problems);
  const service = keptWeather({ source: lawn, asOf }, io);
  const refs = [...new Set(namedByAddress(value.lawn).map(({ ref }) => ref))];
  const shared = refs.map((ref) => checkShared(ref, asOf, io));
  return {
    problems: eachOnce([
      ...problems,
      ...agronomyOf(value, parsed, service, asOf),
      ...shared.flatMap((one) => one.problems),
    ]),
    lines: shared.flatMap(({ lines }) => lines),
  };
}

/** Problems told once: those of a shared program come by the lawn that names it, and by itself. */
const eachOnce = (problems: readonly Problem[]): readonly Problem[] => [
  ...new Map(problems.map((one) => [JSON.stringify(one), one])).values(),
];

const quiet = (problems: readonly Problem[]): Checked => ({ problems, lines: [] });

function checkOwn(source: Source, asOf: Day, bundle: boolean, io: Io): Checked {
  const parsed = readProgram(source.text, source.name, lookupFrom(io.cwd));
  if (hasErrors(parsed.problems)) return quiet(parsed.problems);
  const bundled = bundle ? writeBundle(source, parsed, io) : quiet([]);
  return { problems: [...parsed.problems, ...checkProgram(parsed, asOf), ...bundled.problems], lines: bundled.lines };
}

/** A program that was fetched, as a stranger's: with who made it and what it asks for. */
function checkShared(ref: string, asOf: Day, io: Io): Checked {
  const [kept, source] = [keptProgram(ref, io.cwd), readNamed(ref, io.cwd)];
  if (!kept || source === null || 'reason' in source) return quiet([unfound(ref, null, null)]);
  const parsed = readProgram(source.text, source.name);
  const about = parsed.value ? aboutProgramLines(parsed.value, { address: kept.name, sha256: kept.sha256 }) : [];
  return { problems: judged(parsed, asOf), lines: about };
}

/** A calendar by itself, then each of its lawns with everything that it names. */
function checkCalendar({ text, name }: Source, asOf: Day, io: Io): Checked {
  const parsed = readCalendar(text, name);
  const lawns = listedLawns(parsed, lookupFrom(io.cwd), zipLookup);
  const checked = lawns.map(({ source, problems }) => [
    quiet(problems),
    ...(source ? [checkFile(source.name, asOf, false, io)] : []),
  ]);
  return {
    problems: [...parsed.problems, ...checked.flat().flatMap((one) => one.problems)],
    lines: checked.flat().flatMap(({ lines }) => lines),
  };
}
