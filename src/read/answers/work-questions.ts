import { problem } from '../../base/problem.ts';
import { FORECAST_SERVICES, WEATHER_SERVICES } from '../../model/lawn.ts';
import { isProblems, type Question } from './question.ts';
import { chosen, isNone, listed } from './words.ts';

const SPREADERS = ['rotary', 'drop', 'hand'] as const;
const spreader: Question = {
  id: 'spreader',
  flags: ['--spreader <kind>'],
  prompt: 'Spreader: rotary, drop, hand or none',
  help: 'rotary throws in a fan, drop lets fall below itself, hand is carried. none: you have none, or tell later.',
  examples: ['rotary'],
  default: () => 'rotary',
  parse: (text) => ({
    ...(isNone(text) ? {} : { equipment: { spreader: { kind: chosen(text, SPREADERS) } } }),
  }),
};

const swath: Question = {
  id: 'swath',
  flags: ['--swath <width>'],
  prompt: 'Width of one pass',
  help: 'How wide the spreader puts down in one pass. Measure it: walk a few steps over bare ground and look. 10 ft is common for a rotary one.',
  examples: ['10 ft', '3 m'],
  applies: ({ equipment }) => equipment?.spreader !== undefined && equipment.spreader.kind !== 'hand',
  default: ({ equipment }) => (equipment?.spreader?.kind === 'rotary' ? '10 ft' : 'not known'),
  parse: (text, { equipment }) => ({
    equipment: { spreader: { ...equipment?.spreader, ...(!isNone(text) && { swath: text }) } },
  }),
};

const DIAL =
  /^(?:from\s+)?(\d+(?:\.\d+)?)\s*(?:to|-|–)\s*(\d+(?:\.\d+)?)(?:\s*,?\s*(?:by|step|steps of|in)\s*(\d*\.?\d+))?$/i;

const dial: Question = {
  id: 'dial',
  flags: ['--dial <range>'],
  prompt: 'Its dial',
  help: 'The lowest and highest number on the dial, and how finely it can be set.',
  examples: ['1 to 15 by 0.25'],
  applies: ({ equipment }) => equipment?.spreader !== undefined,
  default: () => 'not known',
  parse(text, { equipment }, _, place) {
    if (isNone(text)) return { equipment: { ...equipment } };
    const [, from, to, step = '1'] = DIAL.exec(text) ?? [];
    const range = { from: Number(from), to: Number(to), step: Number(step) };
    if (!(range.from < range.to && range.step > 0 && range.step <= range.to - range.from))
      return [
        problem('new-not-answer', { found: text, expected: 'the lowest number, the highest, and a step' }, place),
      ];
    return { equipment: { spreader: { ...equipment?.spreader, dial: range } } };
  },
};

const DAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'] as const;
const short = (day: string): string => day.slice(0, 3);
const GROUPS: Readonly<Record<string, readonly string[]>> = {
  weekend: ['sat', 'sun'],
  weekends: ['sat', 'sun'],
  weekdays: ['mon', 'tue', 'wed', 'thu', 'fri'],
  any: DAYS.map(short),
  all: DAYS.map(short),
};

/** A weekday by its beginning, of three letters or more; or days by a word for several. */
function daysOf(word: string): readonly string[] {
  const typed = word.toLowerCase();
  const day = typed.length < 3 ? undefined : DAYS.find((one) => `${one}s`.startsWith(typed));
  return GROUPS[typed] ?? [day === undefined ? word : short(day)];
}

const days: Question = {
  id: 'days',
  flags: ['--days <list>'],
  prompt: 'Days for the work',
  help: 'Weekdays on which somebody is there: sat, sun; or weekend, weekdays, all. Work is planned on these.',
  examples: ['sat, sun'],
  default: () => 'sat, sun',
  parse: (text, { working }) => ({
    working: {
      ...working,
      days: [
        ...new Set(
          text
            .split(/[\s,]+|\band\b/)
            .filter(Boolean)
            .flatMap(daysOf),
        ),
      ],
    },
  }),
};

