/** The package as somebody else gets it: packed, installed into an empty folder, run. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { folderWith, root } from '../kit.ts';

const pinned = path.join(root, 'node_modules/.bin/node');
const tool = (name: string) => path.join(root, 'node_modules/.bin', name);
/** npm runs by the pinned Node, as it does in an npm script. */
const env = { ...process.env, PATH: `${path.dirname(pinned)}${path.delimiter}${process.env.PATH}` };

const run = (command: string, args: readonly string[], cwd: string): string =>
  execFileSync(command, args, { cwd, env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 2 ** 26 });

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

let tarball: string;
let packed: readonly string[];
let home: string;
const installed = () => path.join(home, 'node_modules/soilclock');

beforeAll(() => {
  // What a plan of the demo and an earlier build leave behind belongs into no package.
  const stale = path.join(root, 'out/lib/no-longer-there.js');
  mkdirSync(path.dirname(stale), { recursive: true });
  writeFileSync(stale, '');
  const folder = folderWith();
  const printed = run('npm', ['pack', '--json', '--pack-destination', folder], root);
  // The build's own lines come first.
  const answer = JSON.parse(printed.slice(printed.search(/^[[{]/m))) as Packed[] | Record<string, Packed>;
  const [one] = Object.values(answer) as Packed[];
  tarball = path.join(folder, one!.filename);
  packed = one!.files.map((file) => file.path);
  home = folderWith({ 'package.json': '{ "name": "home", "private": true, "type": "module" }' });
  run('npm', ['install', '--no-audit', '--no-fund', '--prefer-offline', tarball], home);
});

describe('the tarball', () => {
  test('holds what was built, the command, the programs, the licence and the read-me', () =>
    expect(packed).toEqual(
      expect.arrayContaining([
        'out/lib/cli.js',
        'out/lib/index.js',
        'out/lib/index.d.ts',
        'src/bin.cjs',
        'src/require-node.cjs',
        'programs/tall-fescue-transition.yaml',
        'programs/demo/lawn.yaml',
        'programs/schema/lawn.json',
        'programs/schema/program.json',
        'programs/demo/weather.csv',
        'LICENSE',
        'README.md',
      ]),
    ));
  test('holds no test, no TypeScript source and nothing that plans leave', () =>
    expect(
      packed.filter((name) =>
        /^test|^src\/.*\.ts$|^programs\/schema\/.*\.ts$|\.ledger\.json$|\.part$|^out\/(?!lib\/)/.test(name),
      ),
    ).toEqual([]));
  test('holds nothing of an earlier build', () => expect(packed).not.toContain('out/lib/no-longer-there.js'));
});

/** Plans the demo in the empty folder. */
const plan = (node: string) =>
  spawnSync(node, ['node_modules/.bin/soilclock', 'plan', '--json', '--out', 'out/site'], {
    cwd: home,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });

describe('the installed command', () => {
  const planned = (node: string) => {
    const { status, stdout, stderr } = plan(node);
    expect(status, stderr).toBe(0);
    return JSON.parse(stdout) as Season;
  };
  test('plans the demo under the pinned Node', () => {
    const season = planned(pinned);
    expect(season.kind).toBe('season');
    expect(season.asOf).toBe('2027-04-02');
    expect(season.applications.length).toBeGreaterThan(10);
  });
  test('writes the feed', () => {
    planned(pinned);
    expect(readFileSync(path.join(home, 'out/site/saltwether-lawn.ics'), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/);
  });
  test('gives the same plan as the sources', () => {
    const fromSources = spawnSync(pinned, ['src/bin.cjs', 'plan', '--json', '--dry-run'], {
      cwd: root,
      encoding: 'utf8',
      maxBuffer: 2 ** 26,
    });
    // Weather and problems name files from the folder where the command runs; what changes hangs on the ledger there.
    const comparable = ({ problems: _, weather, changes: __, ...season }: Season & { changes?: unknown }) => ({
      ...season,
      traces: weather.traces,
    });
    expect(comparable(planned(pinned))).toEqual(comparable(JSON.parse(fromSources.stdout) as Season));
  });
  test('runs by its own first line', () => {
    const printed = execFileSync(path.join(home, 'node_modules/.bin/soilclock'), ['--help'], { env, encoding: 'utf8' });
    expect(printed).toContain('Usage: soilclock');
  });

  const oldest = path.join(root, 'out/node-22/node_modules/node/bin/node');
  const has = existsSync(oldest);
  test.skipIf(!has)(
    has ? 'plans the demo under Node 22.23.2, to the same season' : 'skipped: Node 22.23.2 is not in out/node-22',
    () => {
      expect(execFileSync(oldest, ['--version'], { encoding: 'utf8' }).trim()).toBe('v22.23.2');
      expect(planned(oldest)).toEqual(planned(pinned));
    },
  );
});

describe('the installed library', () => {
  test('runs from an import of its name', () => {
    writeFileSync(
      path.join(home, 'use.js'),
      `import { productAmount } from 'soilclock';
console.log(JSON.stringify(productAmount({ nutrient: 'N', rate: '1 lb/1000 sqft' }, '16-4-8', '1000 sqft')));`,
    );
    const { kg } = JSON.parse(run(pinned, ['use.js'], home)) as { kg: number };
    // 1 lb of nitrogen out of a bag of 16 % is 6.25 lb.
    expect(kg).toBeCloseTo(6.25 * 0.45359237, 6);
  });
  test('has type declarations that resolve, checked as strictly as can be', () => {
    writeFileSync(
      path.join(home, 'use.ts'),
      `import { compile, degreeDays, emptyLedger, planSeason } from 'soilclock';
export const heat: number = degreeDays({ tmin: 8, tmax: 20 }, { lower: 10, method: 'single-sine' });
export const events: number = emptyLedger.events.length;
export const feed: string | null = compile({} as Parameters<typeof compile>[0]).feed;
// @ts-expect-error A season is no number: the types are there, and are not \`any\`.
export const wrong: number = planSeason({} as Parameters<typeof planSeason>[0]);
`,
    );
    writeFileSync(
      path.join(home, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          strict: true,
          noEmit: true,
          target: 'es2023',
          module: 'nodenext',
          types: [],
          exactOptionalPropertyTypes: true,
        },
        files: ['use.ts'],
      }),
    );
    const { status, stdout } = spawnSync(tool('tsc'), ['-p', home], { cwd: home, env, encoding: 'utf8' });
    expect(stdout).toBe('');
    expect(status).toBe(0);
  });
  test('carries its version, its licence and no development dependency', () => {
    const manifest = JSON.parse(readFileSync(path.join(installed(), 'package.json'), 'utf8')) as Record<
      string,
      unknown
    >;
    expect(manifest.license).toBe('Apache-2.0');
    expect(existsSync(path.join(home, 'node_modules/vitest'))).toBe(false);
    expect(existsSync(path.join(home, 'node_modules/node'))).toBe(false);
  });
});

describe('the checks of others', () => {
  test('publint finds nothing, counting suggestions as errors', () => {
    const { status, stdout } = spawnSync(tool('publint'), ['--strict', root], { cwd: root, env, encoding: 'utf8' });
    expect(status, stdout).toBe(0);
  });
  test('knip finds no file, export or dependency that nothing uses', () => {
    const { status, stdout } = spawnSync(tool('knip'), [], { cwd: root, env, encoding: 'utf8' });
    expect(stdout.trim()).toBe('');
    expect(status).toBe(0);
  });
});
