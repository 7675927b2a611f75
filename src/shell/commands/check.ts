import type { Command } from 'commander';
import { json, type Run, strict } from './common.ts';

export function addCheck(program: Command, { io, ended }: Run): void {
  program
    .command('check')
    .description(
      'check files: programs at places of their climate, lawns with all they name, calendars of lawns, products, journals, weather',
    )
    .argument('<files...>', 'the files to check; a fetched program by its https address')
    .option('--as-of <day>', 'check as of this day instead of today (YYYY-MM-DD)')
    .option('--bundle', 'write one file of each program and what it extends, to out/bundle')
    .option(...json)
    .option(...strict)
    .addHelpText(
      'after',
      '\nExample:\n  soilclock check lawn.yaml programs/tall-fescue-transition.yaml\n  soilclock check --bundle my-program.yaml',
    )
    .action(async (files: string[], options) => {
      const { checkCommand } = await import('../check/check-command.ts');
      ended(checkCommand(files, options, io));
    });
}
