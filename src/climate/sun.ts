/** Solar constant [MJ m⁻² min⁻¹]. FAO-56 Eq. 21. */
const SOLAR_CONSTANT = 0.082;

/** Inverse relative distance to the sun [-] and its declination [rad]. FAO-56 Eqs. 23, 24. */
export function sunOn(dayOfYear: number): { distance: number; declination: number } {
  const year = (2 * Math.PI * dayOfYear) / 365;
  return { distance: 1 + 0.033 * Math.cos(year), declination: 0.409 * Math.sin(year - 1.39) };
}

/** Hour angle of sunset [rad] at a latitude [rad]: 0 in the polar night, π in the polar day. FAO-56 Eq. 25. */
export const sunsetAngle = (phi: number, declination: number): number =>
  Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination))));

/**
 * Extraterrestrial radiation on a horizontal surface.
 *
 * @param latitude [°], north positive.
 * @param dayOfYear 1 to 366.
 * @returns Daily sum [MJ m⁻² d⁻¹]; 0 in the polar night.
 * Source: Allen, Pereira, Raes, Smith (1998), Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, Eqs. 21-25.
 * @example extraterrestrialRadiation(-20, 246) //=> 32.19 (FAO-56 Example 8 prints 32.2)
 */
export function extraterrestrialRadiation(latitude: number, dayOfYear: number): number {
  const phi = (latitude * Math.PI) / 180; // Eq. 22
  const { distance, declination } = sunOn(dayOfYear);
  const sunset = sunsetAngle(phi, declination);
  const sum = sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset);
  return ((24 * 60) / Math.PI) * SOLAR_CONSTANT * distance * sum; // Eq. 21
}

/**
 * Extraterrestrial radiation through a year, by day of the year, 1 to 366 [MJ m⁻² d⁻¹].
 *
 * @param latitude [°], north positive.
 */
export function radiationThroughYear(latitude: number): Float64Array {
  if (through?.latitude !== latitude)
    through = {
      latitude,
      values: Float64Array.from({ length: 367 }, (_, day) => extraterrestrialRadiation(latitude, day)),
    };
  return through.values;
}

/** A plan asks for it for every day of every trace, all at one latitude. */
let through: { readonly latitude: number; readonly values: Float64Array } | null = null;

/**
 * Hours between the geometric rise and set of the sun's centre, as sunshine hours are compared with.
 *
 * @param latitude [°], north positive.
 * @param dayOfYear 1 to 366.
 * @returns N [h], 0 to 24. Refraction and the sun's disc are left out, which make the day that one sees 7 to 12 minutes
 *   longer up to 45°, and Eq. 24 is a fraction of a degree off; together 0 to 19 minutes (`dayLengthOn`).
 * Source: FAO-56 Eq. 34.
 * @example daylightHours(-20, 246) //=> 11.67 (FAO-56 Example 9 prints 11.7)
 */
export const daylightHours = (latitude: number, dayOfYear: number): number =>
  (24 / Math.PI) * sunsetAngle((latitude * Math.PI) / 180, sunOn(dayOfYear).declination);
