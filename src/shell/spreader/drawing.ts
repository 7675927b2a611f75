import type { Display } from '../../base/display.ts';
import { factorOf, type Metres } from '../../base/units.ts';
import { passWords as words } from '../../emit/pass-words-en.ts';
import { type DrawnArea, type DrawnScale, passesDrawing } from '../../emit/passes-drawing.ts';
import type { SpreaderReport } from '../../model/spreader-report.ts';
import type { AreaWalk } from '../../model/walk.ts';

/** The ways over the areas of a report as an SVG. */
export function drawingOf(report: SpreaderReport, walks: ReadonlyMap<string, AreaWalk>, display: Display): string {
  const areas = report.areas.flatMap(({ id, areaM2, amount, left, passes }): DrawnArea[] => {
    const walk = walks.get(id);
    if (!walk) return [];
    const notes = passes.map((pass) =>
      words.note(words.way[pass.direction], pass.amount, display.distance(pass.distanceM), pass.turns),
    );
    const [first, second] = left === 'second-pass' ? [words.done(words.way.lengthwise), ...notes] : notes;
    const title = `${id}, ${display.area(areaM2)}${amount === null ? '' : `: ${amount}`}`;
    return [{ title, walk, notes: [first ?? '', second ?? ''] }];
  });
  const title = report.step === null ? report.lawnName : `${report.lawnName}: ${report.step.name}`;
  const foot = display.distance(1).endsWith('ft') ? factorOf('ft') : 1;
  return passesDrawing(title, areas, (side) => barFor(side, foot, display));
}

/** The longest of 1, 2, 5, 10 … of a unit that is at most a third of a side. */
function barFor(side: Metres, unit: Metres, display: Display): DrawnScale {
  const most = side / 3 / unit;
  const ten = 10 ** Math.floor(Math.log10(most));
  const count = [5, 2, 1].find((one) => one * ten <= most) ?? 1;
  return { metres: count * ten * unit, label: display.distance(count * ten * unit) };
}
