/** `did`, `spreader` and `sprayer` beside a ledger that is lost, damaged, of another form or held by another run. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const LEDGER = 'lawn.ledger.json';
const FEED = 'out/site/test-lawn.ics';
const JOURNAL = 'lawn.journal.yaml';
const WINDOW = 'window: { opens: { date: 03-25 }, closes: { date: 05-20 } }';
const STEPS = `  - { id: feed, name: Feed, work: spread, ${WINDOW}, apply: { product: urea, rate: 1 lb/1000 sqft } }
  - { id: tonic, name: Tonic, work: spray, ${WINDOW}, apply: { product: tonic, rate: 6 fl oz/1000 sqft } }
`;
const LAWN = `products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - { id: tonic, form: liquid, analysis: 10-0-0, density: 1.2 kg/L }
equipment:
  spreader: { kind: rotary, swath: 10 ft, dial: { from: 1, to: 15, step: 0.25 } }
  sprayer: { tank: 4 gal, output: 1 gal/1000 sqft }
`;
const weather = inventedWeather('2020-01-01', '2027-04-01');

/** A lawn that has published once; both its steps were due on days that have passed by now. */
async function published(): Promise<string> {
  const cwd = folderWith({ 'lawn.yaml': lawnText(LAWN), 'program.yaml': programText(STEPS), 'weather.csv': weather });
  await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-03-20']);
  return cwd;
}
/** What is asked of a step, and what of the answer hangs on the ledger: since when the work is due. */
const ASKING = {
  spreader: ['spreader', 'lawn.yaml', 'feed', '--json', '--as-of', '2027-04-02'],
  sprayer: ['sprayer', 'lawn.yaml', 'tonic', '--json', '--as-of', '2027-04-02'],
} as const;
const LOCK = `${process.pid} ${hostname()} x`;
const text = (cwd: string, name: string) => readFileSync(path.join(cwd, name), 'utf8');
/** The answer without what is said of the ledger. */
function answered(stdout: string): { readonly codes: readonly string[]; readonly answer: unknown } {
  const { problems, ...answer } = JSON.parse(stdout) as { problems: readonly { code: string }[] };
  const codes = problems.map(({ code }) => code).filter((code) => code.startsWith('ledger'));
  return { codes, answer };
}

describe.each(Object.entries(ASKING))('%s', (_, argv) => {
  test.each([
    ['lost', null],
    ['empty', ''],
    ['cut short', '{"kind":"ledger","version":2,"events":[{'],
    ['of version 1', '{"kind":"ledger","version":1,"events":[]}'],
  ])('answers from the feed where the ledger is %s, as it would from the ledger, and says so', async (__, spoilt) => {
    const cwd = await published();
    const whole = answered((await soilclock(cwd, argv)).stdout);
    if (spoilt === null) rmSync(path.join(cwd, LEDGER));
    else writeFileSync(path.join(cwd, LEDGER), spoilt);
    const { code, stdout } = await soilclock(cwd, argv);
    expect(whole.codes).toEqual([]);
    expect([code, answered(stdout)]).toEqual([0, { codes: ['ledger-rebuilt'], answer: whole.answer }]);
  });
  test('refuses to guess where ledger and feed are damaged', async () => {
    const cwd = await published();
    writeFileSync(path.join(cwd, LEDGER), '{');
    writeFileSync(path.join(cwd, FEED), text(cwd, FEED).slice(0, 500));
    const { code, stdout } = await soilclock(cwd, argv);
    expect(code).toBe(1);
    expect(stdout).toContain('"ledger-damaged"');
  });
  test('does not wait for a plan that is being made', async () => {
    const cwd = await published();
    writeFileSync(path.join(cwd, `${LEDGER}.lock`), LOCK);
    expect((await soilclock(cwd, argv)).code).toBe(0);
    expect(text(cwd, `${LEDGER}.lock`)).toBe(LOCK);
  });
  test('says nothing of a ledger where nothing has been published', async () => {
    const cwd = folderWith({ 'lawn.yaml': lawnText(LAWN), 'program.yaml': programText(STEPS), 'weather.csv': weather });
    expect(answered((await soilclock(cwd, argv)).stdout).codes).toEqual([]);
  });
});

test('the ledger of the demo is looked for where its plan puts it', async () => {
  const cwd = folderWith();
  await soilclock(cwd, ['plan', '--out', 'out/site']);
  const { stdout } = await soilclock(cwd, ['spreader', 'summer-annual-barrier', '--json']);
  expect(answered(stdout).codes).toEqual([]);
});

describe('did', () => {
  test.each([
    ['lost', null],
    ['damaged', '{'],
    ['of version 1', '{"kind":"ledger","version":1,"events":[]}'],
  ])('writes work down where the ledger is %s, and leaves it to the plan', async (_, spoilt) => {
    const cwd = await published();
    const feed = text(cwd, FEED);
    if (spoilt === null) rmSync(path.join(cwd, LEDGER));
    else writeFileSync(path.join(cwd, LEDGER), spoilt);
    expect((await soilclock(cwd, ['did', 'lawn.yaml', 'feed', '--used', '1 lb'])).code).toBe(0);
    expect(text(cwd, JOURNAL)).toContain('step: feed');
    expect(text(cwd, FEED)).toBe(feed);
    if (spoilt !== null) expect(text(cwd, LEDGER)).toBe(spoilt);
    const { code, stderr } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-04-02']);
    expect([code, stderr.includes('[ledger-rebuilt]')]).toEqual([0, true]);
    expect(text(cwd, FEED)).toContain('SUMMARY:Done: Feed');
  });
  test('does not wait for a plan that is being made', async () => {
    const cwd = await published();
    writeFileSync(path.join(cwd, `${LEDGER}.lock`), LOCK);
    expect((await soilclock(cwd, ['did', 'lawn.yaml', 'feed', '--used', '1 lb'])).code).toBe(0);
  });
  test('carries a season over into a file of its own where the ledger is lost, and the feed goes on', async () => {
    const cwd = await published();
    const revisions = () => text(cwd, FEED).match(/SEQUENCE:\d+/g) ?? [];
    const before = revisions().length;
    rmSync(path.join(cwd, LEDGER));
    await soilclock(cwd, ['did', 'lawn.yaml', '--close-season', '--to', 'next.yaml']);
    const { code, stderr } = await soilclock(cwd, ['plan', 'next.yaml', '--as-of', '2027-04-02']);
    expect([code, stderr.includes('[ledger-rebuilt]')]).toEqual([0, true]);
    expect(revisions().length).toBeGreaterThanOrEqual(before);
  });
});
