import { UNIT_AREA } from '../amounts/unit-area.ts';
import type { UnitSystem } from '../base/display.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import { PUBLIC_PLACE, publicKeyOf } from '../model/reader.ts';
import type { PlacedStep } from './placed.ts';
import { climateFor, type PlacedSeason, type PlanInput, placeOn } from './placed-season.ts';
import { edgeDay } from './windows.ts';

/** A tenth of a degree is about 11 km, which tells no garden. */
const toTenth = (degrees: number): number => Math.round(10 * degrees) / 10;
/** Height steers the air by 0.65 °C on these [m]. */
const HEIGHT_STEP = 100;

/**
 * What a season for the public is planned from: the lawn's program and weather at a place that is only about right, on an area
 * of rates. Every key is named, so that nothing that is private now or later is ever in it.
 *
 * @param shared Readings that were given to the public; the lawn's own are not.
 * @example publicPlace(input, 'us').lawn.areas
 */
export function publicPlace(
  { lawn, ...input }: PlanInput,
  units: UnitSystem,
  shared: Lawn['thermometer'] = undefined,
): PlanInput {
  const { program, observed, history, forecast, ofFiles = true, asOf } = input;
  return {
    program,
    products: new Map(),
    lawn: { ...placeOf(lawn, units), ...(shared && { thermometer: shared }) },
    journal: [],
    observed,
    history,
    forecast,
    ofFiles,
    previous: [],
    asOf,
  };
}

/**
 * Places the steps of a public place. Nobody there writes a journal, so work whose window has closed counts as done on its middle
 * best day: else the steps that wait for it would fall out of the season.
 *
 * @param shared Readings that were given to the public.
 * @returns The steps as placed, and what they were placed from; null where the weather cannot carry a plan.
 */
export function placeInPublic(
  ofLawn: PlanInput,
  units: UnitSystem,
  shared: Lawn['thermometer'] = undefined,
): { readonly placed: PlacedSeason; readonly input: PlanInput } | null {
  let input = publicPlace(ofLawn, units, shared);
  const { climate, problems } = climateFor(input);
  if (climate === null) return null;
  for (;;) {
    const placed = placeOn(climate, input, problems);
    const over = placed.placed
      .flatMap(doneByNow)
      .filter(({ step, date }) => !input.journal.some((entry) => entry.step === step && entry.date === date));
    if (over.length === 0) return { placed, input };
    input = { ...input, journal: [...input.journal, ...over] };
  }
}

/** An entry for a step whose window has closed. */
function doneByNow({ id, status, lateUntil, windows }: PlacedStep): Journal {
  const date = status === 'missed' || lateUntil !== null ? edgeDay(windows.ofTraces, 'best', 0.5) : null;
  return date === null ? [] : [{ date, step: id }];
}

function placeOf(lawn: Lawn, units: UnitSystem): Lawn {
  const { latitude, longitude, elevation } = lawn.location;
  return {
    kind: 'lawn',
    version: 1,
    id: PUBLIC_PLACE,
    feed: { key: publicKeyOf(lawn) },
    location: {
      latitude: toTenth(latitude),
      longitude: toTenth(longitude),
      ...(elevation !== undefined && { elevation: HEIGHT_STEP * Math.round(elevation / HEIGHT_STEP) }),
    },
    grass: lawn.grass,
    program: lawn.program,
    weather: {},
    ...(lawn.display && { display: lawn.display }),
    areas: { lawn: { shape: { kind: 'measured', area: UNIT_AREA[units] }, less: [] } },
  };
}
