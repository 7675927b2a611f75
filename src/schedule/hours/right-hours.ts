import type { RightHours } from '../../model/around-work.ts';
import { sprays } from '../tanks.ts';
import type { DosedStep } from '../within-caps.ts';

/**
 * The hours that suit a step: as its program says of the leaves, else by its work and its product.
 *
 * Granules for leaf weeds stick to wet leaves alone (K-State Research and Extension: granular products need them wet); every
 * other granule, and seed and mowing, want dry ones (common practice). What is sprayed keeps out of the heat, in which it
 * drifts and burns (common practice). Watering ends near sunrise, so that the leaves are wet no longer than by dew (common practice).
 */
export function rightHours(placed: DosedStep): RightHours {
  const { leaves, work, apply } = placed.step;
  if (leaves === 'wet') return 'wet';
  if (work === 'water') return 'sunrise';
  if (work === 'spray' || sprays(placed)) return 'cool';
  if (leaves === 'dry') return 'dry';
  if (work === 'spread' && apply?.kind === 'pesticide' && /broadleaf/.test(apply.pesticide)) return 'wet';
  return work === 'spread' || work === 'seed' || work === 'mow' ? 'dry' : 'any';
}
