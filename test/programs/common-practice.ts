/**
 * Figures that nobody publishes and that the trade, or these programs, take in one of a few usual ways: typed here once for
 * all programs, so that a slip in one of them is noticed against what the others say. A program that needs another value
 * adds it here with its reason. It holds for what `cited/` lists as unpublished; the first line whose place fits counts.
 */
export interface CommonPractice {
  /** The place of the figure: `step.path`, as `figuresOf` names it. */
  readonly at: RegExp;
  /** The usual values; two in brackets are the ends of a range. */
  readonly usual: readonly (string | number | readonly [from: string, to: string])[];
  readonly why: string;
}

/** What keeps granules and sprays off the lawn where no publication is cited for it. */
const WEATHER: readonly CommonPractice[] = [
  {
    at: /(broadleaf|patch-spray)\.weather\.rain-below\.depth$/,
    usual: ['0.1 in'],
    why: 'a sprayed leaf has to stay dry: what is more than dew counts as rain',
  },
  { at: /\.rain-below\.depth$/, usual: ['0.5 in'], why: 'heavier rain carries granules off' },
  { at: /\.rain-below\.in$/, usual: ['24 h'], why: 'what rains after a day finds the granules washed in' },
  { at: /\.weather\.air\.from$/, usual: ['40 F'], why: 'in colder air neither grass nor weed takes anything up' },
  { at: /\.weather\.air\.to$/, usual: ['90 F'], why: 'in hotter air the grass is under stress, and burns' },
  { at: /\.water-in\.within$/, usual: ['1 d'], why: '"at once" in whole days' },
];

/** How a soil or air temperature is read where only its threshold is printed. */
const SIGNALS: readonly CommonPractice[] = [
  { at: /\.(soil|air|growth)\.mean$/, usual: ['5 d', '7 d'], why: 'a work week or a week, against single warm days' },
  { at: /\.(soil|air|growth)\.holds$/, usual: ['3 d'], why: 'three days running are no accident' },
  { at: /(barrier|seed-thin-turf)\..*\.soil\.depth$/, usual: ['5 cm'], why: 'seeds lie near the surface' },
  { at: /\.soil\.depth$/, usual: ['10 cm', '4 in'], why: 'where the roots are' },
  {
    at: /^(summer-annual-barrier|late-winter-feed)\..*\.(soil|air)\.from$/,
    usual: ['01-15', '02-01', '03-01'],
    why: 'the coldest weeks are over, in the north in March: what rises from here on is spring',
  },
  {
    at: /^(first-mowing|mowing-height)\..*\.soil\.from$/,
    usual: ['02-10', '02-15', '03-01'],
    why: 'the end of winter; a warm spell before it does not make grass grow',
  },
  {
    at: /^(winter-broadleaf|spring-feed|june-feed|(seed|plug)-thin-turf)\..*\.soil\.from$/,
    usual: ['02-10', '03-01'],
    why: 'spring, before which warm soil would be an accident; where a window opens sooner, its opening',
  },
  {
    at: /^(late-spring-feed|summer-patch-spray)\..*\.(soil|air)\.from$/,
    usual: ['04-01', '04-15'],
    why: 'late spring, for what follows the flush',
  },
  {
    at: /^(summer-height|peak-water)\..*\.(soil|air)\.from$/,
    usual: ['05-01'],
    why: 'summer is not looked for before May',
  },
  {
    at: /^(overseed|winter-annual-barrier|autumn-feed-1)\..*\.(soil|air)\.from$/,
    usual: ['08-01', '08-15', '09-01'],
    why: 'past midsummer, so that only the fall towards autumn counts; not before the window',
  },
  {
    at: /^(autumn-broadleaf|autumn-feed-2|last-mowing|winter-ryegrass)\..*\.(soil|air)\.from$/,
    usual: ['09-15', '10-15', '11-05'],
    why: 'autumn, so that a cool week of summer does not count; not before the window',
  },
  { at: /\.degree-days\.from$/, usual: ['01-01'], why: 'sums over 50 F are counted from New Year' },
  {
    at: /^sprinklers-o(n|ff)\..*\.frost\.(first|last)$/,
    usual: ['28 F'],
    why: 'pipes burst in a hard freeze, which is 28 F',
  },
  { at: /\.frost\.first$/, usual: ['32 F'], why: 'where a publication says "frost", the freezing point' },
  {
    at: /\.frost\.chance$/,
    usual: ['50%'],
    why: 'where a publication says "average" or "expected", every second year',
  },
  {
    at: /^large-patch-scout\.window\.best\.soil\.falls-to$/,
    usual: ['70 F'],
    why: 'from memory, for all grasses that get it',
  },
];

