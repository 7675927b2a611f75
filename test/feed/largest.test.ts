/** The largest feed that a person may have: every shipped program on one lawn, in full detail, a season of it done. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { compile } from '../../src/compile.ts';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger, type LedgerEntry } from '../../src/model/ledger.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { lookupFrom } from '../../src/shell/lookup.ts';
import { root } from '../kit.ts';

const read = (file: string) => readFileSync(path.join(root, 'programs', file), 'utf8');
const PROGRAMS = readdirSync(path.join(root, 'programs')).filter(
  (file) => file.endsWith('.yaml') && /^kind: program$/m.test(read(file)),
);
/** The demo lawn with an area for each program. */
const LAWN = read('demo/lawn.yaml').replace(
  /^areas:\n(?: .*\n)+/m,
  `areas:\n${PROGRAMS.map((file, i) => `  area-${i}: { rectangle: [50 ft, 40 ft], program: ../${file} }\n`).join('')}`,
);
/** Spanish texts are about a fifth longer. */
const LONGER = 1.2;

let season: Season;
beforeAll(() => {
  const compiled = compile({
    lawn: { name: 'programs/demo/lawn.yaml', text: LAWN },
    lookup: lookupFrom(root),
    asOf: civil(2027, 4, 2),
    ledger: null,
    revisedAt: '2027-04-02T06:00:00Z',
    detail: 'full',
  });
  if (!compiled.season) throw new Error(compiled.problems.map(({ message }) => message).join('; '));
  ({ season } = compiled);
}, 60_000);

const publish = (one: Season, ledger = emptyLedger) =>
  calendarOf(one, { ledger, revisedAt: `${one.asOf}T06:00:00Z`, detail: 'full' });
const jobsOf = (events: readonly LedgerEntry[]) => events.filter(({ kind }) => kind === 'job');

describe('every shipped program on one lawn', () => {
  test('is more than eleven programs and sixty jobs', () => {
    expect(PROGRAMS.length).toBeGreaterThan(11);
    expect(jobsOf(publish(season).ledger.events).length).toBeGreaterThan(60);
  });
  test('says why the day and its odds in every job', () => {
    const { events } = publish(season).ledger;
    const open = season.applications.filter(({ whyNow }) => whyNow !== null);
    const without = open.filter(({ id, season: year, whyNow }) => {
      const job = jobsOf(events).find((one) => one.step === id && one.season === year);
      return !(job?.description.includes(`- ${whyNow}`) && /\d %/.test(whyNow ?? ''));
    });
    expect(open.length).toBeGreaterThan(60);
    expect(without.map(({ id }) => id)).toEqual([]);
  });
  test('says all that is to be done and every caution in every job', () => {
    const { events } = publish(season).ledger;
    const without = season.applications
      .filter(({ date, status }) => date !== null && status !== 'done')
      .filter(({ id, season: year, how, cautions }) => {
        const text = jobsOf(events).find((one) => one.step === id && one.season === year)?.description ?? '';
        return [...how, ...cautions].some((line) => !text.includes(line));
      });
    expect(without.map(({ id }) => id)).toEqual([]);
  });
  test('with half of it done, a quarter called off and texts a fifth longer stays under 1 MB', () => {
    const done = (one: Application, i: number): Application =>
      i % 2 === 0 && one.date !== null
        ? { ...one, status: 'done', used: one.areas.map(({ id, amount }) => `2027-04-01, ${id}: ${amount}, dial 5.5.`) }
        : one;
    const first = publish(season);
    const applications = season.applications.filter((_, i) => i % 4 !== 1).map(done);
    const { text, ledger } = publish({ ...season, asOf: '2027-04-03', applications }, first.ledger);
    const most = LONGER * Math.max(Buffer.byteLength(first.text), Buffer.byteLength(text));
    console.info(`${ledger.events.length} events, ${Math.round(most / 1000)} kB with longer texts`);
    expect(ledger.events.filter(({ status }) => status === 'CANCELLED').length).toBeGreaterThan(15);
    expect(most).toBeGreaterThan(4e5);
    expect(most).toBeLessThan(1e6);
  });
});
