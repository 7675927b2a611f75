import type { GrassSeason } from '../model/grass.ts';
import type { DegreeDayMethod } from '../model/heat.ts';
import type { Direction } from '../model/walk.ts';

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);
const meanOf = (count: number): string => (count === 1 ? '' : `${count}-day mean of `);

/** How a method takes the day's heat. */
const HEAT_BY: Readonly<Record<DegreeDayMethod, string>> = {
  average: "by the day's mean",
  'average-clamped': 'by the mean of raised extremes',
  modified: 'by the mean of clamped extremes',
  'single-sine': 'by a sine through the day',
  'double-sine': 'by a sine through each half of the day',
  'single-triangle': 'by a triangle through the day',
  'double-triangle': 'by a triangle through each half of the day',
};

/** Where the second half of a product goes. */
const SECOND: Readonly<Record<Direction, string>> = {
  lengthwise: 'lengthwise',
  crosswise: 'crosswise',
  between: 'between those lines',
  again: 'the same way once more',
};

/** Clauses on the days of a window: `which` says whether it is the opening or the closing. */
const window = {
  opensWhen: (rule: string) => `Opens when ${rule}.`,
  closesWhen: (rule: string) => `Closes when ${rule}.`,
  noMiddle: 'Its opening cannot be given a middle day yet.',
  openSince: (day: string, against: string | null) => `Open since ${day}${against === null ? '' : `, ${against}`}.`,
  opensOn: (day: string, against: string | null) => `Opens ${day}${against === null ? '' : `, ${against}`}.`,
  opensAbout: (day: string, first: string | null, last: string | null, against: string | null) =>
    `Expected to open about ${day} (8 in 10: ${first ?? '?'} ${last === null ? 'or much later' : `to ${last}`})${against === null ? '' : `, ${against}`}.`,
  asUsual: (usual: string) => `about as usual (${usual})`,
  offUsual: (late: number, usual: string) =>
    `${days(Math.abs(late))} ${late > 0 ? 'later' : 'earlier'} than usual (${usual})`,
  usualDate: 'That is the usual date: nothing seen so far tells more.',
  lastDay: (day: string) => `Last good day ${day}.`,
  lastDayAbout: (day: string, first: string, last: string | null) =>
    `Last good day about ${day} (8 in 10: ${first} to ${last ?? 'much later'}).`,
};

/** A trigger, in words that follow "opens when" or "closes when". */
const trigger = {
  on: (day: string) => `it is ${day}`,
  notBefore: (day: string) => `not before ${day}`,
  notAfter: (day: string) => `at the latest on ${day}`,
  any: (parts: readonly string[]) => parts.join(', or '),
  all: (parts: readonly string[]) => parts.join(', '),
  soil: (depth: string, mean: number) => `the ${meanOf(mean)}soil temperature at ${depth}`,
  air: (of: 'min' | 'mean' | 'max', mean: number) =>
    `the ${meanOf(mean)}${{ min: 'lowest', mean: 'mean', max: 'highest' }[of]} air temperature of the day`,
  growth: (grass: GrassSeason, mean: number) => `the ${meanOf(mean)}growth potential of ${grass}-season grass`,
  dayLength: (mean: number) => `the ${meanOf(mean)}length of the day`,
  crosses: (what: string, way: 'rises' | 'falls', to: string, holds: number, from: string | null) =>
    `${what} ${way} to ${to}${holds === 1 ? '' : ` and holds ${days(holds)}`}${from === null ? '' : `, from ${from} on`}`,
  heat: (reaches: string, base: string, method: DegreeDayMethod) => `${reaches} above ${base} (${HEAT_BY[method]})`,
  gathered: (of: 'soil' | 'air', heat: string, since: string) => `the ${of} has gathered ${heat} since ${since}`,
  frost: (which: 'first' | 'last', share: string, threshold: string, shift: number) => {
    const day =
      which === 'first'
        ? `the day by which ${share} of past years have had ${threshold}`
        : `the day after which ${share} of past years still have ${threshold}`;
    return shift === 0 ? `it is ${day}` : `it is ${days(Math.abs(shift))} ${shift < 0 ? 'before' : 'after'} ${day}`;
  },
  /** @param step Null for the opening of the window itself. @param wait Days, or heat in words; null for at once. */
  after: (step: string | null, wait: number | string | null, otherwise: string | null) => {
    const base = step === null ? 'the window opened' : `"${step}"`;
    const passed = typeof wait === 'number' ? days(wait) : wait;
    return `${passed === null ? '' : `${passed} have passed since `}${base}${otherwise === null ? '' : `, or else ${otherwise}`}`;
  },
};

