import type { Day } from '../../base/day.ts';
import type { Days, Metres } from '../../base/units.ts';
import type { Dormancy } from '../../model/turf.ts';

/** Why a day is not allowed for a step. */
export type Forbidden =
  | { readonly rule: 'not-working' | 'away' | 'full' | 'frozen' | 'saturated' | 'unseen' }
  | { readonly rule: 'local'; readonly substance: string; readonly because: string | null }
  | { readonly rule: 'spacing'; readonly of: string; readonly from: Day; readonly days: Days }
  /** Two parts of what the surface cannot take at once. */
  | { readonly rule: 'apart'; readonly of: string; readonly from: Day; readonly days: Days }
  /** A herbicide on seedlings. */
  | { readonly rule: 'seedlings'; readonly of: string; readonly from: Day; readonly days: Days }
  /** Two uses of a product, or of one active. */
  | { readonly rule: 'interval'; readonly of: string; readonly from: Day; readonly days: Days }
  /** Seed and a herbicide within the time that its label keeps seed off, or that it waits after seed. */
  | {
      readonly rule: 'seed-safe';
      readonly of: string;
      readonly from: Day;
      readonly days: Days;
      readonly wait: 'for-seed' | 'for-herbicide';
    }
  | {
      readonly rule: 'young';
      readonly area: string;
      readonly since: Day;
      readonly until: Day | null;
      readonly what: 'feed' | 'herbicide';
    }
  | { readonly rule: 'dormant'; readonly cause: Dormancy; readonly by: 'lawn' | 'weather' }
  | { readonly rule: 'rain'; readonly depth: Metres; readonly known: boolean }
  | { readonly rule: 'cold' | 'hot'; readonly limit: number; readonly known: boolean };

/** What makes two reasons the same one, whatever the day. */
export const reasonKey = (one: Forbidden): string => {
  switch (one.rule) {
    case 'local':
      return `local ${one.substance} ${one.because}`;
    case 'spacing':
    case 'apart':
    case 'interval':
    case 'seedlings':
    case 'seed-safe':
      return `${one.rule} ${one.of}`;
    case 'young':
      return `young ${one.area}`;
    default:
      return one.rule;
  }
};
