import { type Problem, problem } from '../../base/problem.ts';
import type { Draft } from '../../model/draft.ts';
import { GRASSES } from '../../model/grass.ts';
import { LANGUAGES } from '../../model/languages.ts';
import type { ProgramAtHand, Question, World } from './question.ts';
import { isProblems } from './question.ts';
import { chosen, idOf, isNone } from './words.ts';

const name: Question = {
  id: 'name',
  flags: ['--name <text>'],
  prompt: 'Name of the lawn',
  help: 'What plans and the calendar call it. Any words do; the id in the file is made of them.',
  examples: ["The keeper's lawn"],
  default: () => 'My lawn',
  parse: (text) => ({ name: text, id: idOf(text) || 'my-lawn' }),
};

const LAT_LON =
  /^(?:lat(?:itude)?:?\s*)?([+-]?\d+(?:\.\d+)?)\s*°?\s*[,;\s]\s*(?:lon(?:gitude)?:?\s*)?([+-]?\d+(?:\.\d+)?)\s*°?$/i;

const place: Question = {
  id: 'place',
  flags: ['--place <where>', '--zip <code>'],
  prompt: 'Place: ZIP code, or latitude, longitude',
  help: 'Where the lawn is: a U.S. ZIP code, or latitude and longitude in degrees, north and east positive. It decides which weather is taken; it stays in your file.',
  examples: ['53202', '38.4, -72.6'],
  default: () => null,
  parse(text, draft, { zips }, where) {
    const elevation = draft.location?.elevation;
    const height = elevation === undefined ? {} : { elevation };
    if (/^\d{5}(-\d{4})?$/.test(text)) {
      if (zips(text.slice(0, 5)) === null) return [problem('zip-unknown', { zip: text }, where)];
      return { location: { zip: text, ...height } };
    }
    const [, latitude, longitude] = LAT_LON.exec(text) ?? [];
    if (latitude === undefined || longitude === undefined)
      return [
        problem(
          'new-not-answer',
          { found: text, expected: 'a ZIP code of five digits, or latitude and longitude in degrees' },
          where,
        ),
      ];
    return { location: { latitude: Number(latitude), longitude: Number(longitude), ...height } };
  },
};

const elevation: Question = {
  id: 'elevation',
  flags: ['--elevation <height>'],
  prompt: 'Elevation',
  help: 'Height above the sea, with its unit. Without a weather file it makes the usual temperatures better: 100 m up is about 0.65 °C colder.',
  examples: ['600 ft', '180 m'],
  applies: ({ location }) => location !== undefined,
  default: () => 'not known',
  parse(text, { location }) {
    const { elevation: _, ...rest } = location ?? {};
    return { location: isNone(text) ? rest : { ...rest, elevation: text } };
  },
};

const UNITS = ['us', 'metric'] as const;
const units: Question = {
  id: 'units',
  flags: ['--units <us or metric>'],
  prompt: 'Units to read: us or metric',
  help: 'What plans are printed in: us (pounds, square feet, °F) or metric. What you type may be in either.',
  examples: ['us'],
  default: ({ location }) => (location?.zip === undefined ? 'metric' : 'us'),
  parse: (text, { display }) => ({ display: { ...display, units: chosen(text, UNITS) } }),
};

const language: Question = {
  id: 'language',
  flags: ['--language <tag>'],
  prompt: 'Language of the plan: en-US, en-GB, es-MX, es-US or another',
  help: `Language of plans and feeds, and how days and numbers are written: ${LANGUAGES.join(', ')}.`,
  examples: ['en-US'],
  default: ({ display }) => (display?.units === 'us' ? 'en-US' : 'en-GB'),
  parse: (text, { display }) => ({ display: { ...display, language: chosen(text, LANGUAGES) } }),
};

/** Whether a program is written for the climate of the place, as far as both are known. */
function suits({ climate }: ProgramAtHand, climates: readonly string[]): boolean {
  return climate.length === 0 || climates.length === 0 || climate.some((one) => climates.includes(one));
}

const climatesOf = ({ location }: Draft, world: World): readonly string[] =>
  location === undefined ? [] : world.climatesAt(location);

/** The programs that come along for a grass, those for the climate of the place first. */
function fitting(draft: Draft, world: World, grass = draft.grass): readonly ProgramAtHand[] {
  const climates = climatesOf(draft, world);
  const written = world.programs.filter((program) => grass !== undefined && program.grass.includes(grass));
  return [
    ...written.filter((program) => suits(program, climates)),
    ...written.filter((program) => !suits(program, climates)),
  ];
}

/** A program's name, behind a word of warning where it is meant for another climate. */
const aboutProgram = (program: ProgramAtHand, draft: Draft, world: World): string =>
  suits(program, climatesOf(draft, world)) ? program.name : `(other climate) ${program.name}`;

const grass: Question = {
  id: 'grass',
  flags: ['--grass <name>'],
  prompt: 'Grass',
  help: 'The grass that most of the lawn is of; its number or the beginning of its name will do. Beside each stands the program that comes along for it, and best fits the climate. An area of another grass can say so in the file later.',
  examples: ['tall-fescue'],
  choices: (draft, world) =>
    GRASSES.map((word) => {
      const [first] = fitting(draft, world, word);
      return { word, about: first ? aboutProgram(first, draft, world) : '-' };
    }),
  default: () => null,
  parse: (text) => ({ grass: chosen(text, GRASSES) }),
};

const program: Question = {
  id: 'program',
  flags: ['--program <id or file>'],
  prompt: 'Program',
  help: "The season program: what is done, and at which soil temperature. One of those listed, the best for your climate first, or the path of a program file of your own, or the https address of one that 'soilclock program fetch' has brought; it has to be written for the lawn's grass.",
  examples: ['tall-fescue-transition', 'my-program.yaml'],
  choices: (draft, world) =>
    fitting(draft, world).map((one) => ({ word: one.id, about: aboutProgram(one, draft, world) })),
  applies: (draft) => draft.grass !== undefined,
  default: (draft, world) => fitting(draft, world)[0]?.id ?? null,
  missing: ({ grass = '' }, { programs }, where) =>
    problem('new-none-fits', { grass, grasses: [...new Set(programs.flatMap((one) => one.grass))] }, where),
  parse(text, draft, world, where) {
    const ids = fitting(draft, world).map(({ id }) => id);
    const id = chosen(text, ids);
    const found = world.programs.find((one) => one.id === id) ?? world.programAt(text);
    if (isProblems(found)) return found;
    if (draft.grass !== undefined && !found.grass.includes(draft.grass))
      return [problem('new-no-program', { found: found.id, grass: draft.grass, grasses: found.grass }, where)];
    return { program: found.ref };
  },
};

/** A warning where the program that comes along for the grass is written for another climate than the lawn's. */
export function otherClimate(draft: Draft, world: World): Problem[] {
  const climates = climatesOf(draft, world);
  const own = world.programs.find(({ ref }) => ref === draft.program);
  if (!own || suits(own, climates)) return [];
  return [problem('new-other-climate', { program: own.id, climates: own.climate, here: climates }, null)];
}

export const placeQuestions = [name, place, elevation, units, language, grass, program] as const;