/** A time as `HH:MM`, from `8`, `8:30`, `8am` or `6 pm`; as it is where it is none of them. */
function clockOf(text: string): string {
  const [, hour = '', minute = '00', half] = /^(\d{1,2})(?::(\d\d))?\s*([ap])?\.?m?\.?$/i.exec(text.trim()) ?? [];
  if (hour === '' || (half !== undefined && (Number(hour) < 1 || Number(hour) > 12))) return text.trim();
  const hours = half === undefined ? Number(hour) : (Number(hour) % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return `${String(hours).padStart(2, '0')}:${minute}`;
}

const hours: Question = {
  id: 'hours',
  flags: ['--hours <from-to>'],
  prompt: 'Hours for it',
  help: 'Between which times of the day work may be put into the calendar.',
  examples: ['08:00-18:00'],
  default: () => '08:00-18:00',
  parse(text, { working }, _, place) {
    const parts = text.split(/\s*(?:-|–|\bto\b)\s*/i);
    if (parts.length !== 2)
      return [problem('new-not-answer', { found: text, expected: 'two times, the earlier one first' }, place)];
    return { working: { ...working, between: parts.map(clockOf) } };
  },
};

const remind: Question = {
  id: 'remind',
  flags: ['--remind <how long before>'],
  prompt: 'Reminders before it',
  help: 'How long before the work the calendar rings; several by commas, or none.',
  examples: ['3 d, 12 h'],
  default: () => '1 d',
  parse: (text, { working }) => ({ working: { ...working, remind: isNone(text) ? [] : listed(text) } }),
};

const weather: Question = {
  id: 'weather',
  flags: ['--weather <files or service>'],
  prompt: 'Past weather: none, open-meteo, ncei, or files',
  help: 'A file of daily weather, several by commas; or a service, which is told the place when you run "soilclock weather fetch", and only then. none: made-up years after the nearest known climate, good for a first look.',
  examples: ['open-meteo', 'weather.csv'],
  default: () => 'none',
  parse(text, { weather: { forecast } = {} }, world) {
    const rest = forecast === undefined ? {} : { forecast };
    const word = chosen(text, WEATHER_SERVICES);
    if (!word.includes('.')) return { weather: { service: word, ...rest } };
    const found = listed(text).map((file) => world.weatherAt(file));
    const problems = found.flatMap((one) => (typeof one === 'string' ? [] : one));
    if (problems.length > 0) return problems;
    return { weather: { files: found as string[], service: 'none', ...rest } };
  },
};

const FILE_UNITS = ['metric', 'us'] as const;
const fileUnits: Question = {
  id: 'file-units',
  flags: ['--file-units <metric or us>'],
  prompt: 'The weather file is in: metric or us',
  help: 'Its columns name no unit: metric is °C and mm, us is °F and inches.',
  examples: ['metric'],
  applies: ({ weather: past }, world) => past?.files?.some((ref) => world.leavesUnitsOpen(ref)) ?? false,
  default: () => null,
  parse: (text, { weather: past }) => ({ weather: { ...past, units: chosen(text, FILE_UNITS) } }),
};

const forecast: Question = {
  id: 'forecast',
  flags: ['--forecast <service>'],
  prompt: 'Forecast: none, open-meteo or nws (U.S.)',
  help: 'A service for the days ahead, asked like the one before, when you run "soilclock weather fetch".',
  examples: ['open-meteo'],
  default: ({ weather: past }) =>
    past?.service === 'open-meteo' ? 'open-meteo' : past?.service === 'ncei' ? 'nws' : 'none',
  parse(text, { weather: past }, world) {
    const word = chosen(text, FORECAST_SERVICES);
    if (!word.includes('.')) return { weather: { ...past, forecast: word } };
    const found = world.weatherAt(text);
    return isProblems(found as object) ? (found as never) : { weather: { ...past, forecast: found as string } };
  },
};

export const workQuestions = [spreader, swath, dial, days, hours, remind, weather, fileUnits, forecast] as const;
