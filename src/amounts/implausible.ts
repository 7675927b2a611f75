import { displayOf } from '../base/display.ts';
import { type Place, type Problem, problem } from '../base/problem.ts';
import { type CubicMetresPerSquareMetre, factorOf, type KilogramsPerSquareMetre } from '../base/units.ts';
import type { Lawn } from '../model/lawn.ts';
import type { SoilTest } from '../model/soil-test.ts';
import type { Sprayer } from '../model/sprayer.ts';
import { outputOf } from './sprayer/output.ts';

const LB_PER_1000_SQFT: KilogramsPerSquareMetre = factorOf('lb') / (1000 * factorOf('sqft'));
const GAL_PER_ACRE: CubicMetresPerSquareMetre = factorOf('gal') / factorOf('acre');

/** Soil that is not acid is not limed. */
const NEUTRAL = 7;
/** Where Penn State's table of lime for turf ends (Agricultural Analytical Services Laboratory). */
const MOST_LIME = 600 * LB_PER_1000_SQFT;
/** Twice and more what laboratories ask of a lawn in a year. Common practice. */
const MOST_NUTRIENT = 10 * LB_PER_1000_SQFT;
/** Sprayers of lawns put down between a fog and a soaking: about 0.1 to 5 gal on 1000 sq ft. Common practice. */
const OUTPUT = { least: 5 * GAL_PER_ACRE, most: 220 * GAL_PER_ACRE };

type PlaceAt = (path: readonly (string | number)[]) => Place;

/** What a laboratory or a catch test hardly ever says, and is most likely a slip of the pen: told, and reckoned with as it stands. */
export function implausibleTests(lawn: Lawn, placeAt: PlaceAt): Problem[] {
  const display = displayOf(lawn.display?.units ?? 'us', lawn.display?.language ?? 'en-US');
  const soil = (lawn.soil?.tests ?? []).flatMap((test, i) =>
    soilFaults(test).map(({ key, found }) => {
      const most = key === 'lime' ? MOST_LIME : MOST_NUTRIENT;
      const args = { what: key, found: display.massRate(found), most: display.massRate(most) };
      return problem('soil-test-much', args, placeAt(['soil', 'tests', i, key]));
    }),
  );
  const limed = (lawn.soil?.tests ?? []).flatMap(({ pH, goal, lime, acidity }, i) =>
    pH !== undefined && pH >= (goal ?? NEUTRAL) && ((lime ?? 0) > 0 || (acidity ?? 0) > 0)
      ? [problem('soil-test-lime', { pH, goal: goal ?? null }, placeAt(['soil', 'tests', i, 'pH']))]
      : [],
  );
  return [...soil, ...limed, ...sprayerFaults(lawn.equipment?.sprayer, display, placeAt)];
}

function soilFaults(test: SoilTest) {
  return (['lime', 'P2O5', 'K2O'] as const).flatMap((key) => {
    const found = test[key] ?? 0;
    return found > (key === 'lime' ? MOST_LIME : MOST_NUTRIENT) ? [{ key, found }] : [];
  });
}

function sprayerFaults(
  sprayer: Sprayer | undefined,
  display: ReturnType<typeof displayOf>,
  placeAt: PlaceAt,
): Problem[] {
  if (!sprayer) return [];
  const output = outputOf(sprayer);
  if (output >= OUTPUT.least && output <= OUTPUT.most) return [];
  const key = sprayer.catchTest ? 'catch-test' : sprayer.nozzleTest ? 'nozzle-test' : 'output';
  const [least, most] = [display.sprayRate(OUTPUT.least), display.sprayRate(OUTPUT.most)];
  return [
    problem('sprayer-odd', { found: display.sprayRate(output), least, most }, placeAt(['equipment', 'sprayer', key])),
  ];
}
