import path from 'node:path';
import { usualSpreader } from '../amounts/spreader/spreader.ts';
import { displayOf } from '../base/display.ts';
import type { Compiled } from '../compile.ts';
import type { SheetOptions } from '../emit/sheet/sheet.ts';
import { sheetOf } from '../emit/sheet/sheet.ts';
import { waysOf } from '../emit/spreader-drawing.ts';
import type { Season } from '../model/season.ts';
import type { Linked } from '../read/link.ts';
import { feedFile } from './lawn-feeds.ts';
import { reportOf } from './spreader/job.ts';

/** The sheet of a compiled lawn, beside its feed; null where it has no season. What draws is slow to load: import this late. */
export function drawSheet({ season, linked }: Pick<Compiled, 'season' | 'linked'>): string | null {
  if (season === null) return null;
  const address = path.basename(feedFile('', season.lawn, null));
  return sheetOf(season, { ways: linked && waysOver(season, linked), feed: { address, qr: null } });
}

/** The ways over the areas with the usual spreader; null where no work of the season is walked with one. */
function waysOver(season: Season, { lawn, journal, products }: Linked): NonNullable<SheetOptions['ways']> | null {
  if (season.applications.every(({ areas }) => areas.every(({ passes }) => passes.length === 0))) return null;
  const chosen = usualSpreader(lawn.equipment);
  const { report, walks } = reportOf({ season, lawn, journal, products, chosen, application: null, problems: [] });
  if (walks.size === 0) return null;
  const display = displayOf(season.display.units, season.display.language);
  return {
    narrow: waysOf(report, walks, display, { columns: 1, panel: 264, id: 'ways-narrow', isSheet: false }),
    wide: waysOf(report, walks, display, { columns: 2, panel: 330, id: 'ways-wide', isSheet: false }),
  };
}
