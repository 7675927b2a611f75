import { parsed } from './fields.ts';

/** Weights of a mole [g], by the atomic masses of IUPAC 2021: Ca 40.078, Mg 24.305, C 12.011, O 15.999. */
const MOLE = {
  CaCO3: 40.078 + 12.011 + 3 * 15.999,
  CaO: 40.078 + 15.999,
  MgO: 24.305 + 15.999,
  Ca: 40.078,
  Mg: 24.305,
};

/** Burnt magnesia is 2.48 times as strong as calcium carbonate, and nothing that is spread is stronger. */
const MOST = MOLE.CaCO3 / MOLE.MgO;

const ONE = String.raw`\d+(?:\.\d+)?\s*% (?:CaO|MgO|Ca|Mg)`;
const FORM = String.raw`(?:\d+(?:\.\d+)?\s*%|${ONE}(?:\s*\+\s*${ONE})*)`;

/**
 * Reads what a liming product neutralises: `90%`, of pure calcium carbonate as in North America; `50% CaO`, of calcium oxide as
 * in Europe; or what a bag tells of calcium and magnesium, as `21% Ca + 11% Mg` or as oxides. Each mole of these neutralises
 * as much as one of the carbonate.
 */
function parseNeutralising(written: string): number | null {
  if (!new RegExp(`^${FORM}$`).test(written.trim())) return null;
  let [weight, share] = [0, 0];
  for (const part of written.split('+')) {
    const [, percent, name = 'CaCO3'] = /([\d.]+)\s*%\s*(\w+)?/.exec(part) ?? [];
    weight += Number(percent) / 100;
    share += (Number(percent) / 100) * (MOLE.CaCO3 / MOLE[name as keyof typeof MOLE]);
  }
  const pure = written.trim().endsWith('%');
  return share > 0 && share <= MOST && (pure || weight <= 1) ? share : null;
}

/** What a liming product does, as a share of the same weight of pure calcium carbonate. */
export const neutralising = parsed<number>(
  'out-of-range',
  'a neutralising value such as 90%, 50% CaO or 21% Ca + 11% Mg, above 0 and at most 248% of calcium carbonate',
  `^\\s*${FORM}\\s*$`,
  parseNeutralising,
);
