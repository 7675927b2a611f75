/** What `weather show` and `weather degree-days` tell: plain data, as it is printed as JSON. °C and mm unless a key says else; null is not known. */
import type { Problem } from '../base/problem.ts';

/** A value beside what is usual for the day. */
export interface Beside {
  readonly value: number | null;
  readonly usual: number | null;
}

export interface DayReport {
  readonly date: string;
  readonly tminC: Beside;
  readonly tmaxC: Beside;
  readonly precipMm: number | null;
  readonly soil5C: Beside;
}

export interface WeatherReport {
  readonly kind: 'weather';
  readonly version: 1;
  readonly lawn: string;
  readonly asOf: string;
  readonly observedThrough: string;
  readonly forecastThrough: string | null;
  readonly pastYears: number;
  /** Whether those years were made by a generator, for want of past ones. */
  readonly generated: boolean;
  readonly sources: readonly string[];
  /** The last observed day. */
  readonly today: {
    readonly date: string;
    readonly soil5C: Beside;
    readonly soil10C: Beside;
    /** Above 10 °C (50 °F) by single sine. */
    readonly degreeDays10C: Beside;
    readonly degreeDaysFrom: string;
  };
  /** What services model for the soil themselves, beside ours at the same depth and day. */
  readonly serviceSoil: readonly {
    readonly service: string;
    readonly date: string;
    readonly depthCm: number;
    readonly serviceC: number;
    readonly oursC: number | null;
  }[];
  readonly days: readonly DayReport[];
  readonly problems: readonly Problem[];
}

export interface DegreeDaysReport {
  readonly kind: 'degree-days';
  readonly version: 1;
  readonly lawn: string;
  readonly asOf: string;
  readonly method: string;
  /** The scale of base, upper, sums and reaches. */
  readonly unit: 'C' | 'F';
  readonly base: number;
  readonly upper: number | null;
  readonly from: string;
  readonly through: string;
  readonly sum: Beside;
  readonly reaches: {
    readonly sum: number;
    /** The day it was reached; null where that is still to come. */
    readonly date: string | null;
    readonly p10: string | null;
    readonly p50: string | null;
    readonly p90: string | null;
    readonly usual: string | null;
  } | null;
  readonly days: readonly { readonly date: string; readonly day: number | null; readonly sum: number | null }[];
  readonly problems: readonly Problem[];
}
