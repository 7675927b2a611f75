/**
 * How long a site of a thousand places takes, and whether every link of it leads to a file: `npm run bench:publish [places]`. CPU time
 * is that of all threads; where it is much less than the time times the cores, others had the machine.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import path from 'node:path';
import { publishCommand } from '../../src/shell/publish-site/publish-command.ts';
import { root } from '../kit.ts';
import { filesIn, linksOf, type Report } from '../site/kit.ts';

const BASE = 'https://lawns.example/';
const count = Number(process.argv[2] ?? 1000);
const cwd = mkdtempSync(path.join(tmpdir(), 'soilclock-bench-'));
/** A grid of points; no place of that name is there. */
const GRASSES = ['tall-fescue', 'kentucky-bluegrass', 'bermudagrass'];
const rows = Array.from({ length: count }, (_, i) =>
  [
    `place-${i}`,
    `Place ${i}`,
    (33 + (i % 40) / 5).toFixed(2),
    (-95 + Math.floor(i / 40) * 0.8).toFixed(2),
    GRASSES[i % 3],
  ].join(','),
);
writeFileSync(path.join(cwd, 'places.csv'), `id,name,latitude,longitude,grass\n${rows.join('\n')}\n`);
cpSync(path.join(root, 'programs'), path.join(cwd, 'programs'), { recursive: true });
writeFileSync(
  path.join(cwd, 'publish.yaml'),
  `kind: publication
version: 1
id: bench
name: Lawns of ${count} places
base-url: ${BASE}
embed: true
programs: [${['tall-fescue-transition', 'kentucky-bluegrass-cool-humid', 'bermudagrass-transition', 'bermudagrass-warm-humid'].map((id) => `programs/${id}.yaml`).join(', ')}]
places-file: places.csv
`,
);

/** Publishes once, and prints what it took. */
function timed(what: string): void {
  const out: string[] = [];
  const [began, cpu] = [performance.now(), process.cpuUsage()];
  const io = {
    stdout: (text: string) => void out.push(text),
    stderr: (text: string) => void process.stderr.write(text),
  };
  const code = publishCommand(
    'publish.yaml',
    { asOf: '2027-04-02', out: 'site', json: true },
    {
      ...io,
      stderr: (text) => void (/ of \d+ places/.test(text) && io.stderr(text)),
      cwd,
      now: () => Date.now(),
      columns: 100,
      hasScreen: process.stderr.isTTY === true,
    },
  );
  const seconds = (performance.now() - began) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const { written, removed } = JSON.parse(out.join('')) as Report;
  console.log(
    `${what}: ${seconds.toFixed(1)} s, ${((user + system) / 1e6).toFixed(1)} s of CPU; ${written.length} files written, ${removed.length} removed; exit ${code}`,
  );
}

console.log(`${count} places, ${availableParallelism()} cores`);
timed('first run');
timed('again, nothing changed');
const program = path.join(cwd, 'programs/bermudagrass-transition.yaml');
writeFileSync(program, readFileSync(program, 'utf8').replace('name: Pull cores', 'name: Pull cores of soil'));
timed('after an edit of one program of four');

const files = filesIn(cwd);
const links = [...files].flatMap(([name, text]) => (name.endsWith('.html') ? linksOf(name, text, BASE) : []));
const broken = links.filter((link) => !files.has(link));
const bytes = [...files.values()].reduce((sum, text) => sum + text.length, 0);
console.log(
  `${files.size} files, ${(bytes / 1e6).toFixed(1)} MB; ${links.length} links, ${broken.length} of them lead nowhere`,
);
rmSync(cwd, { recursive: true });
process.exitCode = broken.length === 0 ? 0 : 1;
