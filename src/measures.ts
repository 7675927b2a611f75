/** What a lawn file measures: whether it can be, with the line in the file. */

import { netArea } from './amounts/area.ts';
import { areaProblems, farProblems } from './amounts/area-problems.ts';
import { implausibleTests } from './amounts/implausible.ts';
import { panFaults } from './amounts/spreader/spreader.ts';
import { hasErrors, type Place, type Problem, problem } from './base/problem.ts';
import type { SquareMetres } from './base/units.ts';
import { AreaSchema } from './model/area.ts';
import type { Lawn } from './model/lawn.ts';
import type { Linked } from './read/link.ts';
import { judge, type Parsed } from './read/validate.ts';

/** Problems of the pan tests of a lawn's spreaders. */
export const problemsOfPans = ({ value, place }: Parsed<Lawn>): readonly Problem[] =>
  panFaults(value?.equipment).map(({ at, fault, skew }) =>
    fault === null
      ? problem(
          'spreader-skew',
          { percent: Math.round(50 * (1 + Math.abs(skew))), side: skew > 0 ? 'right' : 'left' },
          place(['equipment', ...at]),
        )
      : problem('spreader-pans', { fault }, place(['equipment', ...at])),
  );

/** What of a lawn's soil and sprayer tests is most likely a slip. */
export const problemsOfTests = ({ value, place }: Parsed<Lawn>): readonly Problem[] =>
  value ? implausibleTests(value, place) : [];

/** What is wrong with the measures of a lawn's areas. */
export const problemsOfAreas = ({ lawn }: Linked, { place }: Parsed<Lawn>): Problem[] =>
  Object.entries(lawn.areas).flatMap(([id, area]) => {
    const placeIn = (path: readonly (string | number)[]) => place(['areas', id, ...path]);
    return [...areaProblems(area, placeIn), ...farProblems(area, lawn.location, placeIn)];
  });

/**
 * Area of a shape as it stands in a lawn file.
 *
 * @param shape For example `{ rectangle: ['90 ft', '50 ft'] }` or `{ polygon: [[0, 0], …], in: 'ft', less: […] }`. GeoJSON
 * stands in it as such; a path to a file is not followed.
 * @returns The area [m²], or what is wrong with the shape.
 * @example areaOf({ circle: { radius: '30 ft' } }).value //=> 262.68 (2827.43 ft²)
 */
export function areaOf(shape: unknown): { readonly value?: SquareMetres; readonly problems: readonly Problem[] } {
  const place = (): Place => ({ file: '', line: 1, column: 1, length: 1 });
  const { value, problems } = judge(AreaSchema, { data: shape, file: '', place, problems: [] });
  if (!value) return { problems: problems.map(nowhere) };
  const [ref] = [value, ...value.less].flatMap(({ shape }) => (shape.kind === 'geographic' ? (shape.file ?? []) : []));
  if (ref !== undefined) return { problems: [problem('file-missing', { ref }, null)] };
  const ofArea = areaProblems(value, place).map(nowhere);
  return { ...(!hasErrors(ofArea) && { value: netArea(value) }), problems: ofArea };
}

/** A problem of something that stands in no file. */
const nowhere = (found: Problem): Problem => ({ ...found, file: null, line: null, column: null, length: null });
