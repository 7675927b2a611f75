import type { MonthlyNormals } from '../model/normals.ts';
import type { CLIMATES } from '../model/program.ts';
import { hargreavesEvapotranspiration } from './evapotranspiration.ts';

/** A kind of climate as programs claim it. */
export type Climate = (typeof CLIMATES)[number];

/** What the classes are told by. */
interface Signs {
  /** Mean of the coldest and of the warmest month [°C]. */
  readonly coldest: number;
  readonly warmest: number;
  /** Months with a mean of 10 °C or more. */
  readonly mild: number;
  /** Precipitation of a year over its reference evapotranspiration [-]. */
  readonly wetness: number;
  /** Whether nearly all of the rain falls in summer. */
  readonly winterDry: boolean;
}

const DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * The kinds of climate, as programs claim them, that a place belongs to; more than one at a border.
 *
 * After Köppen and Trewartha (Trewartha 1966; Belda et al. 2014, Climate classification revisited, Climate Research
 * 59:1-13): no month under 18 °C is tropical, 8 months or more of 10 °C or more are subtropical, fewer temperate, of
 * these the ones with a coldest month above 0 °C oceanic; a warmest month of 22 °C is Köppen's hot summer. Dry by the
 * World Atlas of Desertification (UNEP 1992): precipitation over evapotranspiration below 0.5 is semi-arid, below 0.65
 * dry sub-humid. The project's own:
 *
 * - Evapotranspiration is that of Hargreaves, which can be a fifth too high on coasts. Dry sub-humid is on both sides.
 * - Oceanic places are maritime up to a warmest month of 23 °C and transition from 22 °C on; Trewartha's limit of 0 °C
 *   has a border up to 2 °C, where maritime places are cool-humid as well. Subtropical ones with a cool summer are
 *   maritime up to a coldest month of 12 °C. None has a dry winter (Köppen's w: a month of summer with 10 times the rain
 *   of one in winter).
 * - Continental places are transition as well with a warmest month of 24 °C or more and a coldest of -2.5 °C or more, and
 *   not cool from 26 °C on. Subtropical ones with a coldest month under 6 °C are transition, and warm as well where more
 *   than 8 months are mild. In dry places 8 months are both cool and warm.
 * - A coldest month of 15 °C or more is tropical as well.
 *
 * @param place Latitude [°] and monthly normals, at the height of the place.
 * @returns At least one class.
 * @throws never
 * @example climateClasses({ latitude: 47.4, normals }) //=> ['maritime'], with the normals of Seattle
 */
export function climateClasses(place: { readonly latitude: number; readonly normals: MonthlyNormals }): Climate[] {
  const signs = signsOf(place);
  const { coldest, wetness } = signs;
  if (coldest >= 18) return ['tropical'];
  const found: Climate[] = [];
  if (wetness >= 0.5) found.push(...humid(signs));
  if (wetness < 0.65 && !found.includes('maritime')) found.push(...dry(signs));
  if (coldest >= 15) found.push('tropical');
  return found;
}

function humid({ coldest, warmest, mild, winterDry }: Signs): Climate[] {
  const found: Climate[] = [];
  const maritime = coldest >= 0 && coldest < 12 && warmest <= 23 && !winterDry;
  const temperate = mild < 8;
  if (temperate && (coldest < 0 || (coldest < 2 && maritime)) && warmest < 26) found.push('cool-humid');
  if (maritime) found.push('maritime');
  const hot = coldest >= 0 ? warmest >= 22 : warmest >= 24 && coldest >= -2.5;
  if (hot && (temperate || coldest < 6)) found.push('transition');
  if (!temperate && !(maritime && warmest < 22) && (mild > 8 || coldest >= 6)) found.push('warm-humid');
  return found.length > 0 ? found : [temperate ? 'cool-humid' : 'warm-humid'];
}

function dry({ mild }: Signs): Climate[] {
  return [...(mild <= 8 ? (['cool-arid'] as const) : []), ...(mild >= 8 ? (['warm-arid'] as const) : [])];
}

function signsOf({ latitude, normals: { tmin, tmax, precip } }: Parameters<typeof climateClasses>[0]): Signs {
  const means = tmin.map((low, m) => (low + (tmax[m] as number)) / 2);
  const total = precip.reduce((sum, rain) => sum + rain, 0);
  const evaporation = tmin.reduce((sum, low, m) => {
    const middle = Math.round(m * 30.44 + 15);
    return sum + (DAYS[m] as number) * hargreavesEvapotranspiration(low, tmax[m] as number, latitude, middle);
  }, 0);
  const half = (first: number) => precip.filter((_, m) => (m - first + 12) % 12 < 6);
  const [aprilOn, octoberOn] = [half(3), half(9)];
  const [summer, winter] = latitude >= 0 ? [aprilOn, octoberOn] : [octoberOn, aprilOn];
  return {
    coldest: Math.min(...means),
    warmest: Math.max(...means),
    mild: means.filter((mean) => mean >= 10).length,
    wetness: evaporation > 0 ? total / evaporation : Number.POSITIVE_INFINITY,
    winterDry: Math.max(...summer) >= 10 * Math.min(...winter),
  };
}
