/** `soilclock did`: what is most likely a slip, or was not as label and program ask, is written and told. */
import { describe, expect, test } from 'vitest';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const LAWN = `areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft] } }
equipment: { spreader: { kind: rotary, swath: 10 ft, dial: { from: 1, to: 15, step: 0.5 } } }
products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - { id: weed, form: liquid, pesticide: broadleaf, actives: { active: 4 lb/gal }, label: { rate: 1 floz/1000 sqft, per-application: 4 floz/1000 sqft, interval: 28 d } }
  - { id: limestone, form: amendment, neutralising: 100% }
soil: { tests: [{ date: 2027-02-20, pH: 5.6, lime: 85 lb/1000 sqft }] }
`;
const WINDOW = 'window: { opens: { date: 03-20 }, closes: { date: 05-20 } }';
const STEPS = `  - { id: feed, name: Feed, work: spread, ${WINDOW}, apply: { nutrient: { N: 0.46 lb/1000 sqft } } }
  - { id: weeds, name: Weeds, work: spray, ${WINDOW}, apply: { pesticide: broadleaf }, weather: { wind-below: 8 mph, air: { from: 50 F, to: 85 F } } }
  - { id: lime, name: Lime, work: spread, ${WINDOW}, apply: { amendment: limestone, rate: 50 lb/1000 sqft, by: soil-test } }
`;
const JOURNAL = 'lawn.journal.yaml';
const folder = (journal?: string, lawn = LAWN) =>
  folderWith({
    'lawn.yaml': lawnText(lawn),
    'program.yaml': programText(STEPS, 'nitrogen: { yearly: { to: 3 lb/1000 sqft } }\n'),
    'weather.csv': inventedWeather('2018-01-01'),
    ...(journal !== undefined && { [JOURNAL]: journal }),
  });
/** The codes that `did` tells; the entry is written all the same. */
async function told(argv: string, { journal, lawn }: { journal?: string; lawn?: string } = {}): Promise<string[]> {
  const words = [...argv.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, word]) => quoted ?? word ?? '');
  const { code, stderr } = await soilclock(folder(journal, lawn), ['did', 'lawn.yaml', ...words]);
  expect([code, code === 0 ? '' : stderr]).toEqual([0, '']);
  return [...stderr.matchAll(/\[([a-z-]+)\]$/gm)].map(([, found = '']) => found);
}

describe('what is most likely a slip', () => {
  test.each([
    ['a setting on the dial', 'feed --used "2 lb" --setting 5.5', []],
    ['a setting beyond the dial', 'feed --used "2 lb" --setting 22', ['did-setting']],
    ['a setting between the marks', 'feed --used "2 lb" --setting 5.3', ['did-setting']],
    ['a volume of granules', 'feed --loaded "8 gal" --left 0', ['did-measure']],
    ['a volume of granules outside the program', '--product urea --used "8 gal"', ['did-measure']],
    ['a quarter more than planned', 'feed --used "2.5 lb"', []],
    ['more than that', 'feed --used "2.6 lb"', ['did-much']],
    ['the amount of all on one area', 'feed --areas front --used "2 lb"', ['did-much']],
    ['more than the year may have', 'feed --used "8000 lb"', ['did-much', 'did-over-limit', 'did-over-limit']],
    ['over the year on one area', '--product urea --areas front --used "7 lb"', ['did-over-limit']],
    ['lime as much as goes down at a time', 'lime --areas front --used "50 lb"', []],
    ['lime of one time and a half', 'lime --areas front --used "75 lb"', ['did-much']],
    ['the product that is sprayed', 'weeds --used "2 floz" --sprayer', []],
    [
      'the mix in place of the product',
      'weeds --loaded "4 gal" --left "0.5 gal" --sprayer',
      ['did-over-label', 'did-mix'],
    ],
  ])('%s', async (_, argv, codes) => expect(await told(argv)).toEqual(codes));
  test('a volume of granules whose density is known counts', async () => {
    const lawn = LAWN.replace('analysis: 46-0-0', 'analysis: 46-0-0, density: 0.8 kg/L');
    expect(await told('feed --used "1 L"', { lawn })).toEqual([]);
  });
});

describe("the label's interval", () => {
  const sprayed = (date: string, more = '') =>
    `- { id: abcd, date: ${date}, step: weeds, product: weed, used: 1 floz, areas: [front]${more} }\n`;
  test.each([
    ['27 days after', '2027-03-06', 'weeds --areas front --used "1 floz"', ['did-interval']],
    ['28 days after', '2027-03-05', 'weeds --areas front --used "1 floz"', []],
    [
      'before work that was written down earlier',
      '2027-04-01',
      'weeds --date 2027-03-25 --used "2 floz"',
      ['did-interval'],
    ],
    ['on another area', '2027-04-01', 'weeds --areas back --used "1 floz"', []],
    ['outside the program', '2027-04-01', '--product weed --areas front --used "1 floz"', ['did-interval']],
    ['with another product', '2027-04-01', 'feed --used "2 lb"', []],
    ['in place of that entry', '2027-04-01', '--corrects abcd --used "0.9 floz"', []],
    ['the other half of it on that day', '2027-04-02', 'weeds --areas front --used "0.5 floz"', []],
  ])('%s', async (_, date, argv, codes) => expect(await told(argv, { journal: sprayed(date) })).toEqual(codes));
  test('the other pass of it a day later', async () => {
    const journal = sprayed('2027-04-01', ', pass: 1');
    expect(await told('weeds --areas front --used "0.5 floz" --pass 2', { journal })).toEqual([]);
  });
});

describe('weather at the start beyond what the step is for', () => {
  test.each([
    ['--wind "8 mph" --air "85 F"', []],
    ['--wind "14 mph"', ['did-weather']],
    ['--air "92 F"', ['did-weather']],
    ['--air "49 F"', ['did-weather']],
    ['--wind "14 mph" --air "92 F"', ['did-weather', 'did-weather']],
  ])('%s', async (argv, codes) => expect(await told(`weeds --used "2 floz" ${argv}`)).toEqual(codes));
});

describe('no advice on the setting is told with its reason', () => {
  const other = LAWN.replace(
    'products:\n',
    'products:\n  - { id: feed-15, form: granular, analysis: 15-0-15 }\n',
  ).replace('products:', 'shelf: { counted: 2027-02-01, urea: 10 lb }\nproducts:');
  test('another product than the plan has', async () =>
    expect(await told('feed --product feed-15 --setting 5 --used "2 lb"', { lawn: other })).toEqual(['did-no-advice']));
  test('an entry that does not say how much', async () =>
    expect(await told('feed --pass 1 --setting 5')).toEqual(['did-no-advice']));
  test('work outside the program', async () =>
    expect(await told('--product urea --setting 5 --used "2 lb"')).toEqual(['did-no-advice']));
  test('a lawn without a dial', async () => {
    const lawn = LAWN.replace(', dial: { from: 1, to: 15, step: 0.5 }', '');
    expect(await told('feed --setting 5 --used "2 lb"', { lawn })).toEqual(['did-no-advice']);
  });
});
