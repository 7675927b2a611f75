/** The usual cautions of a pesticide: the trade's, as labels and extension services give them. Common practice. */
const PESTICIDE = [
  'The label is the law: rate, protective equipment, weather and water-in are the ones printed there.',
  'Keep people and pets off for as long as the label says.',
  'Do not treat blooming weeds that bees visit; mow the flowers off first.',
  'Keep off the root zone of trees and shrubs, and away from wells and water, as far as the label says.',
  'Do not use treated clippings as mulch or compost for as long as the label says.',
  'Store it locked in its own package; take what is left to a collection point.',
] as const;

/** What is spread dry. Common practice. */
const SPREAD = 'Sweep or blow granules off paving back onto the grass; nothing into drains.';

/** What is sprayed. Common practice. */
const SPRAYED = 'Keep the spray off paving, water and drains, and do not spray where the wind carries it away.';

/** What lies on the grass, spread or sprayed. Common practice. */
const ON_GRASS = 'Not before heavy rain, not on frozen or saturated ground; keep your distance from wells and water.';

/** A feed that is sprayed. Common practice. */
const LIQUID_FEED = [
  'A strong mix burns the grass: take no less water than the label says, not in heat or on dry turf, and rinse it off the leaves where the label says so.',
  'Read the package: gloves, storage and what it says about pets.',
] as const;

/** A feed that is spread dry. Common practice. */
const DRY_FEED = ['Read the bag: gloves, storage and what it says about pets.'] as const;

/**
 * The cautions that what a step puts down calls for, and how it is put down.
 *
 * @param sprayed Whether a sprayer puts it down; else it is spread dry.
 */
export function usualCautions(substances: ReadonlySet<string>, sprayed: boolean): readonly string[] {
  const isPesticide = substances.has('pesticide');
  if (!isPesticide && !substances.has('fertilizer')) return [];
  const feed = sprayed ? LIQUID_FEED : DRY_FEED;
  return [...(isPesticide ? PESTICIDE : []), sprayed ? SPRAYED : SPREAD, ON_GRASS, ...(isPesticide ? [] : feed)];
}
