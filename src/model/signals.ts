import type { Cutoff, DegreeDayMethod } from './heat.ts';

/** The soil and the heat on the last observed day, beside what is usual for that day. */
export interface Today {
  readonly date: string | null;
  readonly soil5C: number | null;
  readonly soil10C: number | null;
  readonly degreeDays10C: number | null;
  readonly usual: {
    readonly soil5C: number | null;
    readonly soil10C: number | null;
    readonly degreeDays10C: number | null;
  };
  /** The shortest word on the soil today. */
  readonly title: string;
  readonly lines: readonly string[];
}

/** Which end of a window a rule is of. */
type Edge = 'opens' | 'closes';

/** A temperature that opens or closes the window of a step that is to come. */
export interface SignalThreshold {
  readonly step: string;
  readonly edge: Edge;
  readonly of: 'soil' | 'air';
  /** Of the soil; null for the air. */
  readonly depthM: number | null;
  /** Which of the day's temperatures. */
  readonly stat: 'min' | 'mean' | 'max';
  /** Over how many days its mean is taken. */
  readonly meanDays: number;
  readonly valueC: number;
  readonly direction: 'rises' | 'falls';
}

/** Degree days as a step's rule counts them, and the sums that open or close windows of steps to come [°C·d]. */
export interface HeatSignal {
  readonly baseC: number;
  readonly upperC: number | null;
  readonly method: DegreeDayMethod;
  readonly cutoff: Cutoff | null;
  readonly of: 'air' | 'soil';
  readonly depthM: number | null;
  /** The day from which it is counted. */
  readonly from: string;
  /** Sums from the season's `start` on; null before `from`. */
  readonly sums: readonly (number | null)[];
  /** The sums of the forecast's days, which follow the observed ones. */
  readonly forecast: readonly (number | null)[];
  /** The mean sums of past years, for the whole season. */
  readonly usual: readonly (number | null)[];
  readonly reaches: readonly { readonly step: string; readonly edge: Edge; readonly sumC: number }[];
}

/** Daily values from `start` on: observed up to the last observed day, usual for the whole season. */
export interface Signals {
  readonly start: string;
  readonly soil5C: readonly (number | null)[];
  readonly airMeanC: readonly (number | null)[];
  /** Where the weather of the season's days comes from, in runs of days. */
  readonly provenance: readonly {
    readonly from: string;
    readonly to: string;
    readonly kind: 'observed' | 'filled' | 'forecast' | 'past-year' | 'generated';
  }[];
  /** The days after the observed ones, as far as a forecast goes; none without one. */
  readonly forecast: { readonly soil5C: readonly (number | null)[]; readonly airMeanC: readonly (number | null)[] };
  /** Means of past years; between P10 and P90 lie 8 of 10 of them. */
  readonly usual: {
    readonly soil5C: readonly (number | null)[];
    readonly airMeanC: readonly (number | null)[];
    readonly soil5CP10: readonly (number | null)[];
    readonly soil5CP90: readonly (number | null)[];
  };
  readonly thresholds: readonly SignalThreshold[];
  readonly heat: readonly HeatSignal[];
}
