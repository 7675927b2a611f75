import { measurable } from '../amounts/measured/measurable.ts';
import type { Dose } from '../amounts/product.ts';
import { speedOf, swathOf, usualSpreader, walkOver } from '../amounts/spreader/spreader.ts';
import type { Display } from '../base/display.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Lawn } from '../model/lawn.ts';
import type { AreaAmount, Pass } from '../model/season.ts';
import type { AreaWalk } from '../model/walk.ts';

/** The ways over the areas of a lawn with the spreader that its work is planned with. */
export interface Walks {
  of(area: string): AreaWalk | null;
  /** What both ways take [s]; of an area without a way, its size over the swath twice. */
  seconds(area: string, size: SquareMetres): number;
}

/** The ways over a lawn's areas, each found when it is first asked for. */
export function walksOf({ areas, equipment }: Lawn): Walks {
  const spreader = usualSpreader(equipment);
  const known = new Map<string, AreaWalk | null>();
  const of = (id: string): AreaWalk | null => {
    const area = areas[id];
    if (!known.has(id)) known.set(id, area ? walkOver(area, spreader) : null);
    return known.get(id) ?? null;
  };
  const speed = speedOf(spreader);
  const { swath } = swathOf(spreader);
  const distance = (walk: AreaWalk | null, size: SquareMetres) =>
    walk ? walk.halves[0].distance + walk.halves[1].distance : (2 * size) / swath;
  return { of, seconds: (id, size) => distance(of(id), size) / speed };
}

/** The two half-rate passes over an area with a dry product: what each puts down and how far it goes. */
export function passesOf(
  { id, amountKg, measured }: Pick<AreaAmount, 'id' | 'amountKg' | 'measured'>,
  dose: Dose | null,
  walks: Walks,
  display: Display,
): Pass[] {
  if (amountKg === null || !dose?.rate || dose.product.form === 'soluble') return [];
  const walk = walks.of(id);
  const half = amountKg / 2;
  const amount = measurable({ by: 'mass', value: half }, dose.product, display, measured?.rounding === 'down').words;
  return ([0, 1] as const).map((i) => ({
    direction: walk?.halves[i].direction ?? (i === 0 ? 'lengthwise' : 'crosswise'),
    amountKg: half,
    amount,
    distanceM: walk ? Number(walk.halves[i].distance.toFixed(1)) : null,
    turns: walk?.halves[i].turns ?? null,
  }));
}
