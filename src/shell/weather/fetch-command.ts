import { formatDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { dayAt, formatInstant } from '../../base/zone.ts';
import { FORECAST_SERVICES, WEATHER_SERVICES } from '../../model/lawn.ts';
import { type WeatherSeries, weatherEnd } from '../../model/weather.ts';
import { readLawn } from '../../read/lawn.ts';
import type { Io } from '../io.ts';
import { exitCode, printProblems } from '../report-problems.ts';
import { whichLawn } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { ask, type Told } from './ask.ts';
import { type Network, realNetwork } from './network.ts';
import { type Part, partsOf, siteOf } from './parts.ts';

export interface FetchCommandOptions {
  readonly offline?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Brings 30 years and the forecast of a lawn's services into the cache, with a line of progress for each part. */
export async function weatherFetchCommand(
  words: readonly string[],
  options: FetchCommandOptions,
  io: Io,
  network: Network = realNetwork,
): Promise<number> {
  const done = (problems: readonly Problem[], parts: readonly object[], lawn: string | null): number => {
    if (options.json)
      io.stdout(`${JSON.stringify({ kind: 'weather-fetch', version: 1, lawn, parts, problems }, null, 2)}\n`);
    printProblems(problems, io);
    return exitCode(problems, options.strict ?? false);
  };
  const asked = whichLawn(words, undefined, io);
  if ('problems' in asked) return done(asked.problems, [], null);
  const { value: lawn, problems: lawnProblems } = readLawn(asked.source.text, asked.source.name, zipLookup);
  if (!lawn) return done(lawnProblems, [], null);
  const site = siteOf(lawn);
  const parts = partsOf(lawn, dayAt(io.now(), site.zone));
  if (parts.length === 0) {
    const named = (words_: readonly string[]) => words_.filter((word) => word !== 'none');
    const none = { services: named(WEATHER_SERVICES), forecasts: named(FORECAST_SERVICES) };
    return done([problem('service-none', none, { file: asked.source.name })], [], lawn.id);
  }
  const problems: Problem[] = [...lawnProblems];
  const brought: object[] = [];
  for (const [i, part] of parts.entries()) {
    io.stderr(`[${bar(i, parts.length)}] ${i + 1} of ${parts.length}: ${part.service.title}, ${wanted(part)} ...\n`);
    // After a failure nobody waits through every retry of what is left.
    const patience = problems.some(({ code }) => code.startsWith('service-')) ? { ...network, retries: 0 } : network;
    const told = await ask(part, site, { offline: options.offline ?? false }, patience, io);
    problems.push(...told.problems);
    const weather = told.answer && 'weather' in told.answer ? told.answer.weather : null;
    const got = weather && told.answer ? { ...part, ...summary(weather, told) } : null;
    if (got && !options.json) io.stdout(`${part.service.title}, ${part.id}: ${inWords(got)}\n`);
    brought.push({ id: part.id, service: part.service.title, ...(weather && told.answer && summary(weather, told)) });
  }
  io.stderr(`[${bar(parts.length, parts.length)}] done\n`);
  return done(problems, brought, lawn.id);
}

const bar = (done: number, all: number): string => '#'.repeat(done * 4).padEnd(all * 4, '.');

const wanted = ({ id, range }: Part): string =>
  id === 'forecast' ? 'forecast' : `${formatDay(range.from)} to ${formatDay(range.to)}`;

interface Summary {
  readonly from: 'network' | 'cache';
  readonly fetchedAt: string;
  readonly first: string;
  readonly last: string;
  readonly days: number;
  readonly missing: number;
}

function summary(weather: WeatherSeries, { from, fetchedAt }: Told): Summary {
  const days = weather.tmin.length;
  const missing = weather.tmin.filter((low, i) => Number.isNaN(low) || Number.isNaN(weather.tmax[i])).length;
  const [first, last] = [formatDay(weather.start), formatDay(weatherEnd(weather) - 1)];
  return { from, fetchedAt: formatInstant(fetchedAt), first, last, days, missing };
}

const inWords = ({ from, fetchedAt, first, last, days, missing }: Summary): string =>
  `${first} to ${last}, ${days} days${missing === 0 ? '' : `, ${missing} of them missing`}, ${
    from === 'network' ? 'fetched' : `from the cache of ${fetchedAt.slice(0, 10)}`
  }`;
