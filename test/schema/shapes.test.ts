/** Every way to write a shape: the JSON Schema takes what the reader takes. */
import * as v from 'valibot';
import { expect, test } from 'vitest';
import { AreaSchema } from '../../src/model/area.ts';
import { readYaml } from '../../src/read/yaml.ts';
import { ajv, committed } from './kit.ts';

const { $defs } = committed('lawn') as { $defs: Record<string, unknown> };
const valid = ajv.compile({ $defs, $ref: '#/$defs/area' });
const ring = '[[5, 52, 3.1], [5.001, 52, 3.1], [5.001, 52.001], [5, 52]]';
const polygon = `{ type: Polygon, coordinates: [${ring}] }`;

test.each([
  '{ rectangle: [50 ft, 40 ft], less: [{ circle: { radius: 6 ft }, at: [20 ft, -1 ft] }, { measured: 2 m2 }] }',
  '{ circle: { diameter: 6 m }, error: 2%, setback: { from-edge: 1, width: 2 m } }',
  '{ ellipse: [60 ft, 40 ft], grass: tall-fescue }',
  '{ triangle: { base: 40 ft, height: 30 ft } }',
  '{ triangle: { sides: [30 ft, 40 ft, 50 ft] } }',
  '{ trapezoid: { sides: [50 ft, 70 ft], height: 30 ft }, setback: { from-edge: [1, 2], from-hole: 1, width: 1 m } }',
  '{ polygon: [[0, 0], [62, 0], [62, 48]], in: ft }',
  '{ offsets: { every: 10, widths: [12, 14], in: ft }, error: 1% }',
  '{ offsets: { every: 10, widths: [12, 14], ends: [3, 0] }, in: yd }',
  '{ radii: [7.1, 8.9, 9.7, 10.9], in: m }',
  '{ points: [[38.4, -72.6], [38.4, -72.5999], [38.4001, -72.6]], point-error: 2 m }',
  '{ geojson: edge.geojson, less: [{ geojson: pond.geojson }] }',
  `{ geojson: ${polygon} }`,
  `{ geojson: { type: MultiPolygon, coordinates: [[${ring}]] } }`,
  `{ geojson: { type: Feature, properties: { name: front }, geometry: ${polygon} } }`,
  `{ geojson: { type: FeatureCollection, features: [{ type: Feature, id: 7, geometry: ${polygon} }] } }`,
  '{ measured: 4200 sqft }',
])('%s', (text) => {
  const { data } = readYaml(text, 'area.yaml');
  expect([v.is(AreaSchema, data), valid(data)]).toEqual([true, true]);
});
