import { parseDay } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import type { Purchase, Spread } from '../model/season.ts';
import type { WeatherFrom } from './events/weather-from.ts';

/** The English words of a feed that a Season does not carry. */
export const feedWords = {
  category: 'Lawn',
  calendarAbout: (lawn: string, program: string) =>
    `${program}, for ${lawn}. Dates follow soil temperature and degree days; ranges firm up as the season unfolds.`,
  helperName: 'Lawn work',
  helperAbout:
    'Work on a lawn: what, how much, how, and with which care. Days may still move; look again before you set out.',
  publicAbout: (program: string) =>
    `${program}, for lawns near one place. Windows follow its soil temperature and degree days; ranges firm up as the season unfolds. Your own lawn, its label and the rules of your place go first.`,
  endedName: 'This calendar has ended',
  endedText: 'Nothing more comes here. You may take it off your phone.',
  jobTitle: (name: string, inAll: string | null) => (inAll === null ? name : `${name}: ${inAll}`),
  doneTitle: (name: string) => `Done: ${name}`,
  cancelledTitle: (title: string) => `Cancelled: ${title}`,
  cancelledText: (asOf: string) => `No longer in this calendar as of ${asOf}. There is nothing to do here.`,
  windowTitle: (name: string) => `Window: ${name}`,
  windowText: (opens: Spread, closes: Spread, display: Display) =>
    `Opens ${range(opens, display)}; last good day ${range(closes, display)}. Shown from the middle opening to the middle last day.`,
  soilOfLawns: (values: readonly string[]) => `Soil today: ${values.join(', ')}`,
  buyTitle: (names: readonly string[]) => `Buy: ${names.join(', ')}`,
  buyLine: ({ name, packages }: Purchase, needed: string, cost: string | null) =>
    `${name}: ${packages.length === 0 ? 'what the plan says is short' : packages.map(({ size, count }) => `${count} × ${size}`).join(', ')}${cost === null ? '' : `, about ${cost}`}; needed on ${needed}.`,
  waterTitle: (name: string, depth: string | null) => `Water in${depth === null ? '' : ` ${depth}`}: ${name}`,
  rainedInTitle: (name: string) => `Watered in by rain: ${name}`,
  waterText: (depth: string | null, by: string | null) =>
    `Water in with ${depth ?? 'as much as the label says'}, ${by === null ? 'as soon as the label says' : `by ${by} at the latest`}.`,
  rained: (fallen: string, left: string | null) =>
    `${fallen} of rain was observed on the days since the work${left === null ? '' : `; ${left} is left`}. Rain on the day of the work is not counted.`,
  noIrrigation:
    'This lawn has no irrigation in its file: put the work down just ahead of a gentle rain, or use a hose and a straight-sided can to measure by.',
  keepOffTitle: (name: string) => `Keep off as the label says: ${name}`,
  keepOffText: (label: string) => `The label entry says: ${label}`,
  soilCheckTitle: (name: string, depths: readonly string[]) => `Check the soil at ${depths.join(', ')}: ${name}`,
  // Several places in mid-morning: common practice.
  soilCheckText: (depths: readonly string[]) =>
    `Push a thermometer in to ${depths.join(', ')} in several places, in mid-morning, on a few days in a row; shade and slopes run cooler.`,
  soilRule: (rule: string) => `The window opens when ${rule}.`,
  whatToDo: 'What to do',
  whatWasDone: 'What was done',
  cautions: 'Take care',
  why: 'Why this day',
  whyThen: 'Why then',
  windowOdds: (share: number) => `There is a window in ${Math.round(10 * share)} of 10 runs of weather.`,
  lookFirst: (what: readonly string[]) => `Not judged: ${what.join(', ')}. Look before you start.`,
  asOf: (day: string, observed: string | null, generated: boolean, { files, services }: WeatherFrom) => {
    const from = [...(files ? ["the lawn's files"] : []), ...services];
    return `As of ${day}. ${observed === null ? 'No weather of this place was seen' : `Weather observed through ${observed}`}${from.length === 0 ? '' : `, from ${from.join(' and ')}`}${generated ? '; made-up years after the nearest known climate' : ''}.`;
  },
  odds: (share: number) => `Odds of a right day: ${Math.round(10 * share)} in 10.`,
  more: '… more in the plan itself.',
  hours: {
    dry: 'Wait for dry leaves: about 2½ h after sunrise.',
    wet: 'While the leaves are wet with dew, so that it sticks.',
    cool: 'After the dew, early or late, out of the heat.',
    sunrise: 'To end near sunrise, so that leaves dry soon.',
    any: null,
  },
  labelWins: 'The label in hand, local rules and licensed practice go before this plan.',
} as const;

function range({ p10, p50, p90 }: Spread, display: Display): string {
  const shown = (day: string | null) => {
    const parsed = parseDay(day ?? '');
    return parsed === null ? 'much later' : display.shortDay(parsed);
  };
  return p10 === p90 ? shown(p50) : `about ${shown(p50)} (8 in 10: ${shown(p10)} to ${shown(p90)})`;
}
