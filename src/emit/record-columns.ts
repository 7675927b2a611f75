import type { RecordEntry } from '../model/record.ts';
import { activeInWords, type MeasureName, shownFigure } from './record-units.ts';
import { recordWords as words } from './record-words-en.ts';

/** A column: its title, its share of the width, and the lines of its cell, the first one plain and the others small. */
export interface Column {
  readonly title: string;
  readonly percent: number;
  readonly lines: (entry: RecordEntry) => readonly (string | null)[];
}

/** The columns of a record's page, in a reader's units: of what was put down, and of other work. */
export function columnsOf(units: 'us' | 'metric') {
  const figure = (entry: RecordEntry, ...names: MeasureName[]): string | null =>
    names.map((name) => shownFigure(entry, name, units)).find((shown) => shown !== null) ?? null;
  const when = (percent: number): Column => ({
    title: words.columns.when,
    percent,
    lines: ({ date, start, end }) => [date, words.times(start, end)],
  });
  const where = (percent: number): Column => ({
    title: words.columns.where,
    percent,
    lines: (entry) => [entry.areas.join(', ') || null, figure(entry, 'area'), entry.grasses.join(', ') || null],
  });
  const who = (percent: number): Column => ({
    title: words.columns.who,
    percent,
    lines: ({ by, licence }) => [by, licence === null ? null : words.licence(licence)],
  });
  const amounts = (entry: RecordEntry) => {
    const [loaded, left] = [figure(entry, 'loadedMass', 'loadedVolume'), figure(entry, 'leftMass', 'leftVolume')];
    return [
      figure(entry, 'usedMass', 'usedVolume'),
      figure(entry, 'rateMass', 'rateVolume'),
      loaded === null ? null : words.loaded(loaded),
      left === null ? null : words.left(left),
    ];
  };
  const weather = (entry: RecordEntry) => {
    const wind = figure(entry, 'wind');
    const from = entry.windFrom === null ? null : words.windFrom(entry.windFrom);
    const parts = [wind === null ? null : words.wind(wind), from].filter((part) => part !== null);
    return [parts.join(', ') || null, figure(entry, 'air')];
  };
  const applications: readonly Column[] = [
    when(10),
    where(13),
    { title: words.columns.what, percent: 20, lines: (entry) => productLines(entry, units) },
    { title: words.columns.amount, percent: 13, lines: amounts },
    { title: words.columns.how, percent: 11, lines: (entry) => equipmentLines(entry, figure(entry, 'output')) },
    { title: words.columns.weather, percent: 10, lines: weather },
    who(12),
    { title: words.columns.why, percent: 11, lines: ({ target }) => [target] },
  ];
  const otherWork: readonly Column[] = [
    when(14),
    where(26),
    { title: words.columns.work, percent: 36, lines: ({ work, stepName, step }) => [work, stepName ?? step] },
    who(24),
  ];
  return { applications, otherWork };
}

function productLines(entry: RecordEntry, units: 'us' | 'metric'): (string | null)[] {
  const { product, productName, productFrom, registration, actives, pesticide, stepName, step, work } = entry;
  const known = productName ?? (product === null ? null : `${product} (${words.unknownProduct})`);
  const actually = actives.map((one) => activeInWords(one, units)).join(', ');
  return [
    known ?? stepName ?? step ?? work,
    productFrom === 'plan' ? words.byPlan : null,
    registration !== null ? words.registration(registration) : pesticide ? words.noRegistration : null,
    actually || null,
    known === null ? null : (stepName ?? step),
  ];
}

function equipmentLines({ pass, spreader, setting, sprayer }: RecordEntry, output: string | null): (string | null)[] {
  return [
    spreader === null ? null : words.spreader(spreader),
    setting === null ? null : words.setting(setting),
    sprayer || output !== null ? words.sprayer : null,
    output,
    pass === null ? null : words.pass(pass),
  ];
}
