import type { Day } from '../base/day.ts';
import { type Climate, climateClasses } from '../climate/climate-class.ts';
import { REFERENCE_PLACES } from '../climate/places/all.ts';
import type { ReferencePlace } from '../climate/places/table.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Program } from '../model/program.ts';
import { placeSeason } from '../schedule/placed-season.ts';
import type { Tried } from './finding.ts';

/** A program is tried at so many places of each climate that it claims, and at no more than so many in all. */
const PER_CLIMATE = 2;
const IN_ALL = 4;

/** Places of a climate, spread over it from cool to warm. */
function placesIn(climate: Climate, count: number): ReferencePlace[] {
  const warmth = ({ normals: { tmin, tmax } }: ReferencePlace) => [...tmin, ...tmax].reduce((sum, t) => sum + t, 0);
  const all = REFERENCE_PLACES.filter((place) => climateClasses(place).includes(climate)).toSorted(
    (a, b) => warmth(a) - warmth(b),
  );
  return Array.from({ length: Math.min(count, all.length) }, (_, i) => {
    const at = Math.round(((i + 1) * (all.length - 1)) / (count + 1));
    return all[at] as ReferencePlace;
  });
}

/** The places that a program is tried at. */
export function trialPlaces({ climate = [] }: Program): ReferencePlace[] {
  const each = climate.length > PER_CLIMATE ? 1 : PER_CLIMATE;
  const found = climate.flatMap((one) => placesIn(one, each));
  return [...new Map(found.map((place) => [place.id, place])).values()].slice(0, IN_ALL);
}

/**
 * A program planned on a plain lawn at places of the climates that it claims, on their usual weather. Turn by turn all that
 * it asks about with `only-if` and `unless` holds, or nothing of it, so that each step is tried somewhere.
 */
export function tryProgram(program: Program, asOf: Day): Tried[] {
  const places = trialPlaces(program);
  const turns = places.length === 1 ? [...places, ...places] : places;
  return turns.flatMap((place, i) => {
    const { value } = placeSeason({
      program,
      lawn: plainLawn(program, place, i % 2 === 0),
      products: new Map(),
      journal: [],
      observed: null,
      history: [],
      forecast: null,
      previous: [],
      asOf,
    });
    return value ? [{ at: `${place.name}, ${place.region}`, program, season: value }] : [];
  });
}

/** A hundred square metres that want everything, or nothing, of what a program asks about. */
function plainLawn(program: Program, { latitude, longitude, elevationM }: ReferencePlace, wants: boolean): Lawn {
  const facts = program.steps.flatMap(({ onlyIf, unless }) => Object.keys({ ...onlyIf?.lawn, ...unless?.lawn }));
  const grass = program.grass[0] as Lawn['grass'];
  return {
    kind: 'lawn',
    version: 1,
    id: 'trial',
    location: { latitude, longitude, elevation: elevationM },
    grass,
    program: '',
    weather: {},
    facts: { ...Object.fromEntries(facts.map((fact) => [fact, wants])), irrigated: true },
    ...(wants && { soil: { tests: [{ date: 0, pH: 4.5, phosphorus: 'low' as const, potassium: 'low' as const }] } }),
    areas: { all: { shape: { kind: 'measured', area: 100 }, less: [] } },
  };
}
