/**
 * A late spring moves the dates. Weather: Milwaukee WI, NOAA GHCN-Daily (public domain), daily 1961 to August 2026; in
 * the second file 15 February to 19 April 2026 is 3 °C colder. An earlier study of the same soil model gave 3 days for
 * the 50 °F crossing and 12 for 200 degree days (base 50 °F) at this station.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../../src/base/day.ts';
import type { Season } from '../../src/model/season.ts';
import { folderWith, programText, root, sharedFile, soilclock } from '../kit.ts';

const file = sharedFile('data/weather/milwaukee-wi.csv');
const AS_OF = '2026-04-20';
const DEGREE_DAYS = programText(`  - id: heat
    name: 200 degree days above 50 °F
    work: scout
    window: { opens: { degree-days: { base: 50 F, method: single-sine, from: 01-01, reaches: 200 } } }
`);

function changed(text: string, change: (date: string, cells: string[]) => string[] | null): string {
  const [head = '', ...rows] = text.trimEnd().split('\n');
  const kept = rows.flatMap((row) => {
    const cells = row.split(',');
    const found = change(cells[0] ?? '', cells);
    return found ? [found.join(',')] : [];
  });
  return `${[head, ...kept].join('\n')}\n`;
}

const colder = (text: string) =>
  changed(text, (date, [day = '', tmin = '', tmax = '', ...rest]) =>
    date >= '2026-02-15' && date <= '2026-04-19'
      ? [day, String(Number(tmin) - 3), String(Number(tmax) - 3), ...rest]
      : [day, tmin, tmax, ...rest],
  );

async function plan(weather: string, more: readonly string[] = []): Promise<{ season: Season; stdout: string }> {
  const cwd = folderWith({ 'milwaukee.csv': weather, 'heat.yaml': DEGREE_DAYS });
  const lawn = path.join(root, 'programs/demo/lawn.yaml');
  const { stdout } = await soilclock(cwd, [
    'plan',
    lawn,
    '--weather',
    'milwaukee.csv',
    '--as-of',
    AS_OF,
    '--json',
    '--dry-run',
    ...more,
  ]);
  return { season: JSON.parse(stdout), stdout };
}

const opening = ({ season }: { season: Season }, id: string): Day =>
  parseDay(season.applications.find((one) => one.id === id)?.window.opens.p50 ?? '') as Day;

describe.skipIf(file === null)(
  `Milwaukee${file === null ? ' (skipped: the measured weather is not beside the project)' : ''}`,
  () => {
    const text = file === null ? '' : readFileSync(file, 'utf8');

    test('a spring 3 °C colder opens the pre-emergent at least 2 days later', async () => {
      const [real, cold] = [await plan(text), await plan(colder(text))];
      expect(opening(cold, 'summer-annual-barrier') - opening(real, 'summer-annual-barrier')).toBeGreaterThanOrEqual(2);
    });

    test('and brings 200 degree days at least 8 days later', async () => {
      const program = ['--program', 'heat.yaml'];
      const [real, cold] = [await plan(text, program), await plan(colder(text), program)];
      expect(opening(cold, 'heat') - opening(real, 'heat')).toBeGreaterThanOrEqual(8);
    });

    test('nothing dated after the as-of day changes a byte', async () => {
      const whole = await plan(text);
      const cut = await plan(changed(text, (date, cells) => (date <= AS_OF ? cells : null)));
      const other = await plan(
        changed(text, (date, [day = '', tmin = '', tmax = '', ...rest]) =>
          date <= AS_OF ? [day, tmin, tmax, ...rest] : [day, '20', '30', ...rest],
        ),
      );
      expect(cut.stdout).toBe(whole.stdout);
      expect(other.stdout).toBe(whole.stdout);
    });
  },
);
