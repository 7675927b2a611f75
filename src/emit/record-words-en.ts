import type { Particular, RecordEntry, Standing } from '../model/record.ts';

const PARTICULARS: Readonly<Record<Particular, string>> = {
  product: 'a product of the products files',
  registration: 'the registration number',
  areas: 'the size of the area',
  used: 'the amount',
  by: 'who did it',
  licence: 'the licence',
  start: 'when it began',
  end: 'when it was done',
  wind: 'the wind at the start',
  'wind-from': 'where the wind came from',
  air: 'the temperature at the start',
  target: 'what it was against',
  equipment: 'spreader setting or sprayer output',
  're-entry': 'when the turf may be walked on again',
  notices: 'notices given or posted',
};

const STANDINGS: Readonly<Record<Standing, string>> = {
  'in-force': '',
  corrected: 'Corrected',
  'taken-back': 'Taken back',
  undo: 'Takes back',
};

/** The English words of the page of an applicator's record. */
export const recordWords = {
  title: (lawn: string, year: number) => `${lawn}: record of applications ${year}`,
  customer: 'For',
  address: 'Address',
  place: 'Place',
  asOf: 'Made on',
  applications: 'Applications',
  otherWork: 'Other work',
  none: 'None.',
  columns: {
    when: 'Day and time',
    where: 'Where',
    what: 'Product',
    amount: 'Amount and rate',
    how: 'Equipment',
    weather: 'At the start',
    who: 'Done by',
    why: 'Against',
    work: 'Work',
  },
  entry: 'Entry',
  registration: (number: string) => `Reg. no. ${number}`,
  noRegistration: 'Reg. no. not recorded',
  byPlan: "the plan's; the entry names none",
  unknownProduct: 'not in the products files',
  licence: (number: string) => `licence ${number}`,
  times: (start: string | null, end: string | null) =>
    [start === null ? '' : `from ${start}`, end === null ? '' : `to ${end}`].join(' ').trim() || null,
  pass: (pass: number) => `pass ${pass}`,
  setting: (setting: number) => `setting ${setting}`,
  spreader: (id: string) => `spreader ${id}`,
  sprayer: 'sprayer',
  loaded: (amount: string) => `loaded ${amount}`,
  left: (amount: string) => `left ${amount}`,
  windFrom: (point: string) => (point === 'variable' ? 'variable' : `from ${point.toUpperCase()}`),
  wind: (speed: string) => `wind ${speed}`,
  reEntry: 'Re-entry',
  notices: 'Notices',
  note: 'Note',
  notRecorded: 'Not recorded',
  missing: (missing: readonly Particular[]) => missing.map((one) => PARTICULARS[one]).join(', '),
  standing: ({ standing, corrects, replacedBy }: RecordEntry): string | null => {
    const words = STANDINGS[standing];
    const by = replacedBy ? ` by entry ${replacedBy.name} of ${replacedBy.date}` : '';
    if (standing === 'undo') return `${words} entry ${corrects ?? ''}.`;
    const place = corrects === null ? '' : `Stands in place of entry ${corrects}.`;
    return [words === '' ? '' : `${words}${by}.`, place].filter((part) => part !== '').join(' ') || null;
  },
  unread: (lines: readonly number[]) =>
    `Entries of the journal that could not be read are not on this page: line ${lines.join(', ')}.`,
  deference: [
    'The label in hand and the rules of the place go before this page.',
    'It shows what the journal says and does not replace a record that a law asks for: federal rules for restricted-use pesticides (40 CFR 171.303(b)(7)) and State rules may ask for more, such as a signature, and for another form. Look up the rule that binds you, and how long it has you keep the record.',
    'Entries that were corrected or taken back are struck through and stay. What "not recorded" names was never filled in.',
  ],
  asOfFiles: (day: string) =>
    `Sizes of areas, names of products, registration numbers and re-entry are those of the lawn's files on ${day}, where the entry itself says nothing else.`,
  signature: 'Signature',
  date: 'Date',
} as const;
