import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { demoCopy, folderWith, lawnText, programText, soilclock } from '../kit.ts';
import { ring } from '../ring.ts';

const program = programText(`  - { id: feed, name: Feed, work: other, window: { opens: { date: 05-01 } } }\n`);
const lawnWith = (areas: string, files: Readonly<Record<string, string>> = {}): string =>
  folderWith({
    'program.yaml': program,
    'lawn.yaml': lawnText(`name: Ann's <lawn>\ndisplay: { units: us }\nareas:\n${areas}\n`),
    ...files,
  });
const areas = async (cwd: string, ...argv: string[]) => {
  const { code, stdout, stderr } = await soilclock(cwd, ['areas', 'lawn.yaml', '--json', ...argv]);
  return { code, stderr, json: JSON.parse(stdout) };
};
const geojson = (...coordinates: unknown[]): string => JSON.stringify({ type: 'Polygon', coordinates }, null, '\t');

/** Texts of a drawing; every element in it is closed, and nothing in it is markup that was not meant to be. */
function drawn(file: string): string[] {
  const svg = readFileSync(file, 'utf8');
  const open: string[] = [];
  for (const [, slash, name = '', , empty] of svg.matchAll(
    /<(\/?)([a-zA-Z]+)((?:\s+[a-zA-Z-]+="[^"<]*")*)\s*(\/?)>/g,
  )) {
    if (slash) expect(open.pop()).toBe(name);
    else if (!empty) open.push(name);
  }
  expect(open).toEqual([]);
  expect(svg.replace(/<\/?[a-zA-Z][^<>]*>/g, '')).not.toMatch(/[<>]/);
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = '']) => text);
}

