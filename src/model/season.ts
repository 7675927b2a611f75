import type { Problem } from '../base/problem.ts';
import type { RightHours, SoilCheck, WaterIn } from './around-work.ts';
import type { Limit } from './limit.ts';
import type { Work } from './program.ts';
import type { Signals, Today } from './signals.ts';
import type { Direction } from './walk.ts';

/**
 * The whole resolved plan as plain data: what `plan --json` prints and every output is made from.
 * Days are `YYYY-MM-DD`, instants `YYYY-MM-DDTHH:MM:SSZ`; a unit stands in its key; absent is null, never left out.
 */
export interface Season {
  readonly kind: 'season';
  readonly version: 1;
  readonly lawn: string;
  readonly lawnName: string;
  readonly program: string;
  readonly programName: string;
  readonly asOf: string;
  readonly timezone: string;
  readonly feedKey: string;
  /** Minutes before a job at which the lawn file wants a reminder. */
  readonly remindersMin: readonly number[];
  readonly display: { readonly units: 'us' | 'metric'; readonly language: string; readonly currency: string };
  readonly season: { readonly year: number; readonly start: string; readonly end: string };
  readonly weather: {
    readonly observedThrough: string | null;
    readonly forecastThrough: string | null;
    readonly traces: number;
    /** Whether the years ahead were made by a generator, for want of past ones. */
    readonly generated: boolean;
    readonly sources: readonly string[];
  };
  readonly now: readonly string[];
  /** What has moved against the usual, and the soil and heat behind it. */
  readonly moved: readonly string[];
  readonly today: Today;
  /** What the lawn's sprayer puts down; null where the lawn names none. */
  readonly sprayer: SprayerPlan | null;
  readonly applications: readonly Application[];
  readonly shopping: readonly Purchase[];
  /** What the journal has left of what was counted; kg or litres, the other null. */
  readonly shelf: readonly { readonly product: string; readonly kg: number | null; readonly l: number | null }[];
  readonly limits: readonly Limit[];
  readonly signals: Signals;
  readonly problems: readonly Problem[];
}

/** 10th, 50th and 90th percentile of a day over the traces, and the median over whole past years; null where it never comes. */
export interface Spread {
  readonly p10: string | null;
  readonly p50: string | null;
  readonly p90: string | null;
  readonly usual: string | null;
}

export type Status = 'expected' | 'open' | 'due' | 'done' | 'missed' | 'skipped' | 'dropped';

/** A step resolved for a lawn. */
export interface Application {
  readonly id: string;
  readonly name: string;
  readonly work: Work;
  /** The year in which its season begins. */
  readonly season: number;
  /** First and last day of its season, by its own program. */
  readonly seasonSpan: { readonly start: string; readonly end: string };
  readonly status: Status;
  readonly window: { readonly opens: Spread; readonly best: Spread; readonly closes: Spread };
  /** About the last day on which work that has missed its window may still be made good. */
  readonly lateUntil: string | null;
  /** Share of the traces that have a window, 0 to 1. */
  readonly chance: number;
  readonly date: string | null;
  /** The published day that was given up for `date`, and why, in words that follow it; null where none was. */
  readonly moved: { readonly from: string; readonly reason: string } | null;
  /** The first published day that passed without the work being done. */
  readonly dueSince: string | null;
  readonly start: string | null;
  readonly end: string | null;
  /** Which hours of the day suit the work. */
  readonly hours: RightHours;
  /** Share of all traces whose window holds the chosen day. */
  readonly inWindow: number | null;
  readonly why: readonly string[];
  /** The one of them that says why the chosen day, with its odds; null where no day is chosen. */
  readonly whyNow: string | null;
  readonly notJudged: readonly string[];
  /** How to put it down, line by line; of a step that is over only what still helps, mostly nothing. */
  readonly how: readonly string[];
  readonly cautions: readonly string[];
  /** Where the step's figures come from, a line each. */
  readonly sources: readonly string[];
  readonly areas: readonly AreaAmount[];
  /** The areas that the journal says are done. */
  readonly areasDone: readonly string[];
  /** Areas that have had the first of two passes alone, with what is left for the second; `areas` has both. */
  readonly secondPasses: readonly SecondPass[];
  /** What is put down in all; of work that is partly done, what is still to come. */
  readonly totals: readonly Total[];
  /** What soil tests ask for, an entry an area, where the step goes by them. */
  readonly soilTest: readonly AskedByTest[];
  /** How the sprayer's tanks are filled for it; none where nothing is sprayed, the step is over, or the lawn names no sprayer. */
  readonly tanks: readonly Tank[];
  /** The same in words: "20.7 lb"; null where nothing is or it is not known. */
  readonly inAll: string | null;
  /** What the journal says was done, a line an entry. */
  readonly used: readonly string[];
  readonly nutrientsGPerM2: { readonly N: number; readonly P2O5: number; readonly K2O: number };
  /** The water that the work wants afterwards; null where neither the label entry nor the program asks for any. */
  readonly waterIn: WaterIn | null;
  /** What the label entry says of people and pets on the grass afterwards, word for word; null where it says nothing. */
  readonly reEntry: string | null;
  /** What the soil does where the window opens by it, a reading a trigger. */
  readonly soilChecks: readonly SoilCheck[];
}

