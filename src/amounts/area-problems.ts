import type { GeoPoint } from '../base/local-plane.ts';
import { type Place, type Problem, problem } from '../base/problem.ts';
import { ringFits, ringsOverlap } from '../base/rings.ts';
import type { Area } from '../model/area.ts';
import { netArea } from './area.ts';
import { piecesOf, wholeOutline } from './outline.ts';
import { ringOf } from './ring.ts';

/** Coordinates farther from their lawn than this are of another place [degrees]; a ZIP code's middle may be some way off. */
const FAR = 1;

/** A warning where the coordinates of an area lie far from its lawn, as they do when latitude and longitude are changed over. */
export function farProblems({ shape }: Area, lawn: GeoPlace, place: PlaceIn): Problem[] {
  const [first] = shape.kind === 'geographic' ? (shape.polygon?.outer ?? []) : [];
  if (!first || isNear(first, lawn)) return [];
  const [latitude, longitude] = first;
  const where = `${latitude}, ${longitude}`;
  const hint = isNear([longitude, latitude], lawn) ? ' Latitude and longitude have changed places.' : '';
  return [problem('area-far', { where, hint }, place([]))];
}

interface GeoPlace {
  readonly latitude: number;
  readonly longitude: number;
}

function isNear([latitude, longitude]: GeoPoint, lawn: GeoPlace): boolean {
  const east = Math.abs(((longitude - lawn.longitude + 540) % 360) - 180) * Math.cos((lawn.latitude * Math.PI) / 180);
  return Math.abs(latitude - lawn.latitude) <= FAR && east <= FAR;
}

type PlaceIn = (path: readonly (string | number)[]) => Place;

/** What is wrong with the measures of an area that its schema cannot see: whether its parts and its setback go with its form. */
export function areaProblems(area: Area, place: PlaceIn): Problem[] {
  const setback = setbackProblems(area, place);
  if (setback.length > 0) return setback;
  const size = netArea(area);
  if (size <= 0) return [problem('area-empty', { over: size < 0 ? `${(-size).toFixed(1)} m²` : null }, place([]))];
  return partProblems(area, place);
}

function setbackProblems(area: Area, place: PlaceIn): Problem[] {
  const { setback } = area;
  if (!setback) return [];
  const whole = wholeOutline(area);
  if (!whole) return [problem('area-setback-form', { found: 'its size' }, place(['setback']))];
  const sides = new Set(ringOf(area.shape)?.sides);
  const unknown = [
    ...beyond(setback.edges, sides.size, 'edge').map((args) => ({ ...args, key: 'from-edge' })),
    ...beyond(setback.holes, whole.holes.length, 'hole').map((args) => ({ ...args, key: 'from-hole' })),
  ];
  if (unknown.length > 0)
    return unknown.map(({ key, ...args }) => problem('area-setback-edge', args, place(['setback', key])));
  const { length } = piecesOf(area);
  if (length === 0) return [problem('area-empty', { over: null }, place([]))];
  return length > 1 ? [problem('area-setback-splits', { found: `${length} pieces` }, place(['setback']))] : [];
}

/** Numbers of edges or holes that an area does not have. */
function beyond(numbers: readonly number[], count: number, what: string) {
  const expected = count === 0 ? `none, since it has no ${what} that has a place` : `1 to ${count}`;
  return numbers.filter((one) => one > count).map((one) => ({ found: `${what} ${one}`, expected }));
}

/** Parts with a place that reach out of their area or into one another. Where the form is drawn by guess, nothing is said. */
function partProblems(area: Area, place: PlaceIn): Problem[] {
  if (area.shape.kind === 'triangle' || area.shape.kind === 'trapezoid') return [];
  const whole = wholeOutline({ ...area, less: [] });
  if (!whole) return [];
  const told = area.less.flatMap((part, i) => {
    const hole = wholeOutline({ ...area, less: [part] })?.holes[whole.holes.length];
    return hole ? [{ i, hole }] : [];
  });
  return told.flatMap(({ i, hole }, at) => {
    const others = [...whole.holes, ...told.slice(0, at).map((one) => one.hole)];
    const what = !ringFits(hole, whole.outer)
      ? 'reaches out of the area'
      : others.some((other) => ringsOverlap(hole, other))
        ? 'reaches into another part'
        : null;
    return what === null ? [] : [problem('area-part', { part: i + 1, what }, place(['less', i]))];
  });
}
