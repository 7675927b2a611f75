import type { Application, Season } from '../../model/season.ts';
import { isOpen } from '../events/draft.ts';
import { type NamedSeason, namedSeasons } from './names.ts';

/** A job that is still to be done on a lawn. */
export interface LawnJob {
  readonly lawn: NamedSeason;
  readonly job: Application & { readonly date: string };
}

/** A day with jobs on more than one lawn. */
export interface SharedDay {
  readonly date: string;
  /** The lawns' ids and their steps, in the order of their hours. */
  readonly jobs: readonly {
    readonly lawn: string;
    readonly step: string;
    readonly start: string | null;
    readonly end: string | null;
  }[];
  /** Whether two of them, on two lawns, fall in the same hours. */
  readonly overlap: boolean;
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The jobs to come of several lawns, by day and hour. */
export const jobsToCome = (lawns: readonly NamedSeason[]): LawnJob[] =>
  lawns
    .flatMap((lawn) =>
      lawn.season.applications.flatMap((job) =>
        job.date !== null && isOpen(job) ? [{ lawn, job: { ...job, date: job.date } }] : [],
      ),
    )
    .sort((a, b) => compare(a.job.date, b.job.date) || compare(a.job.start ?? '', b.job.start ?? ''));

/**
 * Days on which one person has jobs on several lawns. They are told and not moved: the hours of a job follow the dew, the heat and
 * the working hours of its lawn, and the lawn's own feed has them.
 */
export function sharedDays(jobs: readonly LawnJob[]): SharedDay[] {
  const days = [...new Set(jobs.map(({ job }) => job.date))];
  return days.flatMap((date) => {
    const ofDay = jobs.filter(({ job }) => job.date === date);
    if (new Set(ofDay.map(({ lawn }) => lawn)).size < 2) return [];
    const overlap = ofDay.some((a, i) => ofDay.slice(i + 1).some((b) => a.lawn !== b.lawn && meet(a.job, b.job)));
    const told = ofDay.map(({ lawn, job: { id, start, end } }) => ({ lawn: lawn.season.lawn, step: id, start, end }));
    return [{ date, jobs: told, overlap }];
  });
}

/** All such days of several seasons. */
export const sharedDaysOf = (seasons: readonly Season[]): SharedDay[] => sharedDays(jobsToCome(namedSeasons(seasons)));

const meet = (a: Application, b: Application): boolean =>
  a.start !== null && a.end !== null && b.start !== null && b.end !== null && a.start < b.end && b.start < a.end;
