import path from 'node:path';
import { hasErrors, inOrder, type Problem, problem } from '../../base/problem.ts';
import { compile } from '../../compile.ts';
import { sprayerReport } from '../../emit/sprayer-report.ts';
import type { Application, Season } from '../../model/season.ts';
import type { Io } from '../io.ts';
import { ledgerToAsk } from '../ledger-file.ts';
import { lookupFrom } from '../lookup.ts';
import { EXIT, exitCode, failing, printProblems } from '../report-problems.ts';
import { keptWeather } from '../weather/kept-weather.ts';
import { unknownStep, whichLawn } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';

interface SprayerOptions {
  readonly asOf?: string;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Prints what the lawn's sprayer puts down and how its tanks are filled, for every sprayed step to come or for one. */
export function sprayerCommand(words: readonly string[], options: SprayerOptions, io: Io): number {
  const strict = options.strict ?? false;
  const fail = failing(options, io);
  const asked = whichLawn(words, options.asOf, io);
  if ('problems' in asked) return fail(asked.problems);
  const { ledger, problems: ledgerProblems } = ledgerToAsk(asked, io);
  if (hasErrors(ledgerProblems)) return fail(ledgerProblems);
  const { season, problems: planProblems } = compile({
    lawn: asked.source,
    lookup: lookupFrom(io.cwd),
    zips: zipLookup,
    service: keptWeather(asked, io),
    asOf: asked.asOf,
    ledger,
    // The feed is not written here, so the instant of its revision does not matter.
    revisedAt: '2000-01-01T00:00:00Z',
    detail: 'normal',
  });
  const problems = inOrder([...ledgerProblems, ...planProblems]);
  if (!season || exitCode(problems, strict) !== EXIT.fine) return fail(problems);
  const found = sprayed(season, asked.step, path.relative(io.cwd, asked.file));
  if ('problems' in found) return fail(found.problems);
  const { steps } = found;
  io.stdout(
    options.json
      ? `${JSON.stringify(asData(season, steps, problems), null, 2)}\n`
      : sprayerReport(season, steps, asked.step !== undefined, Math.min(io.columns, 100)),
  );
  if (!options.json) printProblems(problems, io);
  return EXIT.fine;
}

/** The steps that are told: the one that was named, else all that are still to be sprayed. */
function sprayed(
  { applications, sprayer, display }: Season,
  step: string | undefined,
  file: string,
): { readonly steps: readonly Application[] } | { readonly problems: readonly Problem[] } {
  if (sprayer === null) return { problems: [problem('no-sprayer', { metric: display.units === 'metric' }, { file })] };
  const open = applications.filter(({ tanks }) => tanks.length > 0);
  if (step === undefined) return { steps: open };
  const named = applications.filter(({ id }) => id === step);
  if (named.length === 0) return { problems: [unknownStep(step, [...new Set(applications.map(({ id }) => id))])] };
  const steps = named.filter(({ tanks }) => tanks.length > 0);
  if (steps.length > 0) return { steps };
  const allowed = [...new Set(open.map(({ id }) => id))];
  const over = named.every(({ status }) => !['expected', 'open', 'due'].includes(status)) ? named[0] : undefined;
  return over
    ? { problems: [problem('step-over', { step, status: over.status, allowed }, null)] }
    : { problems: [problem('not-sprayed', { step, allowed }, null)] };
}

/** The same as plain data: a unit in its key, absent is null. */
const asData = ({ lawn, asOf, sprayer }: Season, steps: readonly Application[], problems: readonly Problem[]) => ({
  kind: 'sprayer',
  version: 1,
  lawn,
  asOf,
  sprayer,
  steps: steps.map(({ id, name, season, status, date, tanks, cautions, notJudged }) => ({
    id,
    name,
    season,
    status,
    date,
    tanks,
    cautions,
    notJudged,
  })),
  problems,
});
