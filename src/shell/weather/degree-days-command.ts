import { formatDay, parseMonthDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { quantile } from '../../base/quantile.ts';
import { expectedOf, nearestWord, parseQuantity } from '../../base/quantity.ts';
import { takesCutoff } from '../../climate/degree-days.ts';
import { type HeatMeasure, heatBetween, heatOn, heatReached } from '../../climate/heat.ts';
import { degreeDaysReport } from '../../emit/weather-report.ts';
import { CUTOFFS, type Cutoff, type DegreeDayMethod, METHODS } from '../../model/heat.ts';
import type { DegreeDaysReport } from '../../model/weather-report.ts';
import type { Io } from '../io.ts';
import { EXIT, exitCode, printProblems, tellProblems } from '../report-problems.ts';
import { type LawnClimate, lawnClimate } from './lawn-climate.ts';
import { tenth, type WeatherOptions } from './show-command.ts';

export interface DegreeDaysOptions extends WeatherOptions {
  readonly base: string;
  readonly upper?: string;
  readonly method: string;
  readonly cutoff?: string;
  readonly from?: string;
  readonly reaches?: string;
}

/** What was asked, in °C and as written. */
interface Question {
  readonly rule: HeatMeasure;
  readonly unit: 'C' | 'F';
  readonly base: number;
  readonly upper: number | null;
  /** In the base's scale × days. */
  readonly reaches: number | null;
}

/** Prints a sum of degree days beside the usual one, and when it reaches a value. */
export function degreeDaysCommand(words: readonly string[], options: DegreeDaysOptions, io: Io): number {
  const question = questionOf(options);
  const from = options.from === undefined ? undefined : parseMonthDay(options.from);
  const wrong: Problem[] = 'problems' in question ? [...question.problems] : [];
  if (from === null)
    wrong.push(
      problem(
        'not-a-date',
        { found: options.from ?? '', expected: 'a month and day such as 01-01, after --from' },
        null,
      ),
    );
  const tell = (problems: readonly Problem[], code: number): number => {
    tellProblems(problems, options.json, io);
    return code;
  };
  if ('problems' in question || from === null) return tell(wrong, EXIT.usage);
  const found = lawnClimate(words, options.asOf, from, io);
  const code = exitCode(found.problems, options.strict ?? false);
  if (!('climate' in found)) return tell(found.problems, code);
  const report = reportOf(found, question);
  io.stdout(options.json ? `${JSON.stringify(report, null, 2)}\n` : degreeDaysReport(report, found.display));
  if (!options.json) printProblems(found.problems, io);
  return code;
}

/** The question that the options ask, or what is wrong with them. */
function questionOf(options: DegreeDaysOptions): Question | { readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const temperature = (written: string) => {
    const read = parseQuantity(
      written.replace(/([CF])$/i, (letter) => letter.toUpperCase()),
      'temperature',
    );
    if ('value' in read) return { celsius: read.value, unit: /F$/.test(read.unit) ? ('F' as const) : ('C' as const) };
    problems.push(problem('wrong-type', { found: `"${written}"`, expected: expectedOf('temperature') }, null));
    return null;
  };
  const base = temperature(options.base);
  const upper = options.upper === undefined ? null : temperature(options.upper);
  if (base && upper && upper.celsius <= base.celsius)
    problems.push(problem('degree-days-upper', { found: `"${options.upper}"` }, null));
  const word = <T extends string>(found: string, allowed: readonly T[]): T | null => {
    const known = allowed.find((one) => one === found) ?? null;
    if (known === null)
      problems.push(problem('unknown-word', { found, allowed, nearest: nearestWord(found, allowed) }, null));
    return known;
  };
  const method: DegreeDayMethod | null = word(options.method, METHODS);
  const cutoff: Cutoff | null = options.cutoff === undefined ? null : word(options.cutoff, CUTOFFS);
  if (method && cutoff && !takesCutoff(method)) problems.push(problem('degree-days-cutoff', { found: method }, null));
  const reaches = options.reaches === undefined ? null : Number(options.reaches);
  if (reaches !== null && !(reaches > 0 && reaches < 100_000))
    problems.push(problem('out-of-range', { found: `"${options.reaches}"`, expected: 'a sum above 0' }, null));
  if (!base || !method || problems.length > 0) return { problems };
  const scale = (celsius: number) => (base.unit === 'F' ? celsius * 1.8 + 32 : celsius);
  return {
    rule: { base: base.celsius, method, ...(upper && { upper: upper.celsius }), ...(cutoff && { cutoff }) },
    unit: base.unit,
    base: Math.round(scale(base.celsius) * 1000) / 1000,
    upper: upper && Math.round(scale(upper.celsius) * 1000) / 1000,
    reaches,
  };
}

function reportOf(
  { lawn, asOf, from, climate, today: through, problems }: LawnClimate,
  question: Question,
): DegreeDaysReport {
  const { rule, unit, base, upper, reaches } = question;
  const factor = unit === 'F' ? 1.8 : 1;
  const trace = climate.modelled;
  const past = climate.past(from, from + 364);
  const middle = (values: readonly number[], p = 0.5): number | null => quantile(values, values.length, p);
  const sums = past.map((one) => heatBetween(one, rule, from, through)).filter((sum) => !Number.isNaN(sum));
  const usual = middle(sums);
  const asDate = (day: number | null): string | null => (day === null ? null : formatDay(Math.round(day)));
  let sum = 0;
  const days = Array.from({ length: Math.max(0, through - from + 1) }, (_, i) => {
    const heat = heatOn(trace, rule, from + i);
    sum += heat;
    return { date: formatDay(from + i), day: tenth(heat * factor), sum: tenth(sum * factor) };
  });
  const reached = (traces: typeof past, p: number): string | null => {
    if (reaches === null) return null;
    const found = traces.map((one) => heatReached(one, { ...rule, reaches: reaches / factor }, from, from + 366));
    return asDate(
      quantile(
        found.filter((day) => day !== null),
        traces.length,
        p,
      ),
    );
  };
  const p50 = reached(climate.traces, 0.5);
  const known = p50 !== null && p50 <= formatDay(through);
  return {
    kind: 'degree-days',
    version: 1,
    lawn: lawn.id,
    asOf: formatDay(asOf),
    method: rule.method,
    unit,
    base,
    upper,
    from: formatDay(from),
    through: formatDay(through),
    sum: { value: tenth(sum * factor), usual: usual === null ? null : tenth(usual * factor) },
    reaches:
      reaches === null
        ? null
        : {
            sum: reaches,
            date: known ? p50 : null,
            p10: reached(climate.traces, 0.1),
            p50,
            p90: reached(climate.traces, 0.9),
            usual: reached(past, 0.5),
          },
    days,
    problems,
  };
}
