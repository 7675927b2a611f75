import type { Command } from 'commander';
import { json, type Run } from './common.ts';

export async function addNew(program: Command, { io, ended, argv }: Run): Promise<void> {
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
      const { newCommand } = await import('../new/new-command.ts');
      ended(await newCommand(file, options, io));
    });
  // The questions bring the schemas along, for which no other command should wait.
  if (argv.includes('new')) (await import('../new/flags.ts')).addFlags(fresh);
}
