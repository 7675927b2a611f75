import type * as v from 'valibot';
import { LEVELS } from './condition.ts';
import { day, id, map, maybe, number, positive, word } from './fields.ts';

/** A laboratory's report, of one area or of the whole lawn. */
export const SoilTestSchema = map({
  date: day,
  area: maybe(id),
  pH: maybe(number(2, 12)),
  phosphorus: maybe(word(LEVELS)),
  potassium: maybe(word(LEVELS)),
  /** The laboratory's own recommendation, in pure calcium carbonate. */
  lime: maybe(positive('mass per area')),
  /** Exchangeable acidity by a buffer [meq/100 g, the same number in cmol/kg]. */
  acidity: maybe(number(0, 200)),
  /** The pH that lime is to bring. */
  goal: maybe(number(4, 8)),
  /** What the laboratory recommends for a year. */
  P2O5: maybe(positive('mass per area')),
  K2O: maybe(positive('mass per area')),
});
export type SoilTest = v.InferOutput<typeof SoilTestSchema>;
