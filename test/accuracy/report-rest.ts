/** Refits and the thermometer as text. */
import { BY_RAIN, type SoilParameters } from '../../src/climate/soil-parameters.ts';
import { byModel, modelled } from './predict.ts';
import type { Refitted } from './refits.ts';
import { type Scored, scoreSummary } from './report-scores.ts';
import { type StationScore, scoresOf, summaryOf } from './score.ts';
import { REGIONS, type Station, withRain } from './stations.ts';
import { heading, num, signed } from './tables.ts';
import type { ThermometerResult } from './thermometer.ts';

const NAMES = ['c0', 'w', 'cR', 'aV', 'aP', 'D', 'h', 'kf', 'wetDay', 'maritime', 'snowCold', 'snowWarm'] as const;
const numbers = (p: SoilParameters) =>
  NAMES.map((name) => num(p[name], name === 'D' || name === 'h' ? 7 : 6, 3)).join('');
const header = NAMES.map((name) => name.slice(0, 5).padStart(name === 'D' || name === 'h' ? 7 : 6)).join('');

/** The stations left out of each fit, scored by it and as shipped. */
export function refitText(
  scored: readonly Scored[],
  byFold: readonly Refitted[],
  byRegion: readonly Refitted[],
): string {
  const [shipped, fold, region] = scored as [Scored, Scored, Scored];
  const rows = (fits: readonly Refitted[], way: Scored) =>
    fits.map(({ label, leftOut }) => {
      const of = ({ scores }: Scored, depth: number) => {
        const some = scores.filter((one) => one.depth === depth && leftOut.includes(one.station.id));
        return some.length === 0 ? undefined : summaryOf(some);
      };
      const cells = (depth: number) => {
        const [a, b] = [of(way, depth), of(shipped, depth)];
        return a && b
          ? ` |${num(a.rmse, 7, 3)}${num(b.rmse, 8, 3)}${num(a.pooled, 8, 3)}${signed(a.bias, 7, 2)}`
          : ` |${'-'.padStart(7)}${'-'.padStart(8)}${'-'.padStart(8)}${'-'.padStart(7)}`;
      };
      return `${label.padEnd(23)}${num(leftOut.length, 3, 0)}${cells(5)}${cells(10)}\n`;
    });
  const median = (way: Scored, depth: number) =>
    summaryOf(way.scores.filter((one: StationScore) => one.depth === depth && one.station.weight === 1)).rmse;
  const against = (way: Scored) =>
    [5, 10]
      .map(
        (depth) => `${depth} cm ${median(way, depth).toFixed(3)} against ${median(shipped, depth).toFixed(3)} shipped`,
      )
      .join(', ');
  const parameters = [...byFold, ...byRegion.filter(({ label }) => label !== 'Ireland')];
  return `${heading('c. Fitted without the stations scored')}                             | 5 cm                         | 10 cm
left out                  n | refit shipped  pooled   bias | refit shipped  pooled   bias
${rows(byFold, fold).join('')}
${rows(byRegion, region).join('')}
Median, five-fold: ${against(fold)}.
Median, region left out: ${against(region)}.
Phoenix Park weighs as much as eight stations and is in every fit but its own, which scores it.
Refits count rain wherever it is known; as shipped, two stations with too little run by climate.
${Object.entries(REGIONS)
  .map(([name, states]) => `${name}: ${states.join(' ')}.`)
  .join('\n')}

parameters without     ${header}
shipped                ${numbers(BY_RAIN)}
${parameters.map(({ label, parameters: p }) => `${label.padEnd(23)}${numbers(p)}`).join('\n')}
`;
}

/** A fit to all stations, beside what ships. */
export function fitText(fit: Refitted, stations: readonly Station[]): string {
  const way = (name: string, p: SoilParameters) => ({
    name,
    scores: scoresOf(
      stations,
      byModel((station) => modelled(withRain(station), p)),
    ),
  });
  return `${heading('d. Fitted to all stations')}            ${header}
fitted      ${numbers(fit.parameters)}
shipped     ${numbers(BY_RAIN)}

${NAMES.map((name) => `  ${name}: ${Number(fit.parameters[name].toPrecision(4))},`).join('\n')}

Weighted mean RMSE ${fit.rmse.toFixed(4)} °C. Rain counted wherever it is known.
${scoreSummary([way('fitted', fit.parameters), way('shipped', BY_RAIN)])}`;
}

export function thermometerText(
  ways: readonly { readonly name: string; readonly results: readonly ThermometerResult[] }[],
): string {
  const lines = ways.flatMap(({ name, results }) =>
    results.map(
      ({ label, cases, ...one }) =>
        `${name.padEnd(11)}${label.padEnd(36)}${num(cases.length, 3, 0)}${num(one.medianWithout, 9, 3)}` +
        `${num(one.medianWith, 7, 3)}${num(one.meanWithout, 9, 3)}${num(one.meanWith, 7, 3)}${num(one.better, 8, 0)}`,
    ),
  );
  return `${heading('e. Six thermometer readings between February and May: RMSE [°C]')}                                                  median case      mean of cases     cases
parameters scored                                n  without   with  without   with  better
${lines.join('\n')}
Readings: measured soil and a slip of 0.5 °C (sd) on six days drawn at random, 20 draws each.
`;
}
