import type { Day } from '../base/day.ts';
import type { Forbidden } from './rules/forbidden.ts';
import { edgeDay, shareHolding, type Window, type Windows } from './windows.ts';

/** The day for a step, with what decided. */
export interface Choice {
  readonly day: Day;
  /** Share of all traces whose window holds the day. */
  readonly inWindow: number;
  /** The day that would be chosen afresh, where the published one stands instead. */
  readonly insteadOf: Day | null;
  /** The published day that was given up, and why. */
  readonly moved: { readonly from: Day; readonly reason: Forbidden | 'left-window' | 'better' } | null;
}

/** Days this close to the highest share count as equally good, and a published day moves only for more. */
const POINTS = 0.05;
const HAIR = 1e-9;

interface ChooseInput {
  readonly windows: Windows;
  readonly asOf: Day;
  readonly rulesOn: (day: Day) => readonly Forbidden[];
  readonly lean: 'early' | 'late' | undefined;
  /** The day that was published before, if any. */
  readonly published: Day | null;
}

/** The days from the as-of day on that lie in the window of some trace, each with its share of all traces. */
export function daysInWindow(windows: Windows, asOf: Day): readonly { readonly day: Day; readonly share: number }[] {
  const all = windows.ofTraces.filter((window): window is Window => window !== null);
  const last = Math.max(...all.map(({ closes }) => closes));
  const days: { day: Day; share: number }[] = [];
  for (let day = Math.max(asOf, Math.min(...all.map(({ opens }) => opens))); day <= last; day++) {
    const share = shareHolding(windows, day);
    if (share > 0) days.push({ day, share });
  }
  return days;
}

/**
 * Chooses the day: among the days that the rules allow, those within 5 points of the highest share of traces whose
 * window holds them; of these the one nearest the median best day, on the side that `lean` names; ties to the earlier.
 * A published day stays unless it is forbidden, has left every window, or another day gains more than 5 points.
 *
 * @returns Null where no day is allowed inside a window.
 */
export function chooseDay({ windows, asOf, rulesOn, lean, published }: ChooseInput): Choice | null {
  const allowed = daysInWindow(windows, asOf).filter(({ day }) => rulesOn(day).length === 0);
  const highest = Math.max(0, ...allowed.map(({ share }) => share));
  if (highest === 0) return null;
  const good = allowed.filter(({ share }) => share >= highest - POINTS - HAIR);
  const best = edgeDay(windows.ofTraces, 'best', 0.5) ?? (good[0] as { day: Day }).day;
  const onSide = good.filter(({ day }) => (lean === 'early' ? day <= best : lean === 'late' ? day >= best : false));
  const candidates = onSide.length > 0 ? onSide : good;
  const free = candidates.reduce((a, b) => (Math.abs(b.day - best) < Math.abs(a.day - best) ? b : a));
  const stays = good.find(({ day }) => day === published);
  const chosen = stays ?? free;
  const reason =
    stays || published === null || published < asOf
      ? null
      : (rulesOn(published)[0] ?? (shareHolding(windows, published) === 0 ? 'left-window' : 'better'));
  return {
    day: chosen.day,
    inWindow: chosen.share,
    insteadOf: chosen.day === free.day ? null : free.day,
    moved: published !== null && reason !== null ? { from: published, reason } : null,
  };
}
