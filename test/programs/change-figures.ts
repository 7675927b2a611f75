/**
 * Changes every figure of every shipped program, one at a time, and tells what notices: `npm run figures`.
 *
 * A figure that was published is noticed by the second typing from its source (`cited/`), some by the reader. What nothing
 * notices survives; the reason that `cited/` gives for it is printed, and one without a reason is a fault (exit 1).
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse, parseDocument } from 'yaml';
import { formatDay, monthDayIn, parseMonthDay } from '../../src/base/day.ts';
import { readProgram } from '../../src/read/program.ts';
import { type Cited, citedFaults, figuresOf, reasonOf } from './cited.ts';
import { fromPrograms, PROGRAMS } from './plan-program.ts';

/** Another value of the same kind, as far off as a slip is. */
export function changed(value: string | number): string | number {
  if (typeof value === 'number') return value <= 1 ? Number((value * 0.7).toFixed(3)) : Math.round(value * 1.3) + 1;
  const monthDay = parseMonthDay(value);
  if (monthDay) return formatDay(monthDayIn(monthDay, 2027) + 11).slice(5);
  const [, number = '', unit = ''] = /^([-+]?[\d.]+)\s*(.*)$/.exec(value) ?? [];
  const old = Number(number);
  if (unit === 'F') return `${old + 4} F`;
  if (unit === 'C') return `${old + 3} C`;
  if (unit === '%') return `${old > 70 ? old - 20 : old + 20}%`;
  if (/^weeks?$/.test(unit)) return `${old + 3} ${unit}`;
  const inWholes = /^(d|days?)$/.test(unit);
  return `${inWholes ? Math.round(old * 1.3) + 1 : Number((old * 1.3).toFixed(3))} ${unit}`;
}

/** A program's text with one figure changed. @param at Its place as `figuresOf` names it. */
export function withChanged(text: string, at: string): string {
  const document = parseDocument(text);
  const [owner = '', ...below] = at.split('.');
  const steps = (parse(text) as { steps: { id: string }[] }).steps;
  const trail = owner === 'nitrogen' ? [owner] : ['steps', steps.findIndex(({ id }) => id === owner)];
  const place = [...trail, ...below.map((key) => (/^\d+$/.test(key) ? Number(key) : key))];
  document.setIn(place, changed(document.getIn(place) as string | number));
  return String(document);
}

/** What notices a changed figure, by name; null where nothing does. */
export function noticedBy(text: string, name: string, cited: Cited, at: string): string | null {
  const other = withChanged(text, at);
  if (citedFaults(other, cited, name).length > 0) return 'the figures typed a second time';
  const { problems } = readProgram(other, name, fromPrograms);
  return problems[0] ? `the reader (${problems[0].code})` : null;
}

async function main(): Promise<void> {
  const sums = new Map<string, number>();
  let faults = 0;
  for (const file of readdirSync(path.join(PROGRAMS, '../test/programs/cited'))) {
    const name = file.replace('.ts', '.yaml');
    const { cited } = (await import(`./cited/${file}`)) as { cited: Cited };
    const text = readFileSync(path.join(PROGRAMS, name), 'utf8');
    for (const { at, value } of figuresOf(parse(text))) {
      const noticed = noticedBy(text, name, cited, at);
      const reason = noticed === null ? reasonOf(cited, at) : null;
      if (noticed === null) console.log(`${name} ${at}: ${value} survives: ${reason ?? 'NO REASON'}`);
      if (noticed === null && reason === null) faults++;
      const key = noticed ?? (reason === null ? 'nothing, without a reason' : 'nothing, with a reason');
      sums.set(key, (sums.get(key) ?? 0) + 1);
    }
  }
  console.log(`\n${[...sums.values()].reduce((sum, count) => sum + count, 0)} figures changed, noticed by`);
  for (const [key, count] of [...sums].sort((a, b) => b[1] - a[1]))
    console.log(`  ${String(count).padStart(5)}  ${key}`);
  process.exitCode = faults > 0 ? 1 : 0;
}

if (process.argv[1] === import.meta.filename) await main();
