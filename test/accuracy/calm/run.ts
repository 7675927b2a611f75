/**
 * Lives seasons of the demo lawn on real weather, 365 plans each: `npm run calm -- DATA [--years 2003,2012] [--stations
 * philadelphia-pa] [--undone] [--json]`.
 *
 *   1  live: every day planned with what was published, and freely    live.ts
 *   2  judge: revisions, moves of days, odds                           judge.ts
 *   3  print, with the aims                                            report.ts
 *
 * Work is done on its day, or with --undone never.
 */
import { parseArgs } from 'node:util';
import { ODDS_STATIONS, recordOf } from '../odds/stations.ts';
import { compared, livesOf } from './judge.ts';
import { live } from './live.ts';
import { calmText, type Judged } from './report.ts';

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    years: { type: 'string', default: '2012,2015' },
    stations: { type: 'string', default: 'philadelphia-pa' },
    undone: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
});
const [folder] = positionals;
if (folder === undefined) {
  process.stderr.write('Which data? npm run calm -- ../shared/data\n');
  process.exit(2);
}
const wanted = options.stations.split(',');
const stations = ODDS_STATIONS.filter(({ id }) => wanted.includes(id));
const years = options.years.split(',').map(Number);
const judged: Judged[] = [];
for (const station of stations) {
  const record = recordOf(station, folder);
  for (const year of years) {
    process.stderr.write(`living ${station.name} ${year}\n`);
    const lived = live(station, record, year, !options.undone);
    judged.push({ name: lived.name, lives: livesOf(lived.calm, year), compared: compared(lived) });
  }
}
process.stdout.write(options.json ? `${JSON.stringify(judged, null, 1)}\n` : calmText(judged));
