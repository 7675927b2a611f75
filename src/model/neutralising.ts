import { parsed } from './fields.ts';

/** Calcium carbonate to calcium oxide, by the atomic masses of IUPAC 2021: Ca 40.078, C 12.011, O 15.999. */
export const CAO_IN_CACO3 = (40.078 + 15.999) / (40.078 + 12.011 + 3 * 15.999);

/** Burnt lime, the strongest liming product, is 1/0.5603 of its weight in calcium carbonate. */
const MOST = 1.8;

/** Reads `90%`, of pure calcium carbonate as in North America, or `50% CaO`, of calcium oxide as in Europe. */
function parseNeutralising(written: string): number | null {
  const match = /^(\d+(?:\.\d+)?)\s*%( CaO)?$/.exec(written.trim());
  if (!match) return null;
  const share = Number(match[1]) / 100 / (match[2] === undefined ? 1 : CAO_IN_CACO3);
  return share > 0 && share <= MOST ? share : null;
}

/** What a liming product does, as a share of the same weight of pure calcium carbonate. */
export const neutralising = parsed<number>(
  'out-of-range',
  'a neutralising value such as 90%, or 50% CaO, above 0 and at most 180% of calcium carbonate',
  '^\\s*\\d+(\\.\\d+)?\\s*%( CaO)?\\s*$',
  parseNeutralising,
);
