import type { UnitSystem } from '../base/display.ts';
import { factorOf, type SquareMetres } from '../base/units.ts';

/** The area that people give rates on: 1,000 sq ft, or 100 m². */
export const UNIT_AREA: Readonly<Record<UnitSystem, SquareMetres>> = { us: 1000 * factorOf('sqft'), metric: 100 };
