import type { Problem } from '../base/problem.ts';
import type { Area } from '../model/area.ts';
import type { GeoPolygon, Shape } from '../model/shape.ts';
import { GeojsonSchema } from '../model/shapes/geographic.ts';
import type { Source } from './lookup.ts';
import { type Parsed, readAs } from './validate.ts';

/** Reads a GeoJSON file that holds one area; JSON is YAML, so problems know their line. */
const readGeojson = (text: string, name: string): Parsed<GeoPolygon> => readAs(GeojsonSchema, text, name, 'GeoJSON');

/** Reads what a path of a lawn names, keeping its problems. */
type Follow = (
  ref: string,
  path: readonly (string | number)[],
  read: (source: Source) => { value?: GeoPolygon; problems: readonly Problem[] },
) => GeoPolygon | undefined;

/** Areas with the polygons that their files tell; a file that cannot be read leaves none, its problem is told. */
export function withPolygons(areas: Readonly<Record<string, Area>>, follow: Follow): Record<string, Area> {
  const filled = (shape: Shape, path: readonly (string | number)[]): Shape => {
    if (shape.kind !== 'geographic' || shape.file === null) return shape;
    const polygon = follow(shape.file, [...path, 'geojson'], ({ text, name }) => readGeojson(text, name));
    return { ...shape, polygon: polygon ?? null };
  };
  return Object.fromEntries(
    Object.entries(areas).map(([id, area]) => [
      id,
      {
        ...area,
        shape: filled(area.shape, ['areas', id]),
        less: area.less.map((part, i) => ({ ...part, shape: filled(part.shape, ['areas', id, 'less', i]) })),
      },
    ]),
  );
}
