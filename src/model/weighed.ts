import type { Amount } from './fields.ts';

/** What went in, what was put down, what was left. */
interface Weighed {
  readonly loaded?: Amount;
  readonly used?: Amount;
  readonly left?: Amount;
}

/** Why what was loaded, used and left cannot all be true: measures that differ, more out than in, a sum that is wrong. */
export type WeighedFault = 'measures' | 'more' | 'sum';

/** Differences up to this share of what was loaded are what scales and rounding make. */
const SCALES = 0.02;

/**
 * What is wrong with what was loaded, used and left, and at which of them; null where all can be true.
 *
 * @example weighedFault({ loaded: { by: 'mass', value: 8 }, left: { by: 'mass', value: 9 } }) //=> { at: 'left', fault: 'more' }
 */
export function weighedFault(weighed: Weighed): { readonly at: keyof Weighed; readonly fault: WeighedFault } | null {
  const { loaded, used, left } = weighed;
  const known = (['loaded', 'used', 'left'] as const).filter((key) => (weighed[key]?.value ?? 0) > 0);
  const [first] = known;
  const other = known.find((key) => first && weighed[key]?.by !== weighed[first]?.by);
  if (other) return { at: other, fault: 'measures' };
  if (!loaded) return null;
  const most = loaded.value * (1 + SCALES);
  if (left && left.value > most) return { at: 'left', fault: 'more' };
  if (used && used.value > most) return { at: 'used', fault: 'more' };
  const apart = used && left ? Math.abs(loaded.value - left.value - used.value) : 0;
  return apart > SCALES * loaded.value ? { at: 'used', fault: 'sum' } : null;
}

/** What was used: as written, else what was loaded less what was left. */
export function usedOf({ loaded, used, left }: Weighed): Amount | undefined {
  if (used || !loaded || !left) return used;
  return { by: loaded.by, value: Math.max(0, loaded.value - left.value) };
}
