/** A Node that is too old is told so in one line, by the command and by the guard of the npm scripts. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../kit.ts';

/** A Node of major 20 or below: the one named in SOILCLOCK_OLD_NODE, else the machine's own where it is that old. */
function oldNode(): string | null {
  const candidates = [process.env.SOILCLOCK_OLD_NODE ?? '', '/usr/bin/node', '/usr/local/bin/node'];
  const found = candidates.filter(existsSync).find((node) => {
    const { stdout } = spawnSync(node, ['--version'], { encoding: 'utf8' });
    return Number(/^v(\d+)/.exec(stdout ?? '')?.[1] ?? 99) <= 20;
  });
  return found ?? null;
}

const node = oldNode();

describe.skipIf(node === null)(
  node === null ? 'skipped: no Node of major 20 or below is installed' : 'an old Node',
  () => {
    test.each([
      ['the command', ['src/bin.cjs', 'plan']],
      ['the guard of npm start and npm test', ['src/require-node.cjs']],
    ])('is refused by %s in one line with exit code 2', (_, args) => {
      const { status, stdout, stderr } = spawnSync(node ?? '', args, { cwd: root, encoding: 'utf8' });
      expect(status).toBe(2);
      expect(stdout).toBe('');
      expect(stderr.match(/\n/g)).toHaveLength(1);
      expect(stderr).toMatch(/needs Node 22\.18 or newer; this is Node \d+\.\d+\.\d+ \(.+\)\.\n$/);
    });
  },
);

describe('the guard', () => {
  const { scripts, engines } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
    readonly scripts: Record<string, string>;
    readonly engines: { readonly node: string };
  };
  test('stands before npm start and npm test', () => {
    expect(scripts.prestart).toBe('node src/require-node.cjs');
    expect(scripts.pretest).toBe('node src/require-node.cjs');
  });
  test('asks for the Node that package.json asks for', () => {
    const [, major, minor] = /^const needed = \[(\d+), (\d+)\];$/m.exec(
      readFileSync(path.join(root, 'src/require-node.cjs'), 'utf8'),
    )!;
    expect(engines.node).toBe(`>=${major}.${minor}`);
  });
  test('lets this Node pass', () => {
    const { status, stderr } = spawnSync(process.execPath, ['src/require-node.cjs'], { cwd: root, encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });
});

describe.skipIf(process.platform === 'win32')('a reader that has gone', () => {
  test.each([
    ['stdout', `${process.execPath} src/bin.cjs --help | true`],
    ['stderr', `${process.execPath} src/bin.cjs nonsense 2>&1 >/dev/null | true`],
  ])('of %s is no fault', (_, pipe) => {
    const { stderr } = spawnSync('/bin/sh', ['-c', `(${pipe})`], { cwd: root, encoding: 'utf8' });
    expect(stderr).toBe('');
  });
});
