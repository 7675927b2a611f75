import { measurable } from '../amounts/measured/measurable.ts';
import type { Dose } from '../amounts/product.ts';
import { speedOf, swathOf, usualSpreader, walkOver } from '../amounts/spreader/spreader.ts';
import type { Display } from '../base/display.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Rate } from '../model/fields.ts';
import type { Lawn } from '../model/lawn.ts';
import type { AreaAmount, Pass } from '../model/season.ts';
import type { AreaWalk } from '../model/walk.ts';

/** The ways over the areas of a lawn with the spreader that its work is planned with. */
export interface Walks {
  of(area: string): AreaWalk | null;
  /** What both ways take, or the second alone [s]; of an area without a way, its size over the swath each. */
  seconds(area: string, size: SquareMetres, ways?: 'both' | 'second'): number;
}

/** The ways over a lawn's areas, each found when it is first asked for. */
export function walksOf({ areas, equipment }: Lawn): Walks {
  const { spreader } = usualSpreader(equipment);
  const known = new Map<string, AreaWalk | null>();
  const of = (id: string): AreaWalk | null => {
    const area = areas[id];
    if (!known.has(id)) known.set(id, area ? walkOver(area, spreader) : null);
    return known.get(id) ?? null;
  };
  const speed = speedOf(spreader);
  const { swath } = swathOf(spreader);
  const distance = (way: 0 | 1, walk: AreaWalk | null, size: SquareMetres) =>
    walk ? walk.halves[way].distance : size / swath;
  const seconds: Walks['seconds'] = (id, size, ways = 'both') => {
    const walk = of(id);
    return ((ways === 'both' ? distance(0, walk, size) : 0) + distance(1, walk, size)) / speed;
  };
  return { of, seconds };
}

/** The two half-rate passes over an area with a dry product: what each puts down and how far it goes. */
export function passesOf(
  { id, amountKg, measured }: Pick<AreaAmount, 'id' | 'amountKg' | 'measured'>,
  dose: Dose | null,
  walks: Walks,
  display: Display,
): Pass[] {
  if (amountKg === null || !isSpread(dose)) return [];
  const walk = walks.of(id);
  const half = amountKg / 2;
  const amount = measurable({ by: 'mass', value: half }, dose.product, display, measured?.rounding === 'down').words;
  return ([0, 1] as const).map((way) => ({ ...wayOver(walk, way), amountKg: half, amount }));
}

/** The second pass alone, with all that is left for it. */
export function secondPassOf(
  { id, amountKg, amount }: Pick<AreaAmount, 'id' | 'amountKg' | 'amount'>,
  dose: Dose | null,
  walks: Walks,
): Pass[] {
  if (amountKg === null || amount === null || !isSpread(dose)) return [];
  return [{ ...wayOver(walks.of(id), 1), amountKg, amount }];
}

const isSpread = (dose: Dose | null): dose is Extract<Dose, { rate: Rate }> =>
  dose?.rate != null && dose.product.form !== 'soluble';

const wayOver = (walk: AreaWalk | null, way: 0 | 1): Pick<Pass, 'direction' | 'distanceM' | 'turns'> => ({
  direction: walk?.halves[way].direction ?? (way === 0 ? 'lengthwise' : 'crosswise'),
  distanceM: walk ? Number(walk.halves[way].distance.toFixed(1)) : null,
  turns: walk?.halves[way].turns ?? null,
});