/** Why a day is not allowed, in words that follow "because". */
const forbidden = {
  notWorking: 'it is not one of your working days',
  away: 'you are away',
  full: 'the day is full',
  frozen: 'the ground is likely frozen',
  saturated: 'the ground is likely too wet',
  unseen: 'the observed weather ends too early to choose so close a day',
  local: (substance: string, because: string | null) =>
    `a local rule forbids ${substance} then${because === null ? '' : ` (${because})`}`,
  spacing: (count: number, from: string) => `it is within ${days(count)} of the nitrogen of ${from}`,
  apart: (count: number, of: string, from: string) => `${days(count)} are to lie between it and "${of}" of ${from}`,
  interval: (count: number, of: string, from: string) =>
    `the label asks for ${days(count)} between it and "${of}" of ${from}`,
  seedlings: (count: number, of: string, from: string) =>
    `the seedlings of "${of}" (${from}) are to be mowed three times first, which takes ${days(count)} or so`,
  seedSafe: (wait: 'for-seed' | 'for-herbicide', count: number, of: string, from: string) =>
    `the label keeps ${wait === 'for-seed' ? 'seed off after the herbicide' : 'the herbicide off after seed'} for ${days(count)}, and "${of}" is on ${from}`,
  youngFeed: (area: string, since: string) => `"${area}" was seeded on ${since} and is fed three weeks later`,
  youngHerbicide: (area: string, since: string) =>
    `the turf of "${area}" is young (since ${since}): herbicides wait for three mowings or three months`,
  dormantSaid: {
    drought: 'the lawn file says that the turf is dormant (too dry)',
    heat: 'the lawn file says that the turf is dormant (too hot)',
  },
  dormantSeen: {
    drought: 'by the weather it is too dry for the turf to grow',
    heat: 'by the weather it is too hot for the turf to grow',
  },
  rain: (depth: string, known: boolean) => `${depth} or more of rain is ${known ? 'forecast' : 'likely'}`,
  cold: (limit: string, known: boolean) => `the day stays below ${limit}${known ? '' : ' in most years'}`,
  hot: (limit: string, known: boolean) => `the day is above ${limit} on average${known ? '' : ' in most years'}`,
  leftWindow: 'that day has left the window',
  better: 'another day is inside the window more often',
};

/** What a rule of the place names; other substances go by their own names. */
const substances = {
  fertilizer: 'fertilizer',
  pesticide: 'pesticide',
  nitrogen: 'nitrogen',
  phosphorus: 'phosphorus',
  potassium: 'potassium',
  seed: 'seed',
  lime: 'lime',
};

/** What keeps a step from an area, in words that follow "it is only for a lawn where". */
const wanted = {
  lawn: (fact: string, is: boolean) => `"${fact}" is ${is ? 'true' : 'not true'}`,
  pH: (below: string | null, above: string | null, is: boolean) =>
    `a soil test shows pH ${is ? '' : 'not '}${between(below, above, 'below', 'above')}`,
  nutrient: (which: 'phosphorus' | 'potassium', levels: readonly ('low' | 'medium' | 'high')[], is: boolean) =>
    `a soil test shows ${which} ${is ? '' : 'not '}${levels.join(' or ')}`,
  area: (under: string | null, over: string | null, is: boolean) =>
    `the area is ${is ? '' : 'not '}${between(over, under, 'over', 'under')}`,
  shelf: (product: string, is: boolean) => `"${product}" is ${is ? '' : 'not '}on the shelf`,
};

function between(first: string | null, second: string | null, ofFirst: string, ofSecond: string): string {
  return [first === null ? '' : `${ofFirst} ${first}`, second === null ? '' : `${ofSecond} ${second}`]
    .filter((part) => part !== '')
    .join(' and ');
}

/** How a step stands, and why. */
const standing = {
  skipped: 'Skipped by you in the lawn file.',
  unwanted: (parts: readonly string[]) => `Not needed here: it is only for a lawn where ${parts.join(', ')}.`,
  onlyOn: (areas: readonly string[], parts: readonly string[]) =>
    `On ${areas.join(', ')} alone: only where ${parts.join(', ')}.`,
  follows: (step: string, status: 'dropped' | 'skipped' | 'missed') => `Nothing to follow: "${step}" is ${status}.`,
  limitAlmost: (limit: string) => `Less than the label's rate is left of the limit "${limit}": none of it is put down.`,
  limitReached: (limit: string) => `Nothing is left of the limit "${limit}".`,
  noneAsked: 'The soil test asks for none of it.',
  done: (day: string) => `Done on ${day}.`,
  partlyDone: (areas: readonly string[]) => `Done so far on: ${areas.join(', ')}.`,
  halfDone: (areas: readonly string[]) => `First of two passes done on: ${areas.join(', ')}.`,
  missed: (note: string | null, begun: boolean) =>
    `The window has closed and ${begun ? 'the rest is not' : 'nothing is'} written in the journal.${note === null ? '' : ` ${note}`}`,
  late: (note: string | null, until: string) =>
    `The window has closed and nothing is written in the journal. It may still be made good until about ${until}.${note === null ? '' : ` ${note}`}`,
};

