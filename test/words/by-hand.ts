/** Texts that a plan of the shipped files has no cause for, with arguments for each form of them. */
import type { Asked } from './catalogues.ts';

const BOOLEANS = [true, false];
const COUNTS = [1, 2];

const TABLE: Readonly<Record<string, readonly (readonly unknown[])[]>> = {
  'window.opensAbout': [
    ['Apr 3', null, null, null],
    ['Apr 3', 'Apr 1', 'Apr 9', 'then'],
  ],
  'window.offUsual': [
    [3, 'Apr 1'],
    [-1, 'Apr 1'],
  ],
  'window.lastDayAbout': [
    ['Apr 3', 'Apr 1', null],
    ['Apr 3', 'Apr 1', 'Apr 9'],
  ],
  'trigger.air': ['min', 'mean', 'max'].flatMap((of) => COUNTS.map((mean) => [of, mean])),
  'trigger.growth': ['cool', 'warm'].flatMap((grass) => COUNTS.map((mean) => [grass, mean])),
  'trigger.dayLength': COUNTS.map((mean) => [mean]),
  'trigger.frost': ['first', 'last'].flatMap((which) =>
    [0, 1, -1, 5, -5].map((shift) => [which, '50 %', '0 °C', shift]),
  ),
  'trigger.after': [
    [null, 1, null],
    ['A', 2, 'then'],
    ['A', '100 °C·d', null],
    [null, null, null],
    ['A', null, 'then'],
  ],
  'forbidden.local': [
    ['nitrogen', null],
    ['nitrogen', 'Ordinance 7'],
  ],
  'forbidden.spacing': COUNTS.map((count) => [count, 'Apr 3']),
  'forbidden.apart': COUNTS.map((count) => [count, 'A', 'Apr 3']),
  'forbidden.interval': COUNTS.map((count) => [count, 'A', 'Apr 3']),
  'forbidden.seedlings': [[35, 'A', 'Apr 3']],
  'forbidden.seedSafe': ['for-seed', 'for-herbicide'].map((wait) => [wait, 90, 'A', 'Apr 3']),
  'forbidden.youngFeed': [['Front', 'Apr 3']],
  'forbidden.youngHerbicide': [['Front', 'Apr 3']],
  'forbidden.rain': BOOLEANS.map((known) => ['1 in', known]),
  'forbidden.cold': BOOLEANS.map((known) => ['1 °C', known]),
  'forbidden.hot': BOOLEANS.map((known) => ['1 °C', known]),
  'wanted.pH': BOOLEANS.flatMap((is) => [
    ['6', null, is],
    [null, '7', is],
    ['6', '5', is],
  ]),
  'wanted.nutrient': BOOLEANS.flatMap((is) =>
    ['phosphorus', 'potassium'].map((which) => [which, ['low', 'medium', 'high'], is]),
  ),
  'wanted.area': BOOLEANS.flatMap((is) => [
    ['1 m²', null, is],
    [null, '2 m²', is],
    ['1 m²', '2 m²', is],
  ]),
  'wanted.shelf': BOOLEANS.map((is) => ['A', is]),
  'standing.onlyOn': [
    [
      ['Front', 'Back'],
      ['A', 'B'],
    ],
  ],
  'standing.follows': ['dropped', 'skipped', 'missed'].map((status) => ['A', status]),
  'standing.limitAlmost': [['A']],
  'standing.limitReached': [['A']],
  'standing.late': [
    [null, 'Apr 3'],
    ['Then', 'Apr 3'],
  ],
  'standing.partlyDone': [[['Front', 'Back']]],
  'standing.halfDone': [[['Front', 'Back']]],
  'standing.missed': BOOLEANS.flatMap((begun) => [
    [null, begun],
    ['Then', begun],
  ]),
  'choice.pinned': [['Apr 3', '80 %']],
  'choice.pinnedAgainst': [[['A', 'B']]],
  'choice.kept': [['Apr 3']],
  'choice.movedFrom': [['Apr 3', 'A']],
  'choice.dueSince': [['Apr 3']],
  'choice.unlikely': [['20 %']],
  'choice.noneAllowed': [[['A', 'B']]],
  'readings.growth': ['cool', 'warm'].flatMap((grass) => COUNTS.map((mean) => [grass, mean])),
  'readings.air': COUNTS.map((mean) => [mean]),
  'product.only': [['A']],
  'product.held': [
    ['Front', '2 kg', '1 kg', 'A', null],
    ['Front', '2 kg', '1 kg', 'A', 'B'],
  ],
  'limit.name': ['program', 'place', 'label'].flatMap((by) => ['year', 'application'].map((per) => ['A', per, by])),
  'limit.ofLabel': [['A']],
  'work.asked': BOOLEANS.map((byTest) => ['1 kg', 'A', '100 m²', byTest]),
  'work.askedSlow': [['30 %']],
  'work.askedOfBag': [['A']],
  'feed.publicAbout': [['A']],
  'feed.windowOdds': [[7]],
  'work.secondPass': [null, 'lengthwise', 'crosswise', 'between', 'again'].map((way) => [way]),
  'work.passes': ['lengthwise', 'crosswise', 'between', 'again'].map((way) => ['1 kg', '2 kg', way]),
  'work.firstDown': [['A']],
  'work.waterDepth': [['1 in']],
  'work.waterIn': [
    [null, null],
    [null, 1],
    ['1 in', 2],
  ],
  'work.activeRate': [
    ['A', '1 kg/ha', null],
    ['A', '1 kg/ha', '2 kg/ha'],
  ],
  'work.labelSilent': [[['A', 'B']]],
  'work.labelKeyOf': [['A', 'B']],
  'work.airBetween': [
    ['1 °C', null],
    [null, '2 °C'],
    ['1 °C', '2 °C'],
  ],
  'work.entry': [
    ['Apr 3', null, null, null, null, null],
    ['Apr 3', ['Front'], '1 kg', 'A', '5.5', 'Note'],
  ],
  'work.halfPackage': [['1 kg']],
  'work.packages': BOOLEANS.map((isOne) => ['2½', isOne, '1 kg']),
  'work.cups': BOOLEANS.map((isMany) => ['1.5', isMany]),
  'soilTest.none': [['Front']],
  'soilTest.enough': ['lime', 'P2O5', 'K2O'].map((what) => ['Front', '2026-06-01', what]),
  'soilTest.noAmount': ['lime', 'P2O5', 'K2O'].map((what) => ['Front', '2026-06-01', what, 'A']),
  'soilTest.add': [
    ['A', null],
    ['A', 'B'],
  ],
  'soilTest.table': [['2', '26', ['6', '7']]],
  'soilTest.asks': ['lime', 'P2O5', 'K2O'].flatMap((what) => [
    ['Front', '2026-06-01', '1 kg', what, null],
    ['Front', '2026-06-01', '1 kg', what, '7.1'],
  ]),
  'soilTest.done': [['1 kg']],
  'soilTest.others': [['1 kg']],
  'soilTest.left': [
    ['1 kg', null],
    ['1 kg', '2027-10-01'],
  ],
  'sprayer.output': ['file', 'catch', 'nozzle'].map((by) => ['1 L', by, '2 L', '3 m²']),
  'sprayer.speed': [['1 mph']],
  'sprayer.tank': ['full', 'last', 'only'].flatMap((kind) => COUNTS.map((count) => [kind, count, '1 L', 'A', '3 m²'])),
  'sprayer.toppedUp': [['1 kg']],
  'sprayer.noRoom': [['1 kg']],
  'sprayer.tanksFor': [[['Front', 'Back'], 'A']],
  'dial.first': [['A', '5']],
  'dial.keep': [['A', '5', '5 %']],
  'dial.set': [['A', '5']],
  'dial.range': [['2 kg', 8, '1 kg', '3 kg']],
  'feed.rainedInTitle': [['A']],
  'feed.rained': [
    ['1 in', null],
    ['1 in', '2 in'],
  ],
  'feed.aboutDay': [
    ['Apr 3', null, null],
    ['Apr 3', 'Apr 1', null],
    ['Apr 3', 'Apr 1', 'Apr 9'],
  ],
  'feed.waterText': [
    [null, null],
    ['1 in', 'Apr 3'],
  ],
  'feed.buyLine': [
    ['A', null, null, 'Apr 3'],
    ['A', '1 × 2 kg', '$1', 'Apr 3'],
  ],
  'feed.asOf': BOOLEANS.flatMap((is) => [
    ['2027-04-02', null, is, is, []],
    ['2027-04-02', '2027-04-01', is, is, ['A', 'B']],
  ]),
  'feed.soilOfLawns': [[['A 10 °C', 'B –']]],
  'changes.amountNow': [['1 kg']],
  'changes.byDays': [[1], [-1], [7], [-7]],
  'changes.firstFeed': [[41]],
  'sheet.noAmount': [[]],
  'sheet.air.min': [[]],
  'sheet.air.mean': [[]],
  'sheet.air.max': [[]],
  'sheet.legend.forecast': [[]],
  'sheet.ways.title': [[]],
  'sheet.ways.way.lengthwise': [[]],
  'sheet.ways.way.crosswise': [[]],
  'sheet.ways.way.between': [[]],
  'sheet.ways.way.again': [[]],
  'sheet.ways.legend': [[]],
  'sheet.ways.note': [
    ['A', null, '10 m', 1],
    ['A', '2 kg', '10 m', 2],
  ],
  'sheet.ways.done': [['A']],
  'sheet.notes': [[]],
  'sheet.enough': [['A']],
  'sheet.short': [['A', 'Apr 3']],
  'sheet.stuck': [
    ['A', null],
    ['A', 'Apr 3'],
  ],
  'sheet.buyFor': [
    ['Apr 3', null],
    ['Apr 3', '2 kg'],
  ],
  'sheet.minutes': [[20], [60], [70], [125]],
  'sheet.limitBy.place': [[]],
  'sheet.limitDays': [['A', 'Apr 1', 'Apr 9']],
  'sheet.limitOver': [['1', '2']],
  'sheet.subscribe': [[]],
  'sheet.feedAt': [[]],
  'sheet.feedFile': [['a.ics']],
  'site.away': [['4 mi']],
  'site.asOf': [['Apr 3']],
  'site.openNow': [['A', 'B']],
  'site.opensSoon': [['A', 'B']],
  'site.nothingNow': [[3]],
  'site.about': [
    ['Apr 3', 'Apr 1', null],
    ['Apr 3', 'Apr 1', 'Apr 9'],
  ],
  'site.version': [['A']],
  'site.author': [['A']],
  'site.license': [['A']],
  'site.endedTitle': [['A']],
};

