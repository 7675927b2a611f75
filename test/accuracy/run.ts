/**
 * Measures the soil model against stations: `npm run accuracy -- DATA [--json] [--fit] [--odds] [--foreseen]`.
 *
 *   1  read the stations                               stations.ts
 *   2  predict: model as shipped, recipe, 5-day air    predict.ts
 *   3  refit without the stations scored               refits.ts, fit.ts, prepared.ts
 *   4  score temperatures and dates                    score.ts, dates.ts
 *   5  the lawn's thermometer                          thermometer.ts
 *   6  print                                           report-scores.ts, report-dates.ts, report-rest.ts
 *
 * With --fit it only refits on all stations and prints the parameters; with --odds it plans past seasons again instead and
 * judges what the plans said (odds/); with --foreseen it measures what a median one week ahead would be worth, had the plan
 * known the days to come.
 */
import { parseArgs } from 'node:util';
import { siteOffset } from '../../src/climate/thermometer.ts';
import { dateErrors } from './dates.ts';
import { FORESEEN, FORESEEN_HEADING, foreseenRow } from './odds/foreseen.ts';
import { oddsText } from './odds/report.ts';
import { allOdds } from './odds/seasons.ts';
import { byAir, byClimate, byElevenDays, byModel, modelled, type Predict } from './predict.ts';
import { folds, type Refitted, refitAll, regions } from './refits.ts';
import { dateSummaries, dateSummaryText, stationDates } from './report-dates.ts';
import { fitText, refitText, thermometerText } from './report-rest.ts';
import { scoreSummary, stationScores, summaries } from './report-scores.ts';
import { scoresOf } from './score.ts';
import { type Station, stationsIn, withRain } from './stations.ts';
import { thermometer } from './thermometer.ts';

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean', default: false },
    fit: { type: 'boolean', default: false },
    odds: { type: 'boolean', default: false },
    foreseen: { type: 'boolean', default: false },
  },
});
const [folder] = positionals;
if (folder === undefined) {
  process.stderr.write('Which data? npm run accuracy -- ../shared/data\n');
  process.exit(2);
}
const progress = (text: string) => process.stderr.write(`${text}${process.stderr.isTTY ? '\r' : '\n'}`);
const print = (text: string) => process.stdout.write(text);
type Named = { readonly label: string; readonly hold?: number };
const eventName = ({ label, hold }: Named) => (hold === undefined ? label : `${label}, held ${hold} d`);
/** JSON names a station and an event instead of spelling them out. */
const named = (key: string, value: unknown) =>
  key === 'station' ? (value as Station).name : key === 'event' ? eventName(value as Named) : value;

if (options.odds) {
  const { triggers, choices } = await allOdds(folder, (done, all) => progress(`planned ${done} of ${all} seasons`));
  print(options.json ? `${JSON.stringify({ triggers, choices })}\n` : oddsText(triggers, choices));
  process.exit();
}

if (options.foreseen) {
  print(FORESEEN_HEADING);
  for (const days of FORESEEN) {
    const told = { leads: [1], foreseen: days, triggersOnly: true };
    const { triggers } = await allOdds(folder, (done, all) => progress(`${days} d: ${done} of ${all} seasons`), told);
    print(foreseenRow(days, triggers));
  }
  process.exit();
}

progress('reading stations');
const stations = stationsIn(folder);

if (options.fit) {
  progress('fitting to all stations');
  const [fit] = await refitAll(folder, [{ label: 'all', leftOut: [] }], () => {});
  if (fit) print(options.json ? `${JSON.stringify(fit, null, 1)}\n` : fitText(fit, stations));
} else {
  const jobs = [...folds(stations), ...regions(stations)];
  const refits = await refitAll(folder, jobs, (done) => progress(`fitted ${done} of ${jobs.length}`));
  const byFold = refits.filter(({ label }) => label.startsWith('fold') || label === 'Ireland');
  const byRegion = refits.filter(({ label }) => !label.startsWith('fold'));
  const unseen = (fits: readonly Refitted[]) => (station: Station) =>
    modelled(withRain(station), fits.find(({ leftOut }) => leftOut.includes(station.id))?.parameters);

  progress('scoring');
  const ways: { name: string; predict: Predict }[] = [
    { name: 'shipped', predict: byModel((station) => modelled(station)) },
    { name: 'five-fold', predict: byModel(unseen(byFold)) },
    { name: 'region out', predict: byModel(unseen(byRegion)) },
    { name: '5-day air', predict: byAir },
  ];
  const recipe = { name: 'recipe', scores: scoresOf(stations, byClimate) };
  const scored = ways.map(({ name, predict }) => ({ name, scores: scoresOf(stations, predict) }));
  const dated = ways.map(({ name, predict }) => ({ name, errors: dateErrors(stations, predict) }));
  const readings = [
    { name: 'shipped', results: thermometer(stations, (station) => modelled(station), siteOffset) },
    { name: 'five-fold', results: thermometer(stations, unseen(byFold), siteOffset) },
  ];
  const elevenDays = { name: '11-day air', scores: scoresOf(stations, byElevenDays) };
  const all = [...scored, elevenDays, recipe];
  if (options.json) {
    const data = {
      scores: all,
      summaries: summaries(all),
      dates: dated,
      dateSummaries: dateSummaries(dated),
      refits,
      thermometer: readings,
    };
    print(`${JSON.stringify(data, named, 1)}\n`);
  } else {
    print(stationScores(scored) + stationDates(dated) + scoreSummary(all) + dateSummaryText(dated));
    print(refitText(scored, byFold, byRegion) + thermometerText(readings));
  }
}
