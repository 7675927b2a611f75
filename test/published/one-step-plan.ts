/** What the published amounts and areas share: the command on a lawn with one area and a program with one step. */
import type { Application } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

/** Twelve invented years up to the day of the plan; only dates hang on them, not amounts. */
const weather = inventedWeather('2015-01-01', '2027-01-31');

export interface OneStep {
  /** The shape as YAML, such as `{ rectangle: [50 ft, 20 ft] }`. */
  readonly area: string;
  readonly analysis: string;
  /** What the step puts down, as YAML; the product is called `bag`. */
  readonly apply: string;
}

/** The one application that `soilclock plan --json` prints. */
export async function planOneStep({ area, analysis, apply }: OneStep): Promise<Application> {
  const step = `  - id: feed
    name: Feed
    work: spread
    window: { opens: { date: 05-01 }, closes: { date: 05-31 } }
    apply: ${apply}
`;
  const products = `products: [{ id: bag, form: granular, analysis: ${analysis} }]\n`;
  const cwd = folderWith({
    'program.yaml': programText(step),
    'lawn.yaml': lawnText(`${products}areas: { front: ${area} }\n`),
    'weather.csv': weather,
  });
  const { stdout, stderr } = await soilclock(cwd, [
    'plan',
    'lawn.yaml',
    '--json',
    '--as-of',
    '2027-02-01',
    '--dry-run',
  ]);
  const [application] = JSON.parse(stdout).applications ?? [];
  if (!application) throw new Error(stderr || stdout);
  return application;
}
