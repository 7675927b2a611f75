import type { Work } from './program.ts';

/**
 * The applicator's record of one lawn for one year of the calendar, as plain data: what `did --export` writes and `--json` prints.
 *
 * What public rules ask of such a record, and where it stands here:
 *
 * | asked for                                   | by         | key of the journal, else of another file            |
 * |---------------------------------------------|------------|-----------------------------------------------------|
 * | brand or product name                       | a b c d e  | `product`, its `name` in the products file          |
 * | registration number                         | a b c d e  | `registration`, else the product's                  |
 * | total amount                                | a b d e    | `used`, else `loaded` less `left`                   |
 * | rate                                        | c d        | worked out: `used` over the size of `areas`         |
 * | size of the area, units treated             | a b c d e  | `areas`, measured in the lawn file                  |
 * | location                                    | a b c d e  | the lawn's `record: { address }` and `location`     |
 * | crop or site                                | a b d e    | the grass of those areas                            |
 * | for whom: name and address                  | b c d e    | the lawn's `record: { customer, address }`          |
 * | day                                         | a b c d e  | `date`                                              |
 * | time (c: when it was completed)             | b c d e    | `start`, `end`                                      |
 * | applicator, certification or licence number | a b c d e  | `by`, `licence`                                     |
 * | temperature, wind speed, wind direction     | c d        | `air`, `wind`, `wind-from`                          |
 * | equipment                                   | d          | `spreader`, `setting`; `sprayer`, `output`; `pass`  |
 * | principal pests to be controlled            | e          | `target`                                            |
 * | precautions of the label after the work     | f          | `re-entry`, else the label entry's                  |
 * | markers posted, notice left                 | f          | `notices`                                           |
 *
 * a: 7 CFR 110.3(a), restricted-use pesticides, text of 2006; rescinded from 11 July 2025 (90 FR, FR Doc. 2025-08220) as a
 * duplicate of b and of the States' rules. b: 40 CFR 171.303(b)(7), commercial applicators of restricted-use pesticides, as
 * told by EPA for its plan in Indian country. c: Minnesota Statutes 18B.37 subd. 2(a), text of 2015. d: Washington State form
 * AGR 4226 (rev. 5/03), chapter 16-228 WAC. e: Indiana, 355 IAC 4-4-1(c), text of 2024. f: Indiana, 357 IAC 1-5, posting and
 * notification for lawns, as told by the Office of Indiana State Chemist.
 *
 * Not here: signatures, the names of who worked under supervision (`by` may hold them), permits, the concentration in a
 * tank, the company. Other rules ask for more; this record does not stand in their place.
 */
export interface ApplicatorRecord {
  readonly kind: 'record';
  readonly version: 1;
  readonly lawn: string;
  readonly lawnName: string;
  readonly customer: string | null;
  readonly address: string | null;
  readonly latitude: number;
  readonly longitude: number;
  /** What its reader measures in. */
  readonly units: 'us' | 'metric';
  readonly year: number;
  /** The day of the files that sizes, names and registration numbers were taken from. */
  readonly asOf: string;
  /** By day and time; entries that no longer count are among them. */
  readonly entries: readonly RecordEntry[];
  /** Lines of the journal at which an entry does not read, and so is not here. */
  readonly unreadLines: readonly number[];
}

/**
 * Whether an entry counts: it does; another stands in its place; it was taken back; or it takes another back itself.
 */
export type Standing = 'in-force' | 'corrected' | 'taken-back' | 'undo';

/** What a record of a pesticide should say, by the keys of the files. */
export type Particular =
  | 'product'
  | 'registration'
  | 'areas'
  | 'used'
  | 'by'
  | 'licence'
  | 'start'
  | 'end'
  | 'wind'
  | 'wind-from'
  | 'air'
  | 'target'
  | 'equipment'
  | 're-entry'
  | 'notices';

/** One entry of the journal with what the other files add to it; absent is null, a unit stands in its key. */
export interface RecordEntry {
  /** What other entries name it by. */
  readonly name: string;
  readonly standing: Standing;
  /** The entry that this one stands in place of, or takes back. */
  readonly corrects: string | null;
  /** The entry that stands in its place, or took it back, and that one's day. */
  readonly replacedBy: { readonly name: string; readonly date: string } | null;
  readonly date: string;
  readonly start: string | null;
  readonly end: string | null;
  readonly step: string | null;
  readonly stepName: string | null;
  readonly work: Work | null;
  /** Whether something was put down, or may have been. */
  readonly application: boolean;
  readonly areas: readonly string[];
  /** Of all its areas together; null where one of them is not known. */
  readonly areaM2: number | null;
  readonly grasses: readonly string[];
  readonly product: string | null;
  /** Whether the entry names the product, or only the plan of its step does. */
  readonly productFrom: 'entry' | 'plan' | null;
  readonly productName: string | null;
  readonly registration: string | null;
  /** Each by its share of the weight, or in g/L as labels of liquids have it. */
  readonly actives: readonly { readonly name: string; readonly share: number | null; readonly gPerL: number | null }[];
  /** Whether it is one: by its product, else by its step; null where neither is known. */
  readonly pesticide: boolean | null;
  readonly target: string | null;
  readonly loadedKg: number | null;
  readonly loadedL: number | null;
  readonly usedKg: number | null;
  readonly usedL: number | null;
  readonly leftKg: number | null;
  readonly leftL: number | null;
  readonly rateGPerM2: number | null;
  readonly rateMlPerM2: number | null;
  readonly spreader: string | null;
  readonly setting: number | null;
  readonly sprayer: boolean;
  readonly outputMlPerM2: number | null;
  readonly pass: number | null;
  readonly by: string | null;
  readonly licence: string | null;
  readonly windMPerS: number | null;
  readonly windFrom: string | null;
  readonly airC: number | null;
  readonly reEntry: string | null;
  readonly notices: string | null;
  readonly note: string | null;
  /** What such a record should say and this entry does not. */
  readonly missing: readonly Particular[];
}