/** Why this day, and no other. */
const choice = {
  chosen: (day: string, share: string) => `${day} lies inside the window in ${share} of the runs of weather.`,
  pinned: (day: string, share: string) =>
    `Pinned by you to ${day}: inside the window in ${share} of the runs of weather.`,
  pinnedAgainst: (rules: readonly string[]) => `It is against the rules: ${rules.join('; ')}.`,
  passedOver: (day: string, isBest: boolean, reason: string) =>
    `Not ${day}, ${isBest ? 'the middle best day' : 'the soonest'}: ${reason}.`,
  kept: (free: string) => `The published day stands: ${free} would be no better by more than 5 points.`,
  movedFrom: (day: string, reason: string) => `Moved from ${day}: ${reason}.`,
  dueSince: (day: string) => `Was planned for ${day} and is not in the journal.`,
  unlikely: (share: string) => `Only ${share} of the runs of weather have a window this season; no day is chosen.`,
  noneLeft: 'No day is left in the window.',
  noneAllowed: (reasons: readonly string[]) =>
    `No day that is left in the window is allowed: on every one of them ${reasons.join(', or ')}.`,
};

/** Values of the soil, the air and the heat beside what is usual. */
const readings = {
  valueToday: (what: string, now: string, usual: string | null, day: string) =>
    `${what}, ${day}: ${now}${usual === null ? '' : `; usual ${usual}`}.`,
  usualToday: (what: string, usual: string, day: string) =>
    `${what}, ${day}: usually ${usual}; no weather was observed.`,
  soilAt: (depth: string, mean: number) => `Soil at ${depth}${mean > 1 ? ` (${mean}-day mean)` : ''}`,
  growth: (grass: GrassSeason, mean: number) =>
    `Growth potential of ${grass}-season grass${mean > 1 ? ` (of the ${mean}-day mean)` : ''}`,
  air: (mean: number) => `Air${mean > 1 ? ` (${mean}-day mean)` : ''}`,
  heatSince: (base: string, since: string, method: DegreeDayMethod) =>
    `Degree days above ${base} since ${since} (${HEAT_BY[method]})`,
  soilTitle: (depth: string, now: string | null, usual: string | null) =>
    `Soil at ${depth}: ${now ?? 'not known'}${usual === null ? '' : ` (usual ${usual})`}`,
  noSoil: 'Soil: no reading',
};

/** The product that was taken, and the limits that held it. */
const product = {
  only: (name: string) => `${name}: no other of your products that may be used here brings it.`,
  chosen: (name: string, over: string, because: string) => `${name} rather than ${over}: ${because}.`,
  /** In words that follow the product's name. */
  because: {
    'unasked-nitrogen': 'it brings less nitrogen that nobody asked for',
    'quick-limit': 'it stays inside the limit of quick nitrogen',
    'soil-test': 'its phosphate and potash are nearer to what is asked',
    'slow-share': 'it has the slow-release share that is preferred',
    shelf: 'it is on the shelf',
    'unasked-phosphate': 'it brings less phosphate that nobody asked for',
    packages: 'it takes fewer new packages',
    cost: 'it costs less',
    order: 'it stands first in your products',
  },
  held: (area: string, whole: string, held: string, limit: string, source: string | null) =>
    `${area}: ${held} instead of ${whole}, held by the limit "${limit}"${source === null ? '' : ` (${source})`}.`,
};

const limit = {
  nutrients: { N: 'nitrogen', 'quick-N': 'quick-nitrogen', P2O5: 'phosphate', K2O: 'potash', lime: 'lime' },
  name: (what: string, per: 'year' | 'application', by: 'program' | 'place' | 'label') =>
    `${what}-${per === 'year' ? 'yearly' : 'single'}${{ program: '', place: '-local', label: '-label' }[by]}`,
  ofLabel: (name: string) => `label of ${name}`,
  limeAtOnce: 'University of Maryland Extension: at most so much on the surface at once, the rest after six months',
};

