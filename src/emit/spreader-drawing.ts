import type { Display } from '../base/display.ts';
import { factorOf, type Metres } from '../base/units.ts';
import type { SpreaderReport } from '../model/spreader-report.ts';
import type { AreaWalk } from '../model/walk.ts';
import { wordsOf } from '../words/words.ts';
import { type DrawnArea, type DrawnScale, passesDrawing, type WaysLayout } from './passes-drawing.ts';

/** The ways over the areas of a report as an SVG to look at by itself, in English as the report is. */
export function drawingOf(report: SpreaderReport, walks: ReadonlyMap<string, AreaWalk>, display: Display): string {
  const words = wordsOf('en');
  const title = report.step === null ? report.lawnName : `${report.lawnName}: ${report.step.name}`;
  const foot = [words.sheet.ways.legend, words.feed.labelWins];
  return passesDrawing(title, areasOf(report, walks, display, 'en'), foot, barIn(display));
}

/** The same ways as a part of a page, in the reader's language, without title and legend. */
export const waysOf = (
  report: SpreaderReport,
  walks: ReadonlyMap<string, AreaWalk>,
  display: Display,
  layout: WaysLayout,
): string => passesDrawing('', areasOf(report, walks, display, display.language), [], barIn(display), layout);

function areasOf(
  report: SpreaderReport,
  walks: ReadonlyMap<string, AreaWalk>,
  display: Display,
  language: string,
): DrawnArea[] {
  const { ways: words } = wordsOf(language).sheet;
  return report.areas.flatMap(({ id, areaM2, amount, left, passes }): DrawnArea[] => {
    const walk = walks.get(id);
    if (!walk) return [];
    const notes = passes.map((pass) =>
      words.note(words.way[pass.direction], pass.amount, display.distance(pass.distanceM), pass.turns),
    );
    const [first, second] = left === 'second-pass' ? [words.done(words.way.lengthwise), ...notes] : notes;
    const title = `${id}, ${display.area(areaM2)}${amount === null ? '' : `: ${amount}`}`;
    return [{ title, walk, notes: [first ?? '', second ?? ''] }];
  });
}

const barIn = (display: Display) => (side: Metres) =>
  barFor(side, display.system === 'us' ? factorOf('ft') : 1, display);

/** The longest of 1, 2, 5, 10 … of a unit that is at most a third of a side. */
function barFor(side: Metres, unit: Metres, display: Display): DrawnScale {
  const most = side / 3 / unit;
  const ten = 10 ** Math.floor(Math.log10(most));
  const count = [5, 2, 1].find((one) => one * ten <= most) ?? 1;
  return { metres: count * ten * unit, label: display.distance(count * ten * unit) };
}
