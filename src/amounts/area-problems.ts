import { type Place, type Problem, problem } from '../base/problem.ts';
import { ringFits, ringsOverlap } from '../base/rings.ts';
import type { Area } from '../model/area.ts';
import { netArea } from './area.ts';
import { piecesOf, wholeOutline } from './outline.ts';
import { ringOf } from './ring.ts';

type PlaceIn = (path: readonly (string | number)[]) => Place;

/** What is wrong with the measures of an area that its schema cannot see: whether its parts and its setback go with its form. */
export function areaProblems(area: Area, place: PlaceIn): Problem[] {
  const setback = setbackProblems(area, place);
  if (setback.length > 0) return setback;
  const size = netArea(area);
  if (size <= 0) return [problem('area-empty', { found: `${size.toFixed(1)} m²` }, place([]))];
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
  if (length === 0) return [problem('area-empty', { found: '0 m²' }, place([]))];
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