/** How the work is done. */
const work = {
  fromLabel: 'from your label',
  unknownAmount: 'choose a product first',
  nutrients: { N: 'nitrogen', P2O5: 'phosphate (P2O5)', K2O: 'potash (K2O)' },
  /** A program's own rate, where no product is known. @param byTest Whether the soil test says how much of it. */
  asked: (amount: string, what: string, area: string, byTest: boolean) =>
    byTest
      ? `As much ${what} as the soil test asks for, at most ${amount} per ${area}.`
      : `${amount} of ${what} per ${area}.`,
  askedSlow: (share: string) => `Rather a product with ${share} of it or more slow-release.`,
  askedOfLabel: 'The rate is from your label, and so are limits and watering in.',
  askedOfBag: (name: string) => `${name}: as much as its bag says.`,
  rateOf: (name: string, rate: string) => `${name} at ${rate}.`,
  areaLine: (id: string, area: string, amount: string) => `${id} (${area}): ${amount}`,
  /** Follow the line of an area. */
  aid: (measure: string) => `, ${measure}`,
  rounded: (exact: string, down: boolean) => ` (rounded${down ? ' down' : ''} from ${exact})`,
  passes: (first: string, second: string, way: Direction) =>
    `: half (${first}) lengthwise, half (${second}) ${SECOND[way]}`,
  secondPass: (way: Direction | null) => `, the second pass${way === null ? '' : `, ${SECOND[way]}`}`,
  firstDown: (name: string) => `${name}: the first pass is down; put down what is left, and no more.`,
  mowAt: (height: string) => `Mow at ${height}.`,
  waterDepth: (depth: string) => `Water ${depth}.`,
  waterIn: (depth: string | null, within: number | null) =>
    `Water in${depth === null ? '' : ` with ${depth}`}${within === null ? '' : ` within ${days(within)}`}${depth === null ? ', as deep as the label says' : ''}.`,
  setLow: 'Set the dial low, put down half one way and half the other, and adjust by what is left.',
  noLabel: 'There is no label entry for this in your products: rate, limits and water-in come from the label in hand.',
  activeRate: (active: string, rate: string, compare: string | null) =>
    `That brings ${rate} of ${active}${compare === null ? '' : `, beside ${compare} as published for such work`}.`,
  labelSilent: (missing: readonly string[]) =>
    `The label entry does not say ${missing.join(', ')}: look on the label in hand.`,
  labelKeys: { 'per-application': 'per-application', 'per-year': 'per-year', interval: 'interval' },
  labelKeyOf: (key: string, active: string) => `${key} of ${active}`,
  labelDate: (day: string) => `Label last compared on ${day}; the label in hand wins.`,
  reEntry: (said: string) => `Label, re-entry: ${said}`,
  unpublished: {
    'common-practice': 'Common practice.',
    'from-memory': 'From memory, not checked against a publication.',
  },
  wind: (limit: string) => `wind (below ${limit})`,
  airBetween: (from: string | null, to: string | null) =>
    `air temperature (${from === null ? `below ${to}` : to === null ? `above ${from}` : `${from} to ${to}`})`,
  rain: (depth: string, hours: number) => `rain (less than ${depth} in ${hours} h)`,
  entry: (
    day: string,
    areas: readonly string[] | null,
    amount: string | null,
    name: string | null,
    setting: string | null,
    note: string | null,
  ) =>
    [
      `${day}${areas === null ? '' : ` (${areas.join(', ')})`}`,
      name !== null || amount !== null ? [amount, name].filter((part) => part !== null).join(' of ') : null,
      setting === null ? null : `setting ${setting}`,
      note,
    ]
      .filter((part) => part !== null)
      .join('; '),
  halfPackage: (of: string) => `half a package of ${of}`,
  packages: (count: string, isOne: boolean, of: string) => `${count} ${isOne ? 'package' : 'packages'} of ${of}`,
  cups: (count: string, isMany: boolean) => `${count} ${isMany ? 'cups' : 'cup'}`,
};