describe('soilclock areas', () => {
  test('draws each area with the lengths that it was measured by', async () => {
    const cwd = lawnWith(`  front: { rectangle: [50 ft, 40 ft] }
  back: { polygon: [[0, 0], [62, 0], [62, 48], [0, 40]], in: ft }
  side: { offsets: { every: 10, widths: [12, 14, 13, 9], in: ft } }
  island: { radii: [7.1, 8.9, 9.7, 10.9], in: ft }
  wedge: { trapezoid: { sides: [50 ft, 70 ft], height: 30 ft } }
  bed: { triangle: { base: 21 ft, height: 11 ft } }
  kite: { triangle: { sides: [30 ft, 40 ft, 50 ft] } }
  oval: { ellipse: [60 ft, 40 ft] }
  ring: { circle: { diameter: 34 ft } }`);
    expect((await soilclock(cwd, ['areas', 'lawn.yaml', '--out', 'drawings'])).code).toBe(0);
    const texts = (id: string) => drawn(path.join(cwd, `drawings/test-lawn-${id}.svg`));
    const lengths: Readonly<Record<string, string[]>> = {
      front: ['50 ft', '40 ft'],
      back: ['62 ft', '48 ft', '62.5 ft', '40 ft'],
      side: ['50 ft', '12 ft', '14 ft', '13 ft', '9 ft'],
      island: ['7.1 ft', '8.9 ft', '9.7 ft', '10.9 ft'],
      wedge: ['50 ft', '70 ft', '30 ft'],
      bed: ['21 ft', '11 ft'],
      kite: ['30 ft', '40 ft', '50 ft'],
      oval: ['60 ft', '40 ft'],
      ring: ['17 ft'],
    };
    for (const [id, expected] of Object.entries(lengths)) expect(texts(id)).toEqual(expect.arrayContaining(expected));
    expect(readdirSync(path.join(cwd, 'drawings'))).toHaveLength(Object.keys(lengths).length);
  });
  test('draws a name as text, whatever stands in it', async () => {
    const cwd = lawnWith('  front: { measured: 4200 sqft }');
    await soilclock(cwd, ['areas', 'lawn.yaml']);
    expect(drawn(path.join(cwd, 'out/site/test-lawn-front.svg'))[0]).toBe('Ann&#39;s &lt;lawn&gt;: front');
  });
  test('tells by which measures a hole was taken off, and where it lies', async () => {
    const cwd = lawnWith(
      '  front: { rectangle: [50 ft, 40 ft], less: [{ circle: { radius: 6 ft }, at: [32 ft, 15 ft] }] }',
    );
    await soilclock(cwd, ['areas', 'lawn.yaml']);
    const [note] = drawn(path.join(cwd, 'out/site/test-lawn-front.svg')).filter((text) => text.startsWith('Hole 1'));
    expect(note).toMatch(/6 ft.*32 ft, 15 ft/);
  });
  test('prints the size and the error of each', async () => {
    const cwd = lawnWith(`  front: { rectangle: [50 ft, 40 ft], error: 2% }
  side: { offsets: { every: 10, widths: [12, 14, 13, 9], in: ft } }
  back: { measured: 1000 sqft }`);
    const { json } = await areas(cwd);
    const share = (errorM2: number | null, areaM2: number) => errorM2 && Number((errorM2 / areaM2).toFixed(9));
    const told = json.areas.map((one: { id: string; areaM2: number; errorM2: number | null; errorBasis: string }) => [
      one.id,
      share(one.errorM2, one.areaM2),
      one.errorBasis,
    ]);
    expect(told).toEqual([
      ['front', 0.04, 'stated'],
      ['side', 0.05, 'common-practice'],
      ['back', null, null],
    ]);
  });
  test('prints the same in words', async () => {
    const { stdout } = await soilclock(lawnWith('  front: { rectangle: [50 ft, 40 ft] }'), ['areas', 'lawn.yaml']);
    expect(stdout).toMatch(/front +rectangle +2,000 sq ft/);
  });
  test('reads a polygon from the file that is named, its hole taken off', async () => {
    const hole = ring.map(([x = 0, y = 0]) => [5.0004 + (x - 5) / 5, 52.0004 + (y - 52) / 5]);
    const cwd = lawnWith('  front: { geojson: edge.geojson, point-error: 1 m }', {
      'edge.geojson': geojson(ring, hole),
    });
    const { json } = await areas(cwd);
    expect(json.areas[0]).toMatchObject({ measuredAs: 'geographic', edges: 4, holes: 1, errorBasis: 'points' });
    expect(json.areas[0].areaM2 / 7641.5366).toBeCloseTo(0.96, 6);
  });
  test('tells the line of the file in which its edges cross', async () => {
    const crossed = ring.toSpliced(1, 2, [5.001, 52.001], [5.001, 52]);
    const cwd = lawnWith('  front: { geojson: edge.geojson }', { 'edge.geojson': geojson(crossed) });
    const { code, json } = await areas(cwd);
    expect(code).toBe(1);
    expect(json.problems).toMatchObject([{ code: 'area-crossing-at', file: 'edge.geojson', line: 4 }]);
  });
  test('misses a file that is not there at its line', async () => {
    const { json } = await areas(lawnWith('  front: { geojson: edge.geojson }'));
    expect(json.problems).toMatchObject([{ code: 'file-missing', file: 'lawn.yaml', line: 12 }]);
  });
  test.each([
    ['near the lawn', '[[39, -84], [39, -83.999], [39.001, -84]]', []],
    ['of another place', '[[52, 5], [52, 5.001], [52.001, 5]]', ['area-far']],
  ])('of coordinates %s', async (_, points, codes) => {
    const { code, json } = await areas(lawnWith(`  front: { points: ${points} }`));
    expect([code, json.problems.map((one: { code: string }) => one.code)]).toEqual([0, codes]);
  });
  test('says where latitude and longitude have changed places', async () => {
    const coordinates = [
      [39, -84],
      [39, -83.999],
      [39.001, -84],
      [39, -84],
    ];
    const { json } = await areas(
      lawnWith('  front: { geojson: edge.geojson }', { 'edge.geojson': geojson(coordinates) }),
    );
    expect(json.problems).toMatchObject([{ code: 'area-far', severity: 'warning', line: 12 }]);
    expect(json.problems[0].message).toContain('changed places');
  });
  test('draws an area all the same whose setback names no edge of it', async () => {
    const cwd = lawnWith('  front: { rectangle: [50 ft, 40 ft], setback: { from-edge: 7, width: 5 ft } }');
    const { code, json } = await areas(cwd, '--out', 'here');
    expect([code, json.problems[0].code]).toEqual([1, 'area-setback-edge']);
    expect(drawn(path.join(cwd, 'here/test-lawn-front.svg'))).toEqual(expect.arrayContaining(['1', '2', '3', '4']));
  });
  test.each([[['--json']], [['--dry-run']]])('%s writes nothing', async (flags) => {
    const cwd = lawnWith('  front: { rectangle: [50 ft, 40 ft] }');
    await soilclock(cwd, ['areas', 'lawn.yaml', ...flags]);
    expect(existsSync(path.join(cwd, 'out'))).toBe(false);
  });
  test('of the demo lawn draws where --out names a folder', async () => {
    const { cwd } = demoCopy();
    expect((await soilclock(cwd, ['areas', '--out', 'here'])).code).toBe(0);
    for (const file of readdirSync(path.join(cwd, 'here'))) drawn(path.join(cwd, 'here', file));
  });
});
