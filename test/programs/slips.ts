/**
 * The slips by which `change-figures.ts` changes a figure: a near one, of the size of a misreading, and a coarse one, of the
 * kind that a hand makes in typing. A figure that may lie anywhere in a wide published range is not expected to notice the
 * near one.
 */
import { formatDay, monthDayIn, parseMonthDay } from '../../src/base/day.ts';

/** How far off: by a misreading, or by the wrong month, unit or place of the point. */
export type Slip = 'near' | 'coarse';

/** Another value of the same kind. @example slipped('10-15', 'coarse') //=> '11-15' */
export function slipped(value: string | number, slip: Slip): string | number {
  if (typeof value === 'number') return slip === 'near' ? nearNumber(value) : value * 10;
  if (parseMonthDay(value)) return slip === 'near' ? elevenDaysOn(value) : nextMonth(value);
  const [, number = '', unit = ''] = /^([-+]?[\d.]+)\s*(.*)$/.exec(value) ?? [];
  const old = Number(number);
  return slip === 'near' ? near(old, unit) : coarse(old, unit);
}

const nearNumber = (value: number): number =>
  value <= 1 ? Number((value * 0.7).toFixed(3)) : Math.round(value * 1.3) + 1;

function elevenDaysOn(value: string): string {
  const monthDay = parseMonthDay(value);
  return monthDay ? formatDay(monthDayIn(monthDay, 2027) + 11).slice(5) : value;
}

/** The same day of the month after, or its last. */
function nextMonth(value: string): string {
  const [month = 0, day = 0] = value.split('-').map(Number);
  const next = (month % 12) + 1;
  const last = new Date(Date.UTC(2027, next, 0)).getUTCDate();
  return [next, Math.min(day, last)].map((part) => String(part).padStart(2, '0')).join('-');
}

function near(old: number, unit: string): string {
  if (unit === 'F') return `${old + 4} F`;
  if (unit === 'C') return `${old + 3} C`;
  if (unit === '%') return `${old > 70 ? old - 20 : old + 20}%`;
  if (/^weeks?$/.test(unit)) return `${old + 3} ${unit}`;
  if (/^(d|days?)$/.test(unit)) return `${Math.round(old * 1.3) + 1} ${unit}`;
  return `${Number((old * 1.3).toFixed(3))} ${unit}`;
}

/** Units that are taken for one another; ten times as much where a unit is not among them. */
const TAKEN_FOR: Readonly<Record<string, string>> = {
  F: 'C',
  C: 'F',
  d: 'weeks',
  week: 'd',
  weeks: 'd',
  in: 'cm',
  cm: 'in',
  'lb/1000 sqft': 'oz/1000 sqft',
};

function coarse(old: number, unit: string): string {
  if (unit === '%') return `${old / 10}%`;
  if (old === 0) return `30 ${unit}`;
  const other = TAKEN_FOR[unit];
  return other === undefined ? `${old * 10} ${unit}` : `${old} ${other}`;
}
