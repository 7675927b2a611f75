import path from 'node:path';
import { displayOf } from '../../base/display.ts';
import { hasErrors, inOrder, type Problem, problem } from '../../base/problem.ts';
import { planLinked, readAll } from '../../compile.ts';
import { drawingOf } from '../../emit/spreader-drawing.ts';
import { spreaderReport } from '../../emit/spreader-report.ts';
import type { SpreaderReport } from '../../model/spreader-report.ts';
import { NotWritten, writeAll } from '../files.ts';
import type { Io } from '../io.ts';
import { ledgerToAsk } from '../ledger-file.ts';
import { lookupFrom } from '../lookup.ts';
import { EXIT, exitCode, failing, printProblems } from '../report-problems.ts';
import { keptWeather } from '../weather/kept-weather.ts';
import { whichLawn } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { chosenSpreader } from './choose.ts';
import { jobOf, reportOf } from './job.ts';

export interface SpreaderOptions {
  readonly asOf?: string;
  readonly spreader?: string;
  readonly out?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Tells how a step is put down with a spreader, and draws the ways over the areas. */
export function spreaderCommand(words: readonly string[], options: SpreaderOptions, io: Io): number {
  const strict = options.strict ?? false;
  const fail = failing(options, io);
  const asked = whichLawn(words, options.asOf, io);
  if ('problems' in asked) return fail(asked.problems);
  const { value: linked, problems: readProblems } = readAll({
    lawn: asked.source,
    lookup: lookupFrom(io.cwd),
    zips: zipLookup,
  });
  if (!linked || hasErrors(readProblems)) return fail(readProblems);
  const chosen = chosenSpreader(linked.lawn.equipment, options.spreader);
  if ('problem' in chosen) return fail([chosen.problem]);

  const { ledger, problems: ledgerProblems } = ledgerToAsk(asked, io);
  if (hasErrors(ledgerProblems)) return fail(ledgerProblems);
  const service = keptWeather(asked, io);
  const { season, problems: planProblems } = planLinked(linked, { asOf: asked.asOf, ledger, service });
  const problems = inOrder([...readProblems, ...ledgerProblems, ...(service?.problems ?? []), ...planProblems]);
  if (!season || exitCode(problems, strict) !== EXIT.fine) return fail(problems);
  const job = jobOf(season, asked.step);
  if ('problem' in job) return fail([job.problem]);

  const { report, walks } = reportOf({
    season,
    lawn: linked.lawn,
    journal: linked.journal,
    products: linked.products,
    chosen,
    ...job,
    problems,
  });
  const display = displayOf(season.display.units, season.display.language);
  const drawing = writes(asked.isDemo, options) ? path.resolve(io.cwd, options.out ?? 'out/spreader') : null;
  const written = drawing === null ? null : write(drawingOf(report, walks, display), drawing, report, io);
  if (written && 'problem' in written) return fail([written.problem]);
  const whole: SpreaderReport = { ...report, drawing: written?.file ?? null };
  if (options.json) io.stdout(`${JSON.stringify(whole, null, 2)}\n`);
  else {
    io.stdout(spreaderReport(whole, display, io.columns));
    printProblems(whole.problems, io);
    if (!written) io.stdout('\nNothing was written. With --out FOLDER the drawing goes there.\n');
  }
  return exitCode(whole.problems, strict);
}

/** A drawing is written where the lawn's own files ask for it; for the demo and beside JSON only into a named folder. */
function writes(isDemo: boolean, { dryRun, out, json }: SpreaderOptions): boolean {
  if (dryRun) return false;
  return out !== undefined || !(isDemo || json);
}

function write(
  svg: string,
  folder: string,
  { lawn, step }: SpreaderReport,
  io: Io,
): { readonly file: string } | { readonly problem: Problem } {
  const file = path.join(folder, `${lawn}${step === null ? '' : `-${step.id}`}.svg`);
  try {
    writeAll([{ file, text: svg }]);
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    return { problem: problem('write-failed', { file: error.file, reason: error.message }, null) };
  }
  return { file: path.relative(io.cwd, file) };
}
