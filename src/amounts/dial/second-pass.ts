import type { KilogramsPerSquareMetre } from '../../base/units.ts';
import { isPesticide, type Product } from '../../model/product.ts';
import { keepsSetting, TOLERANCE } from '../spreader/calibration.ts';

/** An application in two passes of which one is done. */
export interface Halfway {
  /** What both together are to put down. */
  readonly whole: KilogramsPerSquareMetre;
  /** What the first has. */
  readonly delivered: KilogramsPerSquareMetre;
  /** The label's maximum of one application; null where no label limits it. */
  readonly labelMost: KilogramsPerSquareMetre | null;
  readonly pesticide: boolean;
}

/** What to do with the second pass. */
export interface SecondPass {
  /** What it is to deliver: the other half, or what the first has left for it; 0 for no second pass. */
  readonly target: KilogramsPerSquareMetre;
  /** The most that it may deliver by the label; null where no label limits it. */
  readonly most: KilogramsPerSquareMetre | null;
  /** Whether what is then still left may be put down in a third pass: never of a pesticide. */
  readonly third: boolean;
}

/**
 * What the second pass is to deliver after the first. Within ±5 % of its half the first counts as even, and the second is the
 * other half. Otherwise the second takes what is left of the whole, up to one and a half times its half, since an evening-out
 * pass is no place for a leap of the dial; where the first has put down 95 % of the whole, there is no second.
 *
 * @example secondPass({ whole: 2, delivered: 0.8, labelMost: null, pesticide: false }) //=> { target: 1.2, most: null, third: true }
 */
export function secondPass({ whole, delivered, labelMost, pesticide }: Halfway): SecondPass {
  const half = whole / 2;
  const left = Math.max(0, whole - delivered);
  const most = labelMost === null ? null : Math.max(0, labelMost - delivered);
  const even = keepsSetting(delivered, half);
  const wanted = even ? half : left <= TOLERANCE * whole + 1e-9 * whole ? 0 : Math.min(left, 1.5 * half);
  return { target: Math.min(wanted, most ?? wanted), most, third: !pesticide };
}

/** The most that a product's label allows in one application [kg/m² or m³/m²]; null where it says nothing in that measure. */
export function labelMostOf(product: Product, measure: 'mass' | 'volume'): number | null {
  const most = product.label?.perApplication ?? (isPesticide(product) ? product.label?.rate : undefined);
  return most?.by === measure ? most.value : null;
}
