/** How units are written; others are the same everywhere. */
export interface UnitNames {
  readonly in: string;
  readonly ft: string;
  readonly sqft: string;
  readonly cuft: string;
  readonly cuyd: string;
  readonly floz: string;
  readonly acre: string;
  readonly mph: string;
}

const en: UnitNames = {
  in: 'in',
  ft: 'ft',
  sqft: 'sq ft',
  cuft: 'cu ft',
  cuyd: 'cu yd',
  floz: 'fl oz',
  acre: 'acre',
  mph: 'mph',
};

/** From memory. */
const es: UnitNames = {
  in: 'pulg',
  ft: 'pies',
  sqft: 'pies²',
  cuft: 'pies³',
  cuyd: 'yd³',
  floz: 'oz líq',
  acre: 'acre',
  mph: 'mi/h',
};

const NAMES: Readonly<Record<string, UnitNames>> = { en, es };

/** The units of a language tag; English for one that has none. @example unitNamesOf('es-MX').sqft //=> 'pies²' */
export const unitNamesOf = (language: string): UnitNames => NAMES[language.split('-')[0] ?? ''] ?? en;
