/** What the tests of the sheet share: the demo as it is planned, and a page as elements. */
import { parseHTML } from 'linkedom';
import { civil } from '../../src/base/day.ts';
import { sheetOf } from '../../src/emit/sheet/sheet.ts';
import type { Season } from '../../src/model/season.ts';
import { demoText, told } from '../words/plans.ts';

export const DISPLAY = { units: 'us', language: 'en-US' } as const;

/** The demo on a day of 2027; `change` may change the text of its lawn. */
export const demoOn = (month: number, day: number, change?: (text: string) => string): Season =>
  told(demoText(DISPLAY, change), civil(2027, month, day)).season!;

export const pageOf = (season: Season) => parseHTML(sheetOf(season)).document;

/** A season in which one step is other. */
export const changed = (season: Season, id: string, change: Partial<Season['applications'][number]>): Season => ({
  ...season,
  applications: season.applications.map((one) => (one.id === id ? { ...one, ...change } : one)),
});
