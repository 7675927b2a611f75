import { factorOf, type Metres, type MetresPerSecond } from '../../base/units.ts';
import type { Area } from '../../model/area.ts';
import type { Spreader, SpreaderKind, Spreaders, Swath } from '../../model/spreader.ts';
import type { AreaWalk } from '../../model/walk.ts';
import { netArea } from '../area.ts';
import { outlineOf } from '../outline.ts';
import { areaWalk } from './area-walk.ts';
import { effectiveSwath, MOST_SKEW, type PanFault } from './swath-test.ts';

/** Swath where the lawn names none; common practice. */
const USUAL_SWATH: Readonly<Record<SpreaderKind, Metres>> = {
  rotary: 10 * factorOf('ft'),
  drop: 2 * factorOf('ft'),
  hand: 6 * factorOf('ft'),
};
/** Walking pace where the lawn names none: 264 ft/min; common practice. */
const USUAL_SPEED: MetresPerSecond = 3 * factorOf('mph');

/**
 * The effective width of a pass: as the file says it, else from its pans, else a usual one of its kind.
 *
 * @example swathOf({ kind: 'rotary' }) //=> { swath: 3.048, basis: 'usual', skew: null }
 */
export function swathOf(spreader: Spreader | undefined): Swath {
  if (spreader?.swath !== undefined) return { swath: spreader.swath, basis: 'file', skew: null };
  const test = spreader?.pans && effectiveSwath(spreader.pans);
  if (test && test.swath !== null) return { swath: test.swath, basis: 'pans', skew: test.skew };
  return { swath: USUAL_SWATH[spreader?.kind ?? 'rotary'], basis: 'usual', skew: null };
}

export const speedOf = (spreader: Spreader | undefined): MetresPerSecond => spreader?.speed ?? USUAL_SPEED;

/** A spreader of a lawn. */
export interface NamedSpreader {
  /** Null for the single one, and where the lawn has none. */
  readonly id: string | null;
  readonly spreader: Spreader | undefined;
}

/** The spreader that a lawn's work is planned with: the single one, else the first of several. */
export function usualSpreader({ spreader, spreaders }: Spreaders = {}): NamedSpreader {
  const [first] = Object.entries(spreaders ?? {});
  return spreader || !first ? { id: null, spreader } : { id: first[0], spreader: first[1] };
}

/** The spreader of an entry: the one it names, else the single one or the only one; null where that is not known. */
export function spreaderOf(equipment: Spreaders | undefined, named: string | undefined): NamedSpreader | null {
  const { spreader, spreaders = {} } = equipment ?? {};
  if (named !== undefined) return Object.hasOwn(spreaders, named) ? { id: named, spreader: spreaders[named] } : null;
  return spreader || Object.keys(spreaders).length < 2 ? usualSpreader(equipment) : null;
}

/** The two half-rate ways over an area with a spreader; null where it would take more lines than anybody walks. */
export const walkOver = (area: Area, spreader: Spreader | undefined): AreaWalk | null =>
  areaWalk(outlineOf(area), netArea(area), swathOf(spreader).swath, spreader?.passes ?? 'crossing');

/** A pan test that gives no swath, or whose sides differ. */
export interface PanNote {
  /** The way to the test from the lawn's equipment. */
  readonly at: readonly string[];
  readonly fault: PanFault | null;
  readonly skew: number;
}

/** What is to be said of the pan tests of a lawn's spreaders. */
export function panFaults({ spreader, spreaders }: Spreaders = {}): PanNote[] {
  const all: (readonly [readonly string[], Spreader])[] = [
    ...(spreader ? [[['spreader'], spreader] as const] : []),
    ...Object.entries(spreaders ?? {}).map(([id, one]) => [['spreaders', id], one] as const),
  ];
  return all.flatMap(([at, { pans }]): PanNote[] => {
    if (!pans) return [];
    const { fault, skew } = effectiveSwath(pans);
    return fault !== null || Math.abs(skew) > MOST_SKEW ? [{ at: [...at, 'pans'], fault, skew }] : [];
  });
}
