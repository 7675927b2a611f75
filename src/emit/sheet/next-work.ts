import { PUBLIC_PLACE } from '../../model/reader.ts';
import type { Application, Purchase, Season } from '../../model/season.ts';
import { dayNumber } from './told.ts';

/** What is to be done next, and what stands beside it. */
export interface NextWork {
  /** Null where nothing more is planned. */
  readonly next: Application | null;
  /** Whether it can wait so long that there is nothing to do now. */
  readonly isFar: boolean;
  /** What is to be bought before it, or for it. */
  readonly before: readonly Purchase[];
  /** What is to be bought soon for other work. */
  readonly buys: readonly Purchase[];
  /** The work that comes then. */
  readonly after: readonly Application[];
  /** Work whose window is open and for which no day can be chosen. */
  readonly stuck: readonly Application[];
}

const SOON = 21;
const AFTER = 2;

/** Whether work is still to come. */
export const waits = ({ status }: Application): boolean =>
  status === 'expected' || status === 'open' || status === 'due';

/** The day that work stands at in a list: the chosen one, else its middle opening. */
export const dayOf = ({ date, window }: Application): string | null => date ?? window.opens.p50;

/** The work to do next: what is due first of all, then by its day. Only at a place, where no days are chosen, does work without one come among it. */
export function nextWork({ applications, shopping, asOf, lawn }: Season): NextWork {
  const waiting = applications
    .filter((one) => waits(one) && dayOf(one) !== null)
    .sort(
      (a, b) =>
        Number(b.status === 'due') - Number(a.status === 'due') || ((dayOf(a) ?? '') < (dayOf(b) ?? '') ? -1 : 1),
    );
  const dated = waiting.filter(({ date }) => date !== null);
  const [next = null, ...others] = dated.length > 0 && lawn !== PUBLIC_PLACE ? dated : waiting;
  const limit = dayNumber(asOf) + SOON;
  const isFar = next !== null && next.status === 'expected' && dayNumber(dayOf(next) ?? asOf) > limit;
  const soon = [...shopping]
    .sort((a, b) => ((a.buyBy ?? '') < (b.buyBy ?? '') ? -1 : 1))
    .filter(({ packages, buyBy }) => packages.length > 0 && buyBy !== null && dayNumber(buyBy) <= limit);
  const isBefore = ({ product, buyBy }: Purchase): boolean =>
    next === null ||
    (buyBy ?? '') <= asOf ||
    (buyBy ?? '') < (dayOf(next) ?? '') ||
    next.totals.some((total) => total.product === product);
  return {
    next,
    isFar,
    before: soon.filter(isBefore),
    buys: soon.filter((one) => !isBefore(one)),
    after: others.slice(0, AFTER),
    stuck: waiting.filter((one) => one !== next && one.status === 'open' && one.date === null),
  };
}
