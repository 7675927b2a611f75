/** How many days a threshold of soil temperature is dated early or late. */
import { civil, type Day, yearOf } from '../../src/base/day.ts';
import { at, type DailySeries, endOf, trailingMean } from '../../src/base/series.ts';
import { mean, median } from './score.ts';
import { DEPTHS, type Depth, type Station } from './stations.ts';

interface Event {
  readonly label: string;
  /** [°C] */
  readonly threshold: number;
  readonly rises: boolean;
  /** First day of the search. */
  from(year: number): Day;
  /** Days on which the 5-day mean must stay beyond the threshold. */
  readonly hold: number;
}

/** 50 and 55 °F rising from 1 January, 70 °F falling from 1 August. */
export const EVENTS: readonly Event[] = [3, 7].flatMap((hold) => [
  { label: '50 °F up', threshold: 10, rises: true, from: (year: number) => civil(year, 1, 1), hold },
  { label: '55 °F up', threshold: 115 / 9, rises: true, from: (year: number) => civil(year, 1, 1), hold },
  { label: '70 °F down', threshold: 190 / 9, rises: false, from: (year: number) => civil(year, 8, 1), hold },
]);

/** What came of one event: a day, or that it was so from the beginning, or that it never was. */
type Found = Day | 'already' | 'never';

/** The day on which the hold is complete, in the year of `from`. */
function dateOf(series: DailySeries, { threshold, rises, hold }: Event, from: Day): Found {
  const end = Math.min(endOf(series), civil(yearOf(from) + 1, 1, 1));
  let [run, before] = [0, false];
  for (let day = from; day < end; day++) {
    const t = trailingMean(series, day, 5);
    if (Number.isNaN(t)) {
      run = 0;
      continue;
    }
    const beyond = rises ? t >= threshold : t <= threshold;
    run = beyond ? run + 1 : 0;
    before ||= !beyond;
    if (run === hold) return before ? day : 'already';
  }
  return 'never';
}

export interface DateError {
  readonly station: Station;
  readonly depth: Depth;
  readonly year: number;
  readonly event: Event;
  /** Predicted less measured [d]; or which of the two alone has the event; null where neither has. */
  readonly error: number | 'only measured' | 'only predicted' | null;
}

/** Gaps of measured soil up to this long are bridged; a date with a longer one in the three weeks before it is not known. */
const BRIDGED = 3;
const CLEAN = 21;

/** A series with short gaps interpolated. */
function bridged({ start, values }: DailySeries): DailySeries {
  const mended = values.slice();
  let last = -1;
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) continue;
    if (last >= 0 && i - last - 1 <= BRIDGED) {
      const [a, b] = [values[last] as number, values[i] as number];
      for (let j = last + 1; j < i; j++) mended[j] = a + ((b - a) * (j - last)) / (i - last);
    }
    last = i;
  }
  return { start, values: mended };
}

/** Whether nothing is missing on the days that lead up to a date. */
function whole(series: DailySeries, from: Day, date: Day): boolean {
  for (let day = Math.max(from, date - CLEAN); day <= date; day++) if (Number.isNaN(at(series, day))) return false;
  return true;
}

function errorOf(measured: DailySeries, predicted: DailySeries, event: Event, from: Day): DateError['error'] {
  const [truth, guess] = [dateOf(measured, event, from), dateOf(predicted, event, from)];
  if (typeof truth !== 'number') return typeof guess === 'number' && truth === 'never' ? 'only predicted' : null;
  if (!whole(measured, from, truth)) return null;
  if (guess === 'never') return 'only measured';
  // Beyond the threshold from the beginning: at least so many days early.
  return (guess === 'already' ? from + event.hold - 1 : guess) - truth;
}

/** Every event at every station, depth and year that is measured nearly whole. */
export function dateErrors(
  stations: readonly Station[],
  predict: (station: Station, depth: Depth) => DailySeries,
): DateError[] {
  return stations.flatMap((station) =>
    DEPTHS.flatMap((depth) => {
      const raw = station.soil[depth];
      if (!raw) return [];
      const [measured, predicted] = [bridged(raw), predict(station, depth)];
      return yearsOf(measured).flatMap((year) =>
        EVENTS.map((event) => ({
          station,
          depth,
          year,
          event,
          error: errorOf(measured, predicted, event, event.from(year)),
        })),
      );
    }),
  );
}

/** Years with at least 300 measured days. */
function yearsOf({ start, values }: DailySeries): number[] {
  const counts = new Map<number, number>();
  for (const [i, value] of values.entries()) {
    const year = yearOf(start + i);
    if (!Number.isNaN(value)) counts.set(year, (counts.get(year) ?? 0) + 1);
  }
  return [...counts].filter(([, count]) => count >= 300).map(([year]) => year);
}

export interface DateSummary {
  readonly n: number;
  /** Mean and median absolute error [d], mean error [d]. */
  readonly mae: number;
  readonly median: number;
  readonly bias: number;
  /** Share within 3 and 7 days. */
  readonly within3: number;
  readonly within7: number;
  readonly onlyMeasured: number;
  readonly onlyPredicted: number;
}

export function dateSummary(errors: readonly DateError[]): DateSummary {
  const days = errors.flatMap(({ error }) => (typeof error === 'number' ? [error] : []));
  const sizes = days.map(Math.abs);
  const share = (most: number) => sizes.filter((size) => size <= most).length / sizes.length;
  return {
    n: days.length,
    mae: mean(sizes),
    median: median(sizes),
    bias: mean(days),
    within3: share(3),
    within7: share(7),
    onlyMeasured: errors.filter(({ error }) => error === 'only measured').length,
    onlyPredicted: errors.filter(({ error }) => error === 'only predicted').length,
  };
}
