import type { TEXTURES } from '../model/lawn.ts';

/** A kind of soil. */
export type Texture = (typeof TEXTURES)[number];

/**
 * The numbers of the soil model, by name and unit. Equations: `surface.ts`, `conduction.ts`.
 * They trade against each other, so none is to be read alone.
 */
export interface SoilParameters {
  /** Offset of the surface [°C]. */
  readonly c0: number;
  /** Weight of the daily range: the mid-range lies above the 24-hour mean [-]. */
  readonly w: number;
  /** Warming by net radiation [°C per MJ m⁻² d⁻¹]; 1/cR is the air's conductance, about 7 W m⁻² K⁻¹. */
  readonly cR: number;
  /** Net radiation below which nothing is warmed [MJ m⁻² d⁻¹]. */
  readonly R0: number;
  /** Mean annual vapour pressure deficit above which evaporation falls short [kPa]. */
  readonly V0: number;
  /** How fast it falls short with dryness where no rain is known [1/kPa]. */
  readonly aN: number;
  /** The same where rain is known [1/kPa]. */
  readonly aV: number;
  /** How much a dry spell takes from evaporation [-]. */
  readonly aP: number;
  /** Rain over reference evapotranspiration at which a dry spell has lost 1/e of its effect [-]. */
  readonly A0: number;
  /** Thermal diffusivity [m² d⁻¹]. */
  readonly D: number;
  /** Conductance of canopy and thatch [m d⁻¹], times 2.2 MJ m⁻³ K⁻¹. */
  readonly h: number;
  /** What is left of a temperature below 0 °C: freezing, lumped [-]. */
  readonly kf: number;
  /** Radiation on a wet day, as a share of what the daily range alone suggests: rain means cloud [-]. */
  readonly wetDay: number;
  /** Share of a surface temperature below 0 °C that deep snow takes away [-]. */
  readonly snowCold: number;
  /** Share of a surface temperature above 0 °C that deep snow takes away [-]. */
  readonly snowWarm: number;
}

/**
 * Without rain. Published as a recipe with its eight test vectors: fitted on 50 stations of the U.S. Climate Reference
 * Network (2020), and on parts of Lane County KS, two Irish and four Florida stations and Grand Forks ND.
 */
export const BY_CLIMATE: SoilParameters = {
  c0: -1.01,
  w: 0.06,
  cR: 1.43,
  R0: 2.5,
  V0: 0.6,
  aN: 0.78,
  aV: 0.29,
  aP: 0.41,
  A0: 0.15,
  D: 0.034,
  h: 0.126,
  kf: 0.18,
  wetDay: 1,
  snowCold: 0,
  snowWarm: 0,
};

/**
 * With rain: the same structure, and two things that only rain can tell, cloud on wet days and snow on the ground.
 * Fitted by `npm run accuracy -- DATA --fit` on the 50 stations of the U.S. Climate Reference Network (2020, 5 and 10 cm)
 * and Phoenix Park, Dublin (2003 to 2022, 10 cm, weighing as much as eight stations); rounded. R0, V0, A0 as above.
 */
export const BY_RAIN: SoilParameters = {
  ...BY_CLIMATE,
  c0: 0,
  w: 0.152,
  cR: 1.61,
  aV: 0.23,
  aP: 0.41,
  D: 0.028,
  h: 0.114,
  kf: 0.49,
  wetDay: 0.78,
  snowCold: 0.68,
  snowWarm: 0.81,
};

/** How much faster or slower than in the mixed soils of the fit a soil passes heat on [-]. */
export const TEXTURE_FACTORS = {
  sand: 1.6,
  'loamy-sand': 1.4,
  'sandy-loam': 1.2,
  loam: 1,
  'silt-loam': 1,
  'clay-loam': 0.85,
  clay: 0.75,
  peat: 0.25,
} as const satisfies Record<Texture, number>;
// Derived: moist diffusivities of sand 0.0855, clay 0.0346 and peat 0.0112 m² d⁻¹ (de Vries 1963 and later, in "Transport
// in the Atmosphere-Vegetation-Soil Continuum", Table 2.2) against the geometric middle of sand and clay, 0.0544, which
// stands for the mixed soils of the stations; peat by its table value, the loams between the two by common practice.
// Not measured here: no station of the fit tells its texture.
