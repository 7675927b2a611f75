import type { SquareMetres } from '../../base/units.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { Journal } from '../../model/journal.ts';
import type { Application } from '../../model/season.ts';
import type { DialRecord } from './advise.ts';

/** Whose records. */
export interface RecordsOf {
  readonly product: string;
  /** The spreader's name; null for the single one, which entries do not name. */
  readonly spreader: string | null;
  /** Sizes of the lawn's areas by their ids. */
  readonly areas: ReadonlyMap<string, SquareMetres>;
  /** Into how many passes the work of an entry is split that does not say which pass it was; two where left out. */
  readonly passes?: number;
}

/**
 * A journal's entries, each with the product and the areas of its step where it names none itself: of most entries the step
 * is all that was written.
 */
export function withPlanned(journal: Journal, applications: readonly Application[]): Journal {
  return journal.map((entry) => {
    const application = applications.find(({ id }) => id === entry.step);
    const product = entry.product ?? application?.areas.find((area) => area.product !== null)?.product ?? undefined;
    const areas = entry.areas ?? application?.areas.map(({ id }) => id);
    return { ...entry, ...(product !== undefined && { product }), ...(areas && { areas }) };
  });
}

/**
 * What passes with a spreader delivered: what was loaded less what was left, over the area covered and the passes it was put
 * down in. Entries without a setting, without a weight or with an area that is not the lawn's say nothing of the dial.
 *
 * @param journal With products and areas (`withPlanned`); areas left out are all of the lawn's.
 * @returns Rates of one pass [kg/m²], in the order of the journal.
 * @example 16 lb loaded and 2 oz left of one pass over 5000 sq ft //=> [{ date, setting, rate: 0.0155 }] (3.18 lb/1000 sq ft)
 */
export function dialRecordsOf(journal: Journal, { product, spreader, areas, passes = 2 }: RecordsOf): DialRecord[] {
  return entriesInForce(journal).flatMap((entry) => {
    const { date, setting, used } = entry;
    if (entry.product !== product || (entry.spreader ?? null) !== spreader) return [];
    if (setting === undefined || used?.by !== 'mass') return [];
    const covered = entry.areas ?? [...areas.keys()];
    const sizes = covered.map((id) => areas.get(id) ?? Number.NaN);
    const size = sizes.reduce((sum, one) => sum + one, 0);
    const rate = used.value / size / (entry.pass === undefined ? passes : 1);
    return rate > 0 && Number.isFinite(rate) ? [{ date, setting, rate }] : [];
  });
}
