import type { Words } from '../../words/words.ts';

/**
 * The cautions that what a step puts down calls for, and how it is put down.
 *
 * @param sprayed Whether a sprayer puts it down; else it is spread dry.
 */
export function usualCautions(
  substances: ReadonlySet<string>,
  sprayed: boolean,
  { cautions }: Words,
): readonly string[] {
  const isPesticide = substances.has('pesticide');
  if (!isPesticide && !substances.has('fertilizer')) return [];
  const feed = sprayed ? cautions.liquidFeed : cautions.dryFeed;
  return [
    ...(isPesticide ? cautions.pesticide : []),
    sprayed ? cautions.sprayed : cautions.spread,
    cautions.onGrass,
    ...(isPesticide ? [] : feed),
  ];
}
