import { formatDay, parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import { cleaned } from '../../base/text.ts';
import type { Season } from '../../model/season.ts';
import type { FeedAbout } from '../changes/digest.ts';
import { dayText } from '../day-text.ts';
import { type Column, folded, table } from '../table.ts';
import { namedSeasons } from './names.ts';
import { jobsToCome, type LawnJob, type SharedDay, sharedDays } from './same-day.ts';

/** Weeks of jobs that the table shows; what comes later is counted. */
const WEEKS = 8;

const COLUMNS: readonly Column[] = [
  { title: 'Day' },
  { title: 'Hours', optional: true },
  { title: 'Lawn' },
  { title: 'What', flexible: true },
  { title: 'In all', right: true },
];
/** A longer name of a lawn is cut short, so that the table stays one. */
const LONGEST_NAME = 20;

/**
 * The jobs of several lawns as one short table by day, then the days on which two lawns want somebody at once.
 *
 * @param lawns As many as the calendar names, those without a plan too.
 */
export function lawnsReport(about: FeedAbout, lawns: number, seasons: readonly Season[], width: number): string {
  const { lawnName: name, asOf } = about;
  const display = displayOf(about.display.units, about.display.language);
  const shown = (day: string) => dayText(day, asOf, display);
  const last = formatDay((parseDay(asOf) ?? 0) + 7 * WEEKS);
  const jobs = jobsToCome(namedSeasons(seasons));
  const soon = jobs.filter(({ job }) => job.date <= last);
  const without = lawns - seasons.length;
  const later = jobs.length - soon.length;
  const rows = soon.map(({ lawn, job }) => [
    shown(job.date),
    hoursOf(job, lawn.season.timezone),
    shortened(lawn.name),
    job.name,
    job.inAll ?? '',
  ]);
  const days = sharedDays(soon).flatMap((day) => folded(`  ${sharedLine(day, shown(day.date))}`, width));
  const lines = [
    ...folded(
      `${name.replace(/\s+/g, ' ')}: ${countOf(lawns)}${without === 0 ? '' : `, ${without} without a new plan`}`,
      width,
    ),
    `As of ${shown(asOf)}.`,
    '',
    `The next ${WEEKS} weeks`,
    ...(rows.length === 0 ? ['  Nothing to do.'] : table(COLUMNS, rows, width)),
    ...(later === 0 ? [] : folded(`${later} more ${later === 1 ? 'job' : 'jobs'} after ${shown(last)}.`, width)),
    ...(days.length === 0 ? [] : ['', 'Several lawns on one day', ...days]),
  ];
  return cleaned(`${lines.join('\n')}\n`);
}

const countOf = (lawns: number): string => `${lawns} ${lawns === 1 ? 'lawn' : 'lawns'}`;

const shortened = (name: string): string => {
  const letters = [...name];
  return letters.length <= LONGEST_NAME ? name : `${letters.slice(0, LONGEST_NAME - 1).join('')}…`;
};

/** The hours of a job on the clock of its lawn. */
function hoursOf({ start, end }: LawnJob['job'], timeZone: string): string {
  if (start === null || end === null) return '';
  const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone });
  return `${clock.format(Date.parse(start))}–${clock.format(Date.parse(end))}`;
}

const NUMBERS = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const inWords = (count: number): string => NUMBERS[count] ?? String(count);

function sharedLine({ jobs, overlap }: SharedDay, day: string): string {
  const lawns = new Set(jobs.map(({ lawn }) => lawn)).size;
  const hours = overlap ? ', some of them in the same hours' : '';
  return `${day}: ${inWords(jobs.length)} jobs on ${inWords(lawns)} lawns${hours}`;
}
