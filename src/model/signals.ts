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
  readonly usual: { readonly soil5C: readonly (number | null)[]; readonly airMeanC: readonly (number | null)[] };
}
