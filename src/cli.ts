import { Command, CommanderError } from 'commander';
import { addAreas } from './shell/commands/areas.ts';
import { addCheck } from './shell/commands/check.ts';
import type { Run } from './shell/commands/common.ts';
import { addDid } from './shell/commands/did.ts';
import { addNew } from './shell/commands/new.ts';
import { addPlan } from './shell/commands/plan.ts';
import { addProgram } from './shell/commands/program.ts';
import { addPublish } from './shell/commands/publish.ts';
import { addServe } from './shell/commands/serve.ts';
import { addSprayer } from './shell/commands/sprayer.ts';
import { addSpreader } from './shell/commands/spreader.ts';
import { addWeather } from './shell/commands/weather.ts';
import { type Io, processIo } from './shell/io.ts';
import { EXIT } from './shell/report-problems.ts';

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
  const run: Run = {
    io,
    argv,
    ended: (exit) => {
      code = exit;
    },
  };
  await addNew(program, run);
  addPlan(program, run);
  addSpreader(program, run);
  addSprayer(program, run);
  addAreas(program, run);
  addCheck(program, run);
  addDid(program, run);
  addWeather(program, run);
  addProgram(program, run);
  addPublish(program, run);
  addServe(program, run);

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
