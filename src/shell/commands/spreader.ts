import type { Command } from 'commander';
import { aLawn, asOf, given, json, type Run, strict } from './common.ts';

export function addSpreader(program: Command, { io, ended }: Run): void {
  program
    .command('spreader')
    .description('how a step is put down with the spreader: first setting, passes and loads, the way over each area')
    .argument(...aLawn)
    .argument('[step]', 'the id of one step; the next one for a spreader when left out')
    .option('--spreader <id>', 'one of the "spreaders" of the lawn file')
    .option(...asOf)
    .option('--out <folder>', 'where the drawing goes (default: out/spreader)')
    .option('--dry-run', 'write nothing')
    .option(...json)
    .option(...strict)
    .addHelpText('after', '\nExample:\n  soilclock spreader lawn.yaml autumn-feed-1')
    .action(async (lawn: string | undefined, step: string | undefined, options) => {
      const { spreaderCommand } = await import('../spreader/spreader-command.ts');
      ended(spreaderCommand(given(lawn, step), options, io));
    });
}
