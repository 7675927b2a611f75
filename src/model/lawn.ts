import * as v from 'valibot';
import { AreaSchema } from './area.ts';
import { displayKeys } from './display.ts';
import {
  above0,
  amount,
  anyMap,
  byId,
  byStep,
  choosing,
  clock,
  day,
  id,
  map,
  maybe,
  number,
  orWord,
  positive,
  quantity,
  text,
  whole,
  word,
} from './fields.ts';
import { GRASSES } from './grass.ts';
import { localRule } from './local-rule.ts';
import { ProductSchema } from './product.ts';
import { programRef } from './program-ref.ts';
import { FeedSchema } from './reader.ts';
import { SoilTestSchema } from './soil-test.ts';
import { SprayerSchema } from './sprayer.ts';
import { SpreaderSchema } from './spreader.ts';
import { TurfSchema } from './turf.ts';

/** Kinds of soil by how they pass heat on; the numbers stand in `climate/soil-parameters.ts`. */
export const TEXTURES = ['sand', 'loamy-sand', 'sandy-loam', 'loam', 'silt-loam', 'clay-loam', 'clay', 'peat'] as const;

const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;

/** Weekday numbers, 0 = Sunday. */
const weekdays = v.pipe(
  v.array(word(WEEKDAYS)),
  v.minLength(1, 'wrong-type:a list of at least one weekday'),
  v.transform((names) => names.map((name) => WEEKDAYS.indexOf(name))),
);

const reminders = v.array(positive('duration'));
const dayRange = v.pipe(
  v.strictTuple([day, day]),
  v.check(([from, to]) => from <= to, 'out-of-range:two days, the earlier one first'),
);
const hours = v.pipe(
  v.strictTuple([clock, clock]),
  v.check(([from, to]) => from < to, 'out-of-range:two times, the earlier one first'),
);

const elevation = v.pipe(
  quantity('length'),
  v.minValue(-430, 'out-of-range:-430 m to 5000 m'),
  v.maxValue(5000, 'out-of-range:-430 m to 5000 m'),
);

/** Where the lawn is: coordinates, or a U.S. ZIP code that stands for them. */
const byZip = map({
  zip: v.pipe(
    v.string('wrong-type:a ZIP code of five digits in quotes'),
    v.regex(/^\d{5}(-\d{4})?$/, 'wrong-type:a ZIP code of five digits in quotes'),
  ),
  elevation: maybe(elevation),
});
const byCoordinates = map({
  latitude: number(-66, 66),
  longitude: number(-180, 180),
  elevation: maybe(elevation),
});
const location = choosing(
  (input) => (input !== null && typeof input === 'object' && 'zip' in input ? byZip : byCoordinates),
  () => [byCoordinates, byZip],
);

/** Services of past weather and of forecasts that a lawn may name. */
export const WEATHER_SERVICES = ['none', 'open-meteo', 'ncei'] as const;
export const FORECAST_SERVICES = ['none', 'open-meteo', 'nws'] as const;

const productsFile = v.string();
const ownProduct = map({ id, ...ProductSchema.pipe[1].entries });
const forecastFile = v.pipe(v.string(), v.regex(/\./));
const forecastService = word(FORECAST_SERVICES);

/** A season-long lawn: location, areas, grass, soil, equipment, shelf, working days, local rules; private. */
export const LawnSchema = map({
  kind: v.literal('lawn', 'wrong-kind:lawn'),
  version: v.literal(1, 'wrong-type:1, the version of the format'),
  id,
  name: maybe(text),
  feed: maybe(FeedSchema),
  location,
  timezone: maybe(v.string()),
  grass: word(GRASSES),
  program: programRef,
  products: maybe(
    v.array(
      choosing(
        (input) => (typeof input === 'string' ? productsFile : ownProduct),
        () => [productsFile, ownProduct],
      ),
    ),
  ),
  weather: v.optional(
    map({
      files: maybe(v.pipe(v.array(v.string()), v.minLength(1, 'wrong-type:a list of at least one file'))),
      units: maybe(word(['metric', 'us'])),
      service: maybe(word(WEATHER_SERVICES)),
      /** A service, or a weather file of days to come. */
      forecast: maybe(
        choosing(
          (input) => (typeof input === 'string' && input.includes('.') ? forecastFile : forecastService),
          () => [forecastService, forecastFile],
        ),
      ),
      /** A GHCN-Daily station, for ncei; the nearest that serves when left out. */
      station: maybe(v.pipe(v.string(), v.regex(/^[A-Z0-9]{11}$/, 'wrong-type:a station such as USW00014821'))),
    }),
    {},
  ),
  display: maybe(map(displayKeys)),
  soil: maybe(
    map({
      texture: maybe(word(TEXTURES)),
      tests: maybe(v.array(SoilTestSchema)),
    }),
  ),
  thermometer: maybe(
    v.array(
      map({
        date: day,
        depth: v.pipe(above0('length'), v.minValue(0.05 - 1e-9, 'soil-depth'), v.maxValue(0.5 + 1e-9, 'soil-depth')),
        reads: quantity('temperature'),
      }),
    ),
  ),
  facts: maybe(byId(v.boolean())),
  turf: maybe(TurfSchema),
  areas: v.pipe(byId(AreaSchema), v.minEntries(1, 'wrong-type:a map with at least one area')),
  equipment: maybe(
    map({ spreader: maybe(SpreaderSchema), spreaders: maybe(byId(SpreaderSchema)), sprayer: maybe(SprayerSchema) }),
  ),
  working: maybe(
    map({
      days: maybe(weekdays),
      between: maybe(hours),
      'jobs-per-day': maybe(whole(1, 20)),
      away: maybe(v.array(dayRange)),
      remind: maybe(reminders),
    }),
  ),
  steps: maybe(byStep(orWord('skip', map({ date: maybe(day), areas: maybe(v.array(id)) })))),
  'local-rules': maybe(v.array(localRule)),
  /** What an applicator's record says of the lawn; it goes nowhere else. */
  record: maybe(map({ customer: maybe(text), address: maybe(text) })),
  shelf: maybe(
    v.pipe(
      anyMap,
      v.objectWithRest({ counted: maybe(day) }, amount),
      v.transform(({ counted, ...stock }) => ({ counted: counted ?? null, stock })),
    ),
  ),
});
type WrittenLawn = v.InferOutput<typeof LawnSchema>;

/** A place on the ground: degrees, north and east positive; height above the sea [m]. */
export interface Coordinates {
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation?: number;
}

/** A lawn whose place is known, be it written as coordinates or as a ZIP code. */
export type Lawn = Omit<WrittenLawn, 'location'> & { readonly location: Coordinates };
