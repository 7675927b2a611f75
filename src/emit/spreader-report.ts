import type { Display } from '../base/display.ts';
import { cleaned } from '../base/text.ts';
import { factorOf } from '../base/units.ts';
import type { AreaReport, SettingAdvice, SpreaderReport } from '../model/spreader-report.ts';
import { wordsOf } from '../words/words.ts';
import { dayText } from './day-text.ts';
import { passWords as words } from './pass-words-en.ts';
import { type Column, table, wrapped } from './table.ts';

/** Wind above which granules are not thrown. Source: southeastfarmpress.com, granular spinners: below 5 mph. */
const WIND = 5 * factorOf('mph');
/** Less than this share of an area outside the passes is what two feet on the grass make good. */
const LITTLE = 0.005;

/** More overlap than this share of an area is told: it is what a setting is kept within. */
const TOLD = 0.05;

const COLUMNS: readonly Column[] = [
  { title: 'Area' },
  { title: 'Pass' },
  { title: 'Load', right: true },
  { title: 'Way', right: true },
  { title: 'Lines', right: true },
  { title: 'Turns', right: true },
  { title: 'Walking', right: true },
];

/** How to put a product down with a spreader, as text. */
export function spreaderReport(report: SpreaderReport, display: Display, width: number): string {
  const { areas, cautions, drawing } = report;
  const block = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : ['', title, ...lines.flatMap((line) => wrapped(line, width - 2, '  ').map((one) => `  ${one}`))];
  const lines = [
    ...heading(report, display).flatMap((line) => wrapped(line, width, '  ')),
    ...block('Spreader', [spreaderLine(report, display), ...settingLines(report, display)]),
    '',
    ...table(
      COLUMNS,
      areas.flatMap((area) => rows(area, display)),
      width,
    ),
    ...wrapped(inAll(report, display), width, '  '),
    ...block('How to go', howTo(report, display)),
    ...block('Take care', [...cautions, wordsOf('en').feed.labelWins]),
    ...(drawing === null ? [] : ['', `Drawing: ${drawing}`]),
  ];
  return cleaned(`${lines.join('\n')}\n`);
}

function heading({ lawnName, asOf, step, product, settings, areas }: SpreaderReport, display: Display): string[] {
  if (!step) return [lawnName, words.noStep];
  const when = step.date === null ? step.status : `${step.status}, ${dayText(step.date, asOf, display)}`;
  const title = `${lawnName}: ${step.name} (${step.id}), ${when}`;
  const [first] = settings;
  if (!product) return [title, areas[0]?.amount ?? ''];
  if (!first || first.passGPerM2 === null) return [title, `${product.name}: ${areas[0]?.amount ?? ''}`];
  const rate = (setting: SettingAdvice) => display.massRate((setting.passGPerM2 ?? 0) / 1000);
  const each = settings.map((one) => (settings.length === 1 ? rate(one) : `${rate(one)} on ${one.areas.join(', ')}`));
  const seconds = settings.filter(({ left }) => left === 'second-pass').flatMap((one) => one.areas);
  const passes =
    seconds.length === 0
      ? words.bothPasses
      : seconds.length === areas.length
        ? words.secondPass
        : words.somePasses(seconds.join(', '));
  return [title, `${product.name}; ${passes}: ${each.join('; ')}.`];
}

function spreaderLine({ spreader }: SpreaderReport, display: Display): string {
  const { id, kind, swathM, swathFrom, speedMps } = spreader;
  return `${id === null ? '' : `${id}: `}${kind}, ${display.distance(swathM)} a pass (${words.swathFrom[swathFrom]}), ${display.speed(speedMps)}`;
}

function settingLines({ settings, spreader, product }: SpreaderReport, display: Display): string[] {
  const { dial } = spreader;
  const mass = (kg: number | null) => display.mass(kg ?? 0, product?.pesticide ? 'down' : 'nearest');
  const advice = settings.flatMap(({ setting, basis, learned, course, areas, left }): string[] => {
    const whose = settings.length > 1 ? areas.join(', ') : null;
    const [length, size] = [display.distance(course.lengthM), display.area(course.areaM2)];
    return [
      ...(basis === 'first' && setting !== null && dial ? [words.setting(setting, dial.to, whose)] : []),
      ...learned.map((line) => (whose === null ? line : `${whose}: ${line}`)),
      course.deliversKg === null
        ? words.course(length, size)
        : words.tryIt(
            length,
            size,
            mass(course.deliversKg),
            mass(course.leastKg),
            mass(course.mostKg),
            left === 'second-pass',
          ),
    ];
  });
  return [...(dial ? [] : [words.noDial]), ...advice];
}

function rows({ id, amount, passes }: AreaReport, display: Display): string[][] {
  if (passes.length === 0) return [[id, '–', amount ?? '', '', '', '', '']];
  return passes.map((pass, i) => [
    i === 0 ? id : '',
    wordsOf('en').sheet.ways.way[pass.direction],
    pass.amount ?? (i === 0 ? (amount ?? '') : ''),
    display.distance(pass.distanceM),
    String(pass.lines),
    String(pass.turns),
    minutes(pass.walkingMin),
  ]);
}

const minutes = (value: number): string => `${Math.max(1, Math.round(value))} min`;

function inAll({ amount, areas, walkingMin }: SpreaderReport, display: Display): string {
  const way = areas.flatMap(({ passes }) => passes).reduce((sum, { distanceM }) => sum + distanceM, 0);
  return `In all: ${amount === null ? '' : `${amount}, `}${display.distance(way)}, ${minutes(walkingMin)} of walking.`;
}

function howTo({ areas, spreader, product }: SpreaderReport, display: Display): string[] {
  const listed = (say: (area: AreaReport) => string | null, line: (list: string) => string): string[] => {
    const told = areas.map(say).filter((one) => one !== null);
    return told.length === 0 ? [] : [line(told.join(', '))];
  };
  const overlap = (area: AreaReport) => Math.max(0, ...area.passes.map((pass) => pass.overlap));
  return [
    (spreader.kind === 'drop' ? words.edgeOfDrop : words.edge)(display.distance(spreader.swathM / 2)),
    words.lines(display.distance(spreader.swathM)),
    ...(areas.some(({ left }) => left === 'both-passes') ? [words.halves] : []),
    ...listed(({ id, left }) => (left === 'second-pass' ? id : null), words.firstDown),
    words.shut,
    ...(spreader.kind === 'drop' ? [] : [words.wind(display.speed(WIND))]),
    ...(product?.pesticide ? [words.pesticide] : []),
    ...listed(
      (area) => (overlap(area) > TOLD ? words.overlapOf(area.id, Math.round(100 * overlap(area))) : null),
      words.overlap,
    ),
    ...listed(
      ({ id, missedM2, areaM2 }) =>
        missedM2 !== null && missedM2 > LITTLE * areaM2 ? words.missedOf(id, display.area(missedM2)) : null,
      words.missed,
    ),
    ...listed(({ id, partsWithoutPlace }) => (partsWithoutPlace ? id : null), words.parts),
    ...listed(({ id, square }) => (square ? id : null), words.square),
  ];
}
