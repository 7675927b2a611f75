import type { Command } from 'commander';
import type { Run } from './common.ts';

export function addServe(program: Command, { io, ended }: Run): void {
  program
    .command('serve')
    .description('serve the written feeds, read-only, to this machine or to the household network')
    .argument('[folder]', 'what "plan" wrote', 'out/site')
    .option(
      '--host <name>',
      'which network to serve: an address of this machine, or 0.0.0.0 for all (default: this machine alone)',
    )
    .option('--port <number>', 'the port; 0 takes a free one (default: 8743)')
    .addHelpText('after', '\nExample:\n  soilclock serve\n  soilclock serve out/site --host 0.0.0.0 --port 8080')
    .action(async (folder: string, options) => {
      const { serveCommand } = await import('../serve/serve-command.ts');
      const { untilEnded } = await import('../serve/until-ended.ts');
      ended(await serveCommand(folder, options, io, untilEnded));
    });
}
