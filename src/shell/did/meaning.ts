import { applicationFor } from '../../model/applied.ts';
import type { Amount } from '../../model/fields.ts';
import type { JournalEntry } from '../../model/journal.ts';
import type { Application, Season } from '../../model/season.ts';
import type { DidInput } from './input.ts';
import { type NextSetting, nextSettingOf } from './next-setting.ts';
import { plannedFor } from './planned.ts';

/** What was used beside what the plan had for it on the same area: of one pass, its half or what the first has left. */
export interface AgainstPlan {
  readonly area: string;
  readonly usedKg: number | null;
  readonly usedL: number | null;
  readonly plannedKg: number | null;
  readonly plannedL: number | null;
  /** Used over planned; null where the plan has no amount in the same measure. */
  readonly ratio: number | null;
}

/** What an entry means, as `did --json` prints it. */
export interface Meaning {
  /** The product that was put down: the entry's, else its step's. */
  readonly product: string | null;
  /** The areas that the entry covers. */
  readonly areas: readonly string[];
  readonly against: readonly AgainstPlan[];
  /** Areas of the step that are still to do; null for work outside the program. */
  readonly areasOpen: readonly string[] | null;
  /** Those among them that have had the first of two passes. */
  readonly areasHalfDone: readonly string[] | null;
  /** Limits of the year for which something is done. */
  readonly limits: Season['limits'];
  /** What is left on the shelf; null where none of the product was counted. */
  readonly shelf: Season['shelf'][number] | null;
  /** What the dial is to be set to; null where the entry says nothing of it. */
  readonly next: NextSetting | null;
}

/** What an entry means: against the plan, the areas still open, the limits, the shelf. @param season Planned with it. */
export function meaningOf(input: DidInput, entry: JournalEntry, season: Season): Meaning {
  const { linked } = input;
  const application = applicationFor(entry, season.applications);
  const product = entry.product ?? application?.areas[0]?.product ?? null;
  const own = application?.areas.map(({ id }) => id);
  return {
    product,
    areas: entry.areas ?? own ?? Object.keys(linked.lawn.areas),
    against: application && entry.used ? againstPlan(entry, entry.used, application, input) : [],
    areasOpen: own?.filter((id) => !application?.areasDone.includes(id)) ?? null,
    areasHalfDone: application?.secondPasses.map(({ id }) => id) ?? null,
    limits: season.limits.filter(({ doneGPerM2, doneMlPerM2 }) => (doneGPerM2 ?? doneMlPerM2 ?? 0) > 0),
    shelf: season.shelf.find((one) => one.product === product) ?? null,
    next: nextSettingOf(input, entry, season),
  };
}

/** What was used is taken to lie on every square metre alike. */
function againstPlan(entry: JournalEntry, used: Amount, application: Application, { linked }: DidInput): AgainstPlan[] {
  const { areas } = application;
  const plannedOn = plannedFor(entry, application, linked.journal, linked.products);
  const covered = areas.filter(({ id }) => entry.areas?.includes(id) ?? true);
  const whole = covered.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  return covered.map((area) => {
    const { id, areaM2 } = area;
    const share = (used.value * areaM2) / whole;
    const [usedKg, usedL] = used.by === 'mass' ? [share, null] : [null, 1000 * share];
    const [plannedKg, plannedM3] = [plannedOn(area, 'mass'), plannedOn(area, 'volume')];
    const planned = used.by === 'mass' ? plannedKg : plannedM3;
    const ratio = planned !== null && planned > 0 ? share / planned : null;
    return { area: id, usedKg, usedL, plannedKg, plannedL: plannedM3 === null ? null : 1000 * plannedM3, ratio };
  });
}
