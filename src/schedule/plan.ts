import type { Problem } from '../base/problem.ts';
import type { Season } from '../model/season.ts';
import { type PlanInput, placeSeason } from './placed-season.ts';
import { tellSeason } from './tell.ts';

/**
 * Plans a season: program × lawn × weather → dated applications with amounts and reasons.
 *
 * @returns The season, or null where the weather cannot carry one; problems either way. Days after `asOf` change nothing.
 * @example planSeason({ program, products, lawn, journal: [], observed, history: [], forecast: null, previous: [], asOf })
 */
export function planSeason(input: PlanInput): {
  readonly season: Season | null;
  readonly problems: readonly Problem[];
} {
  const { value, problems } = placeSeason(input);
  if (!value) return { season: null, problems };
  const season = tellSeason(value, input);
  return { season, problems: season.problems };
}
