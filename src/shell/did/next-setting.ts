import { netArea } from '../../amounts/area.ts';
import { adviseSetting, type DialAdvice } from '../../amounts/dial/advise.ts';
import { adviceInWords } from '../../amounts/dial/in-words.ts';
import { dialRecordsOf, plannedBy, withPlanned } from '../../amounts/dial/records.ts';
import { labelMostOf, secondPass } from '../../amounts/dial/second-pass.ts';
import { inWords } from '../../amounts/measured/in-words.ts';
import { spreaderOf } from '../../amounts/spreader/spreader.ts';
import type { Display } from '../../base/display.ts';
import { applicationFor } from '../../model/applied.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { isPesticide } from '../../model/product.ts';
import type { Season } from '../../model/season.ts';
import type { DidInput } from './input.ts';

/** What the next pass is to be set to. Rates and amounts of one pass. */
export interface NextSetting {
  readonly pass: 'second' | 'next';
  /** 0: nothing is left for a second pass. */
  readonly targetGPerM2: number;
  /** What goes into the hopper for the same areas. */
  readonly loadKg: number;
  /** Whether what is left may be put down in one more pass. */
  readonly third: boolean;
  readonly advice: DialAdvice;
}

/** Two passes at half the rate: a lawn file knows no other way. */
const PASSES = 2;

/** The next setting after an entry; null where it says nothing of a dial, or no plan says what a pass is to deliver. */
export function nextSettingOf({ linked, today }: DidInput, written: JournalEntry, season: Season): NextSetting | null {
  const { equipment } = linked.lawn;
  const used = spreaderOf(equipment, written.spreader);
  const dial = used?.spreader?.dial;
  const journal = withPlanned([...linked.journal, written], {
    asOf: today,
    equipment,
    plannedFor: plannedBy(season.applications),
  });
  const entry = journal.at(-1);
  const product = linked.products.get(entry?.product ?? '');
  const planned = plannedOf(entry, season);
  if (!dial || !entry || !product || !planned) return null;
  const areas = new Map(Object.entries(linked.lawn.areas).map(([id, area]) => [id, netArea(area)]));
  const whose = { product: product.id, spreader: used.id, areas, passes: PASSES };
  const own = dialRecordsOf([entry], whose)[0];
  if (!own) return null;
  const pesticide = isPesticide(product);
  const labelMost = labelMostOf(product, 'mass');
  const whole = planned.kg / planned.m2;
  const second = entry.pass === 1 ? secondPass({ whole, delivered: own.rate, labelMost, pesticide }) : null;
  const { target, most } = second ?? { target: whole / PASSES, most: labelMost === null ? null : labelMost / PASSES };
  const options = { rounding: pesticide ? 'down' : 'nearest', most } as const;
  return {
    pass: second ? 'second' : 'next',
    targetGPerM2: 1000 * target,
    loadKg: target * planned.m2,
    third: !pesticide,
    advice: adviseSetting(dialRecordsOf(journal, whose), dial, target, options),
  };
}

/** What the plan has for the areas of an entry, of its own product and by weight. */
function plannedOf(entry: JournalEntry | undefined, { applications }: Season) {
  const application = entry && applicationFor(entry, applications);
  const covered = (application?.areas ?? []).filter(
    ({ id, product }) => product === entry?.product && (entry?.areas?.includes(id) ?? true),
  );
  const kg = covered.reduce((sum, { amountKg }) => sum + (amountKg ?? 0), 0);
  const m2 = covered.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  return kg > 0 && m2 > 0 ? { kg, m2 } : null;
}

/** The next setting in words; what is left of a pesticide is not put down for its own sake. */
export function nextSettingInWords(next: NextSetting, entry: JournalEntry, display: Display): string[] {
  const { pass, targetGPerM2, loadKg, third, advice } = next;
  const stays =
    !third && pass === 'next' && (entry.left?.value ?? 0) > 0
      ? ['No further pass to use up what is left: it stays in its bag.']
      : [];
  const reached = advice.notes.includes('label-reached');
  if (targetGPerM2 === 0 && !reached) return ['The first pass has put down the whole: no second pass.', ...stays];
  const load =
    pass === 'second' && !reached
      ? [`It is to put down ${inWords({ by: 'mass', value: loadKg }, display, third ? 'nearest' : 'down')}.`]
      : [];
  return [...adviceInWords(advice, pass, display), ...load, ...stays];
}
