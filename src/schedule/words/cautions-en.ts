/** The usual cautions of a pesticide: the trade's, as labels and extension services give them. Common practice. */
const PESTICIDE = [
  'The label is the law: rate, protective equipment, weather and water-in are the ones printed there.',
  'Keep people and pets off for as long as the label says.',
  'Do not treat blooming weeds that bees visit; mow the flowers off first.',
  'Keep off the root zone of trees and shrubs, and away from wells and water, as far as the label says.',
  'Do not use treated clippings as mulch or compost for as long as the label says.',
  'Store it locked in its own package; take what is left to a collection point.',
] as const;

/** The usual cautions of anything granular or of fertilizer. Common practice. */
const GRANULES = [
  'Sweep or blow granules off paving back onto the grass; nothing into drains.',
  'Not before heavy rain, not on frozen or saturated ground; keep your distance from wells and water.',
] as const;

/** The cautions that what a step puts down calls for. */
export function usualCautions(substances: ReadonlySet<string>): readonly string[] {
  return [
    ...(substances.has('pesticide') ? PESTICIDE : []),
    ...(substances.has('pesticide') || substances.has('fertilizer') ? GRANULES : []),
    ...(substances.has('fertilizer') && !substances.has('pesticide')
      ? ['Read the bag: gloves, storage and what it says about pets.']
      : []),
  ];
}