const soilTest = {
  names: { lime: 'lime', P2O5: 'phosphate (P2O5)', K2O: 'potash (K2O)' },
  none: (areas: string) => `${areas}: no soil test is written down, and this step goes by one alone.`,
  enough: (areas: string, test: string, what: 'lime' | 'P2O5' | 'K2O') =>
    `${areas}: the soil test of ${test} asks for no ${soilTest.names[what]}.`,
  noAmount: (areas: string, test: string, what: 'lime' | 'P2O5' | 'K2O', add: string) =>
    `${areas}: the soil test of ${test} names no amount of ${soilTest.names[what]}, so this is the program's own rate, the most at a time. If the report has one, add it to the test (${add}).`,
  /** Keys of the lawn file, as they are written there. */
  add: (first: string, or: string | null) => (or === null ? first : `${first}, or ${or}`),
  and: (first: string, second: string) => `${first} and ${second}`,
  table: (least: string, most: string, goals: readonly string[]) =>
    ` The table of acidity goes from ${least} to ${most} meq/100 g, to pH ${goals.slice(0, -1).join(', ')} or ${goals.at(-1)}.`,
  asks: (areas: string, test: string, rate: string, what: 'lime' | 'P2O5' | 'K2O', acidity: string | null) =>
    `${areas}: the soil test of ${test} asks for ${rate} of ${what === 'lime' ? 'lime, as pure calcium carbonate' : `${soilTest.names[what]} for the year`}${acidity === null ? '' : `, by the acidity of ${acidity} meq/100 g`}`,
  done: (rate: string) => `${rate} of it has been put down since`,
  others: (rate: string) => `${rate} comes with other work`,
  left: (rate: string, next: string | null) =>
    `${rate} is left for later${next === null ? '' : `, from ${next} on`}: this is the most at a time`,
};

const sprayer = {
  output: (rate: string, by: 'file' | 'catch' | 'nozzle', tank: string, area: string) =>
    `The sprayer puts down ${rate}${{ file: '', catch: ' by your catch test', nozzle: ' by your nozzle test' }[by]}: a tank of ${tank} covers ${area}.`,
  pace: (area: string, time: string) => `Go as fast as in your test: ${area} in ${time}.`,
  speed: (speed: string) => `Go as fast as in your test: ${speed}.`,
  tank: (kind: 'full' | 'last' | 'only', count: number, spray: string, mix: string, area: string) =>
    `${{ full: count === 1 ? 'One full tank' : `${count} full tanks, each`, last: 'Last tank', only: 'One tank, not full' }[kind]}: ${spray} ${mix}, for ${area}.`,
  /** What is in a tank; follows its volume. */
  ofSpray: 'of spray',
  withWater: (amount: string, water: string) => `with ${amount} and ${water} of water`,
  toppedUp: (amount: string) => `with ${amount} topped up with water`,
  noRoom: (amount: string) => `with ${amount} and no room for water`,
  tanksFor: (areas: readonly string[], line: string) => `For ${areas.join(', ')}: ${line}`,
  mixing: 'The label gives the order of mixing and the least amount of water.',
  tooThick:
    'The product alone is as much as the sprayer puts down, which leaves no room for water. Take nozzles or a pace that put down more, and measure again.',
  none: 'Once the lawn file names your sprayer, the tanks stand here; `soilclock sprayer` tells how to name it.',
};

const dial = {
  passes: { second: 'Second pass', next: 'Next time', journal: 'By the journal' },
  first: (pass: string, setting: string) =>
    `${pass}: dial ${setting}, low on purpose, about a third open (common practice).`,
  keep: (pass: string, setting: string, within: string) =>
    `${pass}: keep the dial at ${setting}; within ${within} is as good as it gets (common practice).`,
  set: (pass: string, setting: string) => `${pass}: set the dial to ${setting}.`,
  /** Follows the setting. */
  range: (middle: string, inTen: number, low: string, high: string) =>
    ` About ${middle} is to be expected, ${inTen} times in 10 between ${low} and ${high}.`,
  notes: {
    'label-reached': "The label's maximum of one application is down: no further pass.",
    'load-no-more':
      'It may come out above what the label allows: load no more than that, and stop when the hopper is empty.',
    'held-back':
      'It opens wider than any setting tried, so it is kept low on purpose; what is left over shows how to go on.',
    coarse: 'No mark of the dial comes nearer.',
    'dial-ends-low': 'The dial does not go lower: watch how fast the hopper empties.',
    'dial-ends-high': 'The dial does not open wider.',
  },
};

