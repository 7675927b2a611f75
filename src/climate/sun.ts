/** Solar constant [MJ m⁻² min⁻¹]. FAO-56 Eq. 21. */
const SOLAR_CONSTANT = 0.082;

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
  const year = (2 * Math.PI * dayOfYear) / 365;
  const distance = 1 + 0.033 * Math.cos(year); // Eq. 23
  const declination = 0.409 * Math.sin(year - 1.39); // Eq. 24
  const sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination)))); // Eq. 25
  const sum = sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset);
  return ((24 * 60) / Math.PI) * SOLAR_CONSTANT * distance * sum; // Eq. 21
}
