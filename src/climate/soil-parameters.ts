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
  /** How much more the sun warms a maritime place than one in between, and less a continental one, as a share of cR [-]. */
  readonly maritime: number;
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
  maritime: 0,
  snowCold: 0,
  snowWarm: 0,
};

/**
 * With rain: the same structure, and three things more: cloud on wet days, snow on the ground, and how maritime the place is.
 * Fitted by `npm run accuracy -- DATA --fit` on the 50 stations of the U.S. Climate Reference Network (2020, 5 and 10 cm)
 * and Phoenix Park, Dublin (2003 to 2022, 10 cm, weighing as much as eight stations); rounded. R0, V0, A0 as above.
 * Tried with it and left out, since stations kept out of the fit gained nothing: dew point below Tmin where it is dry,
 * freezing latent heat, green-up of evaporation, snow albedo.
 */
export const BY_RAIN: SoilParameters = {
  ...BY_CLIMATE,
  c0: -0.79,
  w: 0.08,
  cR: 1.607,
  aV: 0.166,
  aP: 0.491,
  D: 0.0259,
  h: 0.1164,
  kf: 0.485,
  wetDay: 0.807,
  maritime: 0.384,
  snowCold: 0.813,
  snowWarm: 0.755,
};

/** Half the usual range of mid-range air temperature over a year at a place in between, and how far from it counts [°C]. */
const MARITIME = { middle: 10, span: 6 } as const;

/**
 * Parameters for one place: the sun's share by how maritime it is.
 *
 * @param amplitude Half the range of the usual mid-range air temperature over a year [°C]; NaN where it is not known.
 * An empirical factor: it stands for what daily extremes do not tell of humidity, wind and cloud. 5.5 °C in Dublin, 16 °C in
 * Minnesota.
 */
export function parametersAt(p: SoilParameters, amplitude: number): SoilParameters {
  const maritime = Math.max(-1, Math.min(1, (MARITIME.middle - amplitude) / MARITIME.span));
  return Number.isNaN(maritime) ? p : { ...p, cR: p.cR * (1 + p.maritime * maritime) };
}

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
