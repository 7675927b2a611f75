import type { Command } from 'commander';
import { aLawn, asOf, given, json, type Run, strict } from './common.ts';

export function addSprayer(program: Command, { io, ended }: Run): void {
  program
    .command('sprayer')
    .description("what the lawn's sprayer puts down, and how its tanks are filled; with STEP, how to do that step")
    .argument(...aLawn)
    .argument('[step]', 'the id of one step')
    .option(...asOf)
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock sprayer lawn.yaml\n  soilclock sprayer lawn.yaml autumn-broadleaf')
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { sprayerCommand } = await import('../sprayer/sprayer-command.ts');
      ended(sprayerCommand(given(lawn, step), options, io));
    });
}
