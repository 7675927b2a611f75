/** What in the tests notices that a figure of a shipped program was changed: asked from the cheapest to the dearest. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { checkProgram } from '../../src/agronomy/check.ts';
import { civil } from '../../src/base/day.ts';
import { readProgram } from '../../src/read/program.ts';
import { differences, type PublishedCalendar } from '../published/calendars/calendar.ts';
import { type Cited, citedFaults, isUnusual } from './cited.ts';
import { fromPrograms, PROGRAMS } from './plan-program.ts';

const AS_OF = civil(2027, 4, 2);
const CALENDARS = path.join(PROGRAMS, '../test/published/calendars');

/** A program's file and text, with the second typing of its figures. */
export interface Changed {
  readonly name: string;
  readonly text: string;
  readonly cited: Cited;
}

/** What notices a program whose text was changed, by name; null where nothing does. */
export async function noticedBy(program: Changed): Promise<string | null> {
  const { name, text, cited } = program;
  const faults = citedFaults(text, cited, name);
  if (faults.length > 0) return faults.every(isUnusual) ? 'what is common practice' : 'the figures typed a second time';
  const parsed = readProgram(text, name, fromPrograms);
  const [first] = parsed.problems;
  if (first) return `the reader (${first.code})`;
  const rule = checkProgram(parsed, AS_OF).find(({ severity }) => severity !== 'note');
  if (rule) return `a rule of agronomy (${rule.code})`;
  return (await calendarsOf(name)).some((calendar) => surprises(calendar, program)) ? 'a published calendar' : null;
}

/** The published calendars that a program, or one that extends it, is compared with. */
async function calendarsOf(name: string): Promise<PublishedCalendar[]> {
  const found: PublishedCalendar[] = [];
  for (const file of readdirSync(CALENDARS).filter((each) => each !== 'calendar.ts' && !each.endsWith('.test.ts'))) {
    const { calendar } = (await import(path.join(CALENDARS, file))) as { calendar: PublishedCalendar };
    const text = readFileSync(path.join(PROGRAMS, calendar.program), 'utf8');
    if (calendar.program === name || new RegExp(`^extends: .*${name}`, 'm').test(text)) found.push(calendar);
  }
  return found;
}

/** Whether a calendar finds a difference that it does not explain, or misses one that it does. */
function surprises(calendar: PublishedCalendar, { name, text }: Changed): boolean {
  const lookup = (ref: string) => (path.basename(ref) === name ? { name, text } : fromPrograms(ref));
  const found = differences(calendar, lookup);
  return (
    [...found.keys()].some((key) => !(key in calendar.explained)) ||
    Object.keys(calendar.explained).some((key) => !found.has(key))
  );
}