export interface AreaAmount {
  readonly id: string;
  readonly areaM2: number;
  readonly product: string | null;
  readonly amountKg: number | null;
  readonly amountL: number | null;
  /** The amount in words, or what to do where it is not known. Null for work without a product. */
  readonly amount: string | null;
  /** What `amount` says to measure off; null where no amount is known. */
  readonly measured: Measured | null;
  readonly passes: readonly Pass[];
}

/** An amount rounded to what a person can measure. */
export interface Measured {
  readonly kg: number | null;
  readonly l: number | null;
  /** Downward for a pesticide and for what a limit holds. */
  readonly rounding: 'nearest' | 'down';
  /** By a measure at hand: half a package, a cup; null where none fits. */
  readonly aid: string | null;
  /** The amount before it was rounded, in words, where that shows. */
  readonly exact: string | null;
}

/** One way over an area with the spreader. */
export interface Pass {
  readonly direction: Direction;
  readonly amountKg: number;
  readonly amount: string;
  /** How far it goes, the turns too, and how often it turns; null where the area is too large for the swath to tell. */
  readonly distanceM: number | null;
  readonly turns: number | null;
}

/** What the second pass is to put on an area: what the first has left, in `passes` the one way. */
export interface SecondPass extends AreaAmount {
  /** The most that the label leaves for it by weight; null where it limits nothing. */
  readonly mostGPerM2: number | null;
  /** What the dial of the usual spreader is to be set to, line by line; none where the lawn file does not tell of it. */
  readonly dial: readonly string[];
}

export interface Total {
  readonly product: string;
  readonly amountKg: number | null;
  readonly amountL: number | null;
}

/** What a soil test asks for on an area, and what is put down of it. Lime counts as pure calcium carbonate. */
export interface AskedByTest {
  readonly area: string;
  readonly what: 'lime' | 'P2O5' | 'K2O';
  /** The day of the test; null where there is none. */
  readonly test: string | null;
  /** Where the amount is from: the laboratory's own figure, the table of acidity; or why there is none. */
  readonly by: 'laboratory' | 'table' | 'enough' | 'no-amount' | 'no-test';
  /** In all, nutrients for the year; null where the test names no amount. */
  readonly askedGPerM2: number | null;
  /** What the journal has put down since. */
  readonly doneGPerM2: number;
  /** What other steps are planned to put down. */
  readonly otherwiseGPerM2: number;
  /** What this step puts down; null where no product is known. */
  readonly nowGPerM2: number | null;
  /** What is still to come after it. */
  readonly leftGPerM2: number;
}

/** A sprayer's output, known or by its test. */
export interface SprayerPlan {
  readonly tankL: number;
  /** What it puts down of the whole mix. */
  readonly outputLPerM2: number;
  /** What a full tank covers. */
  readonly coversM2: number;
  /** Where the output is from: the lawn file, a catch test on a course, or a nozzle test. */
  readonly by: 'file' | 'catch' | 'nozzle';
  /** The pace of a timed catch test; null without. */
  readonly paceSPerM2: number | null;
  /** The speed of a nozzle test; null without. */
  readonly speedMps: number | null;
  /** The same in words. */
  readonly how: readonly string[];
}

/** Tanks of a sprayer that are filled alike: full ones, or the last one. */
export interface Tank {
  /** The areas that are sprayed out of the mix. */
  readonly areas: readonly string[];
  readonly count: number;
  /** What one of them covers. */
  readonly areaM2: number;
  /** What goes into one of them in all. */
  readonly sprayL: number;
  /** The water of it; null where the product's volume is not known, and the water tops it up; 0 where there is no room for any. */
  readonly waterL: number | null;
  readonly productKg: number | null;
  readonly productL: number | null;
  /** The product in words, or what to do where it is not known. */
  readonly amount: string;
  /** The whole fill in words. */
  readonly line: string;
}

export interface Purchase {
  readonly product: string;
  readonly name: string;
  readonly needKg: number | null;
  readonly needL: number | null;
  readonly shelfKg: number | null;
  readonly shelfL: number | null;
  readonly packages: readonly { readonly size: string; readonly count: number }[];
  /** The day of the first work that the shelf does not cover; null where it covers all. */
  readonly neededOn: string | null;
  readonly buyBy: string | null;
  readonly cost: number | null;
  readonly leftKg: number | null;
  readonly leftL: number | null;
  /** What will be left in words; null where nothing is, or it cannot be known. */
  readonly left: string | null;
  /** Whether that is good for the next season (null: only the label tells), and how it is kept. */
  readonly keeps: { readonly nextSeason: boolean | null; readonly how: string } | null;
}
