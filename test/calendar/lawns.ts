/** What tests of calendars share: three lawns in folders of their own, each with its days, and a calendar of them. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Problem } from '../../src/base/problem.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

export const CALENDAR = 'my-lawns.yaml';
export const LEDGER = 'my-lawns.ledger.json';
export const FEED = 'out/site/my-lawns.ics';
export const AS_OF = '2027-03-20';

export const calendarText = (lawns: readonly string[], extra = ''): string => `kind: calendar
version: 1
id: my-lawns
name: My lawns
feed: { key: 4h8r2k9w }
lawns: [${lawns.join(', ')}]
${extra}`;

/** A lawn whose spring feed closes on a day of its own. */
const lawn = (id: string, name: string, closes: string) => ({
  [`${id}/lawn.yaml`]: lawnText('working: { remind: [12 h] }\n', '../weather.csv')
    .replace('id: test-lawn', `id: ${id}\nname: "${name}"\nfeed: { key: key${id.replaceAll('-', '')} }`)
    .replace('test-lawn', id),
  [`${id}/program.yaml`]: programText(`  - id: spring-feed
    name: Spring feed
    work: spread
    window: { opens: { date: 04-01 }, best: { date: 04-10 }, closes: { date: ${closes} } }
  - id: autumn-feed
    name: Autumn feed
    work: spread
    window: { opens: { date: 09-01 }, closes: { date: 10-01 } }
`),
});

export const LAWNS = ['plot-7/lawn.yaml', 'hill/lawn.yaml', 'pond/lawn.yaml'] as const;

/** Three lawns that plan in a moment, and a calendar of the first two. */
export const lawnsFolder = (calendar = calendarText(LAWNS.slice(0, 2))): string =>
  folderWith({
    ...lawn('plot-7', 'Plot 7', '04-20'),
    ...lawn('hill', 'The hill', '04-20'),
    ...lawn('pond', 'By the pond', '04-30'),
    'weather.csv': inventedWeather('2020-01-01'),
    [CALENDAR]: calendar,
  });

export const read = (cwd: string, file: string): string => readFileSync(path.join(cwd, file), 'utf8');

/** Changes a text in a file; it has to be there. */
export function edit(cwd: string, file: string, from: string, to: string): void {
  const text = read(cwd, file);
  if (!text.includes(from)) throw new Error(`nothing to replace: ${from}`);
  writeFileSync(
    path.join(cwd, file),
    text.replace(from, () => to),
  );
}

/** A problem as tests compare it. */
export const brief = ({ code, file, line, column }: Problem): string =>
  `${code}${file === null ? '' : ` ${file}`}${line === null ? '' : `:${line}:${column}`}`;

/** The problems of a command that prints JSON. */
export async function problemsOf(cwd: string, argv: readonly string[]) {
  const { code, stdout } = await soilclock(cwd, [...argv, '--json']);
  return { code, problems: (JSON.parse(stdout) as { problems: Problem[] }).problems.map(brief) };
}

/** Plans the calendar as of a day, and expects an exit code. */
export async function plan(cwd: string, asOf: string, code = 0) {
  const run = await soilclock(cwd, ['plan', CALENDAR, '--no-sheet', '--as-of', asOf], undefined, null, 80);
  if (run.code !== code) throw new Error(`exit ${run.code}: ${run.stderr}`);
  return run;
}
