/** How calm lived seasons were, as text, with the lines that say which aim is met. */
import { heading, num, signed } from '../tables.ts';
import type { Compared, EventLife } from './judge.ts';

/** A season that was judged. */
export interface Judged {
  readonly name: string;
  readonly lives: readonly EventLife[];
  readonly compared: Compared;
}

const [MOST_REVISIONS, MOST_MOVES, MOST_POINTS] = [6, 0.5, 3];

function quantileOf(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const [low, high] = [sorted[Math.floor(at)] ?? Number.NaN, sorted[Math.ceil(at)] ?? Number.NaN];
  return low + (at - Math.floor(at)) * (high - low);
}

const revisionsLine = (name: string, lives: readonly EventLife[]): string => {
  const counts = lives.map(({ revisions }) => revisions);
  const forNothing = lives.reduce((sum, one) => sum + one.forNothing.length, 0);
  const apart = lives.filter(({ together }) => !together).length;
  const [p50, p90, most] = [0.5, 0.9, 1].map((share) => num(quantileOf(counts, share), 7, 1));
  return `${name.padEnd(42)}${num(lives.length, 7, 0)}${p50}${p90}${most}${num(forNothing, 13, 0)}${num(apart, 7, 0)}\n`;
};

const movesLine = (name: string, { calmMoves, freeMoves, jobDays, calmInWindow, freeInWindow }: Compared): string =>
  `${name.padEnd(42)}${num(calmMoves, 7, 0)}${num(freeMoves, 7, 0)}${num(jobDays, 10, 0)}${num(100 * calmInWindow, 8, 1)}${num(100 * freeInWindow, 8, 1)}${signed(100 * (calmInWindow - freeInWindow), 8, 1)}\n`;

/** Seasons taken together, each job-day counting once. */
function together(all: readonly Compared[]): Compared {
  const sum = (of: (one: Compared) => number) => all.reduce((total, one) => total + of(one), 0);
  const jobDays = sum((one) => one.jobDays);
  return {
    calmMoves: sum(({ calmMoves }) => calmMoves),
    freeMoves: sum(({ freeMoves }) => freeMoves),
    jobDays,
    calmInWindow: sum((one) => one.calmInWindow * one.jobDays) / jobDays,
    freeInWindow: sum((one) => one.freeInWindow * one.jobDays) / jobDays,
  };
}

const nameOf = ({ kind, step }: EventLife): string => `${kind} ${step}`;

function reasons(lives: readonly EventLife[]): string {
  const names = [...new Set(lives.map(nameOf))];
  return names
    .map((name) => [name, lives.filter((one) => nameOf(one) === name)] as const)
    .map(([name, of]) => ({ name, of, mean: of.reduce((sum, one) => sum + one.revisions, 0) / of.length }))
    .sort((a, b) => b.mean - a.mean)
    .map(({ name, of, mean }) => {
      const by = new Map<string, number>();
      for (const one of of) for (const [fact, n] of Object.entries(one.by)) by.set(fact, (by.get(fact) ?? 0) + n);
      const told = [...by].sort((a, b) => b[1] - a[1]).map(([fact, n]) => `${fact} ${(n / of.length).toFixed(1)}`);
      return `${name.padEnd(42)}${num(mean, 7, 1)}  ${told.join(', ')}\n`;
    })
    .join('');
}

const aim = (met: boolean, text: string): string => `${met ? 'met   ' : 'MISSED'}  ${text}\n`;

/** Tables of all seasons, then the aims. */
export function calmText(judged: readonly Judged[]): string {
  const lives = judged.flatMap((one) => one.lives);
  const all = together(judged.map((one) => one.compared));
  const median = quantileOf(
    lives.map(({ revisions }) => revisions),
    0.5,
  );
  const forNothing = lives.flatMap(({ uid, forNothing: days }) => days.map((day) => `${day} ${uid}`));
  const [kept, cost] = [all.calmMoves / all.freeMoves, 100 * (all.freeInWindow - all.calmInWindow)];
  return [
    heading('Revisions of an event after its first publication, soil today apart'),
    `${' '.repeat(42)} events median    p90   most  for nothing  apart\n`,
    ...judged.map((one) => revisionsLine(one.name, one.lives)),
    revisionsLine('all', lives),
    ...[...new Set(lives.map(({ kind }) => kind))].map((kind) =>
      revisionsLine(
        `all of kind ${kind}`,
        lives.filter((one) => one.kind === kind),
      ),
    ),
    heading('Days of jobs: moves from one day to the next, mean inWindow [%]'),
    `${' '.repeat(42)}   calm   free  job-days    calm    free   apart\n`,
    ...judged.map((one) => movesLine(one.name, one.compared)),
    movesLine('all', all),
    heading('Mean revisions of an event, and what they changed'),
    reasons(lives),
    forNothing.length > 0 ? `${heading('Revised for nothing')}${forNothing.slice(0, 20).join('\n')}\n` : '',
    heading('Aims'),
    aim(median <= MOST_REVISIONS, `the median event has ${median} revisions, at most ${MOST_REVISIONS}`),
    aim(forNothing.length === 0, `${forNothing.length} revisions without a change of what counts, none`),
    aim(
      lives.every((one) => one.together),
      'SEQUENCE and LAST-MODIFIED rise together',
    ),
    aim(
      kept <= MOST_MOVES,
      `${(100 * kept).toFixed(0)} % of the moves of free planning, at most ${100 * MOST_MOVES} %`,
    ),
    aim(cost < MOST_POINTS, `mean inWindow ${cost.toFixed(1)} points lower, less than ${MOST_POINTS}`),
  ].join('');
}
