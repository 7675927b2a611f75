import { formatDay } from '../base/day.ts';
import { formatClock } from './fields.ts';
import type { JournalEntry } from './journal.ts';

/** What an entry itself says, as plain data: a unit in its key, absent is null. Amounts and products are told by who asks. */
export const entryData = (entry: JournalEntry) => ({
  date: formatDay(entry.date),
  start: entry.start === undefined ? null : formatClock(entry.start),
  end: entry.end === undefined ? null : formatClock(entry.end),
  step: entry.step ?? null,
  target: entry.target ?? null,
  spreader: entry.spreader ?? null,
  setting: entry.setting ?? null,
  pass: entry.pass ?? null,
  by: entry.by ?? null,
  licence: entry.licence ?? null,
  windMPerS: entry.wind ?? null,
  windFrom: entry.windFrom ?? null,
  airC: entry.air ?? null,
  notices: entry.notices ?? null,
  note: entry.note ?? null,
  corrects: entry.corrects ?? null,
});