/** The usual cautions, as labels and extension services give them. Common practice. */
const cautions = {
  pesticide: [
    'The label is the law: rate, protective equipment, weather and water-in are the ones printed there.',
    'Keep people and pets off for as long as the label says.',
    'Do not treat blooming weeds that bees visit; mow the flowers off first.',
    'Keep off the root zone of trees and shrubs, and away from wells and water, as far as the label says.',
    'Do not use treated clippings as mulch or compost for as long as the label says.',
    'Store it locked in its own package; take what is left to a collection point.',
  ],
  spread: 'Sweep or blow granules off paving back onto the grass; nothing into drains.',
  sprayed: 'Keep the spray off paving, water and drains, and do not spray where the wind carries it away.',
  onGrass: 'Not before heavy rain, not on frozen or saturated ground; keep your distance from wells and water.',
  liquidFeed: [
    'A strong mix burns the grass: take no less water than the label says, not in heat or on dry turf, and rinse it off the leaves where the label says so.',
    'Read the package: gloves, storage and what it says about pets.',
  ],
  dryFeed: ['Read the bag: gloves, storage and what it says about pets.'],
};

/** How what is left of a product keeps: common practice; the label or the package in hand wins. */
const keeping = {
  pesticide: 'keeps as its label says, locked up in its own package',
  granular: 'keeps for years where it stays dry, in the closed bag',
  soluble: 'keeps for years in a tight box; it draws water from the air',
  liquid: 'keeps as its package says, away from frost and sun',
  seed: 'does not keep well: less of it comes up after a year, so count what sprouts of 50 first',
  amendment: 'is better put down now than kept',
  lime: 'keeps for years where it stays dry',
};

/** What now, and what has moved. */
const now = {
  amountOf: (amount: string, name: string) => `${amount} ${name}`,
  due: (name: string, day: string, amount: string | null) =>
    `Due: ${name}, ${day}${amount === null ? '' : `: ${amount}`}.`,
  open: (name: string, day: string | null, amount: string | null) =>
    `Open now: ${name}${day === null ? '' : `, planned for ${day}`}${amount === null ? '' : `: ${amount}`}.`,
  week: (name: string, day: string, amount: string | null) =>
    `This week: ${name}, ${day}${amount === null ? '' : `: ${amount}`}.`,
  threeWeeks: (name: string, day: string, amount: string | null) =>
    `Within three weeks: ${name}, ${day}${amount === null ? '' : `: ${amount}`}.`,
  missed: (name: string) => `Missed: ${name}.`,
  buy: (packages: string, name: string, day: string, cost: string | null) =>
    `Buy by ${day}: ${packages} ${name}${cost === null ? '' : `, ${cost}`}.`,
  nothing: (name: string, day: string) => `Nothing to do in the next three weeks. Next: ${name}, ${day}.`,
  seasonOver: 'Nothing more is planned in this season.',
  moved: (name: string, day: string, against: string) => `${name}: opens about ${day}, ${against}.`,
  behindIt: 'The soil and the heat behind it:',
};

/** What a feed says that a season does not carry. */
const feed = {
  category: 'Lawn',
  calendarAbout: (lawn: string, program: string) =>
    `${program}, for ${lawn}. Dates follow soil temperature and degree days; ranges firm up as the season unfolds.`,
  helperName: 'Lawn work',
  soilOfLawns: (values: readonly string[]) => `Soil today: ${values.join(', ')}`,
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
  windowText: (opens: string, closes: string) =>
    `Opens ${opens}; last good day ${closes}. Shown from the middle opening to the middle last day.`,
  onDay: (day: string | null) => day ?? 'much later',
  aboutDay: (middle: string | null, first: string | null, last: string | null) =>
    `about ${middle ?? 'much later'} (8 in 10: ${first ?? 'much later'} to ${last ?? 'much later'})`,
  buyTitle: (names: readonly string[]) => `Buy: ${names.join(', ')}`,
  buyLine: (name: string, packages: string | null, cost: string | null, needed: string) =>
    `${name}: ${packages ?? 'what the plan says is short'}${cost === null ? '' : `, about ${cost}`}; needed on ${needed}.`,
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
  windowOdds: (inTen: number) => `There is a window in ${inTen} of 10 runs of weather.`,
  lookFirst: (what: readonly string[]) => `Not judged: ${what.join(', ')}. Look before you start.`,
  asOf: (day: string, observed: string | null, generated: boolean, files: boolean, services: readonly string[]) => {
    const from = [...(files ? ["the lawn's files"] : []), ...services].join(' and ');
    return `As of ${day}. ${observed === null ? 'No weather of this place was seen' : `Weather observed through ${observed}`}${from === '' ? '' : `, from ${from}`}${generated ? '; made-up years after the nearest known climate' : ''}.`;
  },
  odds: (inTen: number) => `Odds of a right day: ${inTen} in 10.`,
  more: '… more in the plan itself.',
  hours: {
    dry: 'Wait for dry leaves: about 2½ h after sunrise.',
    wet: 'While the leaves are wet with dew, so that it sticks.',
    cool: 'After the dew, early or late, out of the heat.',
    sunrise: 'To end near sunrise, so that leaves dry soon.',
    any: null,
  },
  labelWins: 'The label in hand, local rules and licensed practice go before this plan.',
};

