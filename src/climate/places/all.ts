import { MEASURED_PLACES } from './measured.ts';
import type { ReferencePlace } from './table.ts';
import { EASTERN_PLACES } from './us-east.ts';
import { WESTERN_PLACES } from './us-west.ts';
import { WORLD_PLACES } from './world.ts';

/** Every place whose usual weather is carried along. */
export const REFERENCE_PLACES: readonly ReferencePlace[] = [
  ...MEASURED_PLACES,
  ...EASTERN_PLACES,
  ...WESTERN_PLACES,
  ...WORLD_PLACES,
];
