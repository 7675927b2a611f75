/** Watering in after the work. */
export interface WaterIn {
  /** Null where the amount is the label's, and no label entry tells it. */
  readonly depthMm: number | null;
  /** Whole days after the work; null where no time is named. */
  readonly withinDays: number | null;
  /** The last day for it; null without a day of the work, or a time. */
  readonly by: string | null;
  /** Rain observed on whole days after the work, up to the last day for watering; null while none is observed. */
  readonly fallenMm: number | null;
  /** Whether every area that is worked can be watered. */
  readonly irrigated: boolean;
}

/** A reading of the soil that opens a window. */
export interface SoilCheck {
  readonly depthM: number;
  /** The rule in words. */
  readonly rule: string;
}

/** When in the day the work is right: on dry leaves, on wet ones, out of the heat, ending near sunrise, at any hour. */
export type RightHours = 'dry' | 'wet' | 'cool' | 'sunrise' | 'any';
