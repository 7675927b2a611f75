import type { DialRecord } from '../amounts/dial/advise.ts';
import { dialRecordsOf, withPlanned } from '../amounts/dial/records.ts';
import { usualSpreader } from '../amounts/spreader/spreader.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Dial } from '../model/spreader.ts';
import type { Ground } from './ground.ts';
import type { PlacedStep } from './placed.ts';

/** The dial of the spreader that the lawn's work is planned with, and what the journal has of a product on it; null without. */
export type DialOf = (product: string) => { readonly dial: Dial; readonly records: readonly DialRecord[] } | null;

/** The dial of a plan, by the journal of its ground. */
export function dialOf(
  { lawn, journal, asOf }: Ground,
  placed: readonly PlacedStep[],
  areas: ReadonlyMap<string, SquareMetres>,
): DialOf {
  const { id, spreader } = usualSpreader(lawn.equipment);
  const dial = spreader?.dial;
  if (!dial) return () => null;
  const planned = withPlanned(journal, {
    asOf,
    equipment: lawn.equipment,
    plannedFor: ({ step, date }) => {
      const one = placed.find((own) => own.id === step && own.season.start <= date && date <= own.season.end);
      return one && { product: one.dose?.product?.id, areas: one.areas };
    },
  });
  return (product) => ({ dial, records: dialRecordsOf(planned, { product, spreader: id, areas }) });
}
