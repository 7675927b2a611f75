import type { Display } from '../base/display.ts';
import type { AreaSketch } from '../model/area-sketch.ts';
import { areaWords } from './area-words-en.ts';
import { table } from './table.ts';

/** The areas of a lawn as a table, with what they come to together. */
export function areaReport(sketches: readonly AreaSketch[], display: Display, width: number): string {
  const [id, kind, size, error] = areaWords.columns;
  const columns = [{ title: id }, { title: kind }, { title: size, right: true }, { title: error, flexible: true }];
  const rows = sketches.map((one) => [
    one.id,
    areaWords.kind(one),
    display.area(one.size),
    areaWords.error(one, display),
  ]);
  const inAll = sketches.reduce((sum, one) => sum + one.size, 0);
  return `${[...table(columns, rows, width), '', areaWords.inAll(display.area(inAll))].join('\n')}\n`;
}
