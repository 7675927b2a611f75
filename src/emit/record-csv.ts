import Papa from 'papaparse';
import { cleaned } from '../base/text.ts';
import type { ApplicatorRecord, RecordEntry } from '../model/record.ts';
import { activeInWords, figureFor, MEASURES, type MeasureName, unitFor } from './record-units.ts';

type Cell = string | number | null;

interface Column {
  readonly header: string;
  readonly of: (entry: RecordEntry) => Cell;
}

/**
 * A record as CSV: RFC 4180 (commas, CRLF, quotes doubled), UTF-8 with the byte order mark by which spreadsheets know it,
 * a header row, ISO days.
 *
 * Figures stand in the record's own units to twelve digits and beside them in the reader's, to six digits, the unit in each header.
 * A text that a spreadsheet would take for a formula has an apostrophe before it, and so has one that begins with an
 * apostrophe: who reads the file back takes one leading apostrophe off every text. Controls and marks that turn the reading
 * direction are left out, as in feeds.
 *
 * Source: RFC 4180 (2005) sections 2.1 to 2.7; CWE-1236, Improper Neutralization of Formula Elements in a CSV File.
 *
 * @example recordCsv(record).split('\r\n')[1]
 */
export function recordCsv(record: ApplicatorRecord): string {
  const columns = columnsOf(record);
  const rows = record.entries.map((entry) => columns.map(({ of }) => written(of(entry))));
  return `\uFEFF${Papa.unparse([columns.map(({ header }) => header), ...rows], { newline: '\r\n' })}\r\n`;
}

/** What a spreadsheet may take for the beginning of a formula, after spaces that it may skip; full-width signs too. */
const FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\n]/u;

/** A cell as it is written: figures as they are, negative ones too, since a number alone is no formula. */
function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = cleaned(cell);
  return FORMULA.test(text) || text.startsWith("'") ? `'${text}` : text;
}

function columnsOf({ lawn, lawnName, customer, address, units }: ApplicatorRecord): Column[] {
  const column = (header: string, of: Column['of']): Column => ({ header, of });
  const figure = (name: MeasureName): Column[] => {
    const { header, of, own } = MEASURES[name];
    const theirs = unitFor(name, units);
    return [
      { header: `${header}_${own.header}`, of: (entry: RecordEntry) => inFull(of(entry)) },
      ...(theirs.header === own.header
        ? []
        : [{ header: `${header}_${theirs.header}`, of: (entry: RecordEntry) => figureFor(entry, name, units) }]),
    ];
  };
  return [
    column('date', ({ date }) => date),
    column('start', ({ start }) => start),
    column('end', ({ end }) => end),
    column('entry', ({ name }) => name),
    column('state', ({ standing }) => standing),
    column('corrects', ({ corrects }) => corrects),
    column('replaced_by', ({ replacedBy }) => replacedBy?.name ?? null),
    column('replaced_on', ({ replacedBy }) => replacedBy?.date ?? null),
    column('lawn', () => lawn),
    column('lawn_name', () => lawnName),
    column('customer', () => customer),
    column('address', () => address),
    column('areas', ({ areas }) => areas.join(' ')),
    ...figure('area'),
    column('grass', ({ grasses }) => grasses.join(' ')),
    column('step', ({ step }) => step),
    column('step_name', ({ stepName }) => stepName),
    column('work', ({ work }) => work),
    column('product', ({ product }) => product),
    column('product_from', ({ productFrom }) => productFrom),
    column('product_name', ({ productName }) => productName),
    column('registration', ({ registration }) => registration),
    column('actives', ({ actives }) => actives.map((one) => activeInWords(one, units)).join('; ')),
    column('pesticide', ({ pesticide }) => (pesticide === null ? null : pesticide ? 'yes' : 'no')),
    column('target', ({ target }) => target),
    ...(['loadedMass', 'loadedVolume', 'usedMass', 'usedVolume', 'leftMass', 'leftVolume'] as const).flatMap(figure),
    ...(['rateMass', 'rateVolume'] as const).flatMap(figure),
    column('spreader', ({ spreader }) => spreader),
    column('setting', ({ setting }) => setting),
    column('sprayer', ({ sprayer }) => (sprayer ? 'yes' : null)),
    ...figure('output'),
    column('pass', ({ pass }) => pass),
    column('by', ({ by }) => by),
    column('licence', ({ licence }) => licence),
    ...figure('wind'),
    column('wind_from', ({ windFrom }) => windFrom),
    ...figure('air'),
    column('re_entry', ({ reEntry }) => reEntry),
    column('notices', ({ notices }) => notices),
    column('note', ({ note }) => note),
    column('not_recorded', ({ missing }) => missing.join(' ')),
  ];
}

/** Without the last digits of binary arithmetic: 700 g are 0.7 kg. */
const inFull = (value: number | null): number | null => (value === null ? null : Number(value.toPrecision(12)));
