/** What the tests of sites share: a publication in a folder of its own, and what publishing it has written. */
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type PublishOptions, publishCommand } from '../../src/shell/publish-site/publish-command.ts';
import { folderWith, keepFeed } from '../kit.ts';

/** A program of two steps for a grass, the first with a window on a date. */
export const program = (id: string, grass: string, opens = '03-20', more = ''): string => `kind: program
version: 1
id: ${id}
name: Program of ${id}
grass: [${grass}]
author: Somebody of ${id}
license: CC-BY-4.0
${more}steps:
  - id: feed
    name: Feed of ${id}
    work: spread
    window: { opens: { date: ${opens} }, closes: { date: 04-20 } }
    apply: { nutrient: { N: 0.9 lb/1000 sqft }, source: common-practice }
    cautions: [Keep it off ${id} walks.]
  - id: late
    name: Late work of ${id}
    work: aerate
    window: { opens: { date: 09-10 }, closes: { date: 09-30 } }
`;

export const publication = (extra = '', places = PLACES): string => `kind: publication
version: 1
id: island-lawns
name: Lawns of Saltwether Island
programs: [fescue.yaml, bluegrass.yaml]
${places}${extra}`;

const PLACES = `places:
  - { id: north-shore, name: North shore, latitude: 39.3562, longitude: -74.9187, grass: tall-fescue }
  - { id: mill, name: The mill, latitude: 39.1, longitude: -74.9, grass: kentucky-bluegrass }
  - { id: abbey, name: "Abbey <b>& well</b>", latitude: 38.9, longitude: -75.1, grass: tall-fescue }
`;

export const BASE = 'base-url: https://lawns.example/green\n';

/** A folder with a publication and its programs. */
export const siteFolder = (text = publication(BASE), files: Readonly<Record<string, string>> = {}): string =>
  folderWith({
    'publish.yaml': text,
    'fescue.yaml': program('fescue', 'tall-fescue'),
    'bluegrass.yaml': program('bluegrass', 'kentucky-bluegrass'),
    ...files,
  });

export interface Report {
  readonly written: readonly string[];
  readonly removed: readonly string[];
  readonly unchanged: number;
  readonly ended: readonly string[];
  readonly lawns: readonly {
    readonly lawn: string;
    readonly owner: string;
    readonly readers: Record<string, string>;
  }[];
  readonly problems: readonly { readonly code: string; readonly line: number | null; readonly file: string | null }[];
}

/** Publishes `publish.yaml` of a folder, into `site` there. */
export function publishIn(cwd: string, asOf = '2027-04-02', options: PublishOptions = {}) {
  const [out, err]: [string[], string[]] = [[], []];
  const code = publishCommand(
    'publish.yaml',
    { asOf, out: 'site', json: true, ...options },
    {
      stdout: (text) => void out.push(text),
      stderr: (text) => void err.push(text),
      cwd,
      now: () => Date.UTC(2027, 3, 2, 12),
      columns: 100,
    },
  );
  const stdout = out.join('');
  for (const [name, text] of filesIn(cwd)) if (name.endsWith('.ics')) keepFeed(text);
  return { code, stdout, stderr: err.join(''), report: (stdout.startsWith('{') ? JSON.parse(stdout) : {}) as Report };
}

/** All files of the site, by their names from its folder. */
export function filesIn(cwd: string, folder = 'site'): ReadonlyMap<string, string> {
  const root = path.join(cwd, folder);
  const found = statSync(root, { throwIfNoEntry: false })
    ? readdirSync(root, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
    : [];
  const names = found.map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)));
  return new Map(names.sort().map((name) => [name, readFileSync(path.join(root, name), 'utf8')]));
}

export const siteFile = (cwd: string, name: string): string => readFileSync(path.join(cwd, 'site', name), 'utf8');

/** Changes a file of the folder. */
export function change(cwd: string, file: string, how: (text: string) => string): void {
  const at = path.join(cwd, file);
  const before = readFileSync(at, 'utf8');
  const after = how(before);
  if (after === before) throw new Error(`nothing changed in ${file}`);
  writeFileSync(at, after);
}

/** Links of a page that lead into the site: where to, from the site's folder. */
export function linksOf(page: string, text: string, base: string | null): string[] {
  const found = [...text.matchAll(/\b(?:href|src)="([^"]*)"/g)].map(([, link = '']) => link.replaceAll('&amp;', '&'));
  return found.flatMap((link) => {
    if (base !== null && link.replace(/^webcal:/, 'https:').startsWith(base)) {
      return [link.replace(/^webcal:/, 'https:').slice(base.length)];
    }
    return /^[a-z]+:/i.test(link) ? [] : [path.posix.join(path.posix.dirname(page), link)];
  });
}
