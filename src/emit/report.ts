import { parseDay } from '../base/day.ts';
import { type Display, displayOf } from '../base/display.ts';
import { cleaned } from '../base/text.ts';
import { limitInWords } from '../model/limit.ts';
import type { Application, Season } from '../model/season.ts';
import { dayText } from './day-text.ts';
import { type Column, folded, table } from './table.ts';

const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', title, ...lines];

const COLUMNS: readonly Column[] = [
  { title: 'Day' },
  { title: 'Status' },
  { title: 'What', flexible: true },
  { title: 'Window' },
  { title: 'Usual', optional: true },
  { title: 'In all', right: true },
];

/** The whole plan as text: what now, what moved, the season as a table, what to buy, limits. */
export function planReport(season: Season, width: number): string {
  const display = displayOf(season.display.units, season.display.language);
  const wrap = (lines: readonly string[]) => lines.flatMap((line) => folded(`  ${line}`, width));
  const { observedThrough, traces } = season.weather;
  const { forecastThrough } = season.weather;
  const forecast =
    forecastThrough === null ? '' : `, forecast through ${dayText(forecastThrough, season.asOf, display)}`;
  const behind =
    observedThrough === null
      ? `No weather was seen: ${traces} made-up years after the nearest known climate`
      : `Weather seen through ${dayText(observedThrough, season.asOf, display)}${forecast}, then ${traces} ${season.weather.generated ? 'made-up' : 'past'} years`;
  const lines = [
    ...folded(`${season.lawnName}: ${season.programName}`, width),
    ...folded(`As of ${dayText(season.asOf, season.asOf, display)}. ${behind}.`, width),
    ...section('What now', wrap(season.now)),
    ...section('What has moved', wrap(season.moved)),
    ...section(
      `Season ${season.season.year}`,
      table(
        COLUMNS,
        season.applications.map((one) => row(one, season, display)),
        width,
      ),
    ),
    ...section('To buy', wrap(season.shopping.map((purchase) => purchaseLine(purchase, season, display)))),
    ...section('Limits of the season', wrap(limitLines(season, display))),
  ];
  return cleaned(`${lines.join('\n')}\n`);
}

const shortText = (day: string | null, display: Display): string => {
  const parsed = day === null ? null : parseDay(day);
  return parsed === null ? '?' : display.shortDay(parsed);
};

function row(
  { name, status, date, window, inAll: total, areas, season }: Application,
  plan: Season,
  display: Display,
): string[] {
  const gone = status === 'skipped' || status === 'dropped';
  const undone = gone || status === 'missed';
  const next = season === plan.season.year ? '' : ` ${season}`;
  const amount = total ?? areas.find((area) => area.amount !== null)?.amount ?? '';
  return [
    date === null ? '–' : dayText(date, date, display),
    status,
    `${name}${next}`,
    gone || window.opens.p50 === null
      ? ''
      : `${shortText(window.opens.p50, display)} – ${shortText(window.closes.p50, display)}`,
    gone ? '' : shortText(window.opens.usual, display),
    undone ? '' : amount,
  ];
}

const inAll = (kg: number | null, litres: number | null, display: Display): string => {
  if (kg !== null) return display.mass(kg);
  return litres === null ? '' : display.volume(litres / 1000);
};

function purchaseLine(purchase: Season['shopping'][number], season: Season, display: Display): string {
  const { name, needKg, needL, shelfKg, shelfL, packages, buyBy, cost, left, keeps } = purchase;
  const shelf =
    (shelfKg ?? shelfL ?? 0) === 0 ? 'none on the shelf' : `on the shelf ${inAll(shelfKg, shelfL, display)}`;
  const need = `${name}: need ${inAll(needKg, needL, display)}, ${shelf}`;
  const rest = left === null ? '' : `; ${left} will be left, which ${keeps?.how}`;
  if (packages.length === 0)
    return buyBy === null
      ? `${need}; enough${rest}`
      : `${need}; buy by ${dayText(buyBy, season.asOf, display)} (its products entry names no package)`;
  const bags = packages.map(({ size, count }) => `${count} × ${size}`).join(' + ');
  const { language, currency } = season.display;
  const price =
    cost === null ? '' : `, ${new Intl.NumberFormat(language, { style: 'currency', currency }).format(cost)}`;
  return `${need}; buy ${bags} by ${dayText(buyBy, season.asOf, display)}${price}${rest}`;
}

/** What is limited, as people say it; actives and products go by their own names. */
const LIMITED: Readonly<Record<string, string>> = {
  N: 'nitrogen',
  'quick-N': 'quick nitrogen',
  P2O5: 'phosphate',
  K2O: 'potash',
  lime: 'lime',
};

/** One line for each limit, over the areas that share its figures. */
function limitLines({ limits }: Season, display: Display): string[] {
  const lines = new Map<string, string[]>();
  for (const one of limits) {
    const { area, ok, by, of, source, from, to } = one;
    const what = LIMITED[of.nutrient ?? ''] ?? of.active ?? of.product ?? '';
    const days = from === null || to === null ? '' : `, ${from} to ${to}`;
    const whose = `${by === 'label' ? source : `the ${by}`}${days}`;
    const { done, planned, limit, left } = limitInWords(one, display);
    const bare = (rate: string) => rate.replace(/ .*/, '');
    const rest = ok ? `${bare(left)} left` : 'EXCEEDED';
    const line = `${what}: ${bare(done)} done, ${bare(planned)} planned of ${limit} (${whose}); ${rest}`;
    lines.set(line, [...(lines.get(line) ?? []), area]);
  }
  return [...lines].map(([line, areas]) => `${areas.join(', ')}, ${line}`);
}

/** One application's whole why, as text. */
export function stepReport(application: Application, season: Season, width: number): string {
  const display = displayOf(season.display.units, season.display.language);
  const wrap = (lines: readonly string[]) => lines.flatMap((line) => folded(`  ${line}`, width));
  const { name, status, date, inWindow, window, notJudged } = application;
  const spread = (label: string, { p10, p50, p90, usual }: Application['window']['opens']) => [
    label,
    ...[p10, p50, p90, usual].map((day) => shortText(day, display)),
  ];
  const gone = status === 'skipped' || status === 'dropped';
  const rows = [spread('opens', window.opens), spread('best', window.best), spread('closes', window.closes)];
  const chosen =
    date === null
      ? status
      : `${status}, ${dayText(date, season.asOf, display)}${inWindow === null ? '' : `, inside the window in ${Math.round(inWindow * 100)} % of the runs`}`;
  const lines = [
    ...folded(`${name} (${application.id})`, width),
    ...folded(chosen, width),
    ...(gone
      ? []
      : section(
          'Window',
          table(
            [{ title: '' }, { title: '1 in 10 by' }, { title: 'middle' }, { title: '9 in 10 by' }, { title: 'usual' }],
            rows,
            width,
          ),
        )),
    ...section('Why', wrap(application.why)),
    ...section('What to do', wrap(application.how)),
    ...section('Not judged: look before you start', wrap(notJudged.length > 0 ? [notJudged.join(', ')] : [])),
    ...section('Take care', wrap(application.cautions)),
    ...section('Sources', wrap(application.sources)),
  ];
  return cleaned(`${lines.join('\n')}\n`);
}
