/** How a long run goes: what it shows, what a run that ended in between leaves, and a thread that fails. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { parseDay } from '../../src/base/day.ts';
import { progressOf } from '../../src/shell/publish-site/progress.ts';
import { WorkerFailed, workersFor, workOnThreads } from '../../src/shell/publish-site/workers.ts';
import { LONG, tidy } from '../kit.ts';
import { BASE, change, filesIn, publication, publishIn, siteFile, siteFolder } from './kit.ts';

afterAll(tidy);

/** What is shown of 300 places that take 10 s. */
function shown(hasScreen: boolean): string[] {
  const out: string[] = [];
  let now = 0;
  const progress = progressOf('places', 300, {
    stdout: () => {},
    stderr: (text) => void out.push(text),
    cwd: '.',
    now: () => now,
    columns: 100,
    hasScreen,
  });
  for (let done = 1; done <= 300; done++) {
    now += 100 / 3;
    progress(done);
  }
  return out;
}

describe('progress', () => {
  test('is a line every tenth where there is no screen', () => {
    expect(shown(false).length).toBe(10);
    expect(shown(false)[0]).toBe('30 of 300 places, 1 s\n');
  });
  test('is a bar that grows in its line on a screen', () => {
    const lines = shown(true);
    expect(lines.length).toBeGreaterThan(20);
    expect(lines.every((line) => /^\r\[#*\.*\] \d+ of 300 places, \d+ s\n?$/.test(line))).toBe(true);
    expect(lines.at(-1)).toMatch(/^\r\[#{30}\] 300 of 300 places, 10 s\n$/);
  });
});

describe('threads', LONG, () => {
  test('are started for many places alone', () => expect([workersFor(3), workersFor(1000) >= 2]).toEqual([0, true]));
  test('one that fails is told, and nobody waits for it', () => {
    const publication = { id: 'p', name: 'P', baseUrl: null, embed: false, changelog: [], display: {} };
    const input = {
      publication,
      programs: [],
      stations: [],
      asOf: parseDay('2027-04-02') ?? 0,
      revisedAt: '2027-04-02T00:00:00Z',
    };
    const job = {
      id: 'a',
      name: 'A',
      latitude: 39,
      longitude: -75,
      grass: 'tall-fescue',
      program: 7,
      readings: null,
      station: null,
    } as const;
    const work = {
      count: 1,
      jobAt: () => ({ kind: 'place', job, state: null }) as const,
      take: () => {},
      alive: () => {},
    };
    expect(() => workOnThreads(work, input, 2)).toThrow(WorkerFailed);
  });
});

describe('a run that ended between a ledger and its files', LONG, () => {
  test('is made good by the next, and no number falls', () => {
    const cwd = siteFolder();
    publishIn(cwd, '2027-04-02');
    const old = filesIn(cwd);
    change(cwd, 'fescue.yaml', (text) => text.replace('Feed of fescue', 'First feed'));
    publishIn(cwd, '2027-04-03');
    const whole = filesIn(cwd);
    for (const [name, text] of old) writeFileSync(path.join(cwd, 'site', name), text);
    publishIn(cwd, '2027-04-03');
    expect(filesIn(cwd)).toEqual(whole);
  });
  test('has left no file that the ledger does not know', () => {
    const cwd = siteFolder();
    publishIn(cwd, '2027-04-02');
    const { files } = JSON.parse(readFileSync(path.join(cwd, 'publish.ledger.json'), 'utf8')) as { files: string[] };
    expect(files).toEqual([...filesIn(cwd).keys()].sort());
  });
});

test('a site in Spanish is in Spanish, metric where that is asked', LONG, () => {
  const cwd = siteFolder(publication(`${BASE}display: { units: metric, language: es-ES }\nembed: true\n`));
  publishIn(cwd);
  const page = siteFile(cwd, 'mill/index.html');
  expect(page).toContain('<html lang="es-ES">');
  expect(page).toContain('Qué toca ahora');
  expect(page).not.toMatch(/What now|What to do|Take care|Follow it/);
  expect(siteFile(cwd, 'index.html')).toContain('Busque su lugar');
});
