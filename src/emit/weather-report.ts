import { parseDay } from '../base/day.ts';
import { type Display, significant } from '../base/display.ts';
import type { Beside, DegreeDaysReport, WeatherReport } from '../model/weather-report.ts';
import { table } from './table.ts';

const NONE = '-';
const show = (value: number | null, print: (value: number) => string): string => (value === null ? NONE : print(value));
const dayIn = (date: string, print: (day: number) => string): string => print(parseDay(date) ?? 0);

const beside = ({ value, usual }: Beside, print: (value: number) => string): string =>
  `${show(value, print)}${usual === null ? '' : ` (usual ${print(usual)})`}`;

/** What the soil and the weather are today, and the last days beside the usual ones. @param width Of the table, in columns. */
export function weatherReport(report: WeatherReport, display: Display, width: number): string {
  const { today, days } = report;
  const depth = (cm: number) => display.soilDepth(cm / 100);
  const lines = [
    `${report.lawn}: soil and weather on ${dayIn(today.date, display.day)}, the last observed day`,
    '',
    `  Soil at ${depth(5)}: ${beside(today.soil5C, display.temperature)}`,
    `  Soil at ${depth(10)}: ${beside(today.soil10C, display.temperature)}`,
    `  Degree days above ${display.temperature(10)} since ${dayIn(today.degreeDaysFrom, display.shortDay)}: ${beside(today.degreeDays10C, display.heat)}`,
    ...report.serviceSoil.map(
      ({ service, date, depthCm, serviceC, oursC }) =>
        `  Cross-check at ${depth(depthCm)} on ${dayIn(date, display.shortDay)}: ${service} ${display.temperature(serviceC)}, soilclock ${show(oursC, display.temperature)}`,
    ),
    '',
    ...table(
      [
        { title: 'Day' },
        { title: 'Low', right: true },
        { title: 'usual', right: true },
        { title: 'High', right: true },
        { title: 'usual', right: true },
        { title: 'Rain', right: true },
        { title: `Soil ${depth(5)}`, right: true },
        { title: 'usual', right: true },
      ],
      days.map(({ date, tminC, tmaxC, precipMm, soil5C }) => [
        dayIn(date, display.day),
        ...[tminC.value, tminC.usual, tmaxC.value, tmaxC.usual].map((value) => show(value, display.temperature)),
        show(precipMm, (mm) => display.depth(mm / 1000)),
        ...[soil5C.value, soil5C.usual].map((value) => show(value, display.temperature)),
      ]),
      width,
    ),
    '',
    `Usual is the middle of ${report.pastYears} ${report.generated ? 'made-up' : 'past'} years. Observed through ${report.observedThrough}${
      report.forecastThrough === null ? '' : `, forecast through ${report.forecastThrough}`
    }.`,
    `Weather: ${report.sources.join(', ')}.`,
  ];
  return `${lines.join('\n')}\n`;
}

/** A sum of degree days, and when it reaches a value. */
export function degreeDaysReport(report: DegreeDaysReport, display: Display): string {
  const { unit, base, upper, method, reaches } = report;
  const sum = (value: number) => `${Math.round(value)} °${unit}·d`;
  const short = (date: string) => dayIn(date, display.shortDay);
  const thresholds = `${significant(base, 4)} °${unit}${upper === null ? '' : `, below ${significant(upper, 4)} °${unit}`}`;
  const lines = [
    `${report.lawn}: degree days above ${thresholds} by ${method}, since ${short(report.from)}`,
    '',
    `  Through ${short(report.through)}: ${beside(report.sum, sum)}`,
  ];
  if (reaches) {
    const usual = reaches.usual === null ? '' : `; usually ${short(reaches.usual)}`;
    const { date, p10, p50, p90 } = reaches;
    if (date !== null) lines.push(`  ${sum(reaches.sum)}: reached on ${short(date)}${usual}`);
    else if (p50 === null) lines.push(`  ${sum(reaches.sum)}: not reached in half of the runs of weather${usual}`);
    else {
      const spread = p10 === null ? '' : ` (${short(p10)} to ${p90 === null ? 'later than a year' : short(p90)})`;
      lines.push(`  ${sum(reaches.sum)}: expected on ${short(p50)}${spread}${usual}`);
    }
  }
  return `${lines.join('\n')}\n`;
}