/** What subscribers see change. */
const changes = {
  heads: { new: 'New', moved: 'Moved', changed: 'Changed', cancelled: 'Cancelled', done: 'Done' },
  parts: {
    title: 'title',
    hours: 'hours',
    days: 'days',
    status: 'status',
    amount: 'amount',
    cautions: 'cautions',
    odds: 'odds',
    details: 'odds or details',
  },
  amountNow: (amount: string) => `amount, now ${amount}`,
  span: (first: string, last: string) => `${first} to ${last}`,
  byDays: (late: number) => `${days(Math.abs(late))} ${late > 0 ? 'later' : 'earlier'}`,
  firstFeed: (events: number) => `A new calendar of ${events} events.`,
  nothing: 'Nothing but the soil of today.',
  seen: 'What subscribers will see change',
  wouldSee: 'What subscribers would see change',
  digestTitle: (lawn: string) => `What moved: ${lawn}`,
  digestAbout: (weeks: number, day: string) => `The last ${weeks} weeks up to ${day}.`,
  digestNothing: 'Nothing has moved.',
};

/** What a season sheet says besides. */
const sheet = {
  title: (name: string, year: string) => `${name}: season sheet ${year}`,
  skip: 'Go to the season',
  asOf: (day: string) => `As of ${day}`,
  kicker: { due: 'Due now', open: 'Window open now; planned for the day below', expected: 'To do next' },
  nothingNow: 'Nothing to do now. What comes next',
  howMuch: 'How much',
  noAmount: 'Nothing to weigh',
  minutes: (count: number) =>
    `about ${count < 60 ? '' : `${Math.floor(count / 60)} h`}${count > 60 && count % 60 > 0 ? ' ' : ''}${count % 60 > 0 ? `${count % 60} min` : ''}`,
  buyFor: (day: string, shelf: string | null) => `for ${day}${shelf === null ? '' : `; ${shelf} on the shelf`}`,
  stuck: (name: string, last: string | null) =>
    `${name}: open${last === null ? '' : ` to about ${last}`}, but no day can be chosen; its job tells why`,
  buyBy: (day: string) => `Buy by ${day}`,
  odds: (inTen: number) => `The day is right in ${inTen} of 10 runs of weather`,
  inTen: (count: number) => `${count} in 10`,
  before: 'Before that',
  after: 'After that',
  season: (year: string) => `The season ${year}`,
  temperatures: 'Soil and air',
  usualSoil: 'usual soil',
  usualAir: 'usual air',
  windows: 'Windows and chosen days',
  todayOn: (day: string) => `today, ${day}`,
  edges: { opens: (name: string) => `${name} opens`, closes: (name: string) => `${name} closes` },
  air: { min: 'Lowest air of the day', mean: 'Air of the day', max: 'Highest air of the day' },
  chartLabel: 'The windows of the steps over the year; the table below says the same.',
  asTable: 'The season as a table',
  columns: ['Work', 'How it stands', 'Opens', 'Last good day', 'Chosen day', 'Odds'],
  status: {
    expected: 'expected',
    open: 'open',
    due: 'due',
    done: 'done',
    missed: 'missed',
    skipped: 'skipped by you',
    dropped: 'not this season',
  },
  legend: {
    soil: 'soil temperature, seen',
    usualSoil: 'usual soil, and where 8 of 10 years lie',
    air: 'air of the day, seen',
    usualAir: 'usual air',
    usualAirAndHeat: 'usual air, usual degree days',
    forecast: 'forecast',
    awaited: 'what a window waits for, about then',
    window: 'window; pale where runs of weather differ',
    chosen: 'chosen day',
    done: 'done',
    usual: 'usual opening',
    today: 'today',
  },
  ways: {
    title: 'How to walk with the spreader',
    way: { lengthwise: 'lengthwise', crosswise: 'crosswise', between: 'between the lines', again: 'once more' },
    legend:
      'Dot: start. Broken line: the edge first. Arrows: lines by their numbers, dotted to the next. Shaded: covered.',
    note: (way: string, load: string | null, distance: string, turns: number) =>
      `${way}: ${load === null ? '' : `${load}, `}${distance}, ${turns} ${turns === 1 ? 'turn' : 'turns'}`,
    done: (way: string) => `${way}: done`,
  },
  buy: 'To buy',
  need: (need: string, shelf: string | null) =>
    `${need} needed, ${shelf === null ? 'none on the shelf' : `${shelf} on the shelf`}`,
  enough: (name: string) => `${name}: enough on the shelf`,
  short: (name: string, day: string) => `Buy by ${day}: ${name}; its products entry names no package`,
  leftOver: (left: string, keeps: string | null) => `${left} will be left${keeps === null ? '' : `, which ${keeps}`}`,
  limits: 'Limits of the season',
  limitOf: (what: string, areas: string, limit: string, whose: string) => `${what}, ${areas}: ${limit} (${whose})`,
  limitBy: { program: 'the program', place: 'the place' },
  limitDays: (whose: string, first: string, last: string) => `${whose}, ${first} to ${last}`,
  limitUse: (done: string, planned: string, left: string) => `${done} done, ${planned} planned, ${left} left`,
  limitOver: (done: string, planned: string) => `${done} done, ${planned} planned: MORE THAN ALLOWED`,
  moved: 'What has moved',
  sprayer: 'The sprayer',
  notes: 'What the files leave open',
  subscribe: 'On your phone',
  feedAt: 'The same days as a calendar that follows every new plan. Add its address to your calendar:',
  feedFile: (file: string) =>
    `The same days stand in the file ${file} beside this sheet, as a calendar that a phone can subscribe to.`,
  jobs: 'The jobs',
  forAll: 'For all of this work:',
  whyAndSources: 'Why this day, and sources',
  sources: 'Sources',
};