/** Texts without arguments that a plan of the shipped files has no cause for. */
const PLAIN =
  `feed.helperName feed.helperAbout feed.endedName feed.endedText feed.whyThen work.nutrients.N work.nutrients.P2O5
  work.nutrients.K2O work.askedOfLabel work.noLabel window.noMiddle forbidden.full forbidden.frozen forbidden.saturated forbidden.unseen forbidden.leftWindow
  forbidden.dormantSaid.drought forbidden.dormantSaid.heat forbidden.dormantSeen.drought forbidden.dormantSeen.heat
  substances.fertilizer substances.pesticide substances.nitrogen substances.phosphorus substances.potassium substances.seed
  substances.lime standing.noneAsked choice.noneLeft readings.noSoil product.because.unasked-nitrogen
  product.because.quick-limit product.because.unasked-phosphate product.because.packages product.because.order
  limit.nutrients.N limit.nutrients.quick-N limit.nutrients.P2O5 limit.nutrients.K2O limit.nutrients.lime limit.limeAtOnce
  work.labelKeys.per-application work.labelKeys.per-year work.labelKeys.interval soilTest.names.P2O5 sprayer.tooThick
  sprayer.none dial.passes.second dial.passes.next dial.passes.journal dial.notes.label-reached dial.notes.load-no-more
  dial.notes.held-back dial.notes.coarse dial.notes.dial-ends-low dial.notes.dial-ends-high keeping.soluble
  keeping.amendment now.seasonOver feed.hours.wet feed.hours.sunrise changes.parts.title changes.parts.hours
  changes.parts.days changes.parts.amount changes.parts.cautions changes.parts.odds changes.parts.details changes.nothing
  changes.seen changes.wouldSee site.places site.find site.findLabel site.nearest site.notFound site.noScript site.zipNote
  site.backToList site.rough site.now site.windows site.work site.opens site.best site.lastDay site.state
  site.states.expected site.states.open site.states.due site.states.done site.states.missed site.states.skipped
  site.states.dropped site.none site.steps site.sources site.subscribe site.subscribeText site.openIn site.addGoogle
  site.byAddress site.feedFile site.qr site.moved site.movedText site.movedFeed site.program site.changelog site.embed
  site.embedText site.endedText`.split(/\s+/);

export const BY_HAND: readonly Asked[] = [
  ...Object.entries(TABLE).flatMap(([path, all]) => all.map((args) => ({ path, args }))),
  ...PLAIN.map((path) => ({ path, args: [] })),
];
