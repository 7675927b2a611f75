import { type Expected, error, type Found, list, meant, type Word, warning } from './forms.ts';

/** Problems of files, YAML and single values. */
export const input = {
  // Files
  'file-missing': error(
    (a: { ref: string }) =>
      `"${a.ref}" cannot be read: no such file. Check the path; it counts from the file that names it.`,
  ),
  'file-unreadable': error((a: { ref: string; reason: string }) => `"${a.ref}" cannot be read: ${a.reason}.`),
  'file-empty': error((a: { what: string }) => `The ${a.what} file is empty. It has to begin with "kind: ${a.what}".`),
  'file-too-large': error(
    (a: { size: string; limit: string }) => `The file has ${a.size}; at most ${a.limit} are read.`,
  ),
  'wrong-kind': error(
    (a: Expected) => `The file is of kind "${a.found}"; here a file of kind "${a.expected}" is needed.`,
  ),
  'no-lawn': error(
    (a: { ref: string }) => `No lawn file: "${a.ref}" does not exist. Name one: soilclock plan path/to/lawn.yaml`,
  ),

  'write-failed': error(
    (a: { file: string; reason: string }) =>
      `"${a.file}" cannot be written (${a.reason}). What was there before is unchanged.`,
  ),

  // YAML
  'yaml-syntax': error((a: { reason: string }) => `Not valid YAML: ${a.reason}`),
  'yaml-directive': error(
    (_: Found) => 'A %YAML or %TAG line is not allowed; these files are YAML 1.2. Remove the line.',
  ),
  'yaml-key-mark': error((_: Found) => 'A key written with "? " is not allowed. Write "key: value".'),
  'yaml-too-many-keys': error(
    (a: { limit: number; of: 'keys' | 'entries and marks' }) =>
      `More than ${a.limit} ${a.of}. Split the file, or check that it is the right one.`,
  ),
  'yaml-too-deep': error((a: { limit: number }) => `Nested deeper than ${a.limit} levels.`),
  'yaml-alias': error(
    (a: { limit: number }) =>
      `More than ${a.limit} aliases, or an alias that contains itself or a great many values. Write the value out.`,
  ),
  'yaml-documents': error((_: Found) => 'A second document begins here ("---"). One file holds one document.'),

  // Values
  'unknown-key': error((a: Word) => `"${a.found}" is not a key here.${meant(a.nearest)} Allowed: ${list(a.allowed)}.`),
  'reserved-key': error((a: Found) => `"${a.found}" cannot be a key or an id. Choose another word.`),
  'missing-key': error((a: { key: string }) => `"${a.key}" is missing here.`),
  'wrong-type': error((a: Expected) => `Found ${a.found}; expected ${a.expected}.`),
  'unknown-word': error(
    (a: Word) => `"${a.found}" is not allowed here.${meant(a.nearest)} Allowed: ${list(a.allowed)}.`,
  ),
  'unknown-unit': error(
    (a: Expected & { nearest: string | null }) =>
      `"${a.found}" is not a unit.${meant(a.nearest)} Expected ${a.expected}.`,
  ),
  'wrong-measure': error(
    (a: Expected & { measure: string }) => `"${a.found}" is a ${a.measure}; expected ${a.expected}.`,
  ),
  'out-of-range': error((a: Expected) => `${a.found} is out of range; expected ${a.expected}.`),
  'not-a-date': error((a: Expected) => `"${a.found}" is not a day; expected ${a.expected}.`),
  'trigger-kind': error(
    (a: { found: string; allowed: readonly string[] }) =>
      `A trigger has exactly one kind; found ${a.found}. Kinds: ${list(a.allowed)}.`,
  ),
  'trigger-direction': error(
    (_: Found) => 'A trigger on a signal has exactly one direction: "rises-to" or "falls-to".',
  ),
  'trigger-frost': error(
    (_: Found) =>
      '"frost" names exactly one of "first" and "last", a temperature such as 28 F, and at most one of "before" and "after".',
  ),
  'trigger-from': error(
    (_: Found) =>
      '"falls-to" in "opens" needs "from": the day to begin looking. Without it a cold winter day would count.',
  ),
  'trigger-opening': error(
    (_: Found) => '"opening: true" counts from the window\'s own opening, so it cannot stand in "opens".',
  ),
  'trigger-after': error(
    (_: Found) =>
      '"after" names exactly one of "step" and "opening: true", and exactly one of "wait" and "degree-days".',
  ),
  'soil-depth': error((a: Found) => `Soil temperature is modelled from 5 to 50 cm; ${a.found} is outside.`),
  'degree-days-cutoff': error(
    (_: Found) => 'A "cutoff" belongs to the sine and triangle methods; the averages have none.',
  ),
  'degree-days-soil': error(
    (_: Found) =>
      'Degree days of the soil are summed from its daily means: "of: soil" with the method "average". A "depth" belongs to the soil alone.',
  ),
  'method-mismatch': warning(
    (a: { method: string; derived: string }) =>
      `The sum was derived with ${a.derived}, the step sums with ${a.method}: a threshold holds only with the method it was derived with. Take that one, or say why not in a comment.`,
  ),
  'degree-days-upper': error((a: Found) => `The upper threshold has to lie above the base; found ${a.found}.`),
  'apply-one-of': error(
    (a: { found: string; allowed: readonly string[] }) =>
      `"apply" says exactly one thing; found ${a.found}. One of: ${list(a.allowed)}.`,
  ),
  'by-soil-test': error(
    (_: Found) => '"spacing" and "goal" say how to go by a soil test; they stand with "by: soil-test" only.',
  ),
  'soil-test-nitrogen': error(
    (_: Found) => 'A soil test asks for P2O5 or K2O, not for nitrogen. Leave N out, or leave "by: soil-test" out.',
  ),
  'duplicate-id': error((a: { id: string }) => `"${a.id}" stands here a second time. Each id is used once.`),
  'unknown-step': error((a: Word) => `There is no step "${a.found}".${meant(a.nearest)} Steps: ${list(a.allowed)}.`),
  'circular-after': error(
    (a: { path: readonly string[] }) =>
      `Steps wait for each other in a circle: ${a.path.join(' → ')}. One of them needs a date or a temperature of its own.`,
  ),
  'extends-circle': error(
    (a: { files: readonly string[] }) =>
      `Programs extend each other in a circle: ${a.files.join(' → ')}. One of them has to stand on its own.`,
  ),
  'extends-deep': error(
    (a: { limit: number }) => `More than ${a.limit} programs extend each other. Extend the one meant directly.`,
  ),
  'unknown-source': error(
    (a: Word) =>
      `"${a.found}" is not in "sources".${meant(a.nearest)} Name one of: ${list([...a.allowed, 'common-practice', 'from-memory'])}.`,
  ),
} as const;
