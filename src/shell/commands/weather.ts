import type { Command } from 'commander';
import { aLawn, asOf, given, json, type Run, strict } from './common.ts';

export function addWeather(program: Command, { io, ended }: Run): void {
  const weather = program.command('weather').description("a lawn's soil and weather: show, fetch, degree-days");
  weather
    .command('show')
    .description("today's soil temperature and degree days, the last 30 days against the usual")
    .argument(...aLawn)
    .option(...asOf)
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock weather show lawn.yaml')
    .action(async (lawn: string | undefined, options) => {
      const { weatherShowCommand } = await import('../weather/show-command.ts');
      ended(weatherShowCommand(given(lawn), options, io));
    });
  weather
    .command('fetch')
    .description('bring 30 years and the forecast of the services that the lawn names into out/cache')
    .argument(...aLawn)
    .option('--offline', 'touch no network; say what the cache holds')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock weather fetch lawn.yaml')
    .action(async (lawn: string | undefined, options) => {
      const { weatherFetchCommand } = await import('../weather/fetch-command.ts');
      ended(await weatherFetchCommand(given(lawn), options, io));
    });
  weather
    .command('degree-days')
    .description('the sum of degree days beside the usual one, and when it reaches a value')
    .argument(...aLawn)
    .option('--base <temperature>', 'the lower threshold; sums are in its scale', '50F')
    .option('--upper <temperature>', 'the upper threshold')
    .option('--method <name>', 'how a day is counted', 'single-sine')
    .option('--cutoff <name>', 'what heat above the upper threshold counts: none, horizontal, intermediate, vertical')
    .option('--from <day>', 'the day that the sum begins on (MM-DD); 01-01, south of the equator 07-01')
    .option('--reaches <sum>', 'when the sum reaches this')
    .option(...asOf)
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock weather degree-days lawn.yaml --base 50F --from 01-01 --reaches 200')
    .action(async (lawn: string | undefined, options) => {
      const { degreeDaysCommand } = await import('../weather/degree-days-command.ts');
      ended(degreeDaysCommand(given(lawn), options, io));
    });
}
