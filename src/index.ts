/**
 * The public API of soilclock: plain data in, plain data out; the same functions that the command uses.
 * Nothing here touches a file, the network or the clock.
 */
export { productAmount } from './amounts/public.ts';
export { courseLength, deliveredRate } from './amounts/spreader/calibration.ts';
export { effectiveSwath } from './amounts/spreader/swath-test.ts';
export { degreeDays } from './climate/degree-days.ts';
export { hargreavesEvapotranspiration, referenceEvapotranspiration } from './climate/evapotranspiration.ts';
export { growthPotential, growthPotentialF } from './climate/growth.ts';
export { dayLength, frostDate } from './climate/public.ts';
export { running } from './climate/running.ts';
export { soilTemperature } from './climate/soil-temperature.ts';
export { annualWave, dampingDepth } from './climate/wave.ts';
export { compile } from './compile.ts';
export { calendarOf } from './emit/calendar.ts';
export { compareSeasons } from './emit/compare.ts';
export { feedOfLawns } from './emit/lawns/feed-of-lawns.ts';
export { areaOf } from './measures.ts';
export { emptyLedger } from './model/ledger.ts';
export { readCalendar } from './read/calendar.ts';
export { readJournal } from './read/journal.ts';
export { readLawn, readProducts } from './read/lawn.ts';
export { link } from './read/link.ts';
export { readProgram } from './read/program.ts';
export { readWeather } from './read/weather.ts';
export { replay } from './replay.ts';
export { planSeason } from './schedule/plan.ts';
export { publicPlace } from './schedule/public-place.ts';
