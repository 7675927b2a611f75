import { dailySummaries } from './daily-summaries.ts';
import type { WeatherFormat } from './format.ts';
import { ghcnDaily } from './ghcn-daily.ts';
import { tidyCsv } from './tidy-csv.ts';
import { uscrnDaily } from './uscrn-daily.ts';

/** The formats of weather files, the first that knows a text reads it; tidy CSV takes what is left. */
export const FORMATS: readonly WeatherFormat[] = [ghcnDaily, uscrnDaily, dailySummaries, tidyCsv];
