/** The rules of the house: who may import whom, what nothing below the shell may touch, how long a file may be. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../kit.ts';

const PURE = ['base', 'model', 'words', 'read', 'climate', 'amounts', 'schedule', 'agronomy', 'emit'];
/** Folder, or file of the top level → the folders that it may import besides itself. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  base: [],
  model: ['base'],
  words: ['base', 'model'],
  read: ['base', 'model'],
  climate: ['base', 'model'],
  amounts: ['base', 'model', 'words'],
  schedule: ['base', 'model', 'words', 'climate', 'amounts'],
  agronomy: ['base', 'model', 'read', 'climate', 'amounts', 'schedule'],
  emit: ['base', 'model', 'words'],
  'measures.ts': PURE,
  'feeds.ts': PURE,
  'places.ts': PURE,
  'link-places.ts': [...PURE, 'places.ts'],
  'compile.ts': [...PURE, 'measures.ts', 'feeds.ts'],
  'replay.ts': [...PURE, 'compile.ts'],
  'index.ts': [...PURE, 'measures.ts', 'compile.ts', 'replay.ts'],
  shell: [...PURE, 'measures.ts', 'places.ts', 'link-places.ts', 'compile.ts', 'index.ts'],
  'cli.ts': [...PURE, 'compile.ts', 'index.ts', 'shell'],
};

const src = path.join(root, 'src');
interface File {
  /** Path from `src`, with slashes. */
  readonly name: string;
  /** The folder below `src`, or the file's own name at the top. */
  readonly home: string;
  readonly text: string;
  readonly imports: readonly string[];
}

/** Static, dynamic, re-exported and type imports alike. */
const IMPORT = /(?:\bfrom|\bimport)\s*\(?\s*['"]([^'"]+)['"]/g;
const withoutComments = (text: string): string =>
  text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(?<![:'"`\\])\/\/.*$/gm, '');

const files: File[] = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .map((name) => name.split(path.sep).join('/'))
  .filter((name) => name.endsWith('.ts'))
  .map((name) => {
    const text = withoutComments(readFileSync(path.join(src, name), 'utf8'));
    return {
      name,
      home: name.split('/')[0]!,
      text,
      imports: [...text.matchAll(IMPORT)].map(([, target]) => target!),
    };
  });

const edges = files.flatMap(({ name, home, imports }) =>
  imports
    .filter((target) => target.startsWith('.'))
    .map((target) => {
      const file = path.posix.join(path.posix.dirname(name), target);
      return { name, home, file, target: file.split('/')[0]! };
    }),
);
/** Everything that has to be the same for the same inputs. */
const pure = files.filter(({ home }) => home !== 'shell' && home !== 'cli.ts');

describe('the walk', () => {
  test('saw at least 60 files', () => expect(files.length).toBeGreaterThanOrEqual(60));
  test('saw at least 150 imports between them', () => expect(edges.length).toBeGreaterThanOrEqual(150));
  test('saw type imports and dynamic imports', () => {
    expect(files.some(({ text }) => /import type .*from '\.\.\/model/.test(text))).toBe(true);
    expect(edges).toContainEqual({
      name: 'shell/commands/plan.ts',
      home: 'shell',
      file: 'shell/plan-command.ts',
      target: 'shell',
    });
  });
  test('saw files in every folder', () =>
    expect([...new Set(files.map(({ home }) => home))].sort()).toEqual(Object.keys(MAY_IMPORT).sort()));
  test('finds every file that is imported', () => {
    const names = new Set(files.map(({ name }) => name));
    expect(edges.filter(({ file }) => !names.has(file))).toEqual([]);
  });
});

describe('imports', () => {
  test.each(Object.keys(MAY_IMPORT))('src/%s imports only what it may', (home) => {
    const wrong = edges.filter(
      (edge) => edge.home === home && edge.target !== home && !MAY_IMPORT[home]?.includes(edge.target),
    );
    expect(wrong.map(({ name, file }) => `${name} imports ${file}`)).toEqual([]);
  });
  test('go round in no circle', () => {
    const [done, onWay, circles] = [new Set<string>(), [] as string[], [] as string[]];
    const walk = (name: string): void => {
      if (onWay.includes(name)) circles.push([...onWay.slice(onWay.indexOf(name)), name].join(' → '));
      if (done.has(name) || onWay.includes(name)) return;
      onWay.push(name);
      for (const edge of edges) if (edge.name === name) walk(edge.file);
      onWay.pop();
      done.add(name);
    };
    for (const { name } of files) walk(name);
    expect(circles).toEqual([]);
  });
});

describe('below the shell', () => {
  test('no file imports a part of Node', () =>
    expect(
      pure.flatMap(({ name, imports }) =>
        imports.filter((one) => /^node:|^(fs|path|os|url)$/.test(one)).map((one) => `${name} imports ${one}`),
      ),
    ).toEqual([]));
  test.each([
    ['Date.now(', /\bDate\.now\s*\(/],
    ['new Date()', /\bnew\s+Date\s*(\(\s*\)|[^\s(])/],
    ['process.', /\bprocess\s*[.[]/],
    ['console.', /\bconsole\s*[.[]/],
    ['fetch(', /\bfetch\s*\(/],
    ['Math.random', /\bMath\.random\b/],
  ])('no file mentions %s', (_, pattern) =>
    expect(pure.filter(({ text }) => pattern.test(text)).map(({ name }) => name)).toEqual([]),
  );
});

/** Each holds every text of its language, which is one idea. */
const CATALOGUES = ['words/en.ts', 'words/es.ts'];

test('no file of src but a catalogue has more than 250 lines', () => {
  const long = readdirSync(src, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|cjs)$/.test(name) && !CATALOGUES.includes(name))
    .map((name) => ({ name, lines: readFileSync(path.join(src, name), 'utf8').trimEnd().split('\n').length }))
    .filter(({ lines }) => lines > 250);
  expect(long).toEqual([]);
});
