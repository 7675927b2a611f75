import type { Day } from '../../base/day.ts';
import type { SquareMetres } from '../../base/units.ts';
import { applicationFor } from '../../model/applied.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { Journal, JournalEntry } from '../../model/journal.ts';
import type { Application } from '../../model/season.ts';
import type { Spreaders } from '../../model/spreader.ts';
import { spreaderOf } from '../spreader/spreader.ts';
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

/** What fills in what entries leave out. */
export interface Planned {
  /** Entries of later days are not looked at. */
  readonly asOf: Day;
  readonly equipment: Spreaders | undefined;
  /** What the plan has for the step of an entry in the season of its day; undefined where it does not reach that day. */
  readonly plannedFor: (
    entry: JournalEntry,
  ) => { readonly product: string | undefined; readonly areas: readonly string[] } | undefined;
}

/**
 * A journal's entries in force up to a day, each with the product and the areas of its step and the lawn's spreader where it
 * names none itself: of most entries the step is all that was written.
 */
export function withPlanned(journal: Journal, { asOf, equipment, plannedFor }: Planned): Journal {
  return entriesInForce(journal).flatMap((entry) => {
    if (entry.date > asOf) return [];
    const planned = plannedFor(entry);
    const product = entry.product ?? planned?.product;
    const areas = entry.areas ?? planned?.areas;
    const spreader = entry.spreader ?? spreaderOf(equipment, undefined)?.id ?? undefined;
    const known = { ...(product !== undefined && { product }), ...(spreader !== undefined && { spreader }) };
    return [{ ...entry, ...known, ...(areas && { areas: [...areas] }) }];
  });
}

/** What a plan's applications have for the step of an entry. */
export const plannedBy =
  (applications: readonly Application[]): Planned['plannedFor'] =>
  (entry) => {
    const application = applicationFor(entry, applications);
    return (
      application && {
        product: application.areas.find((area) => area.product !== null)?.product ?? undefined,
        areas: application.areas.map(({ id }) => id),
      }
    );
  };

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
