import { factorOf, type KilogramsPerSquareMetre } from '../../base/units.ts';

/** What the table is asked for: pH 7.0, 6.5 or 6.0. */
const GOALS: readonly number[] = [7, 6.5, 6];

/**
 * Lime for established turf [lb of calcium carbonate on 1000 ft²] by exchangeable acidity of the Mehlich buffer [meq/100 g],
 * each row for goals of pH 7.0, 6.5 and 6.0.
 * Source: Penn State Agricultural Analytical Services Laboratory, lime recommendations for turf (agsci.psu.edu/aasl).
 * The step from 410 to 460 at 21.9 for pH 6.5 stands so in print.
 */
const ROWS: readonly (readonly [acidity: number, to7: number, to65: number, to6: number])[] = [
  [2.0, 50, 50, 50],
  [2.6, 70, 50, 50],
  [3.3, 70, 50, 50],
  [3.9, 90, 70, 50],
  [4.6, 110, 70, 50],
  [5.2, 110, 90, 50],
  [5.8, 140, 90, 50],
  [6.5, 160, 110, 70],
  [7.1, 160, 110, 90],
  [7.8, 180, 140, 90],
  [8.4, 180, 140, 110],
  [9.0, 210, 160, 110],
  [9.7, 230, 180, 140],
  [10.3, 230, 180, 140],
  [11.0, 250, 210, 160],
  [11.6, 280, 210, 160],
  [12.3, 280, 230, 180],
  [12.9, 300, 250, 180],
  [13.5, 320, 250, 210],
  [14.2, 320, 280, 210],
  [14.8, 340, 280, 230],
  [15.5, 370, 300, 230],
  [16.1, 370, 320, 250],
  [16.8, 390, 320, 250],
  [17.4, 390, 340, 280],
  [18.0, 410, 340, 280],
  [18.7, 440, 370, 300],
  [19.3, 440, 390, 300],
  [20.0, 460, 390, 320],
  [20.6, 480, 410, 320],
  [21.2, 480, 410, 340],
  [21.9, 510, 460, 340],
  [22.5, 530, 460, 370],
  [23.2, 530, 460, 370],
  [23.8, 550, 480, 390],
  [24.5, 570, 480, 390],
  [25.1, 570, 510, 410],
  [25.7, 600, 530, 410],
];

/** Where the figures of the table are printed. */
export const LIME_TABLE_SOURCE =
  'Penn State Agricultural Analytical Services Laboratory, lime recommendations for turf, by exchangeable acidity (agsci.psu.edu/aasl).';

/**
 * Lime that a soil's acidity asks for.
 *
 * Between two rows the straight line is taken, since the table does not say (common practice). It ends at 2.0 and 25.7.
 *
 * @param acidity Exchangeable acidity of the Mehlich buffer [meq/100 g].
 * @param goal pH 6.0, 6.5 or 7.0.
 * @returns Calcium carbonate [kg/m²]; null for another goal, or an acidity that the table does not hold.
 * Source: `LIME_TABLE_SOURCE`.
 * @example limeByAcidity(7.1, 6.5) //=> 110 lb/1000 ft² in kg/m²
 */
export function limeByAcidity(acidity: number, goal: number): KilogramsPerSquareMetre | null {
  const column = GOALS.indexOf(goal);
  const above = ROWS.find(([row]) => row >= acidity);
  const below = ROWS.findLast(([row]) => row <= acidity);
  if (column < 0 || !above || !below) return null;
  const [from, to] = [below[column + 1] as number, above[column + 1] as number];
  const share = above === below ? 0 : (acidity - below[0]) / (above[0] - below[0]);
  return ((from + share * (to - from)) * factorOf('lb')) / (1000 * factorOf('sqft'));
}
