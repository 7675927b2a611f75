import type { CubicMetresPerSquareMetre, Days, Metres, MetresPerSecond, SquareMetres } from '../../base/units.ts';
import type { CatchTest, NozzleTest, Sprayer } from '../../model/sprayer.ts';

const SECONDS_PER_DAY = 86_400;

/**
 * What a sprayer puts down, by what it puts on a measured course. On one of 1/128 acre, 340.3 ft², the fluid ounces caught are
 * gallons per acre, since a gallon has 128 of them; extension services print 340 ft², paced as 18.5 × 18.5 ft (342.25), 10 × 34 ft
 * (340) or 1.5 × 228 ft (342): up to 0.6 % off.
 *
 * @param course Size of the course [m²].
 * @param caught What all its nozzles gave into a bucket [m³], in the time that the course took.
 * @param time, caughtIn Where the bucket was held for another time: that of the course and that of the bucket, in one unit.
 * @returns Output [m³/m²].
 * Source: Larimer County CO and Albany County WY weed districts; extension slides (slidegur 5284).
 * @example outputByCourse({ course: factorOf('acre') / 128, caught: 40 * factorOf('floz') }) //=> 40 gal/acre in m³/m²
 */
export function outputByCourse({ course, caught, time = 1, caughtIn = time }: CatchTest): CubicMetresPerSquareMetre {
  return (caught * time) / (caughtIn * course);
}

/**
 * Speed over a measured run. In miles an hour it is ft × 60 / (s × 88).
 * Source: University of Florida IFAS, Marion County (2017).
 */
export const speedOver = (run: Metres, time: Days): MetresPerSecond => run / (time * SECONDS_PER_DAY);

/**
 * What a sprayer puts down, by what one nozzle gives and how fast it goes over its band. In gallons per acre it is
 * 5940 × gal/min / (mph × spacing in inches): 43,560 ft² × 12 in / 88 ft/min, exactly. In litres per hectare it is
 * 60,000 × L/min / (km/h × spacing in cm).
 *
 * @param test Caught of one nozzle [m³] in a time [d]; its band, the distance to the next nozzle [m]; a timed run [m, d].
 * @returns Output [m³/m²].
 * Source: University of Florida IFAS, Marion County (2017); Albany County WY.
 */
export function outputByNozzle(test: NozzleTest): CubicMetresPerSquareMetre {
  const flow = test.caught / (test.in * SECONDS_PER_DAY);
  return flow / (speedOver(test.run, test.time) * test.spacing);
}

/** What a sprayer puts down on each square metre [m³/m²], as the lawn file knows it or by its test. */
export function outputOf({ output, catchTest, nozzleTest }: Sprayer): CubicMetresPerSquareMetre {
  if (catchTest) return outputByCourse(catchTest);
  if (nozzleTest) return outputByNozzle(nozzleTest);
  return output as CubicMetresPerSquareMetre;
}

/** The pace of a timed catch test: time for an area [d]; null where the course was not timed. */
export const timeFor = ({ course, time }: CatchTest, area: SquareMetres): Days | null =>
  time === undefined ? null : (time * area) / course;
