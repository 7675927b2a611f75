import { Command, CommanderError, Option } from 'commander';
import { type Io, processIo } from './shell/io.ts';
import { EXIT } from './shell/report-problems.ts';

/** An option that may be repeated. */
const collect = (value: string, before: readonly string[] | undefined): string[] => [...(before ?? []), value];

/**
 * The command, as a function.
 *
 * @param argv Arguments after the command's name.
 * @returns The exit code: 0 fine, 1 a problem in what was asked, 2 bad usage or unreadable input.
 * @example await main(['plan', 'lawn.yaml', '--as-of', '2027-04-02'], io)
 */
export async function main(argv: readonly string[], io: Io): Promise<number> {
  let code: number = EXIT.fine;
  const program = new Command('soilclock')
    .description('Season programs for lawns, dated by soil temperature and degree days, as calendar feeds.')
    .exitOverride()
    .allowExcessArguments(false)
    .configureOutput({ writeOut: io.stdout, writeErr: io.stderr, getOutHelpWidth: () => io.columns })
    .showHelpAfterError('(soilclock --help tells more)');
  const strict = ['--strict', 'let warnings count as errors'] as const;
  const json = ['--json', 'print JSON'] as const;

  const fresh = program
    .command('new')
    .description('ask about a lawn and write its file; every question is also a flag')
    .argument('[file]', 'the file to write', 'lawn.yaml')
    .option('--yes', 'ask nothing; take the defaults for what no flag answers')
    .option('--force', 'write over a file that is there')
    .option(...json)
    .addHelpText(
      'after',
      '\nExample:\n  soilclock new\n  soilclock new lawn.yaml --zip 43004 --grass tall-fescue --area "front: rectangle 50 x 40 ft" --yes',
    )
    .action(async (file: string, options) => {
      const { newCommand } = await import('./shell/new/new-command.ts');
      code = await newCommand(file, options, io);
    });
  // The questions bring the schemas along, for which no other command should wait.
  if (argv.includes('new')) (await import('./shell/new/flags.ts')).addFlags(fresh);

  program
    .command('plan')
    .description('plan a lawn: what now, the season, its calendar feed; with STEP, the whole why of one step')
    .argument('[lawn]', 'a lawn file; lawn.yaml here, or else the demo lawn')
    .argument('[step]', 'the id of one step')
    .option('--as-of <day>', 'plan as of this day instead of today (YYYY-MM-DD)')
    .option('--weather <file>', "a weather file instead of the lawn's own; may be repeated", collect)
    .option('--program <file>', "a program file instead of the lawn's own")
    .option('--out <folder>', 'where the feed goes (default: out/site)')
    .addOption(new Option('--detail <how>', 'how much the feed carries').choices(['quiet', 'normal']).default('normal'))
    .option('--compare <plan.json>', 'say what moved since an earlier "plan --json"')
    .option('--dry-run', 'write nothing')
    .option(...json)
    .option(...strict)
    .addHelpText(
      'after',
      '\nExample:\n  soilclock plan lawn.yaml --as-of 2027-04-02\n  soilclock plan lawn.yaml summer-annual-barrier',
    )
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { planCommand } = await import('./shell/plan-command.ts');
      const words = [lawn, step].filter((word) => word !== undefined);
      code = planCommand(words, options, io);
    });

  program
    .command('sprayer')
    .description("what the lawn's sprayer puts down, and how its tanks are filled; with STEP, how to do that step")
    .argument('[lawn]', 'a lawn file; lawn.yaml here, or else the demo lawn')
    .argument('[step]', 'the id of one step')
    .option('--as-of <day>', 'as of this day instead of today (YYYY-MM-DD)')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock sprayer lawn.yaml\n  soilclock sprayer lawn.yaml autumn-broadleaf')
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { sprayerCommand } = await import('./shell/sprayer/sprayer-command.ts');
      code = sprayerCommand(
        [lawn, step].filter((word) => word !== undefined),
        options,
        io,
      );
    });

  program
    .command('check')
    .description(
      'check files: programs at places of their climate, lawns with all they name, products, journals, weather',
    )
    .argument('<files...>', 'the files to check')
    .option('--as-of <day>', 'check as of this day instead of today (YYYY-MM-DD)')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock check lawn.yaml programs/tall-fescue-transition.yaml')
    .action(async (files: string[], options) => {
      const { checkCommand } = await import('./shell/check-command.ts');
      code = checkCommand(files, options, io);
    });

  program
    .command('did')
    .description(
      'write down work that was done; take an entry back; export the record; carry over into the next season',
    )
    .argument('[lawn]', 'a lawn file; lawn.yaml here')
    .argument('[step]', "a step of the lawn's program")
    .option('--date <day>', 'the day it was done instead of today (YYYY-MM-DD)')
    .option('--start <time>', 'when it began (HH:MM)')
    .option('--end <time>', 'when it was done (HH:MM)')
    .option('--work <kind>', 'work outside the program: spread, spray, seed, aerate, mow, water, scout, sample, other')
    .option('--areas <list>', 'the areas it was done on, with commas; all of them when left out')
    .option('--product <id>', "the product, where it is not the step's")
    .option('--registration <number>', "the product's registration number, where it is not that of the products file")
    .option('--target <pest>', 'the weed, insect or disease that it was put down against')
    .option('--loaded <amount>', 'what was filled in, such as "16 lb"')
    .option('--used <amount>', 'what was put down; else what was loaded less what was left')
    .option('--left <amount>', 'what was left in the hopper')
    .option('--spreader <id>', "which of the lawn's spreaders, where it has several")
    .option('--setting <number>', "the spreader's setting")
    .option('--sprayer', 'it was put down with the sprayer')
    .option('--output <rate>', 'what the sprayer put out, such as "1 gal/1000 sqft"')
    .option('--pass <number>', 'which pass it was')
    .option('--by <name>', 'who did it')
    .option('--licence <text>', 'with which licence')
    .option('--wind <speed>', 'wind at the start, such as "4 mph"')
    .option('--wind-from <point>', 'where it came from: n, nne, ne and so on, or variable')
    .option('--air <temperature>', 'air at the start, such as "62 F"')
    .option('--re-entry <text>', "when the turf may be walked on again, where it is not the label entry's")
    .option('--notices <text>', 'notices that were given or posted')
    .option('--note <text>', 'anything worth keeping')
    .option('--corrects <name>', 'the entry that this one stands in place of, by its id, or by day and step')
    .option('--undo', 'take the last entry back, or the one of --entry')
    .option('--entry <name>', 'an entry by its id, or by day and step: "2027-04-03 autumn-feed-1"')
    .option('--list', 'show the entries in force')
    .option('--export', "the applicator's record of a year: CSV, and a page to print")
    .option('--year <year>', 'with --export: another year than this one')
    .option('--out <folder>', 'with --export: where the files go (default: out/record)')
    .option('--close-season', 'carry over: the shelf as it is now, without pins of days gone by')
    .option('--to <file>', 'with --close-season: a new lawn file instead of this one')
    .option('--dry-run', 'write nothing')
    .option(...json)
    .option(...strict)
    .addHelpText(
      'after',
      '\nExample:\n  soilclock did lawn.yaml autumn-feed-1 --loaded "16 lb" --left "2 oz" --setting 5.5',
    )
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { didCommand } = await import('./shell/did/did-command.ts');
      code = didCommand(
        [lawn, step].filter((word) => word !== undefined),
        options,
        io,
      );
    });

  program
    .command('spreader')
    .description('how a step is put down with the spreader: first setting, passes and loads, the way over each area')
    .argument('[lawn]', 'a lawn file; lawn.yaml here, or else the demo lawn')
    .argument('[step]', 'the id of one step; the next one for a spreader when left out')
    .option('--spreader <id>', 'one of the "spreaders" of the lawn file')
    .option('--as-of <day>', 'as of this day instead of today (YYYY-MM-DD)')
    .option('--out <folder>', 'where the drawing goes (default: out/spreader)')
    .option('--dry-run', 'write nothing')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock spreader lawn.yaml autumn-feed-1')
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { spreaderCommand } = await import('./shell/spreader/spreader-command.ts');
      const words = [lawn, step].filter((word) => word !== undefined);
      code = spreaderCommand(words, options, io);
    });

  const weather = program.command('weather').description("a lawn's soil and weather: show, fetch, degree-days");
  const lawnArgument = ['[lawn]', 'a lawn file; lawn.yaml here, or else the demo lawn'] as const;
  const asOf = ['--as-of <day>', 'as of this day instead of today (YYYY-MM-DD)'] as const;
  weather
    .command('show')
    .description("today's soil temperature and degree days, the last 30 days against the usual")
    .argument(...lawnArgument)
    .option(...asOf)
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock weather show lawn.yaml')
    .action(async (lawn: string | undefined, options) => {
      const { weatherShowCommand } = await import('./shell/weather/show-command.ts');
      code = weatherShowCommand(lawn === undefined ? [] : [lawn], options, io);
    });
  weather
    .command('fetch')
    .description('bring 30 years and the forecast of the services that the lawn names into out/cache')
    .argument(...lawnArgument)
    .option('--offline', 'touch no network; say what the cache holds')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock weather fetch lawn.yaml')
    .action(async (lawn: string | undefined, options) => {
      const { weatherFetchCommand } = await import('./shell/weather/fetch-command.ts');
      code = await weatherFetchCommand(lawn === undefined ? [] : [lawn], options, io);
    });
  weather
    .command('degree-days')
    .description('the sum of degree days beside the usual one, and when it reaches a value')
    .argument(...lawnArgument)
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
      const { degreeDaysCommand } = await import('./shell/weather/degree-days-command.ts');
      code = degreeDaysCommand(lawn === undefined ? [] : [lawn], options, io);
    });

  try {
    await program.parseAsync([...argv], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.fine : EXIT.usage;
  }
  return code;
}

/** Runs the command on this process. */
export async function run(): Promise<void> {
  const io = processIo();
  try {
    process.exitCode = await main(process.argv.slice(2), io);
  } catch (error) {
    // A fault of ours, not of the input; the trace is for whoever mends it.
    io.stderr(
      `soilclock has failed: ${error instanceof Error ? error.message : String(error)}. SOILCLOCK_TRACE=1 shows where.\n`,
    );
    if (process.env.SOILCLOCK_TRACE) io.stderr(`${error instanceof Error ? error.stack : ''}\n`);
    process.exitCode = EXIT.usage;
  }
}
