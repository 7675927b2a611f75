import { inWords } from '../../amounts/amount.ts';
import { formatDay } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import { entriesInForce, nameOf } from '../../model/corrections.ts';
import { type Amount, formatClock } from '../../model/fields.ts';
import type { Journal } from '../../model/journal.ts';

/** The entries in force, a line each: day, what, where, how much, and the name to take it back by. */
export function listOf(journal: Journal, display: Display): string[] {
  const lines = [...entriesInForce(journal)]
    .sort((a, b) => a.date - b.date)
    .map((entry) => {
      const { date, step, work, product, areas, used, setting, note } = entry;
      const what = [
        step ?? work ?? product,
        areas?.join(', '),
        used && inWords(used, display),
        product !== undefined && (step ?? work) !== undefined ? product : undefined,
      ];
      const more = [setting === undefined ? undefined : `setting ${setting}`, note];
      const named = entry.id === undefined ? '' : `  [${nameOf(entry)}]`;
      return `${formatDay(date)}  ${[...what, ...more].filter((part) => part !== undefined).join('; ')}${named}`;
    });
  return lines.length > 0 ? lines : ['Nothing is written in the journal yet.'];
}

const amountOf = (key: string, amount: Amount | undefined) => ({
  [`${key}Kg`]: amount?.by === 'mass' ? amount.value : null,
  [`${key}L`]: amount?.by === 'volume' ? amount.value * 1000 : null,
});

/** The entries in force as plain data, by day: a unit in its key, absent is null. */
export function entriesAsData(journal: Journal): readonly Readonly<Record<string, unknown>>[] {
  return [...entriesInForce(journal)]
    .sort((a, b) => a.date - b.date)
    .map((entry) => ({
      name: nameOf(entry),
      id: entry.id ?? null,
      date: formatDay(entry.date),
      start: entry.start === undefined ? null : formatClock(entry.start),
      end: entry.end === undefined ? null : formatClock(entry.end),
      step: entry.step ?? null,
      work: entry.work ?? null,
      areas: entry.areas ?? null,
      product: entry.product ?? null,
      registration: entry.registration ?? null,
      target: entry.target ?? null,
      ...amountOf('loaded', entry.loaded),
      ...amountOf('used', entry.used),
      ...amountOf('left', entry.left),
      spreader: entry.spreader ?? null,
      setting: entry.setting ?? null,
      sprayer: entry.sprayer ?? null,
      outputLPerM2: entry.output === undefined ? null : entry.output * 1000,
      pass: entry.pass ?? null,
      by: entry.by ?? null,
      licence: entry.licence ?? null,
      windMPerS: entry.wind ?? null,
      windFrom: entry.windFrom ?? null,
      airC: entry.air ?? null,
      reEntry: entry.reEntry ?? null,
      notices: entry.notices ?? null,
      note: entry.note ?? null,
      corrects: entry.corrects ?? null,
    }));
}
