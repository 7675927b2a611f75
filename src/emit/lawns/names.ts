import { cleaned } from '../../base/text.ts';
import type { Season } from '../../model/season.ts';

/** A season, and what its lawn is called beside others. */
export interface NamedSeason {
  readonly season: Season;
  /** On one line. */
  readonly name: string;
}

/** Lawns by their names; by name and id where two have the same name. */
export function namedSeasons(seasons: readonly Season[]): NamedSeason[] {
  const names = seasons.map(({ lawn, lawnName }) => cleaned(lawnName).replace(/\s+/g, ' ').trim() || lawn);
  return seasons.map((season, i) => {
    const name = names[i] ?? '';
    const isOne = names.filter((other) => other === name).length === 1;
    return { season, name: isOne ? name : `${name} (${season.lawn})` };
  });
}
