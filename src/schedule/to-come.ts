import { labelMostOf, type SecondPass, secondPass } from '../amounts/dial/second-pass.ts';
import { inMeasure } from '../amounts/in-measure.ts';
import type { Product } from '../model/product.ts';
import { isPesticide } from '../model/product.ts';
import type { Share } from './caps.ts';
import type { PlacedStep } from './placed.ts';
import type { FirstPass } from './progress.ts';

/** What is down and what is left for the second pass on an area, kg or m³ on each square metre. */
export interface Halfway extends SecondPass {
  readonly down: number;
}

/**
 * What the second pass of a step is to put on an area that has had the first alone; null on every other.
 *
 * @param held What the limits leave of the dose there; where they leave no room above it both passes stay within it.
 */
export function halfwayOn({ dose, progress }: PlacedStep, area: string, { share, tight }: Share): Halfway | null {
  const passes = progress.firstPasses.get(area);
  if (!passes || !dose?.rate) return null;
  const { product, rate } = dose;
  const whole = share * rate.value;
  const down = passes.reduce((sum, pass) => sum + (downBy(pass, rate.by, product) ?? whole / 2), 0);
  const mosts = [labelMostOf(product, rate.by), tight ? whole : null].filter((most) => most !== null);
  const labelMost = mosts.length === 0 ? null : Math.min(...mosts);
  return { ...secondPass({ whole, delivered: down, labelMost, pesticide: isPesticide(product) }), down };
}

/** What a first pass has put down; null where it is of another product or does not say. */
function downBy({ entry, rate }: FirstPass, by: 'mass' | 'volume', product: Product): number | null {
  if (entry.product !== undefined && entry.product !== product.id) return null;
  return rate && inMeasure(rate, by, product);
}

/** The share of a step's dose that is still to come on an area: all that is held, or the second pass of it. */
export function shareToCome(one: PlacedStep, area: string, held: Share): number {
  const halfway = halfwayOn(one, area, held);
  return halfway && one.dose?.rate ? halfway.target / one.dose.rate.value : held.share;
}

/** The share of a step's dose that an area has in the end: what is down counts, be it more than its half. */
export function shareInAll(one: PlacedStep, area: string, held: Share): number {
  const halfway = halfwayOn(one, area, held);
  return halfway && one.dose?.rate ? (halfway.down + halfway.target) / one.dose.rate.value : held.share;
}
