/** What the published examples of spreaders share: `soilclock spreader --json` on a lawn with one step. */
import type { SpreaderReport } from '../../src/model/spreader-report.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

/** Only dates hang on the weather, not amounts or ways. */
const weather = inventedWeather('2015-01-01', '2027-01-31');

export interface SpreaderJob {
  /** The spreader as YAML, such as `{ swath: 6 ft }`. */
  readonly spreader: string;
  /** The shape as YAML; 1000 ft² when left out. */
  readonly area?: string;
  /** Of the product `bag`; 10-0-0 when left out. */
  readonly analysis?: string;
  /** One product more, as YAML. */
  readonly product?: string;
  /** What the step puts down, as YAML; a pound of nitrogen when left out. */
  readonly apply?: string;
  /** More of the lawn, as YAML at the top level. */
  readonly lawn?: string;
}

/** The folder of a lawn with one feed and one area. */
export function jobFolder({ spreader, area, analysis, product, apply, lawn }: SpreaderJob): string {
  const step = `  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 05-01 }, closes: { date: 05-31 } }
    apply: ${apply ?? '{ nutrient: { N: 1 lb/1000 sqft } }'}
`;
  const more = `products: [{ id: bag, form: granular, analysis: ${analysis ?? '10-0-0'} }${product === undefined ? '' : `, ${product}`}]
areas: { front: ${area ?? '{ rectangle: [50 ft, 20 ft] }'} }
equipment: { spreader: ${spreader} }
${lawn ?? ''}`;
  return folderWith({ 'program.yaml': programText(step), 'lawn.yaml': lawnText(more), 'weather.csv': weather });
}

/** What the command tells of the one step. */
export async function spreaderJob(job: SpreaderJob): Promise<SpreaderReport> {
  const argv = ['spreader', 'lawn.yaml', 'feed', '--json', '--as-of', '2027-02-01'];
  const { stdout, stderr } = await soilclock(jobFolder(job), argv);
  const report = JSON.parse(stdout) as SpreaderReport;
  if (report.kind !== 'spreader') throw new Error(stderr || stdout);
  return report;
}