/** How long work may wait, and days that only keep a window from running on. */
const WINDOWS: readonly CommonPractice[] = [
  {
    at: /^seed-thin-turf\.window\.best\.after\.wait$/,
    usual: ['7 d', '10 d', '3 weeks'],
    why: 'a weekend or so once it comes up; bahiagrass waits for the rains',
  },
  {
    at: /\.window\.best\.after\.wait$/,
    usual: [['3 d', '2 weeks']],
    why: 'from the opening a few calm days are wanted, or a weekend or two; later would waste the window',
  },
  {
    at: /^(first-mowing|last-mowing|mowing-height|summer-height|seedling-scout)\.window\.closes\.after\.wait$/,
    usual: ['3 weeks', '4 weeks'],
    why: 'any of three or four weekends will do',
  },
  {
    at: /-broadleaf\.window\.closes\.after\.wait$/,
    usual: ['4 weeks'],
    why: 'a month, in which the weeds have not yet set seed',
  },
  {
    at: /^spring-feed\.window\.closes\.after\.wait$/,
    usual: ['5 weeks', '6 weeks'],
    why: 'more than a month from green-up, when the next feed comes near',
  },
  {
    at: /^summer-height\.window\.opens\.after\.wait$/,
    usual: ['7 d', '4 weeks'],
    why: 'from the first mowing a week, or for slow centipedegrass a month, so that it has grown to be cut higher',
  },
  {
    at: /^nitrogen\.spacing$/,
    usual: ['4 weeks', '8 weeks'],
    why: 'monthly, or where a grass is fed twice a year a whole summer apart',
  },
  {
    at: /^summer-annual-barrier\.window\.opens\.not-before$/,
    usual: ['02-10', '02-15', '03-10', '03-15'],
    why: 'a warm week in winter is no spring: a guard for the south, the transition zone, the plains and the north',
  },
  {
    at: /^winter-annual-barrier\.window\.closes\.not-after$/,
    usual: ['11-15'],
    why: 'where the soil stays warm into winter the seed has come up by then all the same',
  },
  {
    at: /^last-mowing\.window\.opens\.not-after$/,
    usual: ['11-25'],
    why: 'mild as an autumn may be, the mower is cleaned before December',
  },
  {
    at: /^soil-sample\.window\.closes\.date$/,
    usual: ['09-10'],
    why: 'the laboratory answers before the work of autumn',
  },
  {
    at: /^lime\.window\.opens\.date$/,
    usual: ['09-25', '10-15'],
    why: 'growth slows, and winter works it in; sooner where winter is',
  },
  { at: /^lime\.window\.closes\.date$/, usual: ['11-15', '12-10'], why: 'on open ground; sooner where winter is' },
  {
    at: /^summer-water\.window\.opens\.date$/,
    usual: ['05-15', '06-01', '06-15'],
    why: 'before the heat: mid-May at the Gulf, June elsewhere, mid-June where it rains until then',
  },
  {
    at: /^summer-water\.window\.closes\.date$/,
    usual: ['06-15', '06-30', '07-10'],
    why: 'a month after it opens, less some days where dry weeks come at once',
  },
  {
    at: /\.prefer\.slow-share$/,
    usual: ['25%', '33%', '50%'],
    why: 'a quarter, a third or half of it slow, as bags come',
  },
];

export const COMMON_PRACTICE: readonly CommonPractice[] = [...WEATHER, ...SIGNALS, ...WINDOWS];
