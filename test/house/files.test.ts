/** What is committed: demo weather that can be made again, a lock file for every platform, nothing of one machine. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { demoWeather } from '../../programs/demo/make-weather.ts';
import { root } from '../kit.ts';

const read = (name: string) => readFileSync(path.join(root, name), 'utf8');

test("the demo's weather is made again byte for byte", () => {
  // Compared as a whole and not by `toBe`, whose message would print eleven thousand lines.
  expect(demoWeather() === read('programs/demo/weather.csv')).toBe(true);
});

describe('package-lock.json', () => {
  interface Lock {
    readonly packages: Record<string, { readonly optional?: boolean; readonly resolved?: string }>;
  }
  const { packages } = JSON.parse(read('package-lock.json')) as Lock;
  const PLATFORMS = ['linux-x64', 'linux-arm64', 'darwin-arm64', 'darwin-x64', 'win32-x64'];
  test.each(
    ['@typescript/typescript', '@biomejs/cli', '@rolldown/binding'].flatMap((tool) =>
      PLATFORMS.map((platform): [string, string] => [tool, platform]),
    ),
  )('carries %s for %s', (tool, platform) => {
    const names = Object.keys(packages).filter((name) => name.startsWith(`node_modules/${tool}-${platform}`));
    expect(names).not.toEqual([]);
    for (const name of names) expect(packages[name]?.optional).toBe(true);
  });
  test('names no address to download from, so that any registry serves', () =>
    expect(Object.entries(packages).filter(([, { resolved }]) => resolved !== undefined)).toEqual([]));
});

describe('no source, test, program or document', () => {
  const TEXT = /\.(ts|cjs|md|ya?ml|json|sh)$|^run$/;
  const FOLDERS = ['src', 'test', 'programs', '.ci'];
  const files = [
    ...readdirSync(root, { encoding: 'utf8' }).filter((name) => TEXT.test(name)),
    ...FOLDERS.flatMap((folder) =>
      readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => TEXT.test(path.basename(name)) && !name.endsWith('.ledger.json'))
        .map((name) => path.join(folder, name)),
    ),
  ];
  const holding = (pattern: RegExp) => files.filter((name) => pattern.test(read(name)));

  test('escaped the walk', () => {
    expect(files.length).toBeGreaterThan(90);
    expect(files).toEqual(
      expect.arrayContaining(['README.md', 'DEVELOPERS.md', 'package.json', 'src/cli.ts', '.ci/run']),
    );
  });
  // Put together from parts, so that this file does not hold them itself.
  test.each([
    ['a path of one machine', ['/', '(work|root|home|Users)', '/[a-z]']],
    ['an address of one network', ['\\b(127', '\\.0|10\\.\\d+|192', '\\.168)\\.\\d+\\.\\d+\\b']],
    ['an address of a package registry', ['registry', '\\.(npmjs|yarnpkg)']],
    ['a word of the place where it was written', ['\\b(C', 'EO|work', 'place|co-?found', 'er|sub-?ag', 'ent)\\b']],
    ['a mark of work left over', ['\\b(TO', 'DO|FIX', 'ME|XX', 'X)\\b']],
  ])('holds %s', (_, parts) => expect(holding(new RegExp(parts.join('')))).toEqual([]));
});
