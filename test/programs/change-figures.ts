/**
 * Changes every figure of every shipped program, one at a time, and tells what notices: `npm run figures`.
 *
 * Each figure slips twice, near and coarse (`slips.ts`); the coarse slip is tried where nothing notices the near one. What
 * notices neither survives; the reason that `cited/` gives for it is printed, and one without a reason is a fault (exit 1).
 * `-- --near` prints those that only the coarse slip betrays as well.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse, parseDocument } from 'yaml';
import { type Cited, figuresOf, rangeOf, whyUnpublished } from './cited.ts';
import { noticedBy } from './notices.ts';
import { PROGRAMS } from './plan-program.ts';
import { type Slip, slipped } from './slips.ts';

/** A program's text with one figure changed. @param at Its place as `figuresOf` names it. */
export function withSlip(text: string, at: string, slip: Slip): string {
  const document = parseDocument(text);
  const [owner = '', ...below] = at.split('.');
  const steps = (parse(text) as { steps: { id: string }[] }).steps;
  const trail = owner === 'nitrogen' ? [owner] : ['steps', steps.findIndex(({ id }) => id === owner)];
  const place = [...trail, ...below.map((key) => (/^\d+$/.test(key) ? Number(key) : key))];
  document.setIn(place, slipped(document.getIn(place) as string | number, slip));
  return String(document);
}

/** Counts by name, printed from the most to the fewest. */
class Counts {
  readonly #counts = new Map<string, number>();

  add(key: string): void {
    this.#counts.set(key, (this.#counts.get(key) ?? 0) + 1);
  }

  print(): void {
    const total = [...this.#counts.values()].reduce((sum, count) => sum + count, 0);
    console.log(`\n${total} figures changed, noticed by`);
    for (const [key, count] of [...this.#counts].sort((a, b) => b[1] - a[1])) {
      const share = `${((100 * count) / total).toFixed(1)} %`;
      console.log(`  ${String(count).padStart(5)}  ${share.padStart(6)}  ${key}`);
    }
  }
}

async function main(): Promise<void> {
  const counts = new Counts();
  let faults = 0;
  for (const file of readdirSync(path.join(PROGRAMS, '../test/programs/cited'))) {
    const name = file.replace('.ts', '.yaml');
    const { cited } = (await import(`./cited/${file}`)) as { cited: Cited };
    const text = readFileSync(path.join(PROGRAMS, name), 'utf8');
    for (const { at, value } of figuresOf(parse(text))) {
      const by = (slip: Slip) => noticedBy({ name, text: withSlip(text, at, slip), cited });
      const near = await by('near');
      const noticed = near ?? (await by('coarse'));
      const reason = whyUnpublished(cited, at) ?? rangeOf(cited, at);
      if (noticed === null) console.log(`${name} ${at}: ${value} survives: ${reason ?? 'NO REASON'}`);
      else if (near === null && process.argv.includes('--near')) console.log(`${name} ${at}: ${value}: ${noticed}`);
      if (noticed === null && reason === null) faults++;
      const what = noticed ?? (reason === null ? 'nothing, without a reason' : 'nothing, with a reason');
      counts.add(near === null && noticed !== null ? `${what}, only where far off` : what);
    }
  }
  counts.print();
  process.exitCode = faults > 0 ? 1 : 0;
}

await main();
