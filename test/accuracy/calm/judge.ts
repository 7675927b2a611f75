/** How calm a lived season was: revisions of events, moves of days, and what calm costs in odds. */
import type { LedgerEntry } from '../../../src/model/ledger.ts';
import type { Application, Season } from '../../../src/model/season.ts';
import type { LivedDay } from '../../../src/replay.ts';
import { type Facts, factsOf } from './facts.ts';
import type { Lived } from './live.ts';

/** One event through a season. */
export interface EventLife {
  readonly uid: string;
  readonly kind: string;
  readonly step: string | null;
  readonly revisions: number;
  /** How many revisions changed each fact. */
  readonly by: Readonly<Record<string, number>>;
  /** Days of revisions that changed none. */
  readonly forNothing: readonly string[];
  /** Whether SEQUENCE and LAST-MODIFIED grew together, by whole steps, and never one without the other. */
  readonly together: boolean;
}

interface Growing {
  entry: LedgerEntry;
  facts: Facts | null;
  revisions: number;
  by: Record<string, number>;
  forNothing: string[];
  together: boolean;
}

const later = (a: LedgerEntry, b: LedgerEntry): boolean => Date.parse(a.lastModified) > Date.parse(b.lastModified);

function revised(life: Growing, entry: LedgerEntry, season: Season): void {
  const facts = factsOf(entry, season);
  const names = facts ? Object.keys(facts).filter((name) => facts[name] !== life.facts?.[name]) : [];
  life.revisions += 1;
  for (const name of names) life.by[name] = (life.by[name] ?? 0) + 1;
  if (facts && names.length === 0) life.forNothing.push(season.asOf);
  if (facts) life.facts = facts;
}

/** Every event of the season that began in a year but the soil of today, which changes daily; those of the next have hardly begun. */
export function livesOf(days: readonly LivedDay[], year: number): EventLife[] {
  const lives = new Map<string, Growing>();
  for (const { season, ledger } of days) {
    if (!season) continue;
    for (const entry of ledger.events.filter((one) => one.kind !== 'soil' && one.season === year)) {
      const life = lives.get(entry.uid);
      if (!life) {
        const facts = factsOf(entry, season);
        lives.set(entry.uid, { entry, facts, revisions: 0, by: {}, forNothing: [], together: entry.sequence === 0 });
        continue;
      }
      const rose = entry.sequence === life.entry.sequence + 1 && later(entry, life.entry);
      const stayed = entry.sequence === life.entry.sequence && entry.lastModified === life.entry.lastModified;
      const left = entry.removedOn !== null;
      const same = JSON.stringify(entry) === JSON.stringify(life.entry);
      if (!(stayed ? same || left : rose)) life.together = false;
      if (rose) revised(life, entry, season);
      else if (left) life.facts = factsOf(entry, season);
      life.entry = entry;
    }
  }
  return [...lives.values()].map(({ entry: { uid, kind, step }, facts: _, ...life }) => ({ uid, kind, step, ...life }));
}

/** Moves of days and odds of the same jobs, under the calm rule and planned freely. */
export interface Compared {
  readonly calmMoves: number;
  readonly freeMoves: number;
  /** Job-days that have a chosen day both ways, and their mean `inWindow` [0 to 1]. */
  readonly jobDays: number;
  readonly calmInWindow: number;
  readonly freeInWindow: number;
}

const OPEN = ['expected', 'open', 'due'];
const keyOf = ({ id, season }: Application): string => `${season} ${id}`;
const chosen = (season: Season | null): ReadonlyMap<string, Application> =>
  new Map(
    (season?.applications ?? [])
      .filter(({ date, status }) => date !== null && OPEN.includes(status))
      .map((one) => [keyOf(one), one]),
  );

/** A job moves where it has a day both today and yesterday, both ways, and another one today. */
export function compared({ calm, free }: Lived): Compared {
  let [calmMoves, freeMoves, jobDays, calmSum, freeSum] = [0, 0, 0, 0, 0];
  let before: readonly [ReadonlyMap<string, Application>, ReadonlyMap<string, Application>] = [new Map(), new Map()];
  for (const [i, day] of calm.entries()) {
    const now = [chosen(day.season), chosen(free[i]?.season ?? null)] as const;
    for (const [key, one] of now[0]) {
      const other = now[1].get(key);
      if (!other) continue;
      jobDays += 1;
      calmSum += one.inWindow ?? 0;
      freeSum += other.inWindow ?? 0;
      const [was, otherWas] = [before[0].get(key), before[1].get(key)];
      if (!was || !otherWas) continue;
      if (was.date !== one.date) calmMoves += 1;
      if (otherWas.date !== other.date) freeMoves += 1;
    }
    before = now;
  }
  return { calmMoves, freeMoves, jobDays, calmInWindow: calmSum / jobDays, freeInWindow: freeSum / jobDays };
}
