import { type Expected, error, type Found, list, meant, note, type Word, warning } from './forms.ts';

/** Problems of journals and of writing into one. A damaged entry is a warning: the others still count. */
export const journal = {
  'journal-entry': warning(
    (a: { reason: string }) => `${a.reason} This entry does not count until it is mended or another one corrects it.`,
  ),
  'journal-step': warning(
    (a: Word) =>
      `The program has no step "${a.found}".${meant(a.nearest)} The entry counts as work outside the program.`,
  ),
  'journal-product': warning(
    (a: Word) =>
      `There is no product "${a.found}" in the lawn's products.${meant(a.nearest)} What it brought cannot be counted exactly.`,
  ),
  'journal-area': warning(
    (a: Word) => `There is no area "${a.found}".${meant(a.nearest)} Areas: ${list(a.allowed)}. It counts for none.`,
  ),
  'journal-spreader': warning(
    (a: Word) =>
      `There is no spreader "${a.found}" among the lawn's "spreaders".${meant(a.nearest)} Known: ${list(a.allowed) || 'none by name'}. Nothing is learned of a dial from this entry.`,
  ),
  'journal-weights': error(
    (a: { at: string; fault: 'measures' | 'more' | 'sum'; loaded: string; used: string; left: string }) =>
      ({
        measures:
          'What was loaded, used and left stands partly by weight and partly by volume; give all of it in one measure.',
        more: `More was ${a.at} (${a.at === 'left' ? a.left : a.used}) than was loaded (${a.loaded}). Mend one of the two.`,
        sum: `${a.used} used is not the ${a.loaded} loaded less the ${a.left} left. Mend one of them, or leave "used" out; it is then worked out.`,
      })[a.fault],
  ),
  'journal-times': error(
    (a: Found) =>
      `The end (${a.found}) has to come after the start. What runs past midnight is two entries, one for each day.`,
  ),
  'journal-equipment': error(
    (_: Found) =>
      'Found both; expected a spreader ("spreader", "setting") or a sprayer ("sprayer", "output"), not both.',
  ),
  'journal-corrects': warning(
    (a: { found: string; fault: 'unknown' | 'ambiguous' | 'circle' | 'twice'; others: readonly string[] }) =>
      ({
        unknown: `No other entry is named "${a.found}". Name one by its "id", or by day and step as in "2027-04-03 autumn-feed-1". Until then nothing is taken away.`,
        ambiguous: `"${a.found}" may mean ${a.others.length} entries. Give the one that is meant an "id" and name that. Until then nothing is taken away.`,
        circle: `"${a.found}" and this entry correct each other in a circle. Until one of them stops, all of them count.`,
        twice: `"${a.found}" is corrected by ${list(a.others)} already. Correct that one; until then both count.`,
      })[a.fault],
  ),

  // Writing
  'write-locked': error(
    (a: { file: string; seconds: number }) =>
      `Another soilclock has been writing here for ${a.seconds} s. Nothing was written. If none is running, remove "${a.file}".`,
  ),
  'journal-append': error(
    (a: { reason: string }) =>
      `No entry can be added to this file without harm: ${a.reason} It was left as it is; write the entry by hand, or bring the file into the form of a list, one "- " an entry.`,
  ),
  'did-what': error(
    (_: { found: string }) =>
      'Say what was done: a step of the program, or --work with its kind (and --product with what was put down).',
  ),
  'did-future': error(
    (a: { found: string; today: string }) =>
      `${a.found} is still to come (today is ${a.today}); only done work is recorded.`,
  ),
  'did-option': error((a: { option: string; with: string }) => `${a.option} cannot stand beside ${a.with}.`),
  'did-needs': error((a: { option: string; needs: string }) => `${a.option} belongs to ${a.needs}; name that as well.`),
  'did-demo': error(
    (_: { found: string }) => 'This is the demo lawn; work is recorded for a lawn of your own. Name its file.',
  ),
  'did-entry': error(
    (a: Word) => `No entry in force is named "${a.found}".${meant(a.nearest)} Known: ${list(a.allowed) || 'none'}.`,
  ),
  'did-entries': error(
    (a: { found: string; count: number }) =>
      `"${a.found}" may mean ${a.count} entries; give the one that is meant an "id" in the journal, and name that.`,
  ),
  'did-nothing': error((_: { found: string }) => 'The journal has no entry in force that could be taken back.'),
  'did-over-label': warning(
    (a: { what: string; area: string; used: string; label: string; source: string }) =>
      `More than the label: ${a.used} of "${a.what}" on ${a.area} in one application, all passes together; the ${a.source} allows ${a.label}. Do not put down more of it there; look at the label in hand for what to do.`,
  ),
  'did-over-label-year': warning(
    (a: { what: string; area: string; used: string; label: string; source: string }) =>
      `More than the label in a year: ${a.used} of "${a.what}" on ${a.area} in the season; the ${a.source} allows ${a.label}.`,
  ),
  'did-further-pass': warning(
    (a: { product: string }) =>
      `Two half passes are the whole of "${a.product}": a further one puts more of a pesticide down than was planned. Leave the rest in its bag; look at the label in hand for what to do.`,
  ),
  'did-label-unknown': warning(
    (a: { product: string }) =>
      `The products have no label entry for "${a.product}", so nothing was compared; compare what was used with the label in hand.`,
  ),
  'did-label-measure': warning(
    (a: { product: string }) =>
      `The label entry of "${a.product}" and what was used are in different measures, and its entry has no "density"; nothing was compared. Compare what was used with the label in hand.`,
  ),
  'did-counted': note(
    (a: { date: string; counted: string }) =>
      `The shelf was counted on ${a.counted}; work of ${a.date} is taken to be in that count and is not taken off. Count again if it was not.`,
  ),
  'did-year': error(
    (a: Word) =>
      `The journal has nothing of "${a.found}". Years: ${list(a.allowed) || 'none'}; give one as in --year 2027.`,
  ),
  'did-record': warning(
    (a: { entry: string; missing: string }) =>
      `Not recorded of the entry "${a.entry}": ${a.missing}. Who must keep a record fills it in in the journal, or by --corrects, while it is known.`,
  ),
  'did-close-text': error(
    (a: { found: string }) =>
      `"${a.found}" could not be changed without changing more than shelf and steps. It was left as it is.`,
  ),
  'did-to': error((a: Expected) => `"${a.found}" cannot be the next lawn file: ${a.expected}.`),
} as const;
