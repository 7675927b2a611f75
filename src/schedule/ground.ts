import type { Day } from '../base/day.ts';
import type { Stress } from '../climate/stress.ts';
import type { Climate } from '../climate/traces.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Program, Step } from '../model/program.ts';
import type { WholePasses } from './progress.ts';

/** A day that was published before. */
export interface PublishedDay {
  readonly season: number;
  readonly step: string;
  readonly day: string;
  readonly dueSince: string | null;
}

/** What programs are placed on. */
export interface Ground {
  readonly program: Program;
  /** The program of an area: its own, or the lawn's. */
  programOf(area: string): Program;
  readonly lawn: Lawn;
  readonly products: ReadonlyMap<string, Product>;
  readonly journal: Journal;
  readonly climate: Climate;
  readonly stress: Stress;
  readonly asOf: Day;
  readonly previous: readonly PublishedDay[];
  readonly isWhole: WholePasses;
  /** Every step of every program of the lawn, by the id it has there. */
  readonly steps: ReadonlyMap<string, Step>;
}
