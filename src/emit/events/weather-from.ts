import type { Season } from '../../model/season.ts';

/** Where a season's weather came from. */
export interface WeatherFrom {
  readonly files: boolean;
  readonly services: readonly string[];
}

/** The whole names of weather services: a file may begin with one, and go on with the place. */
const SERVICES =
  /^(Open-Meteo (archive|forecast) \(CC BY 4\.0\)|NOAA NCEI daily summaries(, station [A-Z0-9_-]{1,20})?|U\.S\. National Weather Service)$/;

/** Services by name; files without, since a file's name may tell the place, and a feed is read by others. */
export const weatherFrom = ({ weather }: Pick<Season, 'weather'>): WeatherFrom => ({
  files: weather.sources.some((source) => !SERVICES.test(source)),
  services: [...new Set(weather.sources.filter((source) => SERVICES.test(source)))],
});

/** The services alone: not even that there are files of the lawn is told. */
export const servicesIn = (sources: readonly string[]): string[] => sources.filter((source) => SERVICES.test(source));