/** Pages of a published site. */
const site = {
  places: 'Places',
  find: 'Find your place',
  findLabel: 'A ZIP code, or the name of a place',
  nearest: 'Nearest to it',
  away: (far: string) => `about ${far} away`,
  notFound: 'No place of this list has that name, and it is no ZIP code that is known here.',
  noScript: 'Look for your place in the list; it is in the order of the names.',
  zipNote: 'A ZIP code is looked up in your browser by its first three digits; it is sent to nobody.',
  backToList: 'All places',
  asOf: (day: string) => `As of ${day}.`,
  rough: 'Dates are for the weather of about this place. Your own lawn may be earlier or later.',
  now: 'What now',
  openNow: (name: string, last: string) => `${name}: its window is open. ${last}`,
  opensSoon: (name: string, opens: string) => `${name}. ${opens}`,
  nothingNow: (weeks: number) => `No window is open, and none is expected to open within ${weeks} weeks.`,
  windows: 'The windows of the season',
  work: 'Work',
  opens: 'Opens',
  best: 'Best about',
  lastDay: 'Last good day',
  state: 'State',
  about: (day: string, first: string, last: string | null) =>
    `${day} (8 in 10: ${first} ${last === null ? 'or much later' : `to ${last}`})`,
  states: {
    expected: 'to come',
    open: 'open',
    due: 'open',
    done: 'over',
    missed: 'over',
    skipped: 'left out',
    dropped: 'falls out',
  },
  none: 'none',
  steps: 'The work, step by step',
  sources: 'Sources',
  subscribe: 'Follow it in your calendar',
  subscribeText:
    'The calendar carries these windows, and moves them as the weather comes. It is read again by your calendar, some every hour, some once a day.',
  openIn: 'Open in the calendar of this device',
  addGoogle: 'Add to Google Calendar',
  byAddress: 'In any other calendar choose "add a calendar by address" or "from the web", and give this address:',
  feedFile: 'The calendar as a file',
  qr: 'The address of the calendar, to be read with a camera',
  moved: 'What moved',
  movedText: 'as text',
  movedFeed: 'as an Atom feed',
  program: 'The program',
  version: (fingerprint: string) => `Version ${fingerprint}`,
  author: (name: string) => `By ${name}.`,
  license: (name: string) => `Licence: ${name}.`,
  changelog: 'What changed in the program',
  embed: 'On a page of your own',
  embedText: 'Copy this into a page; it shows what is open here now.',
  endedTitle: (name: string) => `${name}: no longer published`,
  endedText: 'This place is no longer published. Its calendar calls off what was to come, and ends.',
};

/** English: every text that a season, a feed and a digest carry. */
export const en = {
  window,
  trigger,
  forbidden,
  substances,
  wanted,
  standing,
  choice,
  readings,
  product,
  limit,
  work,
  soilTest,
  sprayer,
  dial,
  cautions,
  keeping,
  now,
  feed,
  changes,
  sheet,
  site,
};

/** The texts of a language, one shape for all. */
export type Words = typeof en;
