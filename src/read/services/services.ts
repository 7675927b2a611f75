import { nceiDaily } from './ncei.ts';
import { nwsForecast } from './nws.ts';
import { openMeteoArchive, openMeteoForecast } from './open-meteo.ts';
import type { Service } from './service.ts';

/** Services of past weather by the word that a lawn names them with. */
export const PAST_SERVICES: Readonly<Record<'open-meteo' | 'ncei', Service>> = {
  'open-meteo': openMeteoArchive,
  ncei: nceiDaily,
};

/** Services of forecasts by the word that a lawn names them with. */
export const FORECASTS: Readonly<Record<'open-meteo' | 'nws', Service>> = {
  'open-meteo': openMeteoForecast,
  nws: nwsForecast,
};
