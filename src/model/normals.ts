/** Twelve figures, January first. */
export type Monthly = readonly number[];

/** The usual weather of a place and how much it varies, by month. */
export interface MonthlyNormals {
  /** Mean daily minimum of air temperature [°C]. */
  readonly tmin: Monthly;
  /** Mean daily maximum of air temperature [°C]. */
  readonly tmax: Monthly;
  /** Mean precipitation of the month [mm]. */
  readonly precip: Monthly;
  /** Standard deviation of the daily mid-range (Tmin + Tmax) / 2 about its usual course through the year [°C]. */
  readonly sdDaily: Monthly;
  /** Standard deviation from year to year of the month's mean mid-range [°C]. */
  readonly sdMonthly: Monthly;
  /** Correlation of the mid-range's anomaly with that of the day before, 0 to 1. */
  readonly autocorrelation: Monthly;
  /** Share of days with at least 0.25 mm (0.01 in) of precipitation, 0 to 1. */
  readonly wetShare: Monthly;
}
