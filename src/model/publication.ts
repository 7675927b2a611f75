/** One program, or several, for many places: what a site is made from. All of it is public but the lawns that it names. */
import * as v from 'valibot';
import { displayKeys } from './display.ts';
import { above0, day, id, map, maybe, number, quantity, text, word } from './fields.ts';
import { GRASSES } from './grass.ts';

/** Nobody lists more by intent, and each is planned anew every time. */
const MOST = { programs: 50, places: 20_000, lawns: 1000, thermometers: 1000 } as const;

const list = <S extends v.GenericSchema>(entry: S, most: number, what: string) =>
  v.pipe(v.array(entry), v.maxLength(most, `out-of-range:at most ${most} ${what}`));

const file = v.string('wrong-type:the path of a file');
const latitude = number(-66, 66);
const longitude = number(-180, 180);

/** What is said of a place, in the file or on a row of its table. */
const placeKeys = {
  id,
  name: text,
  latitude: maybe(latitude),
  longitude: maybe(longitude),
  /** A U.S. ZIP code that stands for the coordinates. */
  zip: maybe(
    v.pipe(
      v.string('wrong-type:a ZIP code of five digits in quotes'),
      v.regex(/^\d{5}$/, 'wrong-type:a ZIP code of five digits in quotes'),
    ),
  ),
  grass: word(GRASSES),
  /** A program of its own, in place of the publication's for its grass. */
  program: maybe(file),
};
export const PLACE_KEYS = Object.keys(placeKeys);
export const WrittenPlaceSchema = map(placeKeys);
export type WrittenPlace = v.InferOutput<typeof WrittenPlaceSchema>;

/** A thermometer, or a weather station, that serves what lies near it. */
const ThermometerSchema = map({
  name: maybe(text),
  latitude,
  longitude,
  reach: above0('length'),
  readings: maybe(
    v.array(
      map({
        date: day,
        depth: v.pipe(above0('length'), v.minValue(0.05 - 1e-9, 'soil-depth'), v.maxValue(0.5 + 1e-9, 'soil-depth')),
        reads: quantity('temperature'),
      }),
    ),
  ),
  /** A file of daily weather. */
  weather: maybe(file),
});
export type SharedThermometer = v.InferOutput<typeof ThermometerSchema>;
export type SharedReadings = NonNullable<SharedThermometer['readings']>;

/** An address that links can be made from; it ends in a slash once it is read. */
export const baseUrl = v.pipe(
  v.string(),
  v.regex(
    /^https?:\/\/[^\s/?#@"'<>\\]+(\/[^\s?#"'<>\\]*)?$/,
    'wrong-type:an address such as https://lawns.example/, without "?" and "#"',
  ),
  v.transform((address) => (address.endsWith('/') ? address : `${address}/`)),
);

export const PublicationSchema = map({
  kind: v.literal('publication', 'wrong-kind:publication'),
  version: v.literal(1, 'wrong-type:1, the version of the format'),
  id,
  name: text,
  about: maybe(text),
  'base-url': maybe(baseUrl),
  display: maybe(map(displayKeys)),
  programs: v.pipe(
    list(file, MOST.programs, 'programs'),
    v.minLength(1, 'wrong-type:a list of at least one program file'),
  ),
  places: maybe(list(WrittenPlaceSchema, MOST.places, 'places')),
  'places-file': maybe(file),
  lawns: maybe(list(file, MOST.lawns, 'lawn files')),
  'lawns-file': maybe(file),
  thermometers: maybe(list(ThermometerSchema, MOST.thermometers, 'thermometers')),
  /** Whether each place has a small page for other people's pages. */
  embed: maybe(v.boolean()),
  changelog: maybe(v.array(text)),
});
/** A publication file as it is read. */
export type Publication = v.InferOutput<typeof PublicationSchema>;
