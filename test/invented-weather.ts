/** Invented weather for tests: a sine year with seeded noise, warm enough in summer and cold enough in winter for every trigger. */
import { type Day, dayOfYear, formatDay } from '../src/base/day.ts';
import { normal, seeded } from '../src/base/random.ts';

/** Tidy CSV of `[from, through]`; noise is drawn day by day, so that a longer file begins like a shorter one. */
export function inventedWeather(from = '2010-01-01', through = '2027-04-01', shift = (_: Day) => 0): string {
  const day = (text: string): Day => Date.parse(text) / 86_400_000;
  const random = seeded(7);
  const lines = ['date,tmin_c,tmax_c,precip_mm'];
  let anomaly = 0;
  for (let d = day(from); d <= day(through); d++) {
    anomaly = 0.8 * anomaly + 1.8 * normal(random);
    const mean = 12.5 - 12 * Math.cos((2 * Math.PI * (dayOfYear(d) - 20)) / 365.25) + anomaly + shift(d);
    lines.push(`${formatDay(d)},${(mean - 5.5).toFixed(1)},${(mean + 5.5).toFixed(1)},${random() < 0.3 ? '4.0' : '0'}`);
  }
  return `${lines.join('\n')}\n`;
}
